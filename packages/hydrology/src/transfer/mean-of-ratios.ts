import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { sir20105170 } from "./sources.ts";

/**
 * The flow of a site over that of a gauge: the mean of what each visit says.
 *
 *     k = Σ(Qu/Qg) / n
 *
 * Every visit has the same say, in a drought as in a flood: take it where low flows matter, and where the scatter is
 * about the same share of any flow. The USGS carries low-flow statistics to sites with some measurements by this mean
 * (SIR 2010–5170). For volumes see {@link ratioOfSums}.
 *
 * @throws NonPhysicalError a gauge's flow that is not above zero, a site's below zero.
 * @throws OutOfValidityError fewer than three visits, and `onNotice` is absent.
 * @example
 * ```ts
 * const visits = [
 *   { flow: litrePerSecond.of(12), gaugedFlow: litrePerSecond.of(100) },
 *   { flow: litrePerSecond.of(30), gaugedFlow: litrePerSecond.of(200) },
 *   { flow: litrePerSecond.of(21), gaugedFlow: litrePerSecond.of(140) },
 * ];
 * meanOfRatios({ visits }).in(one).toFixed(2); // => "0.14"
 * ```
 * @see U.S. Geological Survey, SIR 2010–5170, abstract
 */
export const meanOfRatios = /* @__PURE__ */ formula(() => ({
  id: "mean-of-ratios",
  equation: "k = Σ(Qu/Qg) / n",
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
  source: sir20105170.at("abstract: the average of the ratios"),
  body: ({ visits }) => {
    let sum = 0;
    for (const { Qu, Qg } of visits) sum += Qu / Qg;
    return sum / visits.length;
  },
}));
