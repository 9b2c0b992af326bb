import type { Notice } from "@leat/formula";
import { leastSquares } from "@leat/numerics";
import {
  kilogramPerCubicMetre,
  one,
  percent,
  type Quantity,
  siemensPerMetre,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";

import { refused } from "../refusal.ts";
import { type NoticeOptions, type SaltCalibration, sameBasis } from "./calibration.ts";
import { saltConstantRateDischarge } from "./constant-rate-discharge.ts";
import {
  type CleanReadings,
  cleanReadings,
  faultNotices,
  type LoggedConductivity,
  medianOf,
  type ReadingFaults,
} from "./readings.ts";
import { shown } from "./slug-notices.ts";
import { rowsWithin, type TimeSpan } from "./slug-plan.ts";
import { meanIn, type Rows } from "./slug-window.ts";
import { streamTemperatureCoefficient } from "./specific-conductivity.ts";
import { contributionsOf, spreadBy } from "./spread.ts";
import { standardSaltFactor } from "./standard-factor.ts";
import {
  type ConductivityBasis,
  temperatureNotices,
  temperaturesOf,
  warmed,
  type WaterTemperature,
} from "./temperature.ts";

/** Salt solution that is fed in at a constant rate, as a logger saw it downstream. */
export interface SaltPlateauInput extends LoggedConductivity {
  /** Names the probe in notices and sources of uncertainty. */
  readonly name?: string | undefined;
  /** Flow of the solution that is fed in. */
  readonly injectionRate: Quantity<"volume flow">;
  /** Salt in that solution, above what the stream has anyway; any number where the standard of the calibration is that solution. */
  readonly injectedConcentration: Quantity<"density">;
  /** What the readings are: raw, or brought to 25 °C by the meter. It must be stated. */
  readonly basis: ConductivityBasis;
  /** Temperature of the water; raw readings are brought to 25 °C by it. */
  readonly temperature?: WaterTemperature | undefined;
  /** Relative change a kelvin of raw readings; 2.0 ± 0.1 % by default. */
  readonly temperatureCoefficient?: Quantity<"temperature coefficient"> | undefined;
  /** The calibration of this probe in this stream; without one the factor of any stream stands in. */
  readonly calibration?: Pick<SaltCalibration, "name" | "factor" | "basis"> | undefined;
  /** Where the background is read; found by itself where it is left out. */
  readonly background?: TimeSpan | undefined;
  /** Where the plateau is read; found by itself where it is left out. */
  readonly plateau?: TimeSpan | undefined;
  /** Half of a 95 % interval for imperfect mixing at a single probe; 7 % by default. */
  readonly mixing?: Quantity<"ratio"> | undefined;
}

/** What a plateau says of the flow. */
export interface SaltPlateau {
  /** Name of the probe. */
  readonly name: string;
  /** Discharge of the stream above the feed, with an allowance for mixing. */
  readonly flow: Quantity<"volume flow">;
  /** The same without that allowance, for two probes to be compared. */
  readonly flowAtProbe: Quantity<"volume flow">;
  /** Rise of conductivity on the plateau. */
  readonly rise: Quantity<"conductivity">;
  /** The background. */
  readonly background: Quantity<"conductivity">;
  /** Where the plateau was read, in the seconds of the record. */
  readonly plateau: TimeSpan;
  /** Readings on it. */
  readonly readingsOnPlateau: number;
  /** Change along the plateau by a straight line, over the rise. */
  readonly drift: Quantity<"ratio">;
  /** Whether that change is within 2 % of the rise, or within its own uncertainty. */
  readonly steady: boolean;
  /** Rows at fault. */
  readonly faults: ReadingFaults;
  /** The record as it was used, compensated, with flags: for a chart. */
  readonly readings: Column<"conductivity">;
  /** Seconds of the rows, those out of order estimated. */
  readonly time: Float64Array;
  /** What is to be told. */
  readonly notices: readonly Notice[];
}

/** A reading is on the plateau while it is within this share of the rise of it. */
const plateauShare = 0.03;

/** The plateau may change by this share of the rise along its length. */
const steadyShare = 0.02;

/** Readings that make a plateau. */
const fewest = 10;

/** A single probe's allowance for mixing, as for a slug. */
const singleProbeMixing = 0.07;

/**
 * Discharge from a solution that is fed in at a constant rate, from readings as a logger wrote them.
 *
 *     Q = q · (C1 − C2) / C2,   C2 = CF · (κ2 − κ0)
 *
 * Faults are found, told and bridged as for a slug, but for a stuck sensor, which looks like a plateau. The background is the part before the
 * rise. The plateau is the longest run of readings within 3 % of the rise (or three scatters) of the median of the highest readings, those
 * above four fifths of the rise; it is steady while a straight line through it changes by less than 2 % of the rise. A slow approach to the plateau
 * at its beginning is cut off, a quarter at a time, as long as that halves the rate of change.
 *
 * Sources of uncertainty: those of the feed, of the solution and of the calibration; `<name>: background`; `<name>: plateau` (scatter, step of the
 * meter, what is left of a drift); `temperature coefficient` where raw readings are compensated; `<name>: mixing`.
 *
 * @param input - Record, feed, basis, and what else is known.
 * @param options - Told of notices as they are found; they are in the result too.
 * @returns The flow and all that it rests on.
 * @throws NonPhysicalError rates not above zero; rows that differ; no plateau; a factor of another basis than the readings.
 * @example
 * ```ts
 * import { saltPlateau } from "@leat/flow-measurement";
 * import { gramPerLitre, litrePerMinute, litrePerSecond, microsiemensPerCentimetre } from "@leat/quantity";
 * import { Column } from "@leat/quantity/column";
 *
 * // An invented record, a reading every 10 s: fed in from 120 s on.
 * const time = Float64Array.from({ length: 120 }, (_, i) => 10 * i);
 * const rise = (t: number): number => (t < 120 ? 0 : 80 * -Math.expm1((120 - t) / 60));
 * const { flow, steady } = saltPlateau({
 *   time,
 *   conductivity: Column.of(microsiemensPerCentimetre, Array.from(time, (t) => Math.round(10 * (62 + rise(t))) / 10)),
 *   basis: "at 25 °C",
 *   injectionRate: litrePerMinute.of(1),
 *   injectedConcentration: gramPerLitre.of(100),
 * });
 * flow.in(litrePerSecond).toFixed(1); // => "42.9"
 * steady; // => true
 * ```
 * @see ISO 9555-1
 */
export function saltPlateau(input: SaltPlateauInput, options: NoticeOptions = {}): SaltPlateau {
  const name = input.name ?? "salt plateau";
  const notices: Notice[] = [];
  const tell = (notice: Notice): void => {
    notices.push(notice);
    options.onNotice?.(notice);
  };
  const logged = cleanReadings(name, input, { forStuck: false });
  faultNotices(name, logged).forEach(tell);
  const water = input.temperature && temperaturesOf(name, input.temperature, logged.time);
  const calibration = input.calibration ?? {
    name: "without calibration",
    factor: standardSaltFactor(),
    basis: "at 25 °C" as const,
  };
  const coefficient = input.temperatureCoefficient ?? streamTemperatureCoefficient();
  const compensated = input.basis === "raw" && water !== undefined && calibration.basis !== "raw";
  sameBasis(name, compensated ? "at 25 °C" : input.basis, calibration);
  const clean = compensated ? warmed(logged, water.degrees, coefficient["~si"]) : logged;

  const found = findPlateau(clean);
  const background = input.background ? rowsOf("background", input.background) : found?.background;
  const plateau = input.plateau ? rowsOf("plateau", input.plateau) : found?.plateau;
  if (!background || !plateau) {
    throw refused(
      ["conductivity"],
      `${name}: no plateau of ${fewest} readings over a background was found. Feed the salt for longer, log from before it begins, or give background and plateau.`,
      { code: "no-plateau" },
    );
  }
  function rowsOf(what: string, span: TimeSpan): Rows {
    const rows = rowsWithin(clean, span);
    if (rows && rows[1] - rows[0] >= 2) return rows;
    throw refused(
      [what],
      `${name}: ${what}, ${span.from} s to ${span.to} s, holds fewer than three good readings.`,
      { code: "no-readings" },
    );
  }

  const riseOf = (readings: CleanReadings): number =>
    meanIn(readings.values, ...plateau) - meanIn(readings.values, ...background);
  const rise = riseOf(clean);
  const line = lineThrough(clean, plateau);
  const drift = line.change / rise;
  const steady = Math.abs(line.change) <= Math.max(steadyShare * Math.abs(rise), 2 * line.doubt);
  if (!steady) {
    tell({
      code: "plateau-unsteady",
      severity: "caution",
      path: ["conductivity", plateau[0]],
      message: `${name}: the plateau changes by ${(100 * drift).toFixed(1)} % of the rise along its length. Feed the salt for longer, and see that its flow is constant.`,
      actual: `${(100 * drift).toFixed(1)} %`,
      limit: `at most ${100 * steadyShare} %`,
    });
  }
  const step = clean.resolution / Math.sqrt(12);
  const doubt = ([from, to]: Rows): number =>
    Math.hypot(clean.noise / Math.sqrt(to - from + 1), step);
  const alpha = coefficient["~si"];
  const slope = (by: number): number =>
    riseOf(warmed(logged, water?.degrees as Float64Array, alpha + by));
  const spreadRise = spreadBy(siemensPerMetre.of(rise), [
    [`${name}: background`, -doubt(background)],
    [`${name}: plateau`, Math.hypot(doubt(plateau), line.change / Math.sqrt(12))],
    ...(compensated
      ? contributionsOf(coefficient, (slope(1e-4 * alpha) - slope(-1e-4 * alpha)) / (2e-4 * alpha))
      : []),
  ]);
  if (!(rise > 0)) {
    throw refused(
      ["plateau"],
      `${name}: the plateau is ${shown(-rise)} below the background. Check the two.`,
      { code: "no-plateau" },
    );
  }
  const flowAtProbe = saltConstantRateDischarge(
    {
      injectionRate: input.injectionRate,
      injectedConcentration: input.injectedConcentration,
      plateauConcentration: spreadRise.times(calibration.factor),
      backgroundConcentration: kilogramPerCubicMetre.of(0),
    },
    { onNotice: tell },
  );
  const mixing = input.mixing ?? one.of(singleProbeMixing);
  if (water) {
    const rows = Array.from(
      { length: background[1] - background[0] + 1 },
      (_, i) => background[0] + i,
    );
    temperatureNotices(name, {
      clean: logged,
      basis: input.basis,
      degrees: water.degrees,
      bridged: water.bridged,
      coefficient: alpha,
      background: rows,
      slug: [background[0], plateau[1]],
      compensated,
    }).forEach(tell);
  }
  const { time } = clean;
  return {
    name,
    flow: flowAtProbe.plusMinus(flowAtProbe.times(mixing["~si"]), `${name}: mixing`),
    flowAtProbe,
    rise: spreadRise,
    background: siemensPerMetre.of(meanIn(clean.values, ...background)),
    plateau: { from: time[plateau[0]] as number, to: time[plateau[1]] as number },
    readingsOnPlateau: plateau[1] - plateau[0] + 1,
    drift: percent.of(100 * drift),
    steady,
    faults: clean.faults,
    readings: Column.wrap("conductivity", clean.values, clean.quality, {
      axis: logged.faults.time.length === 0 ? input.conductivity.axis : undefined,
    }),
    time,
    notices,
  };
}

/** Background before the rise and the plateau after it, or nothing. */
function findPlateau(clean: CleanReadings): { background: Rows; plateau: Rows } | undefined {
  const { values, first, last, noise } = clean;
  const good = Array.from(values.subarray(first, last + 1));
  const few = Math.max(3, Math.round(good.length / 20));
  const start = medianOf(good.slice(0, few));
  const rise = good.reduce((most, value) => Math.max(most, value), -Infinity) - start;
  if (!(rise > 8 * noise)) return undefined;
  let arrival = first;
  while (arrival < last && (values[arrival] as number) - start <= Math.max(4 * noise, 0.01 * rise))
    arrival += 1;
  const high = good.filter((value) => value - start >= 0.8 * rise);
  const level = medianOf(high);
  const near = Math.max(3 * noise, plateauShare * (level - start));
  let best: Rows | undefined;
  for (let row = arrival; row <= last; row += 1) {
    const from = row;
    while (row <= last && Math.abs((values[row] as number) - level) <= near) row += 1;
    if (row > from && (!best || row - 1 - from > best[1] - best[0])) best = [from, row - 1];
  }
  if (!best || best[1] - best[0] + 1 < fewest || arrival - first < 3) return undefined;
  return { background: [first, arrival - 1], plateau: steadiest(clean, best, level - start) };
}

/**
 * Cuts the approach off the beginning, a quarter at a time, while what is left is long enough and changes at half the rate or less: an
 * approach dies away, a drift does not.
 */
function steadiest(clean: CleanReadings, whole: Rows, rise: number): Rows {
  let rows = whole;
  for (;;) {
    const { change, rate } = lineThrough(clean, rows);
    if (Math.abs(change) <= 0.1 * steadyShare * rise) return rows;
    const cut: Rows = [rows[0] + Math.ceil((rows[1] - rows[0] + 1) / 4), rows[1]];
    if (cut[1] - cut[0] + 1 < fewest) return rows;
    if (Math.abs(lineThrough(clean, cut).rate) > Math.abs(rate) / 2) return rows;
    rows = cut;
  }
}

/** Change along some rows by a straight line, its standard uncertainty, and its rate. */
function lineThrough(
  { time, values, noise }: CleanReadings,
  [from, to]: Rows,
): { change: number; doubt: number; rate: number } {
  const rows = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const middle = meanIn(time, from, to);
  const { x, unscaledCovariance, residualNorm, degreesOfFreedom } = leastSquares(
    rows.map((row) => [1, (time[row] as number) - middle]),
    rows.map((row) => values[row] as number),
  );
  const length = (time[to] as number) - (time[from] as number);
  const scatter = Math.max(noise, residualNorm / Math.sqrt(Math.max(1, degreesOfFreedom)));
  return {
    rate: x[1] as number,
    change: (x[1] as number) * length,
    doubt: scatter * Math.sqrt(unscaledCovariance[3] as number) * length,
  };
}
