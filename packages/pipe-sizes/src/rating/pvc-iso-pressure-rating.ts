import { formula, input, output, range } from "@leat/formula";
import { coherentUnit, megapascal, one } from "@leat/quantity";

import { iso1452 } from "../sources.ts";
import { hoopPressureOf } from "./pe-pressure-rating.ts";

/**
 * Pressure that metric PVC pipe carries for 50 years at 20 °C, by ISO 1452.
 *
 *     P = 2·σ/(SDR − 1)      σ = MRS/C
 *
 * The coefficient is 2.5 for pipe up to 90 mm and 2.0 above, where a wall can be made more even: of the same SDR the
 * wider pipe is sold at a quarter more. Nominal pressures are these, rounded to the steps of the standard.
 *
 * @throws NonPhysicalError a negative strength, a coefficient or dimension ratio of zero or less.
 * @throws OutOfValidityError a design coefficient below 2, a dimension ratio that is not made, and `onNotice` is absent.
 * @example
 * ```ts
 * import { pvcIsoPressureRating } from "@leat/pipe-sizes";
 * import { bar, one } from "@leat/quantity";
 *
 * const small = pvcIsoPressureRating({ dimensionRatio: one.of(21) });
 * small.in(bar).toFixed(1); // => "10.0"
 * ```
 */
export const pvcIsoPressureRating = /* @__PURE__ */ formula(() => ({
  id: "pvc-iso-pressure-rating",
  equation: "P = 2·MRS/C/(SDR - 1)",
  inputs: {
    /** Outside diameter over least wall, as the series is called. */
    dimensionRatio: input("ratio", "SDR", { domain: "positive" }),
    /** Overall design coefficient: 2.5 up to 90 mm, 2.0 above. */
    designCoefficient: input("coefficient", "C", {
      domain: "positive",
      default: coherentUnit("coefficient").of(2.5),
      because: iso1452.at("coefficient of pipe up to 90 mm, the greater of two", "memory"),
    }),
    /** Minimum required strength of the material. */
    requiredStrength: input("pressure", "MRS", {
      default: megapascal.of(25),
      because: iso1452.at("PVC-U 250", "memory"),
    }),
  },
  output: output("pressure", "P"),
  limits: [
    range(
      "designCoefficient",
      { min: coherentUnit("coefficient").of(2) },
      iso1452.at("coefficient of pipe above 90 mm", "memory"),
    ),
    range(
      "dimensionRatio",
      { min: one.of(11), max: one.of(41) },
      iso1452.at("standard dimension ratios", "memory"),
    ),
  ],
  source: iso1452.at("nominal pressures", "secondary"),
  body: ({ MRS, C, SDR }) => hoopPressureOf(MRS / C, SDR),
}));
