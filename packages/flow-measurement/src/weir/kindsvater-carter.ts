import { bound, firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { foot, metre, millimetre } from "@leat/quantity";

import { blevins, iso1438, usbrWaterMeasurementManual } from "../sources.ts";
import { between } from "./between.ts";
import {
  kindsvaterCarterCoefficients,
  kindsvaterCarterWidthCorrection,
  rootFootPerSecond,
} from "./kindsvater-carter-coefficients.ts";

/**
 * Discharge over a thin-plate rectangular notch, of any width from a slot to the whole channel
 * (Kindsvater–Carter).
 *
 *     Q = Ce · (b + kb) · (h + kh)^(3/2),   Ce = C1·h/P + C2
 *
 * Free flow only: the tail water stays 0.2 ft (6 cm) or more below the crest. The crest's height over the
 * bed stands for the approach velocity, which is not added to the head.
 *
 * C1 and C2 are the manual's, straight lines between its printed width ratios. The standard's
 * 2/3·√(2·g)·(α + β·h/P) differs by less than 0.4 % at each of them and knows gravity; it is followed only
 * for the point at ratio 0, where the manual's table has none (0.587 − 0.0023·h/P, from memory, to be
 * confirmed; 1 % at most at h/P = 1 against drawing the line of 0.2 and 0.4 on). kb is drawn straight
 * between six read points: it reads up to 2 mm low between 0.8 and 1, which is 0.7 % on a 1 ft notch. Against
 * printed tables of `francisContractedDischarge` it is within 3 %, low for wide shallow sheets and high for
 * narrow deep ones.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { kindsvaterCarterDischarge } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, foot } from "@leat/quantity";
 *
 * const q = kindsvaterCarterDischarge({
 *   head: foot.of(0.5),
 *   notchWidth: foot.of(2),
 *   approachWidth: foot.of(2),
 *   crestHeight: foot.of(1),
 * });
 * q.in(cubicFootPerSecond).toFixed(2); // => "2.44"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 7, eqs 7-1 and 7-2
 */
export const kindsvaterCarterDischarge = /* @__PURE__ */ formula(() => {
  const lines = kindsvaterCarterCoefficients.definition.rows;
  // At ratio 0 the standard's coefficients, in the manual's form: 2/3·√(2·g) = 5.3479 √ft/s.
  const ratios = [0, ...lines.map((row) => Number(row.widthRatio))];
  const slopes = [-0.0123, ...lines.map((row) => row.slope)];
  const intercepts = [3.139, ...lines.map((row) => row.intercept)];
  const widths = kindsvaterCarterWidthCorrection.definition.rows;
  const widthRatios = widths.map((row) => Number(row.widthRatio));
  const corrections = widths.map((row) => row.correction);
  const coefficient = (x: number, relativeHead: number): number =>
    between(ratios, slopes, x) * relativeHead + between(ratios, intercepts, x);
  const widthCorrection = (x: number): number => between(widthRatios, corrections, x);
  return {
    id: "kindsvater-carter-discharge",
    equation: "Q = Ce · (b + kb) · (h + kh)^(3/2)",
    inputs: {
      /** Level above the crest, measured upstream of the drawdown: four heads or more from the plate. */
      head: input("length", "h"),
      /** Width of the notch. */
      notchWidth: input("length", "b", { domain: "positive" }),
      /** Crest above the bed of the approach channel. */
      crestHeight: input("length", "P", { domain: "positive" }),
      /** Width of the approach channel. */
      approachWidth: input("length", "B", { domain: "positive" }),
    },
    output: output("volume flow", "Q"),
    constants: { C: rootFootPerSecond.of(1), kh: foot.of(0.003), mm: millimetre.of(1) },
    steps: {
      Ce: {
        kind: "m^0.5·s^-1",
        equation: "C1 · h/P + C2 at b/B",
        of: ({ h, b, P, B, C }) => coefficient(b / B, h / P) * C,
      },
      kb: {
        kind: "length",
        equation: "width correction at b/B",
        of: ({ b, B, mm }) => widthCorrection(b / B) * mm,
      },
    },
    limits: [
      range(
        "head",
        { min: metre.of(0.03) },
        blevins.at("weirs, as quoted in a general fluids library", "secondary"),
      ),
      ratio(
        "head",
        "crestHeight",
        { max: 2 },
        blevins.at("weirs, as quoted in a general fluids library", "secondary"),
      ),
      range(
        "crestHeight",
        { min: metre.of(0.1) },
        blevins.at("weirs, as quoted in a general fluids library", "secondary"),
      ),
      range(
        "notchWidth",
        { min: metre.of(0.15) },
        blevins.at("weirs, as quoted in a general fluids library", "secondary"),
      ),
      ratio(
        "notchWidth",
        "approachWidth",
        { max: 1 },
        firstPrinciples.at("a notch is no wider than its channel"),
      ),
      bound(
        "approachWidth",
        "clear width beside each end of a contracted notch, over 100 mm",
        ({ b, B, mm }: { b: number; B: number; mm: number }) =>
          b === B ? 1 : (B - b) / 2 / (100 * mm),
        { min: 1 },
        iso1438.at("cl. 9.6", "memory"),
      ),
    ],
    source: usbrWaterMeasurementManual.at("ch. 7, eqs 7-1 and 7-2"),
    body: ({ h, b, P, B, C, kh, mm }) => {
      const he = h + kh;
      return coefficient(b / B, h / P) * C * (b + widthCorrection(b / B) * mm) * he * Math.sqrt(he);
    },
  };
});
