import { type Citation, commonPractice, type Notice } from "@leat/formula";
import { percent, type Quantity, QuantityError } from "@leat/quantity";

import { dateOf, yearName } from "../record/calendar.ts";
import { type DailyFlows, dailyFlows, type DailyRecord } from "../record/daily-flows.ts";
import { flowOf } from "../record/flow-of.ts";
import { type NoticeOptions, type RunOfDays, yearsOf } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import { usgsLowFlow } from "./sources.ts";

/** What is asked of {@link annualMinima}. */
export interface AnnualMinimaInput extends DailyRecord {
  /** Days that are averaged: 1, 7, 30. 7 by default. */
  readonly days?: number | undefined;
  /** Share of a year's days that may be missing. None by default: the lowest days may be among those. */
  readonly missingShare?: Quantity<"ratio"> | undefined;
}

/** The lowest mean of some days in each year. */
export interface AnnualMinima {
  /** Days that are averaged. */
  readonly days: number;
  /** Month whose first day begins a year. */
  readonly firstMonth: number;
  /** One for each year that is taken, in order. */
  readonly years: readonly AnnualMinimum[];
  /** Years left out because too many of their days are missing, and how many are. */
  readonly excluded: readonly { readonly name: string; readonly missing: number }[];
  /** Mean of the minima: MAM7 for 7 days. */
  readonly mean: Quantity<"volume flow">;
  /** Whose practice it is. */
  readonly source: Citation;
}

/** The lowest mean of some days in one year. */
export interface AnnualMinimum {
  /** As the year is called: `2003`, or `2003/04` where it does not begin in January. */
  readonly name: string;
  /** The lowest mean. */
  readonly flow: Quantity<"volume flow">;
  /** The days that it is the mean of; the first such where there are several. */
  readonly at: RunOfDays;
  /** Days of the year that are missing. */
  readonly missing: number;
}

/** April: the climatic year. */
const april = 4;

/**
 * The lowest mean of seven days in a row, or of another number, in each year.
 *
 * The days lie in one year, so that no dry spell counts twice, and none of them is missing. Years begin in April
 * unless the input says otherwise: the climatic year of the U.S. Geological Survey, which keeps a northern autumn
 * drought whole. The axis is not asked, because a water year often begins in the middle of the low season. Choose a
 * month in which the stream is high: where the minima touch the ends of the years, `onNotice` is told. The trade
 * calls such a year now by the year in which it begins, now by that in which it ends: here it is called 2003/04.
 *
 * @param input - The record, what of it is taken, days to average, days that a year may lack.
 * @param options - Told of years left out, and of a low season that is split.
 * @returns The minima, their mean, and the years that are left out.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no year that can be taken.
 * @throws QuantityError a column of another kind, a number of days that is none.
 * @example
 * ```ts
 * import { annualMinima } from "@leat/hydrology";
 * import { day, format, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // An invented year from April, with one dry week in September.
 * const axis = TimeAxis.regular({ start: "2022-04-01", step: day.of(1), count: 365, utcOffset: "+00:00" });
 * const flows = Array.from({ length: 365 }, (_, row) => (row >= 160 && row < 167 ? 5 : 40));
 * const { years } = annualMinima({ record: Column.of(litrePerSecond, flows, { axis }) });
 * years[0]?.name; // => "2022/23"
 * format(years[0].flow, litrePerSecond, 3); // => "5.00 L/s"
 * years[0]?.at; // => { row: 160, from: "2022-09-08", days: 7 }
 * ```
 */
