import { table } from "@leat/formula";
import { millimetre } from "@leat/quantity";

import { roughnessTables } from "../sources.ts";

/**
 * Absolute roughness of pipe walls, as the range that published tables give, with the figure that most of them
 * print; where they print a range only, the geometric middle. Tables differ, and a wall ages: friction is worked out at
 * both ends where it matters.
 */
export const roughness = /* @__PURE__ */ table(() => ({
  id: "roughness",
  key: "material",
  units: { low: millimetre, typical: millimetre, high: millimetre },
  source: roughnessTables.at("smallest and greatest of four tables", "secondary"),
  rows: [
    { material: "drawn brass or copper", low: 0.001, typical: 0.0015, high: 0.002 },
    { material: "polyethylene", low: 0.0015, typical: 0.003, high: 0.007 },
    { material: "PVC", low: 0.0015, typical: 0.003, high: 0.007 },
    { material: "glass fibre with resin", low: 0.005, typical: 0.005, high: 0.005 },
    { material: "commercial steel, new", low: 0.03, typical: 0.045, high: 0.1 },
    { material: "steel, slightly corroded", low: 0.05, typical: 0.09, high: 0.15 },
    { material: "steel, moderately corroded", low: 0.15, typical: 0.4, high: 1 },
    { material: "steel, heavily corroded", low: 0.4, typical: 1.2, high: 3.35 },
    { material: "galvanised iron", low: 0.15, typical: 0.15, high: 0.2 },
    { material: "asphalted cast iron", low: 0.12, typical: 0.12, high: 0.2 },
    { material: "cast iron, new", low: 0.25, typical: 0.26, high: 0.8 },
    { material: "wood stave", low: 0.18, typical: 0.4, high: 0.91 },
    { material: "concrete", low: 0.3, typical: 1, high: 3 },
    { material: "riveted steel", low: 0.9, typical: 2.8, high: 9 },
  ],
}));
