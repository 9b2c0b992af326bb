import { commonPractice, table } from "@leat/formula";
import { foot, unit } from "@leat/quantity";

import { unwinHydraulics } from "./sources.ts";

/** An empirical factor, as the inputs of this package take it. */
const coefficient = /* @__PURE__ */ unit("coefficient", "1", 1);

/**
 * Coefficients of openings by their shape: velocity over that without loss, area of the jet over that of the
 * opening, and their product, the discharge.
 *
 * @example
 * ```ts
 * import { mouthpieceCoefficients } from "@leat/nozzles";
 * import { one } from "@leat/quantity";
 *
 * mouthpieceCoefficients.get("sharp-edged orifice", "discharge").in(one); // => 0.62
 * ```
 */
export const mouthpieceCoefficients = /* @__PURE__ */ table(() => ({
  id: "mouthpiece-coefficients",
  key: "shape",
  units: { velocity: coefficient, contraction: coefficient, discharge: coefficient },
  source: unwinHydraulics.at("§§ 17, 19, 49 and 51"),
  rows: [
    { shape: "sharp-edged orifice", velocity: 0.97, contraction: 0.64, discharge: 0.62 },
    { shape: "conoidal mouthpiece", velocity: 0.97, contraction: 1, discharge: 0.97 },
    { shape: "cylindrical mouthpiece", velocity: 0.82, contraction: 1, discharge: 0.82 },
  ],
}));

/**
 * Velocity coefficient of a bellmouth by the head on it, as Weisbach found it: the loss shrinks as the flow gets
 * faster. With no contraction after it, it is the discharge coefficient too.
 */
export const bellmouthCoefficients = /* @__PURE__ */ table(() => ({
  id: "bellmouth-coefficients",
  key: "row",
  units: { head: foot, velocity: coefficient, resistance: coefficient },
  source: unwinHydraulics.at("§ 19"),
  rows: [
    { row: "0.66 ft", head: 0.66, velocity: 0.959, resistance: 0.087 },
    { row: "1.64 ft", head: 1.64, velocity: 0.967, resistance: 0.069 },
    { row: "11.48 ft", head: 11.48, velocity: 0.975, resistance: 0.052 },
    { row: "55.77 ft", head: 55.77, velocity: 0.994, resistance: 0.012 },
    { row: "337.93 ft", head: 337.93, velocity: 0.994, resistance: 0.012 },
  ],
}));

/**
 * Discharge coefficients that the trade uses for the nozzles of small wheels, and how far they spread.
 *
 * No document was found that covers them. A chart that prints flows without a coefficient takes 1, which no
 * nozzle reaches. Measure one: a bucket, a stop-watch and a gauge give it to 2 %.
 */
export const nozzleSpread = /* @__PURE__ */ table(() => ({
  id: "nozzle-spread",
  key: "nozzle",
  units: { low: coefficient, high: coefficient },
  source: commonPractice.at("discharge of nozzles of small wheels", "practice"),
  rows: [
    { nozzle: "smooth taper", low: 0.95, high: 0.98 },
    { nozzle: "cut plastic cone", low: 0.85, high: 0.98 },
  ],
}));
