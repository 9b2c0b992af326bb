import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { astmPvcSchedule, astmPvcSdr } from "../sources.ts";
import { hoopPressureOf } from "./pe-pressure-rating.ts";

/**
 * Pressure rating of PVC pipe at 73 °F.
 *
 *     P = 2·S/(DR − 1)
 *
 * S is 2000 psi for PVC 1120. Tables print it rounded to 5 or 10 psi. Threads halve it; warm water lowers it.
 *
 * @throws NonPhysicalError a negative stress, a dimension ratio of zero or less.
 * @throws OutOfValidityError a dimension ratio that is not made, and `onNotice` is absent.
 * @example
 * ```ts
 * import { pvcPressureRating } from "@leat/pipe-sizes";
 * import { one, poundPerSquareInch } from "@leat/quantity";
 *
 * const p = pvcPressureRating({ designStress: poundPerSquareInch.of(2000), dimensionRatio: one.of(26) });
 * p.in(poundPerSquareInch).toFixed(0); // => "160"
 * ```
 */
export const pvcPressureRating = /* @__PURE__ */ formula(() => ({
  id: "pvc-pressure-rating",
  equation: "P = 2·S/(DR - 1)",
  inputs: {
    /** Hydrostatic design stress of the material at 73 °F. */
    designStress: input("pressure", "S"),
    /** Outside diameter over least wall. */
    dimensionRatio: input("ratio", "DR", { domain: "positive" }),
  },
  output: output("pressure", "P"),
  limits: [
    range(
      "dimensionRatio",
      { min: one.of(4) },
      astmPvcSchedule.at("the thickest schedule 80 pipe", "memory"),
    ),
    range("dimensionRatio", { max: one.of(64) }, astmPvcSdr.at("SDR 64", "memory")),
  ],
  source: astmPvcSchedule.at(
    "pressure rating; Machinery's Handbook, 31st ed., Table 13",
    "secondary",
  ),
  body: ({ S, DR }) => hoopPressureOf(S, DR),
}));
