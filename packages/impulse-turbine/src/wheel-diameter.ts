import { firstPrinciples, formula, input, output, range } from "@leat/formula";
import { metrePerSecondSquared, one, radian } from "@leat/quantity";

import { rotatingMachineryPaper } from "./sources.ts";
import { pitchCircleSpeedOf } from "./wheel.ts";

/**
 * Pitch diameter of an impulse wheel that is to turn at a given speed on a jet: {@link wheelSpeed} the other way.
 *
 *     D = 2·φ·Cv·√(2·g·h)/ω · rad
 *
 * @throws NonPhysicalError a negative head, a speed of zero or less.
 * @throws OutOfValidityError a speed ratio above 1, at which no bucket takes power, and `onNotice` is absent.
 */
export const wheelDiameter = /* @__PURE__ */ formula(() => ({
  id: "wheel-diameter",
  equation: "D = 2 · φ · Cv · √(2·g·h)/ω · rad",
  inputs: {
    /** Head before the nozzle, above the jet. */
    head: input("net head", "h"),
    /** Speed that the wheel is to turn at under load. */
    angularVelocity: input("angular velocity", "ω", { domain: "positive" }),
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
  output: output("length", "D"),
  constants: { rad: radian.of(1) },
  limits: [
    range(
      "speedRatio",
      { max: one.of(1) },
      firstPrinciples.at("a bucket as fast as the jet takes no power"),
    ),
  ],
  source: rotatingMachineryPaper.at("Table 5", "secondary"),
  body: ({ h, ω, φ, Cv, g, rad }) => ((2 * pitchCircleSpeedOf(h, g, φ, Cv)) / ω) * rad,
}));
