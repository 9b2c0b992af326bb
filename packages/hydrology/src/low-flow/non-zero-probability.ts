import { formula, input, output } from "@leat/formula";

import { refusal } from "../record/refusal.ts";
import { bulletin17b } from "./sources.ts";

/**
 * Probability among the years that did not run dry: the conditional probability adjustment.
 *
 *     F = (p − p0) / (1 − p0)
 *
 * Years without flow have no logarithm. The distribution is fitted to the others, and a flow that is not exceeded in
 * a share p of all years is, among the others, not exceeded in a share F of them. Where p is p0 or less, the flow
 * is zero and there is nothing to look up.
 *
 * @throws NonPhysicalError a share of dry years not below the probability.
 * @example
 * ```ts
 * import { nonZeroProbability } from "@leat/hydrology";
 * import { one, percent } from "@leat/quantity";
 *
 * nonZeroProbability({ probability: percent.of(10), zeroShare: percent.of(4) }).in(one).toFixed(4); // => "0.0625"
 * ```
 */
export const nonZeroProbability = /* @__PURE__ */ formula(() => ({
  id: "non-zero-probability",
  equation: "F = (p − p0) / (1 − p0)",
  inputs: {
    /** Probability of not being exceeded, in all years. */
    probability: input("ratio", "p", { domain: "fraction" }),
    /** Share of the years that ran dry. */
    zeroShare: input("ratio", "p0", { domain: "fraction" }),
  },
  output: output("ratio", "F"),
  source: bulletin17b.at("app. 5", "memory"),
  body: ({ p, p0 }) => {
    if (!(p0 < p)) {
      throw refusal(
        "non-physical",
        ["zeroShare"],
        `non-zero-probability: zeroShare = ${p0} is not below probability = ${p}: so many years run dry that the flow is zero. Take zero.`,
        { actual: String(p0), limit: `below ${p}` },
      );
    }
    return (p - p0) / (1 - p0);
  },
}));