export function annualMinima(
  input: AnnualMinimaInput,
  { onNotice }: NoticeOptions = {},
): AnnualMinima {
  const { days = 7 } = input;
  if (!(Number.isInteger(days) && days >= 1 && days <= 183)) {
    throw new QuantityError(
      "time",
      `annual-minima: ${days} days cannot be averaged; state a whole number from 1 to 183`,
    );
  }
  const daily = dailyFlows(input, april);
  const { record, calendar } = daily;
  const axis = record.axis as NonNullable<typeof record.axis>;
  const all = yearsOf(daily, input.missingShare ?? percent.of(0));
  const years: AnnualMinimum[] = [];
  const excluded: { name: string; missing: number }[] = [];
  let sum = 0;
  let atEnds = 0;
  all.forEach(({ name, missing, complete }, year) => {
    const from = calendar.yearStarts[year] as number;
    const to = calendar.yearStarts[year + 1] as number;
    const row = complete ? lowestRun(daily, from, to, days) : -1;
    if (row < 0) {
      excluded.push({ name, missing });
      return;
    }
    const flow = meanOf(record.values, row, days);
    sum += flow;
    if (row === from || row + days === to) atEnds++;
    const at = { row, from: dateOf(axis, row), days };
    years.push({ name, flow: flowOf(record, flow, { name: String(row), days }), at, missing });
  });
  const first = yearName(calendar, 0);
  if (years.length === 0) {
    throw refusal(
      "record/no-complete-year",
      ["record"],
      `annual-minima: none of ${all.length} years from ${first}, each from month ${calendar.firstMonth}, has enough of its days. State another first month, or the share of days that may be missing.`,
      { actual: "0", limit: "at least 1" },
    );
  }
  if (onNotice && excluded.length > 0) onNotice(leftOut(excluded, all.length));
  if (onNotice && atEnds * 10 > years.length)
    onNotice(splitSeason(atEnds, years.length, calendar.firstMonth));
  return {
    days,
    firstMonth: calendar.firstMonth,
    years,
    excluded,
    mean: flowOf(record, sum / years.length, {
      name: `mean of ${years.length} minima`,
      days: days * years.length,
    }),
    source: usgsLowFlow.at("annual minima of the climatic year", "memory"),
  };
}

/** First row of the run of days with the lowest sum, none of them missing; −1 where there is no such run. */
function lowestRun(
  { record, unusable }: DailyFlows,
  from: number,
  to: number,
  days: number,
): number {
  const { values, quality } = record;
  let lowest = Number.POSITIVE_INFINITY;
  let at = -1;
  let run = 0;
  let sum = 0;
  for (let row = from; row < to; row++) {
    if (((quality[row] as number) & unusable) !== 0) {
      run = 0;
      sum = 0;
      continue;
    }
    sum += values[row] as number;
    run++;
    if (run > days) sum -= values[row - days] as number;
    if (run >= days && sum < lowest) {
      lowest = sum;
      at = row - days + 1;
    }
  }
  return at;
}

/** Mean of some days, summed afresh: what is left of a running sum may miss a zero. */
function meanOf(values: Float64Array, row: number, days: number): number {
  let sum = 0;
  for (let at = row; at < row + days; at++) sum += values[at] as number;
  return sum / days;
}

function leftOut(
  excluded: readonly { readonly name: string; readonly missing: number }[],
  years: number,
): Notice {
  const list = excluded.map(({ name, missing }) => `${name} (${missing} days)`).join(", ");
  return {
    code: "annual-minima/years-left-out",
    severity: "note",
    path: ["record"],
    message: `annual-minima: ${excluded.length} of ${years} years are left out, because of the days that they lack: ${list}. State the share that may be missing if their low season is known to be there.`,
    actual: String(excluded.length),
    limit: "0",
  };
}

function splitSeason(atEnds: number, years: number, firstMonth: number): Notice {
  return {
    code: "annual-minima/season-split",
    severity: "caution",
    path: ["firstMonth"],
    message: `annual-minima: ${atEnds} of ${years} minima touch an end of their year, which begins in month ${firstMonth}: the low season is split, and one drought may count twice. Begin the year in a month in which the stream is high.`,
    actual: String(atEnds),
    limit: "one in ten",
    source: commonPractice.at("a year that begins outside the low season", "practice"),
  };
}
