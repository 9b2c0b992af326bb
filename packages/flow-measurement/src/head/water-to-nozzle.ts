import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Gross head of a fall that was measured between two marks: from the water of the intake to the nozzle, and not from
 * pipe end to pipe end.
 *
 *     H = h + a − b
 *
 * @throws NonPhysicalError a fall that is negative.
 * @example
 * ```ts
 * const head = waterToNozzleHead({
 *   fall: foot.of(112.4),
 *   waterAboveUpperMark: inch.of(14),
 *   nozzleAboveLowerMark: inch.of(30),
 * });
 * format(head, foot, 5); // => "111.07 ft"
 * ```
 */
export const waterToNozzleHead = /* @__PURE__ */ formula(() => ({
  id: "water-to-nozzle-head",
  equation: "H = h + a − b",
  inputs: {
    /** Height between the marks. */
    fall: input(["gross head", "length"], "h"),
    /** Water level of the intake above the upper mark; negative below. */
    waterAboveUpperMark: input("length", "a", { domain: "any" }),
    /** Centre line of the nozzle above the lower mark; negative below. */
    nozzleAboveLowerMark: input("length", "b", { domain: "any" }),
  },
  output: output("gross head", "H"),
  source: firstPrinciples.at("heights over one datum"),
  body: ({ h, a, b }) => h + a - b,
}));
