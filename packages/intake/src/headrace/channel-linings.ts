import { table } from "@leat/formula";
import { coherentUnit, metrePerSecond } from "@leat/quantity";

import { civilWorksGuidelines } from "../sources.ts";

/**
 * Manning's number and the fastest water that a headrace of a lining bears, as a guide for small schemes prints them;
 * where it prints a range of numbers, `n` is its upper end and `nLow` its lower.
 */
export const channelLinings = /* @__PURE__ */ table(() => ({
  id: "channel-linings",
  key: "lining",
  units: {
    n: coherentUnit("coefficient"),
    nLow: coherentUnit("coefficient"),
    mostVelocity: metrePerSecond,
  },
  source: civilWorksGuidelines.at("table 4.1"),
  rows: [
    { lining: "clay with stones and sand, aged", n: 0.02, mostVelocity: 0.8 },
    { lining: "gravelly or sandy loam", n: 0.03, mostVelocity: 0.4 },
    { lining: "lined with coarse stones", n: 0.04, mostVelocity: 1 },
    { lining: "vegetated, 0.7 m deep", n: 0.05, mostVelocity: 0.8 },
    { lining: "vegetated, 0.3 m deep", n: 0.07, mostVelocity: 0.8 },
    { lining: "heavily overgrown, 0.3 m deep", n: 0.15, mostVelocity: 1 },
    { lining: "rock, smooth and uniform", n: 0.035, mostVelocity: 1.5 },
    { lining: "rock, jagged", n: 0.045, mostVelocity: 1.5 },
    { lining: "rock, very jagged", n: 0.06, mostVelocity: 1.5 },
    { lining: "stone masonry in mud mortar, or dry", n: 0.035, mostVelocity: 1 },
    { lining: "stone masonry in 1:4 cement mortar, rounded stones", n: 0.03, mostVelocity: 1.5 },
    { lining: "stone masonry in cement mortar, dressed", n: 0.02, mostVelocity: 2 },
    { lining: "plain concrete 1:3:6", n: 0.017, nLow: 0.013, mostVelocity: 1.5 },
    { lining: "plain concrete 1:2:4", n: 0.017, nLow: 0.013, mostVelocity: 2 },
    { lining: "reinforced concrete 1:1.5:3", n: 0.017, nLow: 0.013, mostVelocity: 3 },
    { lining: "cement plaster 1:3", n: 0.013, mostVelocity: 3 },
    { lining: "planed boards", n: 0.011, mostVelocity: 3 },
    { lining: "unplaned boards", n: 0.012, mostVelocity: 3 },
    { lining: "old boards", n: 0.015, mostVelocity: 3 },
    { lining: "metal", n: 0.02, mostVelocity: 3 },
  ],
}));
