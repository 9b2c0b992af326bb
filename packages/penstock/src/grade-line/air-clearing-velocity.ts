import { firstPrinciples, formula, input, output, range } from "@leat/formula";
import { degree, metrePerSecondSquared, radian } from "@leat/quantity";

import { wisnerAir } from "../sources.ts";

/**
 * Velocity above which the flow carries a pocket of air down a slope and away from the high point before it.
 *
 *     V = √(g·D) · (0.825 + 0.25·√sin θ)
 *
 * Slower water leaves the air where it is, and the pocket grows until it fills the bore: an air valve lets it out. Later
 * experiments (V = √(g·D)·(a + 0.56·√sin θ), a = 0.45 to 0.61 by the size of the pocket) ask for less on flat slopes and more
 * on those above 25°: between the two lies some 20 %.
 *
 * @throws NonPhysicalError a bore of zero or less, a negative angle.
 * @throws OutOfValidityError a slope above 90°, and `onNotice` is absent.
 * @example
 * ```ts
 * import { airClearingVelocity } from "@leat/penstock";
 * import { degree, metrePerSecond, millimetre } from "@leat/quantity";
 *
 * const v = airClearingVelocity({ insideDiameter: millimetre.of(100), downSlope: degree.of(10) });
 * v.in(metrePerSecond).toFixed(2); // => "0.92"
 * ```
 */
export const airClearingVelocity = /* @__PURE__ */ formula(() => ({
  id: "air-clearing-velocity",
  equation: "V = √(g·D) · (0.825 + 0.25·√(sin(θ)))",
  inputs: {
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** How steeply the pipe goes down behind the high point. */
    downSlope: input("angle", "θ"),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("velocity", "V"),
  constants: { rad: radian.of(1) },
  limits: [
    range("downSlope", { max: degree.of(90) }, firstPrinciples.at("a plumb pipe is the steepest")),
  ],
  source: wisnerAir.at("as Sanks, Pumping Station Design, is quoted to give it", "secondary"),
  body: ({ D, θ, g, rad }) => Math.sqrt(g * D) * (0.825 + 0.25 * Math.sqrt(Math.sin(θ / rad))),
}));
