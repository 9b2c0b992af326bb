import { firstPrinciples, formula, input, output, range } from "@leat/formula";
import { metrePerSecondSquared, one, radian } from "@leat/quantity";

import { rotatingMachineryPaper } from "./sources.ts";
import { pitchCircleSpeedOf } from "./wheel.ts";

/**
 * Speed of rotation of an impulse wheel on a jet, from the head before the nozzle.
 *
 *     ω = 2·φ·Cv·√(2·g·h)/D · rad
 *
 * The speed ratio φ is the speed of the pitch circle over the velocity of the jet: 0.5 in theory, about
 * 0.46 for best power in practice. Some books put it over √(2·g·h) instead: divide theirs by Cv.
 *
 * @throws NonPhysicalError a negative head, a diameter of zero or less.
 * @throws OutOfValidityError a speed ratio above 1, at which no bucket takes power, and `onNotice` is absent.
 * @example
 * ```ts
 * import { wheelSpeed } from "@leat/impulse-turbine";
 * import { metre, one, revolutionPerMinute, unit } from "@leat/quantity";
 *
 * const w = wheelSpeed({
 *   head: metre.of(46.5).as("net head"),
 *   pitchDiameter: metre.of(0.4),
 *   speedRatio: one.of(0.46),
 *   velocityCoefficient: unit("coefficient", "1", 1).of(0.98),
 * });
 * w.in(revolutionPerMinute).toFixed(0); // => "650"
 * ```
 */
export const wheelSpeed = /* @__PURE__ */ formula(() => ({
  id: "wheel-speed",
  equation: "ω = 2 · φ · Cv · √(2·g·h)/D · rad",
  inputs: {
    /** Head before the nozzle, above the jet. */
    head: input("net head", "h"),
    /** Diameter of the circle that the axis of the jet touches. */
    pitchDiameter: input("length", "D", { domain: "positive" }),
    /** Speed of the pitch circle over the velocity of the jet. */
    speedRatio: input("ratio", "φ"),
    /** Velocity of the jet over √(2·g·h). */
    velocityCoefficient: input("coefficient", "Cv", { domain: "fraction" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("angular velocity", "ω"),
  constants: { rad: radian.of(1) },
  limits: [
    range(
      "speedRatio",
      { max: one.of(1) },
      firstPrinciples.at("a bucket as fast as the jet takes no power"),
    ),
  ],
  source: rotatingMachineryPaper.at("Table 5", "secondary"),
  body: ({ h, D, φ, Cv, g, rad }) => ((2 * pitchCircleSpeedOf(h, g, φ, Cv)) / D) * rad,
}));
