import type { Notice } from "@leat/formula";
import { microsiemensPerCentimetre, type Quantity } from "@leat/quantity";
import { type Column, Quality, type TimeAxis } from "@leat/quantity/column";

import { refused } from "../refusal.ts";

/** Rows at fault, by what is wrong with them; rows are counted from 0. */
export interface ReadingFaults {
  /** Recorded as nothing. */
  readonly gap: readonly number[];
  /** A number that loggers write for "no reading". */
  readonly faultCode: readonly number[];
  /** Not above zero, or above what is possible. */
  readonly impossible: readonly number[];
  /** One to three readings apart from those on either side, which agree. */
  readonly spike: readonly number[];
  /** Many equal readings in a row, where those before moved and the next one jumps. */
  readonly stuck: readonly number[];
  /** The time does not rise: the reading is kept, its time estimated from its neighbours. */
  readonly time: readonly number[];
}

/** Readings as a logger wrote them. */
export interface LoggedConductivity {
  /**
   * Times of the rows in seconds on any clock, as logged: they need not rise. Left out, the axis of the
   * column is taken.
   */
  readonly time?: Float64Array | readonly number[] | TimeAxis | undefined;
  /** Conductivity, as logged: fault codes and all. */
  readonly conductivity: Column<"conductivity">;
  /** Numbers that mean "no reading"; -9999, -999, 9999 and 99999 µS/cm by default. */
  readonly faultCodes?: readonly Quantity<"conductivity">[] | undefined;
  /** What a stream can have at most; 100 mS/cm by default, twice sea water. */
  readonly greatestPossible?: Quantity<"conductivity"> | undefined;
}

/** Readings with their faults found and bridged, in coherent units. */
export interface CleanReadings {
  /** Seconds, rising. */
  readonly time: Float64Array;
  /** Conductivity in S/m; 0 in rows before the first and after the last good reading. */
  readonly values: Float64Array;
  /** Quality of each row. */
  readonly quality: Uint8Array;
  /** First good row. */
  readonly first: number;
  /** Last good row. */
  readonly last: number;
  /** Runs of bridged rows within, as first and last row. */
  readonly bridges: readonly (readonly [from: number, to: number])[];
  /** Rows by fault. */
  readonly faults: ReadingFaults;
  /** Step of the logger's numbers: the smallest difference between neighbours, S/m. */
  readonly resolution: number;
  /** Standard deviation of one reading, S/m: its scatter, or what the step of the numbers hides. */
  readonly noise: number;
}

/** Half the width of the window that spikes are looked for in, rows. */
const halfWindow = 3;

/** A spike is this many robust standard deviations away from the median of its window. */
const spikeDeviations = 5;

/** The readings on either side of a spike agree to this share of its height. */
const sidesAgree = 0.2;

/** Equal readings in a row that are looked at as a sensor that is stuck. */
const stuckRun = 8;

/** Readings before it that must have moved. */
const movedBefore = 5;

/** Steps of the meter, or standard deviations, that count as a move or a jump. */
const moved = 5;

/** Standard deviation of a normal distribution over its median absolute deviation. */
const deviationOverMad = 1.4826;

const defaultCodes = [-9999, -999, 9999, 99_999];

/**
 * Finds the faults in logged readings and bridges them by straight lines. Nothing is dropped: each row at fault is listed and
 * flagged, `suspect` where a number was doubted and `estimated` where a line or a neighbour's time stands for it.
 *
 * @param where - The name that notices begin with.
 * @param logged - The readings.
 * @param looks - Whether to look for a stuck sensor: a plateau looks like one.
 * @returns The readings, cleaned.
 * @throws NonPhysicalError times that are not numbers, as many as rows; fewer than five good readings.
 */
