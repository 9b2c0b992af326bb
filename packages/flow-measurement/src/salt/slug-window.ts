import { leastSquares } from "@leat/numerics";

import type { CleanReadings } from "./readings.ts";

/** The part of the rows in which something was found. */
export type Rows = readonly [from: number, to: number];

/** Where the cloud of salt lies in a record, and the background on either side of it. */
export interface SlugWindow {
  /** Row of the greatest reading. */
  readonly peak: number;
  /** Whether the record begins within the cloud, so that its front is missing. */
  readonly cutInFront: boolean;
  /** Last row before the rise, and first row after the fall, as far as the scatter lets them be seen. */
  readonly arrival: number;
  /** First row at which the background is back; the last row where it never is. */
  readonly end: number;
  /** Rows that are summed: arrival to end with a margin. */
  readonly summed: Rows;
  /** Rows of the background before, or none. */
  readonly before: Rows | undefined;
  /** Rows of the background after, or none. */
  readonly after: Rows | undefined;
  /** Rise at the peak over the first background, S/m. */
  readonly rise: number;
  /** Level at the end of the record over that before, S/m. */
  readonly left: number;
  /** Whether that level still falls as a tail does. */
  readonly falling: boolean;
  /** Sum that the record ends too early for, by an exponential through its end, S·s/m; 0 where the background is back. */
  readonly missing: number;
}

/** A reading is of the cloud while it stands above the background by this share of the peak's rise. */
const footShare = 0.005;

/** A background that ends this share of the rise above where it began is told. */
export const levelShare = 0.01;

/** Share of the rows at either end that the first guess of the background is taken from. */
const endShare = 0.05;

/**
 * Finds the cloud.
 *
 * The first guess of the background is the median of the first twentieth of the rows, or of the first quarter of those before the peak if that is
 * less; where they rise already, it is that of the end. Back from the peak, the
 * cloud begins at the first row within 0.5 % of the rise, or three standard deviations of the scatter, of the background; forward
 * from the peak it ends at the first such row over the line from the background before to the one after. A tenth of the rise time
 * is added in front and a quarter of the fall time behind, as far as three rows of background are left; what lies outside is background.
 *
 * @param clean - Readings without faults, compensated where they are to be.
 * @returns What was found, or nothing where no reading stands out.
 */
export function findSlug(clean: CleanReadings): SlugWindow | undefined {
  const { time, values, first, last, noise, resolution } = clean;
  const rows = last - first + 1;
  let peak = first;
  for (let row = first; row <= last; row += 1)
    if ((values[row] as number) > (values[peak] as number)) peak = row;
  // However long the record, the ends must not reach into the cloud.
  const endRows = (side: number): number =>
    Math.max(3, Math.round(Math.min(endShare * rows, side / 4)));
  const few = endRows(peak - first);
  const fewAfter = endRows(last - peak);
  if (peak - first < few || last - peak < fewAfter) return undefined;
  const lead = medianIn(values, first, first + few - 1);
  const finish = medianIn(values, last - fewAfter + 1, last);

  // A record that begins in the cloud has no background in front.
  const middle = first + (few >> 1);
  const leads = meanIn(values, middle, first + few - 1) - meanIn(values, first, middle - 1);
  const begun =
    leads > Math.max(4 * noise, 2 * levelShare * ((values[peak] as number) - lead)) &&
    lead > finish;
  const start = begun ? finish : lead;
  const rise = (values[peak] as number) - start;
  if (!(rise > 8 * noise)) return undefined;

  // Scatter is averaged over as few rows as bring it below the foot of the cloud.
  const wanted = (3 * noise) / (footShare * rise);
  const width = Math.min(Math.ceil(wanted * wanted), Math.floor(rows / 20));
  const smooth = smoothed(values, first, last, Math.floor(width / 2));
  // Steps do not average away where the water stands still.
  const foot = Math.max(
    (3 * noise) / Math.sqrt(Math.max(1, width)),
    0.6 * resolution,
    footShare * rise,
  );

  const left = finish - start;
  const tail = tailOf(clean, smooth, peak, start);
  const settles = Math.abs(left) <= Math.max(3 * noise, 1.5 * resolution, levelShare * rise);
  const falling = !settles && left > 0 && tail.falling;
  // A median stands for the middle of its rows.
  const [t0, t1] = [time[first + (few >> 1)] as number, time[last - (fewAfter >> 1)] as number];
  const lineTo = falling ? start : finish;
  const over = (row: number): number =>
    (smooth[row] as number) - start - ((lineTo - start) * ((time[row] as number) - t0)) / (t1 - t0);

  let arrival = peak;
  while (arrival > first && over(arrival) > foot) arrival -= 1;
  let end = peak;
  while (end < last && over(end) > foot) end += 1;
  // Over a line to the end of the record it always comes back; over the first background it may not.
  const returned = over(end) <= foot;

  const front = Math.max(1, Math.ceil(0.1 * (peak - arrival)));
  // What the first guess was taken from is background.
  const from = Math.max(arrival - front, begun ? first : first + few);
  const margin = Math.ceil(0.25 * (end - peak));
  const to = returned ? Math.max(end, Math.min(end + margin, last - 3)) : last;
  return {
    peak,
    cutInFront: begun && over(arrival) > foot,
    arrival: Math.max(arrival, from),
    end,
    summed: [from, to],
    before: from - first >= 3 ? [first, from - 1] : undefined,
    after: returned && last - to >= 3 ? [to + 1, last] : undefined,
    rise,
    left,
    falling: falling || !returned,
    missing: falling || !returned ? Math.max(0, tail.missing) : 0,
  };
}

