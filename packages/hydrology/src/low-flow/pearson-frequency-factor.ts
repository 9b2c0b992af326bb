import { firstPrinciples, formula, input, output, range } from "@leat/formula";
import { normalQuantile } from "@leat/numerics";
import { one } from "@leat/quantity";

import { refusal } from "../record/refusal.ts";
import { pearsonFrequencyFactorOf } from "./pearson-frequency-factor-of.ts";
import { bulletin17b } from "./sources.ts";

/** Refuses the two ends, at which a quantile is infinite. */
export function requireInside(id: string, p: number): void {
  // guard: a test asks for both ends
  if (p > 0 && p < 1) return;
  throw refusal(
    "non-physical",
    ["probability"],
    `${id}: probability = ${p} has no finite quantile. Give a probability above 0 and below 1.`,
    {
      actual: String(p),
      limit: "above 0 and below 1",
      source: firstPrinciples.at("a distribution without ends"),
    },
  );
}

/**
 * Frequency factor of the Pearson III distribution: standard deviations from the mean to the quantile.
 *
 *     K = z(p) + c(p, G)
 *
 * z is the standard normal quantile and c what the skew adds to it: the two together are 2/G·(Y·G²/4 − 1), where
 * Y is the quantile of the gamma distribution of shape 4/G² at p, or at 1 − p where the skew is negative, which
 * mirrors the distribution. Nothing is read from a table, and nothing is approximated but skews within ±0.001,
 * where two terms of an expansion are exact to nine digits.
 *
 * Tables of K are arranged by exceedance, 1 − p here.
 *
 * @throws NonPhysicalError a probability that is not above 0 and below 1.
 * @throws OutOfValidityError a skew beyond ±9, the end of the tables, and `onNotice` is absent.
 * @example
 * ```ts
 * import { pearsonFrequencyFactor } from "@leat/hydrology";
 * import { one, percent } from "@leat/quantity";
 *
 * const factor = pearsonFrequencyFactor({ probability: percent.of(99), skew: one.of(1) });
 * factor.in(one).toFixed(3); // => "3.023"
 * ```
 */
export const pearsonFrequencyFactor = /* @__PURE__ */ formula(() => ({
  id: "pearson-frequency-factor",
  equation: "K = z(p) + c(p, G)",
  inputs: {
    /** Probability of not being exceeded. */
    probability: input("ratio", "p", { domain: "fraction" }),
    /** Skew, of either sign. */
    skew: input("ratio", "G", { domain: "any" }),
  },
  output: output("ratio", "K"),
  steps: {
    z: {
      kind: "ratio",
      equation: "standard normal quantile at p",
      of: ({ p }) => normalQuantile(p),
    },
    c: {
      kind: "ratio",
      equation:
        "2/G · (Y·G²/4 − 1) − z, Y the quantile of the gamma distribution of shape 4/G² at p, at 1 − p for G < 0",
      of: ({ p, G }) => pearsonFrequencyFactorOf(p, G) - normalQuantile(p),
    },
  },
  limits: [range("skew", { min: one.of(-9), max: one.of(9) }, bulletin17b.at("app. 3", "memory"))],
  source: bulletin17b.at("app. 3", "memory"),
  body: ({ p, G }) => {
    requireInside("pearson-frequency-factor", p);
    return pearsonFrequencyFactorOf(p, G);
  },
}));
