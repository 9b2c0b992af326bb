import { formula, input, output, range, ratio } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { rootFootPerSecond } from "./kindsvater-carter-coefficients.ts";

/**
 * Discharge over a thin-plate rectangular weir across the whole channel (Francis).
 *
 *     Q = C · b · h^(3/2),   C = 3.33 √ft/s
 *
 * Free flow, air under the sheet of water, approach slower than 0.5 ft/s: a faster approach adds to the
 * flow and is not in the formula. With the crest lower than twice the head it reads some 6 % low;
 * `kindsvaterCarterDischarge` knows the crest's height. A notch narrower than its channel is
 * contracted: this formula reads it high, see `francisContractedDischarge`.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { francisSuppressedDischarge } from "@leat/flow-measurement";
 * import { foot, gallonPerMinute, inch } from "@leat/quantity";
 *
 * const q = francisSuppressedDischarge({ head: inch.of(3.5), notchWidth: inch.of(16), crestHeight: foot.of(1) });
 * q.in(gallonPerMinute).toFixed(1); // => "313.9"
 * ```
 */
export const francisSuppressedDischarge = /* @__PURE__ */ formula(() => ({
  id: "francis-suppressed-discharge",
  equation: "Q = C · b · h^(3/2)",
  inputs: {
    /** Level above the crest, measured upstream of the drawdown: four heads or more from the plate. */
    head: input("length", "h"),
    /** Width of the weir, which is that of the channel. */
    notchWidth: input("length", "b", { domain: "positive" }),
    /** Crest above the bed of the approach channel. */
    crestHeight: input("length", "P", { domain: "positive" }),
  },
  output: output("volume flow", "Q"),
  constants: { C: rootFootPerSecond.of(3.33) },
  limits: [
    range("head", { min: foot.of(0.2) }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "notchWidth", { max: 1 / 3 }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "crestHeight", { max: 0.5 }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
  ],
  source: usbrWaterMeasurementManual.at("ch. 7, suppressed rectangular weir", "secondary"),
  body: ({ h, b, C }) => C * b * h * Math.sqrt(h),
}));
