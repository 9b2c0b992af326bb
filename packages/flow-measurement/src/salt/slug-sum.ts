import { Quality } from "@leat/quantity/column";

import type { CleanReadings } from "./readings.ts";
import { meanIn, type Rows } from "./slug-window.ts";

/** Where the sum and the background are taken. */
export interface SumPlan {
  /** Rows that are summed. */
  readonly summed: Rows;
  /** Rows of the background before. */
  readonly before: Rows | undefined;
  /** Rows of the background after. */
  readonly after: Rows | undefined;
}

/** Readings on either side of a bridge that its slope is read from. */
const sideRows = 5;

/** The sum over the window, and what it rests on, in coherent units. */
export interface SlugSum {
  /** The sum, S·s/m. */
  readonly area: number;
  /** Background before, 0 without one. */
  readonly before: number;
  /** Background after, 0 without one. */
  readonly after: number;
  /** What one standard uncertainty of the background before changes the sum by. */
  readonly fromBefore: number;
  /** The same of the background after. */
  readonly fromAfter: number;
  /** Standard uncertainty from scatter, from the spacing of the readings and from bridges. */
  readonly fromSampling: number;
  /** Row of the greatest rise. */
  readonly peakRow: number;
  /** That rise. */
  readonly peakRise: number;
  /** The reading there. */
  readonly peakReading: number;
  /** Share of the sum under bridged rows. */
  readonly estimatedShare: number;
  /** Background under each row. */
  readonly baseline: Float64Array;
}

/**
 * Sums the rise over the background by trapezoids, and what each source contributes to the sum.
 *
 * @param clean - Readings without faults.
 * @param plan - Where to sum.
 * @returns The sum.
 */
export function sumSlug(clean: CleanReadings, plan: SumPlan): SlugSum {
  const { time, values, noise, resolution } = clean;
  const [from, to] = plan.summed;
  const level = (rows: Rows | undefined): { mean: number; at: number; doubt: number } => {
    if (!rows) return { mean: 0, at: 0, doubt: 0 };
    const n = rows[1] - rows[0] + 1;
    // What a step hides is the same in every row of a quiet background: it does not average away.
    const doubt = Math.hypot(noise / Math.sqrt(n), resolution / Math.sqrt(12));
    return { mean: meanIn(values, ...rows), at: meanIn(time, ...rows), doubt };
  };
  const before = level(plan.before);
  const after = level(plan.after);
  // Share of the background that comes from behind: 0 before, 1 after, along the line between.
  const share = (row: number): number =>
    !plan.after
      ? 0
      : !plan.before
        ? 1
        : ((time[row] as number) - before.at) / (after.at - before.at);
  const baseline = values.map((_, row) => before.mean + share(row) * (after.mean - before.mean));
  const bridges = clean.bridges.filter(([a, b]) => b >= from && a <= to);
  const isBridged = new Uint8Array(values.length);
  for (const [a, b] of bridges) isBridged.fill(1, a, b + 1);

  const over = (row: number): number => (values[row] as number) - (baseline[row] as number);
  let area = 0;
  let estimated = 0;
  let length = 0;
  let behind = 0;
  let squares = 0;
  let peakRow = from;
  for (let row = from; row <= to; row += 1) {
    const back = row > from ? (time[row] as number) - (time[row - 1] as number) : 0;
    const forth = row < to ? (time[row + 1] as number) - (time[row] as number) : 0;
    const weight = (back + forth) / 2;
    area += weight * over(row);
    length += weight;
    behind += weight * share(row);
    squares += weight * weight;
    if (isBridged[row]) estimated += weight * over(row);
    if (over(row) > over(peakRow)) peakRow = row;
  }
  // The error of trapezoids falls with the square of the spacing: a third of what every second reading changes.
  const spacing = Math.max(
    ...[0, 1].map((skip) => Math.abs(area - everySecond(time, over, from, to, skip)) / 3),
  );
  return {
    area,
    before: before.mean,
    after: after.mean,
    fromBefore: (length - behind) * before.doubt,
    fromAfter: behind * after.doubt,
    fromSampling: Math.hypot(
      noise * Math.sqrt(squares),
      spacing,
      ...bridges.map(([a, b]) => bridgeDoubt(clean, a, b)),
    ),
    peakRow,
    peakRise: over(peakRow),
    peakReading: values[peakRow] as number,
    estimatedShare: estimated / area,
    baseline,
  };
}

function everySecond(
  time: Float64Array,
  over: (row: number) => number,
  from: number,
  to: number,
  skip: number,
): number {
  let area = 0;
  let last = from;
  for (let row = from + 1; row <= to; row += 1) {
    if ((row - from) % 2 === skip && row !== to) continue;
    area += (((time[row] as number) - (time[last] as number)) * (over(row) + over(last))) / 2;
    last = row;
  }
  return area;
}

/** What a cubic through the slopes on either side of a bridge would add to its straight line. */
function bridgeDoubt(
  { time, values, first, last, quality }: CleanReadings,
  a: number,
  b: number,
): number {
  const side = (from: number, by: number): number => {
    let to = from;
    for (let k = 1; k < sideRows; k += 1) {
      const next = to + by;
      if (next < first || next > last || (quality[next] as number) & Quality.estimated) break;
      to = next;
    }
    return to === from
      ? 0
      : ((values[to] as number) - (values[from] as number)) /
          ((time[to] as number) - (time[from] as number));
  };
  const width = (time[b + 1] as number) - (time[a - 1] as number);
  return (width * width * Math.abs(side(a - 1, -1) - side(b + 1, 1))) / 12;
}

/**
 * Rows of the background.
 *
 * @param plan - Where it is taken.
 * @returns Its rows, those before the cloud first.
 */
export function backgroundRows({ before, after }: SumPlan): number[] {
  return [before, after].flatMap((rows) =>
    rows ? Array.from({ length: rows[1] - rows[0] + 1 }, (_, i) => rows[0] + i) : [],
  );
}