export function cleanReadings(
  where: string,
  logged: LoggedConductivity,
  looks: { readonly forStuck: boolean },
): CleanReadings {
  const { conductivity } = logged;
  const raw = conductivity.values;
  const rows = raw.length;
  const { time, misplaced } = risingTimes(where, timesOf(where, logged), rows);

  const codes = (
    logged.faultCodes ?? defaultCodes.map((code) => microsiemensPerCentimetre.of(code))
  ).map((code) => code["~si"]);
  const greatest = logged.greatestPossible?.["~si"] ?? 10;
  const gap: number[] = [];
  const faultCode: number[] = [];
  const impossible: number[] = [];
  const bad = new Uint8Array(rows);
  for (let row = 0; row < rows; row += 1) {
    const value = raw[row] as number;
    const list =
      (conductivity.quality[row] as number) & Quality.gap
        ? gap
        : codes.some((code) => Math.abs(value - code) <= 1e-9 * Math.abs(code))
          ? faultCode
          : value > 0 && value <= greatest
            ? undefined
            : impossible;
    if (list) {
      list.push(row);
      bad[row] = 1;
    }
  }
  const goodRows = (): number[] => Array.from(raw.keys()).filter((row) => !bad[row]);
  let good = goodRows();
  if (good.length < 5) {
    throw refused(
      ["conductivity"],
      `${where}: conductivity has ${good.length} good readings of ${rows}. Give a record with the background before and after.`,
      { code: "no-readings" },
    );
  }
  const resolution = stepOf(raw, good);
  const noise = noiseOf(raw, good, resolution);
  const spike = spikesIn(raw, good, Math.max(noise, resolution));
  for (const row of spike) bad[row] = 1;
  good = goodRows();
  const stuck = looks.forStuck ? stuckIn(raw, good, Math.max(noise, resolution)) : [];
  for (const row of stuck) bad[row] = 1;
  good = goodRows();

  const values = raw.slice();
  const quality = conductivity.quality.slice();
  const flag = (at: readonly number[], bits: number): void => {
    for (const row of at) quality[row] = (quality[row] as number) | bits;
  };
  flag([...faultCode, ...impossible, ...spike, ...stuck], Quality.suspect);
  flag(misplaced, Quality.suspect | Quality.estimated);
  const first = good[0] as number;
  const last = good.at(-1) as number;
  const bridges: (readonly [number, number])[] = [];
  for (let i = 1; i < good.length; i += 1) {
    const [a, b] = [good[i - 1] as number, good[i] as number];
    if (b === a + 1) continue;
    bridges.push([a + 1, b - 1]);
    const slope =
      ((values[b] as number) - (values[a] as number)) / ((time[b] as number) - (time[a] as number));
    for (let row = a + 1; row < b; row += 1) {
      values[row] = (values[a] as number) + slope * ((time[row] as number) - (time[a] as number));
      quality[row] = ((quality[row] as number) & ~Quality.gap) | Quality.estimated;
    }
  }
  for (let row = 0; row < rows; row += 1) {
    if (row >= first && row <= last) continue;
    values[row] = 0;
    quality[row] = (quality[row] as number) | Quality.gap;
  }
  return {
    time,
    values,
    quality,
    first,
    last,
    bridges,
    faults: { gap, faultCode, impossible, spike, stuck, time: misplaced },
    resolution,
    noise,
  };
}

/**
 * A notice for each sort of fault that was found, with its rows.
 *
 * @param where - The name that notices begin with.
 * @param clean - Readings, cleaned.
 * @returns The notices.
 */
export function faultNotices(where: string, clean: CleanReadings): Notice[] {
  const { faults, first, last, values } = clean;
  const said: Record<keyof ReadingFaults, readonly [one: string, more: string]> = {
    gap: ["holds nothing", "hold nothing"],
    faultCode: ["holds a fault code of the logger", "hold a fault code of the logger"],
    impossible: ["holds what no stream conducts", "hold what no stream conducts"],
    spike: [
      "stands apart from the readings on either side",
      "stand apart from the readings on either side",
    ],
    stuck: [
      "is equal while the water changed: the sensor was stuck",
      "are equal while the water changed: the sensor was stuck",
    ],
    time: ["has a time that does not rise", "have a time that does not rise"],
  };
  const notices = Object.entries(faults).flatMap(([fault, rows]: [string, readonly number[]]) => {
    if (rows.length === 0) return [];
    const inside = rows.every((row) => row >= first && row <= last);
    const done =
      fault === "time"
        ? "Their times are estimated from the rows on either side"
        : inside
          ? "A straight line bridges them"
          : "A straight line bridges those with good readings on both sides, the others are left out";
    return [
      {
        code: `readings-${fault === "faultCode" ? "fault-code" : fault}`,
        severity: "caution",
        path: [fault === "time" ? "time" : "conductivity", rows[0] as number],
        message: `${where}: ${counted(rows)} ${said[fault as keyof ReadingFaults][rows.length === 1 ? 0 : 1]}. ${done}. Look at the chart before the answer is used.`,
        actual: `${rows.length} of ${values.length} rows`,
        limit: "none",
      } satisfies Notice,
    ];
  });
  return notices;
}

