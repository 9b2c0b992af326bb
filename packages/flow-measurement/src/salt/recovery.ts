import { firstPrinciples, formula, input, output } from "@leat/formula";

import { saltFactorPaper } from "./sources.ts";
import { standardSaltFactor } from "./standard-factor.ts";

/**
 * Share of the salt that came by, where the flow is known from elsewhere: a weir, or the same slug at another probe.
 *
 *     R = Q · CF · A / M
 *
 * Less than all of it means salt left behind undissolved or in dead water, or poor mixing; more than all of it
 * can only be poor mixing, a wrong factor or a wrong flow.
 *
 * @throws NonPhysicalError a flow or a sum below zero, a mass or a factor not above zero.
 * @example
 * ```ts
 * import { saltRecovery } from "@leat/flow-measurement";
 * import { kilogram, litrePerSecond, microsiemensSecondPerCentimetre, percent } from "@leat/quantity";
 *
 * const share = saltRecovery({
 *   flow: litrePerSecond.of(80),
 *   conductivityTime: microsiemensSecondPerCentimetre.of(12_000),
 *   mass: kilogram.of(0.5),
 * });
 * share.in(percent).toFixed(1); // => "93.3"
 * ```
 */
export const saltRecovery = /* @__PURE__ */ formula(() => ({
  id: "salt-recovery",
  equation: "R = Q · CF · A / M",
  inputs: {
    /** Flow past the probe, from another measurement. */
    flow: input("volume flow", "Q"),
    /** Salt per volume of water, over the rise of conductivity that it makes. */
    calibrationFactor: input("concentration per conductivity", "CF", {
      domain: "positive",
      default: standardSaltFactor(),
      because: saltFactorPaper.at("abstract and Table 8: no calibration was made"),
    }),
    /** Rise of conductivity over the background, summed over time. */
    conductivityTime: input("conductivity time", "A"),
    /** Salt that was thrown in. */
    mass: input("mass", "M", { domain: "positive" }),
  },
  output: output("ratio", "R"),
  source: firstPrinciples.at("balance of the mass of salt"),
  body: ({ Q, CF, A, M }) => (Q * CF * A) / M,
}));
