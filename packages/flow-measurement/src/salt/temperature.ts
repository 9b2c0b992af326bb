import type { Notice } from "@leat/formula";
import { leastSquares } from "@leat/numerics";
import { celsius, type Point } from "@leat/quantity";

import { refused } from "../refusal.ts";
import { type CleanReadings, counted } from "./readings.ts";

/** What a reading of conductivity is: as it was, or brought to 25 °C by the meter. */
export type ConductivityBasis = "raw" | "at 25 °C";

/** Temperature of the water: one for all rows, or a logger's numbers in degrees Celsius. */
export type WaterTemperature =
  | Point<"absolute zero">
  | { readonly celsius: ArrayLike<number | null | undefined> };

/** What a stream's water can have, °C: beyond it a logger has failed. */
const possible = { least: -2, greatest: 45 };

/** Temperatures must differ by this much before anything can be read out of them, K. */
const enoughDifference = 0.3;

/**
 * Temperatures of the rows in °C; those at fault are bridged by straight lines.
 *
 * @param where - The name that notices begin with.
 * @param given - As the caller gave them.
 * @param time - Seconds of the rows, rising.
 * @returns The temperatures, and the rows that are bridged.
 * @throws NonPhysicalError another number of rows, or none that is possible.
 */
export function temperaturesOf(
  where: string,
  given: WaterTemperature,
  time: Float64Array,
): { degrees: Float64Array; bridged: readonly number[] } {
  const rows = time.length;
  if (!("celsius" in given)) {
    return { degrees: new Float64Array(rows).fill(given.in(celsius)), bridged: [] };
  }
  if (given.celsius.length !== rows) {
    throw refused(
      ["temperature"],
      `${where}: temperature has ${given.celsius.length} rows, conductivity ${rows}. Give as many.`,
      { code: "rows-differ" },
    );
  }
  const degrees = new Float64Array(rows);
  const good: number[] = [];
  const bridged: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const value = given.celsius[row] ?? Number.NaN;
    if (value >= possible.least && value <= possible.greatest) {
      degrees[row] = value;
      good.push(row);
    } else bridged.push(row);
  }
  if (good.length === 0) {
    throw refused(
      ["temperature"],
      `${where}: temperature has no reading from ${possible.least} °C to ${possible.greatest} °C. Give degrees Celsius.`,
      { code: "no-readings" },
    );
  }
  let next = 0;
  for (const row of bridged) {
    while (next < good.length && (good[next] as number) < row) next += 1;
    const a = good[Math.max(next - 1, 0)] as number;
    const b = good[Math.min(next, good.length - 1)] as number;
    const share =
      a < row && row < b
        ? ((time[row] as number) - (time[a] as number)) /
          ((time[b] as number) - (time[a] as number))
        : 0;
    const [from, to] = row < a ? [b, b] : [a, b];
    degrees[row] =
      (degrees[from] as number) + share * ((degrees[to] as number) - (degrees[from] as number));
  }
  return { degrees, bridged };
}

/**
 * Readings brought to 25 °C.
 *
 * @param clean - Raw readings.
 * @param degrees - Temperatures of their rows, °C.
 * @param coefficient - Relative change a kelvin, 1/K.
 * @returns The readings, compensated.
 */
export function warmed(
  clean: CleanReadings,
  degrees: Float64Array,
  coefficient: number,
): CleanReadings {
  return {
    ...clean,
    values: clean.values.map(
      (value, row) => value / (1 + coefficient * ((degrees[row] as number) - 25)),
    ),
  };
}

/**
 * What temperatures have to say of readings that are called raw or compensated.
 *
 * In the background the salt does not change: where the temperature does, raw conductivity follows it by about 2 % a
 * kelvin and a compensated one stays.
 *
 * @param where - The name that notices begin with.
 * @param about - Readings, what they are called, temperatures in °C, coefficient 1/K, rows of the background and of the slug.
 * @returns The notices.
 */
export function temperatureNotices(
  where: string,
  about: {
    readonly clean: CleanReadings;
    readonly basis: ConductivityBasis;
    readonly degrees: Float64Array;
    readonly bridged: readonly number[];
    readonly coefficient: number;
    readonly background: readonly number[];
    readonly slug: readonly [from: number, to: number];
    readonly compensated: boolean;
  },
): Notice[] {
  const { clean, basis, degrees, bridged, coefficient, background, slug } = about;
  const notices: Notice[] = [];
  if (bridged.length > 0) {
    notices.push({
      code: "temperature-readings",
      severity: "caution",
      path: ["temperature", bridged[0] as number],
      message: `${where}: temperature of ${counted(bridged)} is missing or impossible. Its neighbours stand in.`,
      actual: `${bridged.length} of ${degrees.length} rows`,
      limit: "none",
    });
  }
  const change = rangeOf(degrees.subarray(slug[0], slug[1] + 1));
  if (basis === "raw" && !about.compensated && change > enoughDifference) {
    notices.push({
      code: "raw-in-changing-water",
      severity: "caution",
      path: ["temperature"],
      message: `${where}: the water changed by ${change.toFixed(1)} K while the salt passed, and raw readings follow it by ${(100 * coefficient * change).toFixed(1)} %. Calibrate with the temperature written down, so that both can be brought to 25 °C.`,
      actual: `${change.toFixed(1)} K`,
      limit: `at most ${enoughDifference} K`,
    });
  }
  const seen = background.map((row) => degrees[row] as number);
  const middle = seen.reduce((sum, value) => sum + value, 0) / seen.length;
  if (seen.length < 10 || rangeOf(seen) < enoughDifference) return notices;
  const { x, residualNorm, degreesOfFreedom, unscaledCovariance } = leastSquares(
    seen.map((value) => [1, value - middle]),
    background.map((row) => clean.values[row] as number),
  );
  const level = x[0] as number;
  const slope = (x[1] as number) / level;
  const doubt =
    (2 *
      Math.hypot(residualNorm / Math.sqrt(degreesOfFreedom), clean.resolution / Math.sqrt(12)) *
      Math.sqrt(unscaledCovariance[3] as number)) /
    level;
  const follows = `${(100 * slope).toFixed(1)} % a kelvin`;
  // The coefficient is of the value at 25 °C, the slope of the value in the stream.
  const expected = coefficient / (1 + coefficient * (middle - 25));
  if (basis === "raw" && slope + doubt < expected / 2) {
    notices.push({
      code: "looks-compensated",
      severity: "caution",
      path: ["basis"],
      message: `${where}: the readings are called raw, but the background follows the temperature by ${follows} and not by ${(100 * expected).toFixed(1)} %. A meter that compensates by itself would be compensated twice: look at its setting.`,
      actual: follows,
      limit: `about ${(100 * expected).toFixed(1)} % a kelvin`,
    });
  }
  if (basis === "at 25 °C" && slope - doubt > expected / 2) {
    notices.push({
      code: "looks-raw",
      severity: "caution",
      path: ["basis"],
      message: `${where}: the readings are called compensated, but the background follows the temperature by ${follows}. Look at the setting of the meter, and call them raw if it does not compensate.`,
      actual: follows,
      limit: "about nought",
    });
  }
  return notices;
}

/** Greatest less least; a spread into arguments would not take a day of seconds. */
function rangeOf(numbers: Iterable<number>): number {
  let [least, greatest] = [Infinity, -Infinity];
  for (const number of numbers) {
    if (number < least) least = number;
    if (number > greatest) greatest = number;
  }
  return greatest - least;
}
