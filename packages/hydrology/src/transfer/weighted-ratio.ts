import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { particleDataGroup } from "./sources.ts";

/**
 * The flow of a site over that of a gauge: the mean of what each visit says, the sure ones counting more.
 *
 *     k = Σ(Qu/Qg/u²) / Σ(1/u²)
 *
 * Take it where visits were measured in different ways and their uncertainties are known. u is the standard uncertainty
 * of a visit as a share of its flow: were it in flow, a visit that read low by chance would also count more.
 *
 * @throws NonPhysicalError a gauge's flow or a spread that is not above zero, a site's flow below zero.
 * @throws OutOfValidityError fewer than three visits, and `onNotice` is absent.
 * @example
 * ```ts
 * const visits = [
 *   { flow: litrePerSecond.of(12), gaugedFlow: litrePerSecond.of(100), spread: percent.of(10) },
 *   { flow: litrePerSecond.of(32), gaugedFlow: litrePerSecond.of(200), spread: percent.of(5) },
 *   { flow: litrePerSecond.of(22.4), gaugedFlow: litrePerSecond.of(140), spread: percent.of(5) },
 * ];
 * weightedRatio({ visits }).in(one).toFixed(4); // => "0.1556"
 * ```
 */
export const weightedRatio = /* @__PURE__ */ formula(() => ({
  id: "weighted-ratio",
  equation: "k = Σ(Qu/Qg/u²) / Σ(1/u²)",
  inputs: {
    /** Flows measured at the site, each with the gauge's of the same day. */
    visits: list(
      {
        /** Flow measured at the site. */
        flow: input("volume flow", "Qu"),
        /** Flow at the gauge on that day. */
        gaugedFlow: input("volume flow", "Qg", { domain: "positive" }),
        /** Standard uncertainty of the ratio that belongs to this visit alone, as a share of it. */
        spread: input("ratio", "u", { domain: "positive" }),
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
  source: particleDataGroup.at("weighted mean", "secondary"),
  body: ({ visits }) => {
    let sum = 0;
    let weights = 0;
    for (const { Qu, Qg, u } of visits) {
      sum += Qu / Qg / (u * u);
      weights += 1 / (u * u);
    }
    return sum / weights;
  },
}));
