import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Diameter of the opening that passes a flow: the inverse of `jetFlow`.
 *
 *     d = √(4·Q/(π·Cd·√(2·g·H)))
 *
 * @throws NonPhysicalError a flow below zero, a head or a coefficient of zero.
 * @example
 * ```ts
 * import { nozzleDiameter } from "@leat/nozzles";
 * import { foot, gallonPerMinute, inch, one } from "@leat/quantity";
 *
 * const d = nozzleDiameter({
 *   flow: gallonPerMinute.of(49.1),
 *   head: foot.of(100).as("net head"),
 *   dischargeCoefficient: one.of(1).as("coefficient"),
 * });
 * d.in(inch).toFixed(2); // => "0.50"
 * ```
 */
export const nozzleDiameter = /* @__PURE__ */ formula(() => ({
  id: "nozzle-diameter",
  equation: "d = √(4·Q/(π·Cd·√(2·g·H)))",
  inputs: {
    /** Flow of one jet. */
    flow: input("volume flow", "Q"),
    /** Head before the nozzle, above the jet, velocity head included. */
    head: input("net head", "H", { domain: "positive" }),
    /** Flow over that of the opening without loss or contraction. */
    dischargeCoefficient: input("coefficient", "Cd", { domain: "fraction" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("length", "d"),
  source: firstPrinciples.at("continuity and Torricelli's law"),
  body: ({ Q, H, Cd, g }) => Math.sqrt((4 * Q) / (Math.PI * Cd * Math.sqrt(2 * g * H))),
}));
