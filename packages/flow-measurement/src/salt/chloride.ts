import {
  commonPractice,
  firstPrinciples,
  formula,
  input,
  type Notice,
  output,
  table,
} from "@leat/formula";
import { format, milligramPerLitre, type Quantity } from "@leat/quantity";

import { ccmeChloride, epaChloride, saltFactorPaper } from "./sources.ts";
import { standardSaltFactor } from "./standard-factor.ts";

/** U.S. criteria for chloride from common salt, for life in fresh water. */
export const epaChlorideCriteria = /* @__PURE__ */ table(() => ({
  id: "epa-chloride-criteria",
  key: "exposure",
  units: { chloride: milligramPerLitre },
  source: epaChloride.at("national criteria: 230 mg/L quoted, 860 mg/L from memory", "memory"),
  rows: [
    { exposure: "acute", chloride: 860, over: "one hour, once in three years" },
    { exposure: "chronic", chloride: 230, over: "four days, once in three years" },
  ],
}));

/** Canadian guidelines for chloride, for life in fresh water; they do not hold for some mussels at risk. */
export const ccmeChlorideGuidelines = /* @__PURE__ */ table(() => ({
  id: "ccme-chloride-guidelines",
  key: "exposure",
  units: { chloride: milligramPerLitre },
  source: ccmeChloride.at("guideline table: 120 mg/L quoted, 640 mg/L from memory", "memory"),
  rows: [
    { exposure: "acute", chloride: 640, over: "short term, 24 to 96 hours" },
    { exposure: "chronic", chloride: 120, over: "long term" },
  ],
}));

/**
 * Chloride at the peak of a cloud of common salt.
 *
 *     Cl = (35.453 / 58.443) · CF · Δκ + Cl0
 *
 * At the probe, that is: nearer to the throw it is far more for a moment. Throw the salt in dissolved and slowly, away from
 * spawning beds and hatcheries.
 *
 * @throws NonPhysicalError a rise, a factor or a background below zero.
 * @example
 * ```ts
 * import { chlorideAtPeak } from "@leat/flow-measurement";
 * import { microsiemensPerCentimetre, milligramPerLitre } from "@leat/quantity";
 *
 * const chloride = chlorideAtPeak({ conductivityRise: microsiemensPerCentimetre.of(145) });
 * chloride.in(milligramPerLitre).toFixed(0); // => "43"
 * ```
 */
export const chlorideAtPeak = /* @__PURE__ */ formula(() => ({
  id: "chloride-at-peak",
  equation: "Cl = (35.453 / 58.443) · CF · Δκ + Cl0",
  inputs: {
    /** Rise of conductivity at the peak. */
    conductivityRise: input("conductivity", "Δκ"),
    /** Salt per volume of water, over the rise of conductivity that it makes. */
    calibrationFactor: input("concentration per conductivity", "CF", {
      domain: "positive",
      default: standardSaltFactor(),
      because: saltFactorPaper.at("abstract and Table 8: no calibration was made"),
    }),
    /** Chloride that the stream has anyway. */
    backgroundChloride: input("density", "Cl0", {
      default: milligramPerLitre.of(0),
      because: commonPractice.at("a few mg/L in an upland stream, left out", "practice"),
    }),
  },
  output: output("density", "Cl"),
  source: firstPrinciples.at("molar masses of chlorine, 35.453, and of common salt, 58.443 g/mol"),
  body: ({ CF, Δκ, Cl0 }) => (35.453 / 58.443) * CF * Δκ + Cl0,
}));

/**
 * Compares a chloride concentration with what is published for life in fresh water.
 *
 * The published values are of hours and days, a cloud passes in minutes: above an acute value it is a caution, above a
 * chronic one a note. The values that hold are those of the regulator where the stream is.
 *
 * @param chloride - Concentration at the peak.
 * @returns A notice for each value that it is above, the greatest value of each exposure; none where it is below all.
 * @example
 * ```ts
 * import { chlorideNotices } from "@leat/flow-measurement";
 * import { milligramPerLitre } from "@leat/quantity";
 *
 * chlorideNotices(milligramPerLitre.of(700)).map(({ code }) => code).join(); // => "chloride-acute,chloride-chronic,chloride-chronic"
 * ```
 */
export function chlorideNotices(chloride: Quantity<"density">): Notice[] {
  const actual = format(chloride, milligramPerLitre, 3);
  return (["acute", "chronic"] as const).flatMap((exposure) =>
    [epaChlorideCriteria, ccmeChlorideGuidelines].flatMap((guideline): Notice[] => {
      const allowed = guideline.get(exposure, "chloride");
      if (!chloride.greaterThan(allowed)) return [];
      const { source } = guideline.definition;
      const limit = format(allowed, milligramPerLitre, 3);
      return [
        {
          code: `chloride-${exposure}`,
          severity: exposure === "acute" ? "caution" : "note",
          path: ["mass"],
          message: `salt: chloride at the peak = ${actual} is above ${limit}, the ${exposure} value of ${source.source.by} (${guideline.row(exposure).over}). Throw in less salt, or dissolve it and pour it in slowly; ask the regulator what this stream allows.`,
          actual,
          limit: `at most ${limit}`,
          source,
        },
      ];
    }),
  );
}
