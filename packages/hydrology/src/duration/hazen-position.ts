import { firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { each } from "@leat/quantity";

import { cunnaneReview } from "./sources.ts";

/**
 * Plotting position of a ranked value, Hazen's: the middle of its share.
 *
 *     p = (m − 0.5) / n
 *
 * Counted from the largest flow, it is the share of time that the flow is equalled or exceeded; counted from the
 * smallest, the share of time, or of years, that it is not exceeded.
 *
 * @throws NonPhysicalError a rank not above zero.
 * @throws OutOfValidityError a rank above the size or below 1.
 * @example
 * ```ts
 * import { hazenPosition } from "@leat/hydrology";
 * import { each, one } from "@leat/quantity";
 *
 * hazenPosition({ rank: each.of(1), size: each.of(20) }).in(one).toFixed(4); // => "0.0250"
 * ```
 */
export const hazenPosition = /* @__PURE__ */ formula(() => ({
  id: "hazen-position",
  equation: "p = (m − 0.5) / n",
  inputs: {
    /** Place in the order of size, from 1. */
    rank: input("count", "m", { domain: "positive" }),
    /** How many values there are. */
    size: input("count", "n", { domain: "positive" }),
  },
  output: output("ratio", "p"),
  limits: [
    range("rank", { min: each.of(1) }, firstPrinciples.at("ranks are counted from 1")),
    ratio("rank", "size", { max: 1 }, firstPrinciples.at("the last rank is the size")),
  ],
  source: cunnaneReview.at("the formula of Hazen", "memory"),
  body: ({ m, n }) => (m - 0.5) / n,
}));
