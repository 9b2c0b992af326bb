import { table } from "@leat/formula";
import { unit } from "@leat/quantity";

import { asmeB319, expansionTables, machinerysHandbook } from "../sources.ts";

/**
 * Thermal expansion of plastic pipe, in millionths per degree Fahrenheit, by the stress designations of the table's time:
 * PE 3406 stands for high density PE, PVC 1120 for the PVC of pressure pipe.
 *
 * Makers of PE 4710 and PE 100 state 72 to 90 where the table has 60 for PE 3406: pipe that lies free moves by up to half
 * as much again as this table says.
 */
export const plasticExpansion = /* @__PURE__ */ table(() => ({
  id: "plastic-expansion",
  key: "plastic",
  units: { coefficient: unit("temperature coefficient", "10⁻⁶/°F", 9, 5_000_000) },
  source: asmeB319.at("Table 919.3.1", "secondary"),
  rows: [
    { plastic: "PVC 1120", coefficient: 30 },
    { plastic: "PE 2306", coefficient: 80 },
    { plastic: "PE 3306", coefficient: 70 },
    { plastic: "PE 3406", coefficient: 60 },
  ],
}));

/** Thermal expansion of metal pipe, in millionths per kelvin. */
export const metalExpansion = /* @__PURE__ */ table(() => ({
  id: "metal-expansion",
  key: "metal",
  units: { coefficient: unit("temperature coefficient", "10⁻⁶/K", 1, 1_000_000) },
  source: machinerysHandbook.at("Table 15", "secondary"),
  rows: [
    { metal: "carbon steel", coefficient: 11.7 },
    { metal: "copper", coefficient: 16.8 },
    { metal: "stainless steel", coefficient: 17.8 },
  ],
}));

/**
 * Thermal expansion to plan with, as a range: the least and greatest that tables and makers state.
 */
export const pipeExpansion = /* @__PURE__ */ table(() => ({
  id: "pipe-expansion",
  key: "material",
  units: {
    low: unit("temperature coefficient", "10⁻⁶/K", 1, 1_000_000),
    typical: unit("temperature coefficient", "10⁻⁶/K", 1, 1_000_000),
    high: unit("temperature coefficient", "10⁻⁶/K", 1, 1_000_000),
  },
  source: expansionTables.at("PE, PVC, steel", "secondary"),
  rows: [
    { material: "PE", low: 108, typical: 144, high: 162 },
    { material: "PVC", low: 54, typical: 54, high: 60 },
    { material: "steel", low: 11.4, typical: 11.7, high: 12 },
  ],
}));
