import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Share of the gross head that the pipe takes where the power behind it is greatest: more water through it gives less.
 *
 *     s = 1/(1 + n)
 *
 * n is the power of the flow that the loss rises with, there: n = d ln h/d ln Q. It is 2 in fully rough flow, which gives the third
 * of the textbooks, and about 1.75 to 1.8 in smooth plastic, which gives 0.36. It is a limit and no aim: pipes are chosen to lose a tenth.
 *
 * @throws NonPhysicalError an exponent of zero or less.
 * @example
 * ```ts
 * import { greatestPowerShare } from "@leat/penstock";
 * import { one } from "@leat/quantity";
 *
 * greatestPowerShare({ lossExponent: one.of(2) })["~si"].toFixed(3); // => "0.333"
 * ```
 */
export const greatestPowerShare = /* @__PURE__ */ formula(() => ({
  id: "greatest-power-share",
  equation: "s = 1/(1 + n)",
  inputs: {
    /** Power of the flow that the loss rises with. */
    lossExponent: input("ratio", "n", { domain: "positive" }),
  },
  output: output("ratio", "s"),
  source: firstPrinciples.at("greatest Q·(H − h) with h rising as Qⁿ"),
  body: ({ n }) => 1 / (1 + n),
}));
