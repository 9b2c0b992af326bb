import { commonPractice, firstPrinciples, formula, input, output, ratio } from "@leat/formula";

/** What the gauge's flow is multiplied by. */
function yieldRatio(
  area: number,
  runoff: number,
  gaugedArea: number,
  gaugedRunoff: number,
): number {
  return (area * runoff) / (gaugedArea * gaugedRunoff);
}

/**
 * Flow of a stream without a gauge, from that of a gauge near it, by area and by what an area gives.
 *
 *     Qu = Qg · (Au·ru)/(Ag·rg)
 *
 * For a site that is wetter or drier than the gauge: runoffs are read from one map of mean annual runoff, or are
 * rain less evaporation worked out for both in the same way. Only their ratio counts, so what the map has wrong
 * at both does not. It carries the mean; days that are wet at one and dry at the other stay wrong.
 *
 * The uncertainty of the method itself is not in the answer: {@link runoffTransfer} adds it.
 *
 * @throws NonPhysicalError an area or a runoff not above zero, a flow below zero.
 * @throws OutOfValidityError a runoff that is more than twice or less than half of the gauge's, and `onNotice` is absent.
 * @example
 * ```ts
 * const q = runoffRatioTransfer({
 *   gaugedFlow: litrePerSecond.of(500),
 *   gaugedArea: squareKilometre.of(20),
 *   gaugedRunoff: millimetrePerYear.of(800),
 *   area: squareKilometre.of(4),
 *   runoff: millimetrePerYear.of(1200),
 * });
 * format(q, litrePerSecond, 4); // => "150.0 L/s"
 * ```
 */
export const runoffRatioTransfer = /* @__PURE__ */ formula(() => ({
  id: "runoff-ratio-transfer",
  equation: "Qu = Qg · (Au·ru)/(Ag·rg)",
  inputs: {
    /** Flow at the gauge. */
    gaugedFlow: input("volume flow", "Qg"),
    /** Area that drains to the site. */
    area: input("area", "Au", { domain: "positive" }),
    /** Mean runoff of that area. */
    runoff: input("runoff", "ru", { domain: "positive" }),
    /** Area that drains to the gauge. */
    gaugedArea: input("area", "Ag", { domain: "positive" }),
    /** Mean runoff of that area, from the same map or method. */
    gaugedRunoff: input("runoff", "rg", { domain: "positive" }),
  },
  output: output("volume flow", "Qu"),
  limits: [
    ratio(
      "runoff",
      "gaugedRunoff",
      { min: 0.5, max: 2 },
      commonPractice.at("a gauge of another climate is no neighbour", "practice"),
    ),
  ],
  source: firstPrinciples.at("continuity: flow is area times runoff"),
  body: ({ Qg, Au, ru, Ag, rg }) => Qg * yieldRatio(Au, ru, Ag, rg),
  series: {
    over: "gaugedFlow",
    loop: (column, { Au, ru, Ag, rg }, out, from, to) => {
      const factor = yieldRatio(Au, ru, Ag, rg);
      for (let i = from; i < to; i++) out[i] = (column[i] as number) * factor;
    },
  },
}));
