import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { astmSidrPipe, awwaM55, ppiTr4 } from "../sources.ts";

/**
 * Pressure that a pipe carries at a hoop stress, by the ratio of its inside to its wall, on plain numbers in coherent units.
 *
 * @param stress - Hoop stress that is allowed.
 * @param insideRatio - Inside diameter over least wall.
 * @returns The pressure.
 */
export function insideHoopPressureOf(stress: number, insideRatio: number): number {
  return (2 * stress) / (insideRatio + 1);
}

/**
 * Pressure rating of PE pipe that is sized by its inside, by US practice.
 *
 *     P = 2·HDS·F/(SIDR + 1)
 *
 * For water, without surge. The name of the same pipe depends on its material: SIDR 15 is sold at 125 psi in PE4710 and
 * at 100 psi in PE3608 and its forerunners.
 *
 * @throws NonPhysicalError a negative stress or factor, a ratio of zero or less.
 * @throws OutOfValidityError a ratio that is not made, a factor above 1, and `onNotice` is absent.
 * @example
 * ```ts
 * import { peSidrPressureRating } from "@leat/pipe-sizes";
 * import { one, poundPerSquareInch } from "@leat/quantity";
 *
 * const p = peSidrPressureRating({
 *   designStress: poundPerSquareInch.of(1000),
 *   insideDimensionRatio: one.of(15),
 * });
 * p.in(poundPerSquareInch).toFixed(0); // => "125"
 * ```
 */
export const peSidrPressureRating = /* @__PURE__ */ formula(() => ({
  id: "pe-sidr-pressure-rating",
  equation: "P = 2·HDS·F/(SIDR + 1)",
  inputs: {
    /** Hydrostatic design stress of the material at 73 °F. */
    designStress: input("pressure", "HDS"),
    /** Inside diameter over least wall, as the pipe is called. */
    insideDimensionRatio: input("ratio", "SIDR", { domain: "positive" }),
    /** Factor for warmer water. */
    temperatureFactor: input("ratio", "F", {
      default: one.of(1),
      because: awwaM55.at("Table 4-6, up to 80 °F"),
    }),
  },
  output: output("pressure", "P"),
  limits: [
    range(
      "insideDimensionRatio",
      { min: one.of(5.3), max: one.of(19) },
      astmSidrPipe.at("standard inside dimension ratios", "secondary"),
    ),
    range(
      "temperatureFactor",
      { max: one.of(1) },
      ppiTr4.at("design stresses are listed at 73 °F", "secondary"),
    ),
  ],
  source: astmSidrPipe.at("appendix, pressure ratings", "memory"),
  body: ({ HDS, F, SIDR }) => insideHoopPressureOf(HDS * F, SIDR),
}));
