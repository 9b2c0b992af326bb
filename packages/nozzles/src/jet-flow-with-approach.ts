import { firstPrinciples, formula, input, output, ratio } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

import { approach } from "./approach-factor.ts";

/**
 * Flow of a jet from the pressure in the pipe just before the nozzle, as a gauge there reads it.
 *
 *     Q = Cd · π/4 · d² · √(2·g·h) / √(1 − Cd²·(d/D)⁴)
 *
 * The gauge does not see the velocity head in the pipe; the approach factor puts it back. The head is a
 * plain length so that a net head, which has the velocity head in it already, is refused. The flow is that of
 * `jetFlow` at h + V²/(2·g), V the velocity in the pipe.
 *
 * @throws NonPhysicalError a head below zero, a coefficient outside 0 to 1, a jet as wide as the pipe.
 * @throws OutOfValidityError an opening wider than the pipe, and `onNotice` is absent.
 * @example
 * ```ts
 * import { jetFlowWithApproach } from "@leat/nozzles";
 * import { litrePerSecond, metre, millimetre, one } from "@leat/quantity";
 *
 * const q = jetFlowWithApproach({
 *   pressureHead: metre.of(30),
 *   nozzleDiameter: millimetre.of(25),
 *   pipeDiameter: millimetre.of(50),
 *   dischargeCoefficient: one.of(0.97).as("coefficient"),
 * });
 * q.in(litrePerSecond).toFixed(2); // => "11.91"
 * ```
 */
export const jetFlowWithApproach = /* @__PURE__ */ formula(() => ({
  id: "jet-flow-with-approach",
  equation: "Q = Cd · π/4 · d² · √(2·g·h) / √(1 − Cd²·(d/D)^4)",
  inputs: {
    /** Gauge pressure before the nozzle as a height of water, above the jet; no velocity head in it. */
    pressureHead: input("length", "h"),
    /** Diameter of the opening. */
    nozzleDiameter: input("length", "d", { domain: "positive" }),
    /** Bore of the pipe where the pressure is taken. */
    pipeDiameter: input("length", "D", { domain: "positive" }),
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
  steps: {
    E: {
      kind: "coefficient",
      equation: "1/√(1 − Cd²·(d/D)^4)",
      of: ({ d, D, Cd }) => approach(Cd, d / D),
    },
  },
  limits: [
    ratio(
      "nozzleDiameter",
      "pipeDiameter",
      { max: 1 },
      firstPrinciples.at("a nozzle narrows the pipe"),
    ),
  ],
  source: firstPrinciples.at("energy from the pipe to the jet, with continuity"),
  body: ({ h, d, D, Cd, g }) =>
    Cd * (Math.PI / 4) * d * d * Math.sqrt(2 * g * h) * approach(Cd, d / D),
}));
