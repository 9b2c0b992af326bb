import { table } from "@leat/formula";
import {
  coverage95,
  microsiemensPerCentimetre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
  percent,
  type Quantity,
} from "@leat/quantity";

import { saltFactorPaper } from "./sources.ts";

/**
 * The factor of common salt, and how far it spreads with the care that was taken: twice the standard deviation, in
 * per cent of the factor.
 *
 * The factor is of specific conductivity, at 25 °C. Without a calibration it holds up to a background of
 * 500 µS/cm: waters above were not well represented in the study.
 */
export const saltFactors = /* @__PURE__ */ table(() => ({
  id: "salt-factors",
  key: "calibration",
  units: {
    factor: milligramPerLitrePerMicrosiemensPerCentimetre,
    twoDeviations: percent,
    backgroundUpTo: microsiemensPerCentimetre,
  },
  source: saltFactorPaper.at("abstract, Table 8 and discussion"),
  rows: [
    { calibration: "none", factor: 0.486, twoDeviations: 2.9, backgroundUpTo: 500 },
    { calibration: "careful", twoDeviations: 0.7 },
  ],
}));

/** Half of a 95 % interval, over twice the standard deviation. */
const halfOverTwoDeviations = coverage95 / 2; // guard: a spread, held by a test of its own

/**
 * The factor that stands in where no calibration was made: 0.486 mg·cm/(µS·L), within 2.9 % (twice the standard
 * deviation), of conductivity at 25 °C.
 *
 * @returns The factor; its source of uncertainty is `salt factor without calibration`.
 * @example
 * ```ts
 * import { standardSaltFactor } from "@leat/flow-measurement";
 *
 * standardSaltFactor().toString(); // => "0.486 (mg/L)/(µS/cm)"
 * ```
 */
export function standardSaltFactor(): Quantity<"concentration per conductivity"> {
  const factor = saltFactors.get("none", "factor");
  const spread = saltFactors.get("none", "twoDeviations").in(percent) / 100; // guard: a spread, held by a test of its own
  return factor.plusMinus(
    factor.times(spread * halfOverTwoDeviations),
    "salt factor without calibration",
  );
}
