import { table } from "@leat/formula";
import { coherentUnit } from "@leat/quantity";

import { kirschmer } from "../sources.ts";

/** Shape factors β of the bars of a rack, for {@link barRackLoss}: the blunter the bar, the more it loses. */
export const barShapes = /* @__PURE__ */ table(() => ({
  id: "bar-shapes",
  key: "shape",
  units: { factor: coherentUnit("coefficient") },
  source: kirschmer.at("shape factors, as the handbooks repeat them", "memory"),
  rows: [
    { shape: "rectangular", factor: 2.42 },
    { shape: "rectangular, upstream edge half round", factor: 1.83 },
    { shape: "rectangular, both edges half round", factor: 1.67 },
    { shape: "round", factor: 1.79 },
    { shape: "streamlined", factor: 0.76 },
  ],
}));
