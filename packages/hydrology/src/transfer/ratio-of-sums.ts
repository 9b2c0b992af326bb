import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { cochran } from "./sources.ts";

/**
 * The flow of a site over that of a gauge: all that was measured at the site over all that the gauge had on
 * the same days.
 *
 *     k = ΣQu / ΣQg
 *
 * A visit counts by its flow, so the answer is right for volumes: take it where the site's yield matters. It is the best
 * straight line through zero where the scatter (as a variance) grows with the flow (Cochran, Sampling Techniques, ch. 6);
 * where it grows with the square of the flow, {@link meanOfRatios} is, and one flood can rule the sum.
 *
 * @throws NonPhysicalError a gauge's flow that is not above zero, a site's below zero.
 * @throws OutOfValidityError fewer than three visits, and `onNotice` is absent.
 * @example
 * ```ts
 * const visits = [
 *   { flow: litrePerSecond.of(12), gaugedFlow: litrePerSecond.of(100) },
 *   { flow: litrePerSecond.of(30), gaugedFlow: litrePerSecond.of(210) },
 *   { flow: litrePerSecond.of(21), gaugedFlow: litrePerSecond.of(140) },
 * ];
 * ratioOfSums({ visits }).in(one).toFixed(2); // => "0.14"
 * ```
 */
export const ratioOfSums = /* @__PURE__ */ formula(() => ({
  id: "ratio-of-sums",
  equation: "k = ΣQu / ΣQg",
  inputs: {
    /** Flows measured at the site, each with the gauge's of the same day. */
    visits: list(
      {
        /** Flow measured at the site. */
        flow: input("volume flow", "Qu"),
        /** Flow at the gauge on that day. */
        gaugedFlow: input("volume flow", "Qg", { domain: "positive" }),
      },
      "visits",
    ),
  },
  output: output("ratio", "k"),
  limits: [
    bound(
      "visits",
      "number of visits",
      ({ visits }: { visits: readonly unknown[] }) => visits.length,
      { min: 3 },
      commonPractice.at("three visits or more", "practice"),
    ),
  ],
  source: cochran.at("ch. 6, ratio estimators", "memory"),
  body: ({ visits }) => {
    let site = 0;
    let gauge = 0;
    for (const { Qu, Qg } of visits) {
      site += Qu;
      gauge += Qg;
    }
    return site / gauge;
  },
}));