/** `row 3`, `rows 3, 4 and 7 to 12`, long lists cut short. */
export function counted(rows: readonly number[]): string {
  const runs: string[] = [];
  for (let i = 0; i < rows.length;) {
    let j = i;
    while (j + 1 < rows.length && rows[j + 1] === (rows[j] as number) + 1) j += 1;
    runs.push(j > i + 1 ? `${rows[i]} to ${rows[j]}` : rows.slice(i, j + 1).join(", "));
    i = j + 1;
  }
  const shown = runs.slice(0, 6).join(", ");
  return `${rows.length === 1 ? "row" : `${rows.length} rows:`} ${shown}${runs.length > 6 ? " and more" : ""}`;
}

function timesOf(where: string, { time, conductivity }: LoggedConductivity): Float64Array {
  const given = time ?? conductivity.axis;
  if (given === undefined) {
    throw refused(
      ["time"],
      `${where}: time is missing, and the column has no axis. Give the seconds of each row.`,
      { code: "no-time" },
    );
  }
  return "secondsAt" in given
    ? Float64Array.from({ length: given.length }, (_, row) => given.secondsAt(row))
    : Float64Array.from(given);
}

/** Times that rise: those out of order, as few as possible, get a time between their neighbours. */
function risingTimes(
  where: string,
  logged: Float64Array,
  rows: number,
): { time: Float64Array; misplaced: number[] } {
  if (logged.length !== rows) {
    throw refused(
      ["time"],
      `${where}: time has ${logged.length} rows, conductivity ${rows}. Give as many.`,
      { code: "rows-differ" },
    );
  }
  const unfit = logged.findIndex((seconds) => !Number.isFinite(seconds));
  if (unfit >= 0) {
    throw refused(
      ["time", unfit],
      `${where}: time, row ${unfit}, is not a number of seconds. Leave the row out or give its time.`,
      { code: "not-a-time" },
    );
  }
  const kept = longestRise(logged);
  const time = logged.slice();
  if (kept.length === rows) return { time, misplaced: [] };
  if (kept.length < 2) {
    throw refused(
      ["time"],
      `${where}: time does not rise anywhere. Give the seconds of each row.`,
      { code: "not-a-time" },
    );
  }
  const steps = kept.slice(1).map((row, i) => {
    const before = kept[i] as number;
    return ((logged[row] as number) - (logged[before] as number)) / (row - before);
  });
  const step = medianOf(steps);
  const isKept = new Set(kept);
  const misplaced: number[] = [];
  let next = 0;
  for (let row = 0; row < rows; row += 1) {
    if (isKept.has(row)) {
      next += 1;
      continue;
    }
    misplaced.push(row);
    const a = kept[next - 1];
    const b = kept[next];
    time[row] =
      a === undefined
        ? (logged[b as number] as number) - step * ((b as number) - row)
        : b === undefined
          ? (logged[a] as number) + step * (row - a)
          : (logged[a] as number) +
            (((logged[b] as number) - (logged[a] as number)) * (row - a)) / (b - a);
  }
  return { time, misplaced };
}

/** Rows of a longest run of rising numbers, taken in order: what is left out is as few as possible. */
function longestRise(numbers: Float64Array): number[] {
  // ends[n] is the row with the least number that a rise of n + 1 rows can end in.
  const ends: number[] = [];
  const before = new Int32Array(numbers.length);
  for (const [row, number] of numbers.entries()) {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((numbers[ends[middle] as number] as number) < number) low = middle + 1;
      else high = middle;
    }
    before[row] = low > 0 ? (ends[low - 1] as number) : -1;
    ends[low] = row;
  }
  const rise: number[] = [];
  for (let row = ends.at(-1) ?? -1; row >= 0; row = before[row] as number) rise.push(row);
  return rise.toReversed();
}

