import { formula, input, output, range } from "@leat/formula";
import { inch, one, QuantityError } from "@leat/quantity";

import { astmB258 } from "./sources.ts";

/**
 * Diameter of a solid wire of the American Wire Gauge: 39 equal ratios from No. 36, 0.005 in (0.127 mm), to
 * 4/0, 0.46 in.
 *
 *     d = d36 · 92^((36 − n)/39)
 *
 * 1/0, 2/0, 3/0 and 4/0 are numbers 0, −1, −2 and −3: see {@link gaugeNumber}.
 *
 * @example
 * ```ts
 * awgDiameter({ gauge: one.of(4) }).in(millimetre).toFixed(4);
 * // => 5.1894
 * ```
 *
 * @throws OutOfValidityError a gauge below 4/0 or above 56 and `onNotice` is absent.
 */
export const awgDiameter = /* @__PURE__ */ formula(() => ({
  id: "awg-diameter",
  equation: "d = d36 · 92^((36 − n)/39)",
  inputs: {
    /** Number of the gauge; −3 for 4/0. */
    gauge: input("ratio", "n", { domain: "any" }),
  },
  output: output("length", "d"),
  constants: { d36: inch.of(0.005) },
  limits: [
    range(
      "gauge",
      { min: one.of(-3), max: one.of(56) },
      astmB258.at("range of the gauge", "secondary"),
    ),
  ],
  source: astmB258.at("definition of the gauge", "secondary"),
  body: ({ n, d36 }) => d36 * Math.pow(92, (36 - n) / 39),
}));

/**
 * The number of a gauge by its name: `"12"` is 12, `"1/0"` is 0, `"4/0"` is −3.
 *
 * @param name - Name of an AWG size.
 * @returns Its number, for {@link awgDiameter}.
 * @throws QuantityError `size` for anything else.
 */
export function gaugeNumber(name: string): number {
  const [, zeros, number] = /^(?:([1-4])\/0|([1-9]|[1-4]\d|5[0-6]))$/u.exec(name) ?? [];
  if (zeros) return 1 - Number(zeros);
  if (number) return Number(number);
  throw new QuantityError(
    "size",
    `${name.slice(0, 40)} is not an AWG size: give 56 to 1, or 1/0 to 4/0.`,
  );
}
