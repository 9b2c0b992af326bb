import { seededRandom } from "@leat/numerics";
import {
  coverage95,
  cubicMetrePerSecond,
  percent,
  type Quantity,
  QuantityError,
} from "@leat/quantity";

import { dailyFlows, firstMonthOf } from "../record/daily-flows.ts";
import { flowOf } from "../record/flow-of.ts";
import { type NoticeOptions, yearsOf } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import type { AnnualDurationsInput } from "./duration-by-period.ts";
import { beyondPositions, curveOf, fewYears, flowExceeded, requireShare } from "./flow-duration.ts";
import type { PlottingPosition } from "./plotting-position.ts";
import { weibullPosition } from "./weibull-position.ts";

/** What is asked of {@link durationConfidence}. */
export interface DurationConfidenceInput extends AnnualDurationsInput {
  /** Shares of the time to look at. */
  readonly shares: readonly Quantity<"ratio">[];
  /** How often years are drawn. 1000 by default. */
  readonly draws?: number | undefined;
  /** Seed of the draws: the same seed gives the same answer. */
  readonly seed?: string | number | undefined;
}

/** How far other years would have moved a curve. */
export interface DurationConfidence {
  /** One for each share. */
  readonly quantiles: readonly ConfidentFlow[];
  /** Complete years that were drawn from. */
  readonly years: number;
  /** Years that are not complete, and how many of their days are missing. */
  readonly excluded: readonly { readonly name: string; readonly missing: number }[];
  /** How often years were drawn. */
  readonly draws: number;
  /** Seed of the draws. */
  readonly seed: string | number;
}

/** A flow of a curve, and how far other years would have moved it. */
export interface ConfidentFlow {
  /** Share of the time. */
  readonly share: Quantity<"ratio">;
  /**
   * Flow of all complete years together. Beside the uncertainty of the record it has a source `years of the record`:
   * the standard deviation over the draws.
   */
  readonly flow: Quantity<"volume flow">;
  /** Lower end of the 95 % interval of the draws. */
  readonly low: Quantity<"volume flow">;
  /** Upper end of it. */
  readonly high: Quantity<"volume flow">;
}

/**
 * How sure the quantiles of a flow-duration curve are: a bootstrap of whole years.
 *
 * Days are not drawn one by one, because a dry day follows a dry day: thousands of days are worth far fewer. Whole
 * years are, as many as there are, some twice and some never, and the curve is made anew each time. Years are
 * taken to be independent of each other and alike; where wet and dry years come in runs, or the climate moves, the
 * truth is wider.
 *
 * @param input - The record, the shares, how often and from which seed years are drawn.
 * @param options - Told where fewer than ten years can be drawn from.
 * @returns For each share the flow, with the interval that holds 95 % of the draws.
 * @throws NonPhysicalError fewer than two complete years; a share outside the positions of the days; what
 * {@link flowDuration} refuses.
 * @example
 * ```ts
 * import { durationConfidence } from "@leat/hydrology";
 * import { day, litrePerSecond, percent } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // Two invented years, one of 10 and one of 30 L/s: a draw takes either one twice, or both.
 * const axis = TimeAxis.regular({ start: "2022-01-01", step: day.of(1), count: 730, utcOffset: "+10:00" });
 * const flows = Array.from({ length: 730 }, (_, row) => (row < 365 ? 10 : 30));
 * const { quantiles } = durationConfidence({
 *   record: Column.of(litrePerSecond, flows, { axis }),
 *   shares: [percent.of(95)],
 *   seed: "two years",
 * });
 * quantiles[0]?.low.in(litrePerSecond); // => 10
 * quantiles[0]?.high.in(litrePerSecond); // => 30
 * ```
 * @see R. M. Vogel and N. M. Fennessey, Flow-duration curves I, 1994, for curves year by year
 */
