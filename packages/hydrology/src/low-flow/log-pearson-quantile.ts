import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { pearsonFrequencyFactorOf } from "./pearson-frequency-factor-of.ts";
import { requireInside } from "./pearson-frequency-factor.ts";
import { bulletin17b } from "./sources.ts";

/**
 * Quantile of a log-Pearson III distribution of flows.
 *
 *     Q = Qg · 10^(S · K(p, G))
 *
 * Qg is 10 to the mean of the logarithms, S and G the standard deviation and the skew of the logarithms to base 10
 * ({@link logMoments}), K the frequency factor ({@link pearsonFrequencyFactor}).
 *
 * @throws NonPhysicalError a probability that is not above 0 and below 1; a geometric mean not above zero.
 * @throws OutOfValidityError a skew beyond ±9, and `onNotice` is absent.
 * @example
 * ```ts
 * import { logPearsonQuantile } from "@leat/hydrology";
 * import { litrePerSecond, one, percent } from "@leat/quantity";
 *
 * const flow = logPearsonQuantile({
 *   geometricMean: litrePerSecond.of(20),
 *   logDeviation: one.of(0.2),
 *   skew: one.of(-0.3),
 *   probability: percent.of(10),
 * });
 * flow.in(litrePerSecond).toFixed(2); // => "10.94"
 * ```
 */
export const logPearsonQuantile = /* @__PURE__ */ formula(() => ({
  id: "log-pearson-quantile",
  equation: "Q = Qg · 10^(S · K(p, G))",
  inputs: {
    /** Geometric mean of the flows. */
    geometricMean: input("volume flow", "Qg", { domain: "positive" }),
    /** Standard deviation of their logarithms to base 10. */
    logDeviation: input("ratio", "S"),
    /** Skew of their logarithms. */
    skew: input("ratio", "G", { domain: "any" }),
    /** Probability of not being exceeded. */
    probability: input("ratio", "p", { domain: "fraction" }),
  },
  output: output("volume flow", "Q"),
  steps: {
    K: {
      kind: "ratio",
      equation: "frequency factor of the Pearson III distribution at p and G",
      of: ({ p, G }) => pearsonFrequencyFactorOf(p, G),
    },
  },
  limits: [range("skew", { min: one.of(-9), max: one.of(9) }, bulletin17b.at("app. 3", "memory"))],
  source: bulletin17b.at("eq. 1", "memory"),
  body: ({ Qg, S, G, p }) => {
    requireInside("log-pearson-quantile", p);
    return Qg * 10 ** (S * pearsonFrequencyFactorOf(p, G));
  },
}));
