import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Diameter of the jet that carries a flow, where it is round and no longer contracts.
 *
 *     d = √(4·Q/(π·Cv·√(2·g·H)))
 *
 * This is the jet that the buckets see; the opening that makes it is `nozzleDiameter`.
 *
 * @throws NonPhysicalError a flow below zero, a head or a coefficient of zero.
 * @example
 * ```ts
 * import { jetDiameter } from "@leat/nozzles";
 * import { litrePerSecond, metre, millimetre, one } from "@leat/quantity";
 *
 * const d = jetDiameter({
 *   flow: litrePerSecond.of(10),
 *   head: metre.of(50).as("net head"),
 *   velocityCoefficient: one.of(0.97).as("coefficient"),
 * });
 * d.in(millimetre).toFixed(1); // => "20.5"
 * ```
 */
export const jetDiameter = /* @__PURE__ */ formula(() => ({
  id: "jet-diameter",
  equation: "d = √(4·Q/(π·Cv·√(2·g·H)))",
  inputs: {
    /** Flow of one jet. */
    flow: input("volume flow", "Q"),
    /** Head before the nozzle, above the jet, velocity head included. */
    head: input("net head", "H", { domain: "positive" }),
    /** Velocity of the jet over that without loss. */
    velocityCoefficient: input("coefficient", "Cv", { domain: "fraction" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("length", "d"),
  source: firstPrinciples.at("continuity and Torricelli's law"),
  body: ({ Q, H, Cv, g }) => Math.sqrt((4 * Q) / (Math.PI * Cv * Math.sqrt(2 * g * H))),
}));
