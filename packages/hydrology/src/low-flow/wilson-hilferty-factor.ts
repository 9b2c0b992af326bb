import { formula, input, output, range } from "@leat/formula";
import { normalQuantile } from "@leat/numerics";
import { one } from "@leat/quantity";

import { requireInside } from "./pearson-frequency-factor.ts";
import { bulletin17b } from "./sources.ts";

/** The cube's root less 1, over the skew. */
function rootOf(z: number, skew: number): number {
  return (z - skew / 6) / 6;
}

/**
 * Frequency factor of the Pearson III distribution by the transformation of Wilson and Hilferty.
 *
 *     K = 2/G · ((1 + G·w)³ − 1) = 2·w · (3 + 3·G·w + G²·w²),   w = (z(p) − G/6) / 6
 *
 * The second form has no hole at a skew of zero. It is a check on {@link pearsonFrequencyFactor}, which is exact:
 * between skews of −1 and 1 and from 1 % to 99 % the two differ by less than 0.02.
 *
 * @throws NonPhysicalError a probability that is not above 0 and below 1.
 * @throws OutOfValidityError a skew beyond ±1, and `onNotice` is absent.
 * @example
 * ```ts
 * import { wilsonHilfertyFactor } from "@leat/hydrology";
 * import { one, percent } from "@leat/quantity";
 *
 * wilsonHilfertyFactor({ probability: percent.of(99), skew: one.of(1) }).in(one).toFixed(3); // => "3.030"
 * ```
 */
export const wilsonHilfertyFactor = /* @__PURE__ */ formula(() => ({
  id: "wilson-hilferty-factor",
  equation: "K = 2·w · (3 + 3·G·w + G²·w²)",
  inputs: {
    /** Probability of not being exceeded. */
    probability: input("ratio", "p", { domain: "fraction" }),
    /** Skew, of either sign. */
    skew: input("ratio", "G", { domain: "any" }),
  },
  output: output("ratio", "K"),
  steps: {
    w: {
      kind: "ratio",
      equation: "(z − G/6) / 6, z the standard normal quantile at p",
      of: ({ p, G }) => rootOf(normalQuantile(p), G),
    },
  },
  limits: [range("skew", { min: one.of(-1), max: one.of(1) }, bulletin17b.at("app. 3", "memory"))],
  source: bulletin17b.at("app. 3", "memory"),
  body: ({ p, G }) => {
    requireInside("wilson-hilferty-factor", p);
    const w = rootOf(normalQuantile(p), G);
    return 2 * w * (3 + 3 * G * w + G * G * w * w);
  },
}));
