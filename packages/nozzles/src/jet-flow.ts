import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Flow of a jet from a nozzle.
 *
 *     Q = Cd · π/4 · d² · √(2·g·H)
 *
 * The head is that before the nozzle with its velocity head: net head. From a gauge on the pipe, which does
 * not see the velocity head, use `jetFlowWithApproach`.
 *
 * @throws NonPhysicalError a head below zero, a diameter not above zero, a coefficient outside 0 to 1.
 * @example
 * ```ts
 * import { jetFlow } from "@leat/nozzles";
 * import { gallonPerMinute, foot, inch, one } from "@leat/quantity";
 *
 * const q = jetFlow({
 *   head: foot.of(100).as("net head"),
 *   nozzleDiameter: inch.of(0.5),
 *   dischargeCoefficient: one.of(1).as("coefficient"),
 * });
 * q.in(gallonPerMinute).toFixed(1); // => "49.1"
 * ```
 */
export const jetFlow = /* @__PURE__ */ formula(() => ({
  id: "jet-flow",
  equation: "Q = Cd · π/4 · d² · √(2·g·H)",
  inputs: {
    /** Head before the nozzle, above the jet, velocity head included. */
    head: input("net head", "H"),
    /** Diameter of the opening. */
    nozzleDiameter: input("length", "d", { domain: "positive" }),
    /** Flow over that of the opening without loss or contraction. */
    dischargeCoefficient: input("coefficient", "Cd", { domain: "fraction" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("volume flow", "Q"),
  source: firstPrinciples.at("Torricelli's law, with a coefficient for loss and contraction"),
  body: ({ H, d, Cd, g }) => Cd * (Math.PI / 4) * d * d * Math.sqrt(2 * g * H),
}));
