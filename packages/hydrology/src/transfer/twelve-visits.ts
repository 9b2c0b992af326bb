import { table } from "@leat/formula";
import { percent } from "@leat/quantity";

import { twelveVisitsTrial } from "./sources.ts";

/**
 * How far off the flows of the months are that were made of one year of monthly visits: root mean squares of the
 * logarithm, of all months together (`year`: a wet or a dry one) and of a month beside that.
 *
 * A visit seldom meets a flood, so that such a pattern is also low, on average by 11 % of the mean flow on the first
 * stream and by 3 % on the second. Two streams are no law: a stream that is flashier than the first is worse.
 */
export const twelveVisitSpread = /* @__PURE__ */ table(() => ({
  id: "twelve-visit-spread",
  key: "stream",
  units: { year: percent, month: percent },
  source: twelveVisitsTrial.at("test/hydrology/transfer/twelve-visits.test.ts"),
  rows: [
    { stream: "rain and storms, flat country", year: 49, month: 79 },
    { stream: "snow melt, steep creek", year: 15, month: 31 },
  ],
}));
