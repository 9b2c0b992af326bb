import { firstPrinciples, formula, input, list, output } from "@leat/formula";

/**
 * Area of a cross-section from its width and depths sounded at equal steps between two banks that slope in.
 *
 *     A = W·Σd/(n + 1)
 *
 * n depths divide the width into n + 1 parts, and there is no depth at either edge. Width times the mean of the depths is
 * (n + 1)/n times as much, 20 % too much with five soundings.
 *
 * @throws NonPhysicalError a width not above zero, a depth below zero.
 * @example
 * ```ts
 * import { soundedArea } from "@leat/flow-measurement";
 * import { foot, squareFoot } from "@leat/quantity";
 *
 * const area = soundedArea({
 *   width: foot.of(8),
 *   depths: [{ depth: foot.of(0.5) }, { depth: foot.of(1) }, { depth: foot.of(0.6) }],
 * });
 * area.in(squareFoot).toFixed(2); // => "4.20"
 * ```
 */
export const soundedArea = /* @__PURE__ */ formula(() => ({
  id: "sounded-area",
  equation: "A = W·Σd/(n + 1)",
  inputs: {
    /** Width of the water, from edge to edge. */
    width: input("length", "W", { domain: "positive" }),
    /** Soundings at equal steps, the edges not among them. */
    depths: list(
      {
        /** Depth of the water. */
        depth: input("length", "d"),
      },
      "depths",
    ),
  },
  output: output("area", "A"),
  source: firstPrinciples.at("trapezoids between equal steps"),
  body: ({ W, depths }) => {
    let sum = 0;
    for (const { d } of depths) sum += d;
    return (W * sum) / (depths.length + 1);
  },
}));
