import { firstPrinciples, formula, input, output } from "@leat/formula";
import { year } from "@leat/quantity";

import { refusal } from "../record/refusal.ts";

/**
 * Mean time between years in which something happens that has a probability p in each.
 *
 *     T = yr / p
 *
 * A low flow of ten years is not exceeded in one year of ten on average, never on schedule: within any ten years it
 * happens with a probability of 1 − 0.9¹⁰, two in three.
 *
 * @throws NonPhysicalError a probability of zero, or not a fraction.
 * @example
 * ```ts
 * import { recurrenceInterval } from "@leat/hydrology";
 * import { percent, year } from "@leat/quantity";
 *
 * recurrenceInterval({ probability: percent.of(10) }).in(year).toFixed(1); // => "10.0"
 * ```
 */
export const recurrenceInterval = /* @__PURE__ */ formula(() => ({
  id: "recurrence-interval",
  equation: "T = yr / p",
  inputs: {
    /** Probability in each year. */
    probability: input("ratio", "p", { domain: "fraction" }),
  },
  output: output("time", "T"),
  constants: { yr: year.of(1) },
  source: firstPrinciples.at("mean of a geometric distribution"),
  body: ({ p, yr }) => {
    if (!(p > 0)) {
      throw refusal(
        "non-physical",
        ["probability"],
        `recurrence-interval: probability = ${p} never happens. Give a probability above zero.`,
        { actual: String(p), limit: "above 0" },
      );
    }
    return yr / p;
  },
}));
