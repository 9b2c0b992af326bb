import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Velocity of a jet.
 *
 *     v = Cv · √(2·g·H)
 *
 * @throws NonPhysicalError a head below zero, a coefficient outside 0 to 1.
 * @example
 * ```ts
 * import { jetVelocity } from "@leat/nozzles";
 * import { metre, metrePerSecond, one } from "@leat/quantity";
 *
 * const v = jetVelocity({ head: metre.of(46.5).as("net head"), velocityCoefficient: one.of(0.98).as("coefficient") });
 * v.in(metrePerSecond).toFixed(1); // => "29.6"
 * ```
 */
export const jetVelocity = /* @__PURE__ */ formula(() => ({
  id: "jet-velocity",
  equation: "v = Cv · √(2·g·H)",
  inputs: {
    /** Head before the nozzle, above the jet, velocity head included. */
    head: input("net head", "H"),
    /** Velocity of the jet over that without loss. */
    velocityCoefficient: input("coefficient", "Cv", { domain: "fraction" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("velocity", "v"),
  source: firstPrinciples.at("Torricelli's law, with a coefficient for the loss"),
  body: ({ H, Cv, g }) => Cv * Math.sqrt(2 * g * H),
}));