/**
 * The end of a record as a tail: whether it still falls, and the sum that an exponential through it would add.
 *
 * The last fifth of the rows after the peak is looked at in halves. It falls where the second half is below the first by
 * more than the scatter, and by a quarter or more of what the fall between them means for an exponential that began at half the peak.
 */
function tailOf(
  { time, noise, last }: CleanReadings,
  smooth: Float64Array,
  peak: number,
  start: number,
): { falling: boolean; missing: number } {
  const over = (row: number): number => (smooth[row] as number) - start;
  const rows = Math.max(6, Math.round(0.2 * (last - peak)));
  const from = Math.max(peak + 1, last - rows + 1);
  const middle = (from + last + 1) >> 1;
  const first = meanIn(smooth, from, middle - 1) - start;
  const second = meanIn(smooth, middle, last) - start;
  const scatter = noise / Math.sqrt(Math.max(1, (last - from) / 2));
  const apart = meanIn(time, middle, last) - meanIn(time, from, middle - 1);
  const halved = Array.from({ length: last - peak }, (_, i) => peak + 1 + i).find(
    (row) => over(row) <= over(peak) / 2,
  );
  const constant = halved
    ? ((time[halved] as number) - (time[peak] as number)) / Math.LN2
    : (time[last] as number) - (time[peak] as number);
  const expected = first * -Math.expm1(-apart / constant);
  const drop = first - second;
  const falling = drop > Math.max(2 * scatter, 0.25 * expected * Math.min(1, constant / apart));
  const fitted: number[] = [];
  for (let row = from; row <= last; row += 1) if (over(row) > Math.max(noise, 0)) fitted.push(row);
  if (fitted.length < 3 || !(second > 0)) return { falling, missing: 0 };
  const origin = time[last] as number;
  const { x } = leastSquares(
    fitted.map((row) => [1, (time[row] as number) - origin]),
    fitted.map((row) => Math.log(over(row))),
  );
  const [level, slope] = [x[0] as number, x[1] as number];
  return { falling, missing: slope < 0 ? Math.exp(level) / -slope : 0 };
}

/** Running mean over so many rows on either side, fewer at the ends. */
function smoothed(values: Float64Array, first: number, last: number, half: number): Float64Array {
  const smooth = values.slice();
  if (half === 0) return smooth;
  for (let row = first; row <= last; row += 1) {
    const reach = Math.min(half, row - first, last - row);
    smooth[row] = meanIn(values, row - reach, row + reach);
  }
  return smooth;
}

/**
 * Mean of some rows.
 *
 * @param values - Numbers.
 * @param from - First row.
 * @param to - Last row.
 * @returns The mean.
 */
export function meanIn(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let row = from; row <= to; row += 1) sum += values[row] as number;
  return sum / (to - from + 1);
}

function medianIn(values: Float64Array, from: number, to: number): number {
  const sorted = values.slice(from, to + 1).toSorted();
  const middle = sorted.length >> 1;
  return sorted.length % 2
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}
