import { formula, input, output, range } from "@leat/formula";
import { coherentUnit, one } from "@leat/quantity";

import { iso4427 } from "../sources.ts";
import { hoopPressureOf } from "./pe-pressure-rating.ts";

/**
 * Pressure that PE pipe carries for 50 years at 20 °C, by ISO 4427: in bar 20·σ/(SDR − 1) with σ in MPa.
 *
 *     P = 2·σ/(SDR − 1)      σ = MRS/C
 *
 * Nominal pressures are these, rounded to the steps of the standard: 12.7 bar is sold as PN 12.5, 6.4 bar as PN 6.
 *
 * @throws NonPhysicalError a negative strength, a coefficient or dimension ratio of zero or less.
 * @throws OutOfValidityError a design coefficient below 1.25, a dimension ratio that is not made, and `onNotice` is absent.
 */
export const isoPressureRating = /* @__PURE__ */ formula(() => ({
  id: "iso-pressure-rating",
  equation: "P = 2·MRS/C/(SDR - 1)",
  inputs: {
    /** Minimum required strength of the material: 10 MPa for PE 100, 8 MPa for PE 80. */
    requiredStrength: input("pressure", "MRS"),
    /** Outside diameter over least wall, as the series is called. */
    dimensionRatio: input("ratio", "SDR", { domain: "positive" }),
    /** Overall design coefficient. */
    designCoefficient: input("coefficient", "C", {
      domain: "positive",
      default: coherentUnit("coefficient").of(1.25),
      because: iso4427.at("part 1, least coefficient for water", "secondary"),
    }),
  },
  output: output("pressure", "P"),
  limits: [
    range(
      "designCoefficient",
      { min: coherentUnit("coefficient").of(1.25) },
      iso4427.at("part 1, least coefficient for water", "secondary"),
    ),
    range(
      "dimensionRatio",
      { min: one.of(6), max: one.of(41) },
      iso4427.at("part 2, Table 2", "secondary"),
    ),
  ],
  source: iso4427.at("part 2, PN by SDR", "secondary"),
  body: ({ MRS, C, SDR }) => hoopPressureOf(MRS / C, SDR),
}));
