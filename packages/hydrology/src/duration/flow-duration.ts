import { commonPractice, type Notice } from "@leat/formula";
import { percent, type Quantity, QuantityError } from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";

import {
  type DailyFlows,
  dailyFlows,
  type DailyRecord,
  type DayCounts,
  firstMonthOf,
} from "../record/daily-flows.ts";
import { flowOf, sharedBy } from "../record/flow-of.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import { type PlottingPosition, sharesOf, valueAtShare } from "./plotting-position.ts";
import { sortDescending } from "./sort-descending.ts";
import { weibullPosition } from "./weibull-position.ts";

/** What is asked of {@link flowDuration}. */
export interface FlowDurationInput extends DailyRecord {
  /** Months of the calendar to take, 1 to 12: one month, a season. All by default. */
  readonly months?: readonly number[] | undefined;
  /** Years to take, by the calendar year in which each begins. All by default. */
  readonly years?: readonly number[] | undefined;
  /** Formula for the share of a ranked flow; {@link weibullPosition} by default. */
  readonly position?: PlottingPosition | undefined;
}

/** A flow-duration curve. */
export interface FlowDuration {
  /** Flows from the largest to the smallest: they never rise. They keep offset and scale of the record. */
  readonly flows: Column<"volume flow">;
  /** Share of the time that each is equalled or exceeded. */
  readonly shares: Column<"ratio">;
  /** What became of the days of the record. */
  readonly days: DayCounts;
  /** Years that have a day in the curve. */
  readonly years: number;
  /** The usual percentages that the curve reaches, each with its flow. */
  readonly table: readonly DurationRow[];
}

/** A line of a duration table. */
export interface DurationRow {
  /** Share of the time. */
  readonly share: Quantity<"ratio">;
  /** Flow that is equalled or exceeded for that share. */
  readonly flow: Quantity<"volume flow">;
}

/** Percentages of the usual table. */
const usual = [
  1, 2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 98, 99,
];

/**
 * The flow-duration curve of a daily record: for what share of the time a flow is equalled or exceeded.
 *
 * All days that are taken are sorted together, whatever their order was: the curve knows nothing of dry spells. A
 * curve of several years promises the average year, not the next one: see {@link durationConfidence}. Quantiles are
 * read with {@link flowExceeded}, on straight lines between the positions; with Weibull's they are type 6 of Hyndman
 * and Fan.
 *
 * The uncertainty of the flows is that which all days share, offset and scale; noise of single days is left out: it
 * hardly moves a quantile of thousands of days.
 *
 * @param input - The record, and what of it is taken.
 * @param options - Told where fewer than ten years are in the curve, and where the usual table is cut short.
 * @returns The curve and the usual table.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no flow in the months and years asked for.
 * @throws QuantityError a column of another kind, a month that is none.
 * @example
 * ```ts
 * import { flowDuration, flowExceeded } from "@leat/hydrology";
 * import { day, format, litrePerSecond, percent } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // An invented stream that falls from 99 to 1 L/s in 99 days.
 * const axis = TimeAxis.regular({ start: "2024-01-01", step: day.of(1), count: 99, utcOffset: "+10:00" });
 * const flows = Array.from({ length: 99 }, (_, row) => 99 - row);
 * const duration = flowDuration({ record: Column.of(litrePerSecond, flows, { axis }) });
 * format(flowExceeded({ duration, share: percent.of(95) }), litrePerSecond, 3); // => "5.00 L/s"
 * ```
 */
export function flowDuration(
  input: FlowDurationInput,
  { onNotice }: NoticeOptions = {},
): FlowDuration {
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { picked, days, years } = pick(daily, input);
  const curve = curveOf(daily.record, picked, input.position ?? weibullPosition);
  const table = usual.flatMap((n) => {
    const flow = flowAt(curve, n / 100);
    return flow === undefined ? [] : [{ share: percent.of(n), flow: flowOf(curve.flows, flow) }];
  });
  if (onNotice && years < 10) onNotice(fewYears("flow-duration", years));
  if (onNotice && table.length < usual.length) onNotice(cutShort(curve, days.used));
  return { ...curve, days, years, table };
}

/**
 * The flow that is equalled or exceeded for a share of the time: Q95 at 95 %.
 *
 * @param of - The curve, and the share.
 * @returns The flow, on a straight line between the two nearest days.
 * @throws NonPhysicalError a share outside the positions of the curve's days: the curve is not drawn on.
 * @throws QuantityError `kind` for a share that is no ratio.
 * @example
 * ```ts
 * import { flowDuration, flowExceeded } from "@leat/hydrology";
 * import { day, litrePerSecond, percent } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-01-01", step: day.of(1), count: 4, utcOffset: "+10:00" });
 * const duration = flowDuration({ record: Column.of(litrePerSecond, [40, 10, 30, 20], { axis }) });
 * flowExceeded({ duration, share: percent.of(60) }).in(litrePerSecond); // => 20
 * flowExceeded({ duration, share: percent.of(95) });
 * // throws NonPhysicalError: flow-exceeded: share = 95 % is outside 20 % to 80 %, the positions of 4 days…
 * ```
 */
export function flowExceeded(of: {
  readonly duration: Pick<FlowDuration, "flows" | "shares">;
  readonly share: Quantity<"ratio">;
}): Quantity<"volume flow"> {
  const { duration, share } = of;
  requireShare("flow-exceeded", share);
  const flow = flowAt(duration, share["~si"]);
  if (flow !== undefined) return flowOf(duration.flows, flow);
  throw beyondPositions("flow-exceeded", share, ends(duration.shares), duration.flows.length);
}

/**
 * What is said of a share that a curve does not reach.
 *
 * @param where - Who says so.
 * @param share - The share.
 * @param reach - Shares of the first and the last rank.
 * @param days - Days of the curve.
 * @returns The error, to be thrown.
 */
