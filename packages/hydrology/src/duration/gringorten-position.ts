import { firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { each } from "@leat/quantity";

import { shawHydrology } from "./sources.ts";

/**
 * Plotting position of a ranked value, Gringorten's: nearly unbiased for the largest values of a Gumbel distribution.
 *
 *     p = (m − 0.44) / (n + 0.12)
 *
 * Counted from the largest flow, it is the share of time that the flow is equalled or exceeded; counted from the
 * smallest, the share of time, or of years, that it is not exceeded.
 *
 * @throws NonPhysicalError a rank not above zero.
 * @throws OutOfValidityError a rank above the size or below 1.
 * @example
 * ```ts
 * import { gringortenPosition } from "@leat/hydrology";
 * import { each, one } from "@leat/quantity";
 *
 * gringortenPosition({ rank: each.of(1), size: each.of(20) }).in(one).toFixed(4); // => "0.0278"
 * ```
 */
export const gringortenPosition = /* @__PURE__ */ formula(() => ({
  id: "gringorten-position",
  equation: "p = (m − 0.44) / (n + 0.12)",
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
  source: shawHydrology.at("ch. on flood frequency", "secondary"),
  body: ({ m, n }) => (m - 0.44) / (n + 0.12),
}));
