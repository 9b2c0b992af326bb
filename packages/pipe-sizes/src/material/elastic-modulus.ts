import { table } from "@leat/formula";
import {
  fahrenheit,
  hour,
  kilopoundPerSquareInch,
  megapascal,
  one,
  type Point,
  type Quantity,
  QuantityError,
} from "@leat/quantity";

import { atvA127, ppiHandbook, pvcManuals, surgeTables } from "../sources.ts";

/**
 * Apparent modulus of PE at 73 °F under a load or a bend that lasts, by the time that it lasts: PE 2XXX of medium density,
 * PE 3XXX such as PE3608, PE 4XXX such as PE4710.
 *
 * The rows are those of the handbook that were legible in the print that was seen; straight lines over the logarithm of
 * the time give its other rows within 1 %.
 */
export const peModulus = /* @__PURE__ */ table(() => ({
  id: "pe-modulus",
  key: "duration",
  units: {
    hours: hour,
    PE2: kilopoundPerSquareInch,
    PE3: kilopoundPerSquareInch,
    PE4: kilopoundPerSquareInch,
  },
  source: ppiHandbook.at("ch. 3, Table B.1.1"),
  rows: [
    { duration: "0.5 h", hours: 0.5, PE2: 62, PE3: 78, PE4: 82 },
    { duration: "2 h", hours: 2, PE2: 57, PE3: 71, PE4: 74 },
    { duration: "12 h", hours: 12, PE2: 48, PE3: 60, PE4: 63 },
    { duration: "100 h", hours: 100, PE2: 42, PE3: 52, PE4: 55 },
    { duration: "1 year", hours: 8766, PE2: 30, PE3: 38, PE4: 40 },
    { duration: "50 years", hours: 438_300, PE2: 22, PE3: 28, PE4: 29 },
  ],
}));

/** Multipliers on the apparent modulus of PE at other temperatures than 73 °F. */
export const peModulusFactors = /* @__PURE__ */ table(() => ({
  id: "pe-modulus-factors",
  key: "at",
  units: { factor: one },
  source: ppiHandbook.at("ch. 3, Table B.1.2", "memory"),
  rows: [
    { at: "-20 °F", factor: 2.54 },
    { at: "-10 °F", factor: 2.36 },
    { at: "0 °F", factor: 2.18 },
    { at: "10 °F", factor: 2 },
    { at: "20 °F", factor: 1.81 },
    { at: "30 °F", factor: 1.65 },
    { at: "40 °F", factor: 1.49 },
    { at: "50 °F", factor: 1.32 },
    { at: "60 °F", factor: 1.18 },
    { at: "73.4 °F", factor: 1 },
    { at: "80 °F", factor: 0.93 },
    { at: "90 °F", factor: 0.82 },
    { at: "100 °F", factor: 0.73 },
    { at: "110 °F", factor: 0.64 },
    { at: "120 °F", factor: 0.58 },
    { at: "130 °F", factor: 0.5 },
    { at: "140 °F", factor: 0.43 },
  ],
}));

/** Modulus of PVC in the ground for a short load, of minutes, and for a load of 50 years. */
export const pvcModulus = /* @__PURE__ */ table(() => ({
  id: "pvc-modulus",
  key: "duration",
  units: { hours: hour, modulus: megapascal },
  source: atvA127.at("Table 3", "memory"),
  rows: [
    { duration: "3 min", hours: 0.05, modulus: 3000 },
    { duration: "50 years", hours: 438_300, modulus: 1500 },
  ],
}));

/** Multipliers on the modulus of PVC in warm water. Below 73 °F it is stiffer, which is not counted. */
export const pvcModulusFactors = /* @__PURE__ */ table(() => ({
  id: "pvc-modulus-factors",
  key: "at",
  units: { factor: one },
  source: pvcManuals.at("PVC 1120, type 1 grade 1", "memory"),
  rows: [
    { at: "73 °F", factor: 1 },
    { at: "90 °F", factor: 0.89 },
    { at: "100 °F", factor: 0.86 },
    { at: "120 °F", factor: 0.76 },
    { at: "140 °F", factor: 0.64 },
  ],
}));

/**
 * Moduli for a surge, which lasts seconds, at 73 °F, in thousands of pounds per square inch: the least and greatest that
 * tables of surge pressures are worked out with. PE makers use 150 where others use 110: surges differ by a sixth.
 */
