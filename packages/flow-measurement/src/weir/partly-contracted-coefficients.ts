import { table } from "@leat/formula";
import { unit } from "@leat/quantity";

import { kulinAndCompton } from "./sources.ts";

/** An empirical factor, as the inputs of this package take it. */
const coefficient = /* @__PURE__ */ unit("coefficient", "1", 1);

/**
 * Effective coefficient of a 90° V-notch that bed and sides are near to: rows by head over height of the vertex
 * (h/P), columns by that height over width of the channel (P/B).
 *
 * The source draws curves, one for each P/B; these are points of a published digitisation of them, to 0.0005.
 * A curve ends where the head is 0.4 of the channel's width or 1.2 of the height; its last point here may lie up to
 * 0.05 of h/P beyond the drawn end. The Japanese standard's formula for the same notch (JIS B 8302, which
 * knows the width and the depth of the channel) gives the same flows within 0.6 %.
 */
export const partlyContractedCoefficients = /* @__PURE__ */ table(() => ({
  id: "partly-contracted-coefficients",
  key: "relativeHead",
  units: {
    "0.1": coefficient,
    "0.2": coefficient,
    "0.3": coefficient,
    "0.4": coefficient,
    "0.6": coefficient,
    "0.8": coefficient,
    "1.0": coefficient,
  },
  source: kulinAndCompton.at("fig. 4-5", "secondary"),
  // oxfmt-ignore
  rows: [
    { relativeHead: "0.1", "0.1": 0.578, "0.2": 0.578, "0.3": 0.578, "0.4": 0.578, "0.6": 0.578, "0.8": 0.578, "1.0": 0.578 },
    { relativeHead: "0.2", "0.1": 0.5785, "0.2": 0.5785, "0.3": 0.5785, "0.4": 0.5785, "0.6": 0.5785, "0.8": 0.5785, "1.0": 0.5785 },
    { relativeHead: "0.3", "0.1": 0.579, "0.2": 0.579, "0.3": 0.579, "0.4": 0.579, "0.6": 0.579, "0.8": 0.5795, "1.0": 0.5815 },
    { relativeHead: "0.4", "0.1": 0.579, "0.2": 0.579, "0.3": 0.579, "0.4": 0.579, "0.6": 0.5805, "0.8": 0.5845, "1.0": 0.59 },
    { relativeHead: "0.5", "0.1": 0.579, "0.2": 0.579, "0.3": 0.579, "0.4": 0.579, "0.6": 0.584, "0.8": 0.5925, "1.0": undefined },
    { relativeHead: "0.6", "0.1": 0.5785, "0.2": 0.5785, "0.3": 0.5795, "0.4": 0.581, "0.6": 0.5895, "0.8": undefined, "1.0": undefined },
    { relativeHead: "0.7", "0.1": 0.578, "0.2": 0.5785, "0.3": 0.5805, "0.4": 0.5845, "0.6": 0.5965, "0.8": undefined, "1.0": undefined },
    { relativeHead: "0.8", "0.1": 0.5775, "0.2": 0.5785, "0.3": 0.5825, "0.4": 0.5885, "0.6": undefined, "0.8": undefined, "1.0": undefined },
    { relativeHead: "0.9", "0.1": 0.5775, "0.2": 0.579, "0.3": 0.585, "0.4": 0.5935, "0.6": undefined, "0.8": undefined, "1.0": undefined },
    { relativeHead: "1.0", "0.1": 0.577, "0.2": 0.5805, "0.3": 0.5875, "0.4": 0.5985, "0.6": undefined, "0.8": undefined, "1.0": undefined },
    { relativeHead: "1.1", "0.1": 0.5765, "0.2": 0.5815, "0.3": 0.5905, "0.4": undefined, "0.6": undefined, "0.8": undefined, "1.0": undefined },
    { relativeHead: "1.2", "0.1": 0.5765, "0.2": 0.583, "0.3": 0.594, "0.4": undefined, "0.6": undefined, "0.8": undefined, "1.0": undefined },
  ],
}));
