import { table } from "@leat/formula";
import { one } from "@leat/quantity";

import { astmA53, awwaM55, iso1452, iso4427, machinerysHandbook } from "../sources.ts";

/** Factors on the pressure rating of PE pipe by US practice: up to and at each temperature. Above 100 °F ask the maker. */
export const peTemperatureFactors = /* @__PURE__ */ table(() => ({
  id: "pe-temperature-factors",
  key: "upTo",
  units: { factor: one },
  source: awwaM55.at("Table 4-6"),
  rows: [
    { upTo: "80 °F", factor: 1 },
    { upTo: "90 °F", factor: 0.9 },
    { upTo: "100 °F", factor: 0.8 },
  ],
}));

/** Factors on the nominal pressure of PE pipe by ISO 4427: at each temperature, with straight lines between. */
export const peIsoTemperatureFactors = /* @__PURE__ */ table(() => ({
  id: "pe-iso-temperature-factors",
  key: "at",
  units: { factor: one },
  source: iso4427.at("part 1, Annex A", "memory"),
  rows: [
    { at: "20 °C", factor: 1 },
    { at: "30 °C", factor: 0.87 },
    { at: "40 °C", factor: 0.74 },
  ],
}));

/**
 * Factors on the pressure rating of PVC pipe, at each temperature.
 *
 * A maker prints 0.51 at 110 °F and 0.31 at 130 °F: the handbook is followed, which is the lower by 2 and 3 %.
 */
export const pvcTemperatureFactors = /* @__PURE__ */ table(() => ({
  id: "pvc-temperature-factors",
  key: "at",
  units: { factor: one },
  source: machinerysHandbook.at("Table 14", "secondary"),
  rows: [
    { at: "73 °F", factor: 1 },
    { at: "80 °F", factor: 0.88 },
    { at: "90 °F", factor: 0.75 },
    { at: "100 °F", factor: 0.62 },
    { at: "110 °F", factor: 0.5 },
    { at: "120 °F", factor: 0.4 },
    { at: "130 °F", factor: 0.3 },
    { at: "140 °F", factor: 0.22 },
  ],
}));

/**
 * Factors on the nominal pressure of metric PVC pipe: up to and at each temperature.
 *
 * Suppliers in warm countries take off 2 % for each degree above 20 °C instead: 0.9 at 25 °C, 0.7 at 35 °C, 0.5 at 45 °C.
 */
export const pvcIsoTemperatureFactors = /* @__PURE__ */ table(() => ({
  id: "pvc-iso-temperature-factors",
  key: "upTo",
  units: { factor: one },
  source: iso1452.at("Figure A.1, in steps", "memory"),
  rows: [
    { upTo: "25 °C", factor: 1 },
    { upTo: "35 °C", factor: 0.8 },
    { upTo: "45 °C", factor: 0.63 },
  ],
}));

/** Factor on the pressure of steel pipe: cold and hot water leave it as it is. */
export const steelTemperatureFactors = /* @__PURE__ */ table(() => ({
  id: "steel-temperature-factors",
  key: "upTo",
  units: { factor: one },
  source: astmA53.at("carbon steel in water up to its boiling", "memory"),
  rows: [{ upTo: "100 °C", factor: 1 }],
}));