export const surgeModulus = /* @__PURE__ */ table(() => ({
  id: "surge-modulus",
  key: "material",
  units: {
    low: kilopoundPerSquareInch,
    typical: kilopoundPerSquareInch,
    high: kilopoundPerSquareInch,
  },
  source: surgeTables.at("moduli of elasticity", "secondary"),
  rows: [
    { material: "PE", low: 110, typical: 130, high: 150 },
    { material: "PVC", low: 400, typical: 400, high: 420 },
    { material: "steel", low: 27_500, typical: 30_000, high: 30_000 },
  ],
}));

/** What a lasting modulus is asked for. */
export interface ModulusOf {
  /** What the pipe is made of. PE100 is taken as PE4710 and PE80 as PE3608, which are as dense. */
  readonly material: "PE4710" | "PE3608" | "PE100" | "PE80" | "PVC";
  /** How long the load or the bend lasts: half an hour to 50 years for PE, 3 minutes to 50 years for PVC. */
  readonly duration: Quantity<"time">;
  /** Temperature of the wall: that of the water. */
  readonly temperature: Point<"absolute zero">;
}

/**
 * Apparent modulus of a plastic pipe under a load that lasts: against collapse, sagging and bending, not for a surge.
 *
 * Straight lines over the logarithm of the time and over the temperature, between the rows of the tables.
 *
 * @param of - Material, how long the load lasts, temperature.
 * @returns The modulus.
 * @throws QuantityError `size` for a duration or a temperature beyond the tables.
 * @example
 * ```ts
 * import { elasticModulus } from "@leat/pipe-sizes";
 * import { celsius, megapascal, year } from "@leat/quantity";
 *
 * const e = elasticModulus({
 *   material: "PE4710",
 *   duration: year.of(50),
 *   temperature: celsius.at(23),
 * });
 * e.in(megapascal).toFixed(0); // => "200"
 * ```
 */
export function elasticModulus({
  material,
  duration,
  temperature,
}: ModulusOf): Quantity<"pressure"> {
  const hours = duration.in(hour);
  const degrees = temperature.in(fahrenheit);
  const [modulus, factors] =
    material === "PVC"
      ? ([
          pvcModulus.definition.rows.map((row) => [row.hours, row.modulus]),
          pvcModulusFactors.definition.rows,
        ] as const)
      : ([
          peModulus.definition.rows.map((row) => [row.hours, row[grades[material]]]),
          peModulusFactors.definition.rows,
        ] as const);
  const lasting = between(
    modulus.map(([time, value]) => [Math.log(time as number), value as number]),
    Math.log(hours),
    () =>
      `a load of ${duration.toString()} on ${material}; the table goes from ${modulus[0]?.[0]} h to 50 years`,
  );
  const points = factors.map(({ at, factor }) => [Number.parseFloat(at), factor] as const);
  // The tables begin at 73 °F for PVC: colder pipe is at least as stiff.
  const warm = material === "PVC" ? Math.max(degrees, 73) : degrees;
  const share = between(
    points,
    warm,
    () =>
      `${material} at ${temperature.toString()}; the table goes from ${factors[0]?.at} to ${factors.at(-1)?.at}`,
  );
  const unit = material === "PVC" ? megapascal : kilopoundPerSquareInch;
  return unit.of(lasting * share);
}

/** Column of the table by material. */
const grades = { PE4710: "PE4", PE100: "PE4", PE3608: "PE3", PE80: "PE3" } as const;

/**
 * A number between the rows of a table, on straight lines.
 *
 * @param points - Pairs by rising first number.
 * @param at - Where.
 * @param what - What is asked for and how far the table goes, for the refusal.
 * @returns The second number there.
 * @throws QuantityError `size` beyond the table.
 */
export function between(
  points: readonly (readonly [number, number])[],
  at: number,
  what: () => string,
): number {
  // A hair for the rounding of the units, so that the ends of a table are in it.
  const hair = 1e-9 * Math.max(1, Math.abs(at));
  for (let i = 1; i < points.length; i += 1) {
    const [x0, y0] = points[i - 1] as readonly [number, number];
    const [x1, y1] = points[i] as readonly [number, number];
    if (at >= x0 - hair && at <= x1 + hair) return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
  }
  throw new QuantityError("size", `nothing is known of ${what()}.`);
}