/** The smallest step between neighbours; what a float carries beyond its digits does not count. */
function stepOf(values: Float64Array, good: readonly number[]): number {
  let least = Infinity;
  for (let i = 1; i < good.length; i += 1) {
    const [a, b] = [values[good[i - 1] as number] as number, values[good[i] as number] as number];
    const step = Math.abs(b - a);
    if (step > 1e-9 * Math.abs(b) && step < least) least = step;
  }
  return Number.isFinite(least) ? least : 0;
}

/**
 * Scatter of one reading, from the quieter part of the second differences, so that the slug itself does not count; not less than what a
 * step hides, 1/√12 of it.
 */
function noiseOf(values: Float64Array, good: readonly number[], resolution: number): number {
  const bends: number[] = [];
  for (let i = 2; i < good.length; i += 1) {
    const [a, b, c] = [2, 1, 0].map((back) => values[good[i - back] as number] as number) as [
      number,
      number,
      number,
    ];
    bends.push(Math.abs(a - 2 * b + c));
  }
  // A quarter of the absolute values of a normal distribution lie within 0.3186 standard deviations; that of a
  // second difference is √6 times that of a reading.
  const quiet = bends.toSorted((a, b) => a - b)[Math.floor(bends.length / 4)] ?? 0;
  return Math.max(quiet / (0.3186 * Math.sqrt(6)), resolution / Math.sqrt(12));
}

/** Hampel's rule over seven readings, for runs of up to three between readings that agree. */
function spikesIn(values: Float64Array, good: readonly number[], scale: number): number[] {
  const at = (i: number): number => values[good[i] as number] as number;
  const apart: boolean[] = good.map((_, i) => {
    const window = [];
    for (let j = i - halfWindow; j <= i + halfWindow; j += 1)
      if (j >= 0 && j < good.length) window.push(at(j));
    const median = medianOf(window);
    const deviation = deviationOverMad * medianOf(window.map((value) => Math.abs(value - median)));
    return Math.abs(at(i) - median) > spikeDeviations * Math.max(deviation, scale);
  });
  const spikes: number[] = [];
  for (let i = 0; i < good.length; i += 1) {
    if (!apart[i]) continue;
    const from = i;
    while (i + 1 < good.length && apart[i + 1]) i += 1;
    const [before, after] = [from - 1, i + 1];
    if (i - from >= halfWindow || before < 0 || after >= good.length) continue;
    const middle = (at(before) + at(after)) / 2;
    const height = Math.min(
      ...Array.from({ length: i - from + 1 }, (_, k) => Math.abs(at(from + k) - middle)),
    );
    if (Math.abs(at(after) - at(before)) > sidesAgree * height) continue;
    for (let k = from; k <= i; k += 1) spikes.push(good[k] as number);
  }
  return spikes;
}

/** Runs of equal readings that begin in movement and end in a jump, or never, away from where the record began: a background is quiet. */
function stuckIn(values: Float64Array, good: readonly number[], scale: number): number[] {
  const at = (i: number): number => values[good[i] as number] as number;
  const lead = medianOf(
    good.slice(0, Math.max(3, good.length / 20)).map((row) => values[row] as number),
  );
  const stuck: number[] = [];
  for (let from = 0; from < good.length;) {
    let to = from;
    while (to + 1 < good.length && at(to + 1) === at(from)) to += 1;
    const away = Math.abs(at(from) - lead) > moved * scale;
    if (away && to - from + 1 >= stuckRun && from >= movedBefore) {
      const before = Array.from({ length: movedBefore }, (_, k) => at(from - movedBefore + k));
      const movement = Math.max(...before) - Math.min(...before);
      const jump = to + 1 < good.length ? Math.abs(at(to + 1) - at(to)) : Infinity;
      if (movement > moved * scale && jump > moved * scale) {
        // The first of them may be the last true reading.
        for (let k = from + 1; k <= to; k += 1) stuck.push(good[k] as number);
      }
    }
    from = to + 1;
  }
  return stuck;
}

/**
 * Median.
 *
 * @param numbers - One or more.
 * @returns The middle one, or the mean of the middle two.
 */
export function medianOf(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}
