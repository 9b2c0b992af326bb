import { bound, firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * How long a forebay lasts when less comes in than the pipe draws.
 *
 *     t = A·Δy/(Q − Qi)
 *
 * Δy counts down to the least depth that the pipe's mouth needs over it, not to its top: from there on it draws air.
 *
 * @throws NonPhysicalError a negative flow, area or range.
 * @throws OutOfValidityError as much or more comes in, so that it never empties, and `onNotice` is absent.
 * @example
 * ```ts
 * import { forebayReserve } from "@leat/intake";
 * import { format, litrePerSecond, millimetre, minute, squareMetre } from "@leat/quantity";
 *
 * const time = forebayReserve({
 *   waterArea: squareMetre.of(4),
 *   usableDepth: millimetre.of(300),
 *   flow: litrePerSecond.of(12),
 *   inflow: litrePerSecond.of(4),
 * });
 * format(time, minute, 2); // => "2.5 min"
 * ```
 */
export const forebayReserve = /* @__PURE__ */ formula(() => ({
  id: "forebay-reserve",
  equation: "t = A·Δy/(Q - Qi)",
  inputs: {
    /** Area of the water in the forebay. */
    waterArea: input("area", "A"),
    /** From the working level down to the least that the pipe's mouth needs. */
    usableDepth: input("length", "Δy"),
    /** Flow of the pipe. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** What still comes in. */
    inflow: input("volume flow", "Qi"),
  },
  output: output("time", "t"),
  limits: [
    bound(
      "inflow",
      "inflow/flow",
      ({ Q, Qi }: { Q: number; Qi: number }) => Qi / Q,
      { max: 0.999999 },
      firstPrinciples.at("a forebay that empties"),
    ),
  ],
  source: firstPrinciples.at("continuity"),
  body: ({ A, Δy, Q, Qi }) => (A * Δy) / (Q - Qi),
}));