export function beyondPositions(
  where: string,
  share: Quantity<"ratio">,
  reach: readonly [number, number],
  days: number,
): Error {
  const limit = reach.map(shown).join(" to ");
  return refusal(
    `${where}/beyond-positions`,
    ["share"],
    `${where}: share = ${String(share)} is outside ${limit}, the positions of ${days} days. Ask for a share between them, or give a longer record: the curve is not drawn on.`,
    {
      actual: String(share),
      limit,
      source: commonPractice.at("no extrapolation beyond the plotting positions", "practice"),
    },
  );
}

/** Refuses what is no ratio. */
export function requireShare(where: string, share: Quantity<"ratio">): void {
  if ((share as Quantity<string> | undefined)?.kind === "ratio") return;
  throw new QuantityError(
    "kind",
    `${where}: ${String(share)} is no share; give a ratio, such as 95 %`,
  );
}

/** Days picked from a record, in its order, and what became of the others. */
interface Picked {
  readonly picked: Float64Array;
  readonly days: DayCounts;
  readonly years: number;
}

/**
 * Picks days by quality, month and year.
 *
 * @param daily - The record, looked through.
 * @param asked - Months and years.
 * @returns The flows, and counts.
 */
function pick(
  { record, unusable, calendar }: DailyFlows,
  asked: Pick<FlowDurationInput, "months" | "years">,
): Picked {
  const { values, quality } = record;
  const { months, yearStarts, beginsIn } = calendar;
  const picked = new Float64Array(values.length);
  // Bit m is set where month m is asked for.
  const wanted = monthBits(asked.months);
  const wantedYears = asked.years && new Set(asked.years);
  let used = 0;
  let years = 0;
  let usable = 0;
  let gaps = 0;
  for (let year = 0; year < beginsIn.length; year++) {
    const end = yearStarts[year + 1] as number;
    const before = used;
    const bits = !wantedYears || wantedYears.has(beginsIn[year] as number) ? wanted : 0;
    for (let row = yearStarts[year] as number; row < end; row++) {
      const flags = quality[row] as number;
      if ((flags & unusable) !== 0) {
        if ((flags & Quality.gap) !== 0) gaps++;
        continue;
      }
      usable++;
      if (((bits >> (months[row] as number)) & 1) === 0) continue;
      // A negative zero, of which the bits are not in order, becomes a zero.
      picked[used] = (values[row] as number) + 0;
      used++;
    }
    if (used > before) years++;
  }
  if (used === 0) {
    throw refusal(
      "record/nothing-asked",
      [asked.months ? "months" : "years"],
      `flow-duration: record has no day that is taken in months ${asked.months?.join(", ") ?? "1 to 12"} of years ${asked.years?.join(", ") ?? "all"}. It begins in ${beginsIn[0]} and ends in ${beginsIn.at(-1)}.`,
    );
  }
  const leftOut = values.length - usable - gaps;
  return {
    picked: picked.subarray(0, used),
    days: { used, gaps, leftOut, notAsked: usable - used },
    years,
  };
}

function monthBits(months: readonly number[] | undefined): number {
  if (months === undefined) return ~0;
  let bits = 0;
  for (const month of months) {
    if (!(Number.isInteger(month) && month >= 1 && month <= 12)) {
      throw new QuantityError(
        "time",
        `flow-duration: month ${month} is none; give months, 1 to 12`,
      );
    }
    bits |= 1 << month;
  }
  return bits;
}

/**
 * Sorts flows into a curve.
 *
 * @param record - Where they come from.
 * @param picked - The flows, at least one; used up.
 * @param position - Formula for their shares.
 * @returns The curve, largest flow first.
 */
export function curveOf(
  record: Column<"volume flow">,
  picked: Float64Array,
  position: PlottingPosition,
): Pick<FlowDuration, "flows" | "shares"> {
  const none = new Uint8Array(picked.length);
  const uncertainty = sharedBy(record);
  return {
    flows: Column.wrap("volume flow", sortDescending(picked), none, { uncertainty }),
    shares: Column.wrap("ratio", sharesOf(position, picked.length), none),
  };
}

/** Flow at a share of a curve; nothing where it does not reach so far. */
export function flowAt(
  { flows, shares }: Pick<FlowDuration, "flows" | "shares">,
  share: number,
): number | undefined {
  return valueAtShare(shares.values, flows.values, share);
}

/**
 * What is said of a record that is short.
 *
 * @param where - Who says so.
 * @param years - How many years there are.
 * @returns The notice.
 */
export function fewYears(where: string, years: number): Notice {
  return {
    code: `${where}/few-years`,
    severity: "caution",
    path: ["record"],
    message: `${where}: record has days of ${years} years, which is fewer than 10. Wet and dry years come in runs: compare with a longer record near by.`,
    actual: String(years),
    limit: "at least 10",
    source: commonPractice.at("ten years for a duration curve", "practice"),
  };
}

function cutShort({ shares }: Pick<FlowDuration, "shares">, days: number): Notice {
  const [from, to] = ends(shares);
  return {
    code: "flow-duration/cut-short",
    severity: "note",
    path: ["record"],
    message: `flow-duration: ${days} days reach from ${shown(from)} to ${shown(to)} of the time. The table stops there: the curve is not drawn on.`,
    actual: `${shown(from)} to ${shown(to)}`,
    limit: "1 % to 99 %",
    source: commonPractice.at("no extrapolation beyond the plotting positions", "practice"),
  };
}

function ends({ values }: Column<"ratio">): [number, number] {
  return [values[0] as number, values[values.length - 1] as number];
}

function shown(share: number): string {
  return `${Number((100 * share).toPrecision(4))} %`;
}