export function durationConfidence(
  input: DurationConfidenceInput,
  { onNotice }: NoticeOptions = {},
): DurationConfidence {
  const { shares, draws = 1000, seed = 1, position = weibullPosition } = input;
  if (!Number.isInteger(draws) || draws < 100) {
    throw new QuantityError(
      "not-finite",
      `duration-confidence: ${draws} draws show no 95 % interval; take 100 or more`,
    );
  }
  for (const share of shares) requireShare("duration-confidence", share);
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { record, unusable, calendar } = daily;
  const all = yearsOf(daily, input.missingShare ?? percent.of(0));
  const complete = all.flatMap((each, year) => (each.complete ? [year] : []));
  if (complete.length < 2) {
    throw refusal(
      "record/few-complete-years",
      ["record"],
      `duration-confidence: record has ${complete.length} complete years of ${all.length}, and one year says nothing about another. Give two or more, or state the share of days that may be missing.`,
      { actual: String(complete.length), limit: "at least 2" },
    );
  }
  const flows = new Float64Array(record.length);
  const yearOf = new Uint32Array(record.length);
  const daysIn = new Uint32Array(complete.length);
  let days = 0;
  complete.forEach((year, index) => {
    const end = calendar.yearStarts[year + 1] as number;
    const before = days;
    for (let row = calendar.yearStarts[year] as number; row < end; row++) {
      if (((record.quality[row] as number) & unusable) !== 0) continue;
      flows[days] = record.values[row] as number;
      yearOf[days] = index;
      days++;
    }
    daysIn[index] = days - before;
  });
  const order = new Uint32Array(days)
    .map((_, day) => day)
    .toSorted((a, b) => (flows[b] as number) - (flows[a] as number));
  const sorted = Float64Array.from(order, (day) => flows[day] as number);
  const yearOfSorted = Uint32Array.from(order, (day) => yearOf[day] as number);
  // Years differ in length: every share must lie among the positions of the shortest draw that can be.
  const least = complete.length * Math.min(...daysIn);
  const reach = [shareAt(position, 1, least), shareAt(position, least, least)] as const;
  for (const share of shares) {
    if (!(share["~si"] >= reach[0] && share["~si"] <= reach[1]))
      throw beyondPositions("duration-confidence", share, reach, least);
  }
  const wanted = shares.map((share) => share["~si"]);
  const drawn = draw({ sorted, yearOfSorted, daysIn, wanted, position, draws, seed });
  const curve = curveOf(record, sorted.slice(), position);
  const quantiles = shares.map((share, index) => {
    const flow = flowExceeded({ duration: curve, share });
    const values = (drawn[index] as Float64Array).toSorted();
    const half = cubicMetrePerSecond.of(coverage95 * deviation(values));
    return {
      share,
      flow: flow.plusMinus(half, "years of the record"),
      low: flowOf(record, middle(values, 0.025)),
      high: flowOf(record, middle(values, 0.975)),
    };
  });
  if (onNotice && complete.length < 10) onNotice(fewYears("duration-confidence", complete.length));
  return {
    quantiles,
    years: complete.length,
    excluded: all.filter((each) => !each.complete).map(({ name, missing }) => ({ name, missing })),
    draws,
    seed,
  };
}

/** What a draw needs: all days from the largest flow, and whose year each is. */
interface Draw {
  readonly sorted: Float64Array;
  readonly yearOfSorted: Uint32Array;
  readonly daysIn: Uint32Array;
  readonly wanted: readonly number[];
  readonly position: PlottingPosition;
  readonly draws: number;
  readonly seed: string | number;
}

/**
 * Flows at the shares, draw by draw. Days are sorted once: a year that is drawn twice counts each of its days twice
 * on the way down.
 */
function draw(of: Draw): Float64Array[] {
  const { sorted, yearOfSorted, daysIn, wanted, position, draws, seed } = of;
  const random = seededRandom(seed);
  const years = daysIn.length;
  const times = new Uint32Array(years);
  const drawn = wanted.map(() => new Float64Array(draws));
  // The last rank that each day of the sorted list takes up.
  const upTo = new Uint32Array(sorted.length);
  const flowOfRank = (rank: number): number => {
    let low = 0;
    let high = upTo.length - 1;
    while (low < high) {
      const half = (low + high) >>> 1;
      if ((upTo[half] as number) < rank) low = half + 1;
      else high = half;
    }
    return sorted[low] as number;
  };
  for (let n = 0; n < draws; n++) {
    times.fill(0);
    for (let year = 0; year < years; year++) {
      const chosen = random.below(years);
      times[chosen] = (times[chosen] as number) + 1;
    }
    let size = 0;
    for (let day = 0; day < sorted.length; day++) {
      size += times[yearOfSorted[day] as number] as number;
      upTo[day] = size;
    }
    wanted.forEach((share, index) => {
      const rank = rankAt(position, share, size);
      const whole = Math.min(Math.floor(rank), size - 1);
      const upper = flowOfRank(whole);
      (drawn[index] as Float64Array)[n] = upper + (rank - whole) * (flowOfRank(whole + 1) - upper);
    });
  }
  return drawn;
}

/** The rank, not whole, at a share that lies among the positions. */
function rankAt(position: PlottingPosition, share: number, size: number): number {
  let low = 1;
  let high = size;
  while (high - low > 1) {
    const half = (low + high) >>> 1;
    if (shareAt(position, half, size) <= share) low = half;
    else high = half;
  }
  const from = shareAt(position, low, size);
  return low + (share - from) / (shareAt(position, high, size) - from);
}

function shareAt({ body, constants }: PlottingPosition, m: number, n: number): number {
  return body({ m, n, ...constants });
}

/** A quantile of sorted draws. */
function middle(values: Float64Array, share: number): number {
  const place = share * (values.length - 1);
  const low = Math.floor(place);
  const a = values[low] as number;
  return a + (place - low) * ((values[low + 1] ?? a) - a);
}

function deviation(values: Float64Array): number {
  const n = values.length;
  const mean = values.reduce((sum, each) => sum + each, 0) / n;
  return Math.sqrt(values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (n - 1));
}
