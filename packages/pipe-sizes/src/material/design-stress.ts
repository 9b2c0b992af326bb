import { table } from "@leat/formula";
import { coherentUnit, megapascal, poundPerSquareInch } from "@leat/quantity";

import { iso4427, ppiTr4 } from "../sources.ts";

/** Hydrostatic design stresses of PE in water, by its US designation, at 73 °F and at 140 °F. */
export const peDesignStress = /* @__PURE__ */ table(() => ({
  id: "pe-design-stress",
  key: "material",
  units: { at73F: poundPerSquareInch, at140F: poundPerSquareInch },
  source: ppiTr4.at("PE4710 and PE3608", "secondary"),
  rows: [
    { material: "PE4710", at73F: 1000, at140F: 630 },
    { material: "PE3608", at73F: 800, at140F: 400 },
  ],
}));

/** Minimum required strengths of PE at 20 °C and 50 years, and the least design coefficient for water. */
export const peRequiredStrength = /* @__PURE__ */ table(() => ({
  id: "pe-required-strength",
  key: "material",
  units: { strength: megapascal, coefficient: coherentUnit("coefficient") },
  source: iso4427.at("part 1, PE 80 and PE 100", "secondary"),
  rows: [
    { material: "PE100", strength: 10, coefficient: 1.25 },
    { material: "PE80", strength: 8, coefficient: 1.25 },
  ],
}));
