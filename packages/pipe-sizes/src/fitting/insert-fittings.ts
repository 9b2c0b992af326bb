import {
  commonPractice,
  firstPrinciples,
  formula,
  input,
  output,
  ratio,
  table,
} from "@leat/formula";
import { inch } from "@leat/quantity";

/**
 * Bores of fittings that are pushed into PE pipe sized by its inside, in inches: thick plastic ones at the low end, thin
 * metal ones at the high end. No document was found: measure the fitting, or count the low end.
 */
export const insertFittingBores = /* @__PURE__ */ table(() => ({
  id: "insert-fitting-bores",
  key: "size",
  units: { low: inch, typical: inch, high: inch },
  source: commonPractice.at("bores of insert fittings as they are sold", "practice"),
  rows: [
    { size: "1/2", low: 0.44, typical: 0.48, high: 0.52 },
    { size: "3/4", low: 0.62, typical: 0.66, high: 0.7 },
    { size: "1", low: 0.8, typical: 0.85, high: 0.9 },
    { size: "1 1/4", low: 1.08, typical: 1.15, high: 1.22 },
    { size: "1 1/2", low: 1.3, typical: 1.37, high: 1.44 },
    { size: "2", low: 1.7, typical: 1.78, high: 1.88 },
  ],
}));

/**
 * Loss coefficient of a fitting that is pushed into a pipe and narrows its bore, on the velocity head in the pipe.
 *
 *     K = (0.5·(1 − β²) + (1 − β²)²)/β⁴      β = d/D
 *
 * The water is squeezed into the fitting and spreads out behind it: a coupling counts once, an elbow or a tee adds its
 * own loss, on the velocity in the fitting. The friction within the short fitting is left out. Sharp-edged: measured
 * contraction coefficients give 5 to 12 % less, rounded edges up to a third less.
 *
 * @throws NonPhysicalError a bore of zero or less.
 * @throws OutOfValidityError a fitting that is wider than the pipe, or narrower than a third of it, and `onNotice` is absent.
 * @example
 * ```ts
 * import { insertFittingBores, insertFittingCoefficient, readPipe, boreOf } from "@leat/pipe-sizes";
 *
 * const k = insertFittingCoefficient({
 *   insideDiameter: boreOf(readPipe("1 in PE SIDR 15")),
 *   fittingBore: insertFittingBores.get("1", "typical"),
 * });
 * k.in(one).toFixed(2); // => "0.67"
 * ```
 */
export const insertFittingCoefficient = /* @__PURE__ */ formula(() => ({
  id: "insert-fitting-coefficient",
  equation: "K = (0.5·(1 - (d/D)²) + (1 - (d/D)²)²)/(d/D)^4",
  inputs: {
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Least bore of the fitting. */
    fittingBore: input("length", "d", { domain: "positive" }),
  },
  output: output("coefficient", "K"),
  limits: [
    ratio(
      "fittingBore",
      "insideDiameter",
      { min: 0.333, max: 1 },
      firstPrinciples.at("the fitting lies within the pipe, and is no orifice"),
    ),
  ],
  source: firstPrinciples.at(
    "sudden expansion (Borda and Carnot), and a contraction as Crane TP-410 counts it",
    "secondary",
  ),
  body: ({ D, d }) => {
    const area = (d * d) / (D * D);
    const narrowed = 1 - area;
    return (0.5 * narrowed + narrowed * narrowed) / (area * area);
  },
}));
