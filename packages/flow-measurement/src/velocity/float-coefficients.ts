import { commonPractice, table } from "@leat/formula";
import { foot, one } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { epaStreamMonitoring } from "./sources.ts";

const coefficient = one;

/** Mean velocity of a reach over that of floats on its surface, by average depth; 0.80 from 20 ft on. */
export const floatCoefficientsByDepth = /* @__PURE__ */ table(() => ({
  id: "float-coefficients-by-depth",
  key: "row",
  units: { depth: foot, coefficient },
  source: usbrWaterMeasurementManual.at("ch. 13, table 13-1", "memory"),
  rows: [
    { row: "1 ft", depth: 1, coefficient: 0.66 },
    { row: "2 ft", depth: 2, coefficient: 0.68 },
    { row: "3 ft", depth: 3, coefficient: 0.7 },
    { row: "4 ft", depth: 4, coefficient: 0.72 },
    { row: "5 ft", depth: 5, coefficient: 0.74 },
    { row: "6 ft", depth: 6, coefficient: 0.76 },
    { row: "9 ft", depth: 9, coefficient: 0.77 },
    { row: "12 ft", depth: 12, coefficient: 0.78 },
    { row: "15 ft", depth: 15, coefficient: 0.79 },
    { row: "20 ft", depth: 20, coefficient: 0.8 },
  ],
}));

/** Mean velocity of a reach over that of floats on its surface, by bed: what volunteers are told to take. */
export const floatCoefficientsOfVolunteers = /* @__PURE__ */ table(() => ({
  id: "float-coefficients-of-volunteers",
  key: "bed",
  units: { coefficient },
  source: epaStreamMonitoring.at("sec. 5.1, correction factor", "memory"),
  rows: [
    { bed: "rocky", coefficient: 0.8 },
    { bed: "muddy", coefficient: 0.9 },
  ],
}));

/**
 * Mean velocity of a reach over that of floats on its surface, by bed, with how far it spreads.
 *
 * No document was found that gives a spread. The tables that give single numbers are 36 % apart: 0.66 in a foot of
 * water, 0.8 over rocks, 0.9 over mud. These ranges are drawn so that all of them lie inside.
 */
export const floatCoefficientsByBed = /* @__PURE__ */ table(() => ({
  id: "float-coefficients-by-bed",
  key: "bed",
  units: { low: coefficient, typical: coefficient, high: coefficient },
  source: commonPractice.at("floats in small streams", "practice"),
  rows: [
    { bed: "lined or planed channel", low: 0.75, typical: 0.85, high: 0.95 },
    { bed: "mud, sand or fine gravel", low: 0.66, typical: 0.8, high: 0.9 },
    { bed: "cobbles", low: 0.6, typical: 0.7, high: 0.8 },
    { bed: "boulders or shallow riffle", low: 0.4, typical: 0.55, high: 0.7 },
  ],
}));
