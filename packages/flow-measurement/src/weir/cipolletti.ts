import { bound, formula, input, output, range, ratio } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { rootFootPerSecond } from "./kindsvater-carter-coefficients.ts";

/**
 * Discharge over a thin-plate trapezoidal notch whose ends lean outwards by one in four (Cipolletti).
 *
 *     Q = C · b · h^(3/2),   C = 3.367 √ft/s
 *
 * The widening gives back what the contracted ends take, so that the width needs no correction. Free flow, air
 * under the sheet of water, a slow approach, full contraction. The manual calls it "considerably less" accurate than a
 * suppressed weir or a V-notch: ±5 %.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { cipollettiDischarge } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, foot } from "@leat/quantity";
 *
 * const q = cipollettiDischarge({
 *   head: foot.of(0.5),
 *   notchWidth: foot.of(2),
 *   crestHeight: foot.of(1),
 *   approachWidth: foot.of(5),
 * });
 * q.in(cubicFootPerSecond).toFixed(2); // => "2.38"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 7, sec. 12
 */
export const cipollettiDischarge = /* @__PURE__ */ formula(() => ({
  id: "cipolletti-discharge",
  equation: "Q = C · b · h^(3/2)",
  inputs: {
    /** Level above the crest, measured upstream of the drawdown: four heads or more from the plate. */
    head: input("length", "h"),
    /** Width of the notch at its crest. */
    notchWidth: input("length", "b", { domain: "positive" }),
    /** Crest above the bed of the approach channel. */
    crestHeight: input("length", "P", { domain: "positive" }),
    /** Width of the approach channel. */
    approachWidth: input("length", "B", { domain: "positive" }),
  },
  output: output("volume flow", "Q"),
  constants: { C: rootFootPerSecond.of(3.367) },
  limits: [
    range("head", { min: foot.of(0.2) }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "notchWidth", { max: 1 / 3 }, usbrWaterMeasurementManual.at("ch. 7, sec. 12(b)")),
    ratio("head", "crestHeight", { max: 0.5 }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    bound(
      "approachWidth",
      "clear width beside each end of the water in the notch over head",
      ({ b, B, h }: { b: number; B: number; h: number }) => (B - b - h / 2) / (2 * h),
      { min: 2 },
      usbrWaterMeasurementManual.at("ch. 7", "memory"),
    ),
  ],
  source: usbrWaterMeasurementManual.at("ch. 7, eq. 7-7"),
  body: ({ h, b, C }) => C * b * h * Math.sqrt(h),
}));
