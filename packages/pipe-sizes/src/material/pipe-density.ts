import { table } from "@leat/formula";
import { kilogramPerCubicMetre } from "@leat/quantity";

import { pipeMassLists } from "../sources.ts";

/**
 * Density of what pipe is made of: the least and greatest that lists of masses use or imply, and the one taken here.
 *
 * DIN 8074 works out masses of PE with 950 kg/m³; PE 100 is 960 kg/m³ today, which the weights here follow: 1 % more.
 */
export const pipeDensity = /* @__PURE__ */ table(() => ({
  id: "pipe-density",
  key: "material",
  units: {
    low: kilogramPerCubicMetre,
    typical: kilogramPerCubicMetre,
    high: kilogramPerCubicMetre,
  },
  source: pipeMassLists.at("density", "secondary"),
  rows: [
    { material: "PE4710", low: 950, typical: 960, high: 960 },
    { material: "PE3608", low: 940, typical: 955, high: 960 },
    { material: "PE100", low: 950, typical: 960, high: 960 },
    { material: "PE80", low: 940, typical: 950, high: 960 },
    { material: "PVC", low: 1380, typical: 1410, high: 1430 },
    { material: "steel", low: 7840, typical: 7850, high: 7860 },
  ],
}));

/** A material whose density is known. */
export type PipeMaterial = ReturnType<typeof pipeDensity.keys>[number];
