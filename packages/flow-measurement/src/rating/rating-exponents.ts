import { table } from "@leat/formula";
import { one } from "@leat/quantity";

import { environmentCanadaRatings } from "./sources.ts";

/**
 * Exponents that a rating usually has, by the shape of the control: the riffle, sill or reach that holds the water up.
 *
 * By theory a weir of these shapes has 3/2, 2 and 5/2, and a channel in uniform flow by Manning 5/3, 13/6 and 8/3.
 */
export const ratingExponents = /* @__PURE__ */ table(() => ({
  id: "rating-exponents",
  key: "control",
  units: { low: one, high: one },
  source: environmentCanadaRatings.at("typical exponents by shape of the control", "secondary"),
  rows: [
    { control: "rectangular", low: 1.3, high: 1.8 },
    { control: "parabolic", low: 1.7, high: 2.3 },
    { control: "triangular", low: 2.5, high: 3 },
  ],
}));
