import { bound, firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { each, foot } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { rootFootPerSecond } from "./kindsvater-carter-coefficients.ts";

/**
 * Discharge over a thin-plate rectangular notch with one or both ends in from the sides of the channel
 * (Francis).
 *
 *     Q = C · (b − 0.1·n·h) · h^(3/2),   C = 3.33 √ft/s
 *
 * Each contracted end takes a tenth of the head from the width. Free flow, air under the sheet of water,
 * approach slower than 0.5 ft/s. The formula is for full contraction: the crest and the ends are two heads
 * or more from the bed and the sides; between that and a weir across the channel use
 * `kindsvaterCarterDischarge`.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { francisContractedDischarge } from "@leat/flow-measurement";
 * import { each, foot, gallonPerMinute, inch } from "@leat/quantity";
 *
 * const q = francisContractedDischarge({
 *   head: inch.of(3.5),
 *   notchWidth: inch.of(16),
 *   contractions: each.of(2),
 *   crestHeight: foot.of(1),
 *   approachWidth: foot.of(4),
 * });
 * q.in(gallonPerMinute).toFixed(1); // => "300.2"
 * ```
 */
export const francisContractedDischarge = /* @__PURE__ */ formula(() => ({
  id: "francis-contracted-discharge",
  equation: "Q = C · (b − 0.1·n·h) · h^(3/2)",
  inputs: {
    /** Level above the crest, measured upstream of the drawdown: four heads or more from the plate. */
    head: input("length", "h"),
    /** Width of the notch. */
    notchWidth: input("length", "b", { domain: "positive" }),
    /** Ends of the notch that stand in from the side of the channel: 1 or 2. */
    contractions: input("count", "n", { domain: "positive" }),
    /** Crest above the bed of the approach channel. */
    crestHeight: input("length", "P", { domain: "positive" }),
    /** Width of the approach channel. */
    approachWidth: input("length", "B", { domain: "positive" }),
  },
  output: output("volume flow", "Q"),
  constants: { C: rootFootPerSecond.of(3.33) },
  limits: [
    range(
      "contractions",
      { min: each.of(1), max: each.of(2) },
      firstPrinciples.at("a notch has two ends"),
    ),
    bound(
      "contractions",
      "contractions away from a whole number",
      ({ n }: { n: number }) => Math.abs(n - Math.round(n)),
      { max: 0 },
      firstPrinciples.at("an end is contracted or not"),
    ),
    range("head", { min: foot.of(0.2) }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "notchWidth", { max: 1 / 3 }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "crestHeight", { max: 0.5 }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    bound(
      "approachWidth",
      "clear width beside each contracted end over head",
      ({ b, B, n, h }: { b: number; B: number; n: number; h: number }) => (B - b) / (n * h),
      { min: 2 },
      usbrWaterMeasurementManual.at("ch. 7", "memory"),
    ),
  ],
  source: usbrWaterMeasurementManual.at("ch. 7, contracted rectangular weir", "secondary"),
  body: ({ h, b, n, C }) => C * (b - 0.1 * n * h) * h * Math.sqrt(h),
}));
