import { table } from "@leat/formula";
import { percent } from "@leat/quantity";

import { asmeB40, en837 } from "./sources.ts";

/** What a pressure gauge of a class may be wrong by, as a share of its span, anywhere on the scale. */
export const gaugeClasses = /* @__PURE__ */ table(() => ({
  id: "gauge-classes",
  key: "class",
  units: { limit: percent },
  source: en837.at("table 11, maximum permissible errors", "secondary"),
  rows: [
    { class: "0.1", limit: 0.1 },
    { class: "0.25", limit: 0.25 },
    { class: "0.6", limit: 0.6 },
    { class: "1", limit: 1 },
    { class: "1.6", limit: 1.6 },
    { class: "2.5", limit: 2.5 },
    { class: "4", limit: 4 },
  ],
}));

/** What a pressure gauge of a grade may be wrong by, as a share of its span, by the part of the scale. */
export const gaugeGrades = /* @__PURE__ */ table(() => ({
  id: "gauge-grades",
  key: "grade",
  units: { lowerQuarter: percent, middleHalf: percent, upperQuarter: percent },
  source: asmeB40.at("B40.1, table of accuracy grades", "memory"),
  rows: [
    { grade: "4A", lowerQuarter: 0.1, middleHalf: 0.1, upperQuarter: 0.1 },
    { grade: "3A", lowerQuarter: 0.25, middleHalf: 0.25, upperQuarter: 0.25 },
    { grade: "2A", lowerQuarter: 0.5, middleHalf: 0.5, upperQuarter: 0.5 },
    { grade: "1A", lowerQuarter: 1, middleHalf: 1, upperQuarter: 1 },
    { grade: "A", lowerQuarter: 2, middleHalf: 1, upperQuarter: 2 },
    { grade: "B", lowerQuarter: 3, middleHalf: 2, upperQuarter: 3 },
    { grade: "C", lowerQuarter: 4, middleHalf: 3, upperQuarter: 4 },
    { grade: "D", lowerQuarter: 5, middleHalf: 5, upperQuarter: 5 },
  ],
}));

/** A class of EN 837-1, such as "1.6", or a grade of ASME B40.100, such as "B". */
export type GaugeAccuracy =
  | ReturnType<typeof gaugeClasses.keys>[number]
  | ReturnType<typeof gaugeGrades.keys>[number];
