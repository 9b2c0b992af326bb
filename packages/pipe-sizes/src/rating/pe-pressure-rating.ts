import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { astmPePipe, awwaM55, ppiTr4 } from "../sources.ts";

/**
 * Pressure that a thin-walled pipe carries at a hoop stress, on plain numbers in coherent units.
 *
 * @param stress - Hoop stress that is allowed.
 * @param dimensionRatio - Outside diameter over least wall.
 * @returns The pressure.
 */
export function hoopPressureOf(stress: number, dimensionRatio: number): number {
  return (2 * stress) / (dimensionRatio - 1);
}

/**
 * Pressure rating of PE pipe whose outside diameter is controlled, by US practice.
 *
 *     P = 2·HDS·F/(DR − 1)
 *
 * For water, without surge. Fittings and joints may carry less.
 *
 * @throws NonPhysicalError a negative stress or factor, a dimension ratio of zero or less.
 * @throws OutOfValidityError a dimension ratio that is not made, a factor above 1, and `onNotice` is absent.
 * @example
 * ```ts
 * import { pePressureRating } from "@leat/pipe-sizes";
 * import { one, poundPerSquareInch } from "@leat/quantity";
 *
 * const p = pePressureRating({ designStress: poundPerSquareInch.of(1000), dimensionRatio: one.of(11) });
 * p.in(poundPerSquareInch).toFixed(0); // => "200"
 * ```
 */
export const pePressureRating = /* @__PURE__ */ formula(() => ({
  id: "pe-pressure-rating",
  equation: "P = 2·HDS·F/(DR - 1)",
  inputs: {
    /** Hydrostatic design stress of the material at 73 °F. */
    designStress: input("pressure", "HDS"),
    /** Outside diameter over least wall. */
    dimensionRatio: input("ratio", "DR", { domain: "positive" }),
    /** Factor for warmer water. */
    temperatureFactor: input("ratio", "F", {
      default: one.of(1),
      because: awwaM55.at("Table 4-6, up to 80 °F"),
    }),
  },
  output: output("pressure", "P"),
  limits: [
    range("dimensionRatio", { min: one.of(7), max: one.of(32.5) }, awwaM55.at("Table 4-7")),
    range(
      "temperatureFactor",
      { max: one.of(1) },
      ppiTr4.at("design stresses are listed at 73 °F", "secondary"),
    ),
  ],
  source: astmPePipe.at("pressure rating", "secondary"),
  body: ({ HDS, F, DR }) => hoopPressureOf(HDS * F, DR),
}));
