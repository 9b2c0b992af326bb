import { formula, input, output, range, ratio } from "@leat/formula";
import { one } from "@leat/quantity";

import { sir20055017, sir20065286, sir20085126 } from "./sources.ts";

/** What the gauge's flow is multiplied by. */
function areaRatio(area: number, gaugedArea: number, exponent: number): number {
  return Math.pow(area / gaugedArea, exponent);
}

/**
 * Flow of a stream without a gauge, from that of a gauge near it and the two areas that drain to them.
 *
 *     Qu = Qg · (Au/Ag)^φ
 *
 * Best up or down the same stream, and for mean flows; a low flow follows the rock more than the area. With
 * φ = 1 each square kilometre gives the same at both. Fitted exponents are 0.85 in winter, 0.91 in spring and
 * 1.02 in summer (Red River of the North) and 0.700 to 0.935 by the wetness of the day (Texas): at an area ratio
 * of 0.5, φ = 0.85 instead of 1 is 11 % more flow. Ries and Friesz (USGS WRIR 00–4135) trust ratios from 0.3 for
 * low flows in Massachusetts; 0.5 is followed here.
 *
 * The uncertainty of the method itself is not in the answer: {@link areaTransfer} adds it.
 *
 * @throws NonPhysicalError an area not above zero, a flow below zero.
 * @throws OutOfValidityError an area ratio or an exponent beyond its range, and `onNotice` is absent.
 * @example
 * ```ts
 * const q = areaRatioTransfer({
 *   gaugedFlow: cubicMetrePerSecond.of(0.85),
 *   gaugedArea: squareKilometre.of(42),
 *   area: squareKilometre.of(29),
 * });
 * format(q, cubicMetrePerSecond, 4); // => "0.5869 m³/s"
 * ```
 * @see U.S. Geological Survey, SIR 2008–5126, drainage-area ratio method
 */
export const areaRatioTransfer = /* @__PURE__ */ formula(() => ({
  id: "area-ratio-transfer",
  equation: "Qu = Qg · (Au/Ag)^φ",
  inputs: {
    /** Flow at the gauge. */
    gaugedFlow: input("volume flow", "Qg"),
    /** Area that drains to the site. */
    area: input("area", "Au", { domain: "positive" }),
    /** Area that drains to the gauge. */
    gaugedArea: input("area", "Ag", { domain: "positive" }),
    /** Exponent of the ratio of the areas. */
    exponent: input("ratio", "φ", {
      domain: "positive",
      default: one.of(1),
      because: sir20085126.at("drainage-area ratio method: the same runoff per area at both"),
    }),
  },
  output: output("volume flow", "Qu"),
  limits: [
    ratio(
      "area",
      "gaugedArea",
      { min: 0.5, max: 1.5 },
      sir20085126.at("drainage-area ratio method"),
    ),
    range("exponent", { min: one.of(0.7) }, sir20065286.at("exponents by percentile", "secondary")),
    range("exponent", { max: one.of(1.02) }, sir20055017.at("abstract: summer")),
  ],
  source: sir20085126.at("drainage-area ratio method"),
  body: ({ Qg, Au, Ag, φ }) => Qg * areaRatio(Au, Ag, φ),
  series: {
    over: "gaugedFlow",
    loop: (column, { Au, Ag, φ }, out, from, to) => {
      const factor = areaRatio(Au, Ag, φ);
      for (let i = from; i < to; i++) out[i] = (column[i] as number) * factor;
    },
  },
}));
