import type { Notice } from "@leat/formula";
import { percent, type Quantity, QuantityError } from "@leat/quantity";
import { type Column, Quality } from "@leat/quantity/column";

import { dateOf, yearName } from "./calendar.ts";
import { dailyFlows, type DailyFlows, type DailyRecord, firstMonthOf } from "./daily-flows.ts";
import { flowOf } from "./flow-of.ts";

/** What is asked of {@link recordSummary}. */
export interface RecordSummaryInput extends DailyRecord {
  /** Share of a year's days that may be missing for the year to count as complete. None by default. */
  readonly missingShare?: Quantity<"ratio"> | undefined;
  /** Equal flows in a row from which a sensor is taken to be stuck. 10 by default: common practice, no source. */
  readonly stuckDays?: number | undefined;
}

/** Where notices go. */
export interface NoticeOptions {
  /** Told of whatever is out of the ordinary. */
  readonly onNotice?: ((notice: Notice) => void) | undefined;
}

/** Days in a row. */
export interface RunOfDays {
  /** First row. */
  readonly row: number;
  /** Its date. */
  readonly from: string;
  /** How many days. */
  readonly days: number;
}

/** One year of a record. */
export interface YearOfRecord {
  /** As it is called: `2003`, or `2003/04` where it does not begin in January. */
  readonly name: string;
  /** Its first row. */
  readonly row: number;
  /** Days that it has in full, 365 or 366. */
  readonly days: number;
  /** Days with a flow that is taken. */
  readonly used: number;
  /** The others: gaps, days left out, and days before the record begins or after it ends. */
  readonly missing: number;
  /** Whether no more are missing than was allowed. */
  readonly complete: boolean;
}

/** What a record is made of. */
export interface RecordSummary {
  /** First day. */
  readonly from: string;
  /** Last day. */
  readonly to: string;
  /** Rows: every day from the first to the last. */
  readonly days: number;
  /** Days with a flow that is taken; with `gaps` and `leftOut` they make up `days`. */
  readonly used: number;
  /** Days of which nothing was recorded. */
  readonly gaps: number;
  /** Runs of such days. */
  readonly gapRuns: number;
  /** The longest of them. */
  readonly longestGap: RunOfDays | undefined;
  /** Days left out for their quality, as asked. */
  readonly leftOut: number;
  /** Days that carry each flag, gaps aside; a day may carry several. */
  readonly flagged: Readonly<
    Record<"suspect" | "estimated" | "outOfRange" | "ice" | "partial", number>
  >;
  /** Days taken on which nothing flowed. */
  readonly zeroDays: number;
  /** Runs of equal flows, none of them zero, as long as a stuck sensor would make. */
  readonly stuck: readonly RunOfDays[];
  /** Mean of the days taken. */
  readonly mean: Quantity<"volume flow">;
  /** Years from the first month that was stated. */
  readonly years: readonly YearOfRecord[];
  /** How many of them are complete. */
  readonly completeYears: number;
  /** Months, such as `2003-02`, of which no day is taken. */
  readonly emptyMonths: readonly string[];
  /** Months of the calendar, 1 to 12, of which no year has a day that is taken. */
  readonly neverRecorded: readonly number[];
}

/**
 * Looks through a daily record before anything is made of it: what is missing, flagged, zero or suspiciously equal.
 *
 * Nothing is repaired and nothing is dropped without being counted. Years begin with the month that is stated, else
 * with that of the axis, else with January. What is out of the ordinary is told to `onNotice` too.
 *
 * @param input - The record, what of it is taken, and what counts as complete and as stuck.
 * @param options - Where notices go.
 * @returns The counts.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no flow at all: each with its row and date.
 * @throws QuantityError a column of another kind, a month that is none, bits that are none.
 * @example
 * ```ts
 * import { recordSummary } from "@leat/hydrology";
 * import { day, format, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // An invented stream: two weeks, of which two days are missing and eleven are suspiciously equal.
 * const axis = TimeAxis.regular({ start: "2024-02-20", step: day.of(1), count: 14, utcOffset: "+10:00" });
 * const flows = [30, null, null, ...new Array(11).fill(24)];
 * const summary = recordSummary({ record: Column.of(litrePerSecond, flows, { axis }) });
 * [summary.used, summary.gaps, summary.longestGap?.from]; // => [12, 2, "2024-02-21"]
 * summary.stuck; // => [{ row: 3, from: "2024-02-23", days: 11 }]
 * format(summary.mean, litrePerSecond, 3); // => "24.5 L/s"
 * ```
 */
export function recordSummary(
  input: RecordSummaryInput,
  { onNotice }: NoticeOptions = {},
): RecordSummary {
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { record, calendar } = daily;
  const axis = record.axis as NonNullable<typeof record.axis>;
  const days = record.length;
  const { used, gaps, zeroDays, sum, flagged } = countDays(daily);
  const { gapRuns, longestGap } = gapsOf(record);
  const stuck = stuckRuns(daily, stuckLength(input.stuckDays));
  const years = yearsOf(daily, input.missingShare ?? percent.of(0));
  const { emptyMonths, neverRecorded } = emptyMonthsOf(daily);
  const summary: RecordSummary = {
    from: dateOf(axis, 0),
    to: dateOf(axis, days - 1),
    days,
    used,
    gaps,
    gapRuns,
    longestGap,
    leftOut: days - used - gaps,
    flagged,
    zeroDays,
    stuck,
    mean: flowOf(record, sum / used, { name: `mean of ${used} days`, days: used }),
    years,
    completeYears: years.filter(({ complete }) => complete).length,
    emptyMonths,
    neverRecorded,
  };
  if (onNotice) tell(summary, calendar.firstMonth, onNotice);
  return summary;
}

/**
 * The years of a record, and which of them are complete.
 *
 * @param daily - The record, looked through.
 * @param missingShare - Share of a year's days that may be missing.
 * @returns One for each year that the record touches.
 */
export function yearsOf(daily: DailyFlows, missingShare: Quantity<"ratio">): YearOfRecord[] {
  const { record, unusable, calendar } = daily;
  const { yearStarts, yearDays, beginsIn } = calendar;
  const share = missingShare["~si"];
  if (missingShare.kind !== "ratio" || !(share >= 0 && share < 1)) {
    throw new QuantityError(
      "kind",
      `daily-record: missingShare = ${String(missingShare)} is no share of a year; give a ratio from 0 up to, not including, 1`,
    );
  }
  return Array.from(beginsIn, (_, year) => {
    const row = yearStarts[year] as number;
    const end = yearStarts[year + 1] as number;
    const days = yearDays[year] as number;
    let used = 0;
    for (let at = row; at < end; at++) {
      if (((record.quality[at] as number) & unusable) === 0) used++;
    }
    const missing = days - used;
    const complete = missing <= share * days;
    return { name: yearName(calendar, year), row, days, used, missing, complete };
  });
}

function countDays({ record, unusable }: DailyFlows): {
  used: number;
  gaps: number;
  zeroDays: number;
  sum: number;
  flagged: RecordSummary["flagged"];
} {
  const { values, quality } = record;
  // How many rows carry each sum of bits: the flags are taken apart once, not in every row.
  const rows = new Uint32Array(256);
  let zeroDays = 0;
  let sum = 0;
  for (let row = 0; row < values.length; row++) {
    const bits = quality[row] as number;
    rows[bits] = (rows[bits] as number) + 1;
    if ((bits & unusable) !== 0) continue;
    const flow = values[row] as number;
    if (flow === 0) zeroDays++;
    sum += flow;
  }
  const count = (carries: (bits: number) => boolean): number =>
    rows.reduce((total, each, bits) => (carries(bits) ? total + each : total), 0);
  const isGap = (bits: number): boolean => (bits & Quality.gap) !== 0;
  const flag = (bit: number): number => count((bits) => !isGap(bits) && (bits & bit) !== 0);
  return {
    used: count((bits) => (bits & unusable) === 0),
    gaps: count(isGap),
    zeroDays,
    sum,
    flagged: {
      suspect: flag(Quality.suspect),
      estimated: flag(Quality.estimated),
      outOfRange: flag(Quality.outOfRange),
      ice: flag(Quality.ice),
      partial: flag(Quality.partial),
    },
  };
}

function runAt(record: Column<"volume flow">, row: number, days: number): RunOfDays {
  return { row, from: record.axis ? dateOf(record.axis, row) : "", days };
}

function gapsOf(record: Column<"volume flow">): Pick<RecordSummary, "gapRuns" | "longestGap"> {
  const { quality } = record;
  let gapRuns = 0;
  let run = 0;
  let longest = 0;
  let at = 0;
  for (let row = 0; row < quality.length; row++) {
    run = ((quality[row] as number) & Quality.gap) === 0 ? 0 : run + 1;
    if (run === 1) gapRuns++;
    if (run > longest) {
      longest = run;
      at = row - run + 1;
    }
  }
  return { gapRuns, longestGap: longest > 0 ? runAt(record, at, longest) : undefined };
}

function stuckLength(days = 10): number {
  if (Number.isInteger(days) && days >= 2) return days;
  throw new QuantityError(
    "time",
    `record-summary: stuckDays ${days} is no number of days in a row, 2 or more`,
  );
}

/** Runs of equal flows above zero; a gap or a day left out ends a run. */
function stuckRuns({ record, unusable }: DailyFlows, least: number): RunOfDays[] {
  const { values, quality } = record;
  const runs: RunOfDays[] = [];
  let run = 0;
  for (let row = 0; row <= values.length; row++) {
    const taken = row < values.length && ((quality[row] as number) & unusable) === 0;
    if (taken && run > 0 && values[row] === values[row - 1]) {
      run++;
      continue;
    }
    if (run >= least && values[row - 1] !== 0) runs.push(runAt(record, row - run, run));
    run = taken ? 1 : 0;
  }
  return runs;
}

function emptyMonthsOf({
  record,
  unusable,
  calendar,
}: DailyFlows): Pick<RecordSummary, "emptyMonths" | "neverRecorded"> {
  const { months } = calendar;
  const { quality, axis } = record;
  const inMonth = new Uint32Array(13);
  const emptyMonths: string[] = [];
  let used = 0;
  for (let row = 0; row < months.length; row++) {
    if (((quality[row] as number) & unusable) === 0) used++;
    const month = months[row] as number;
    if (month === months[row + 1]) continue;
    inMonth[month] = (inMonth[month] as number) + used;
    if (used === 0 && axis) emptyMonths.push(dateOf(axis, row).slice(0, 7));
    used = 0;
  }
  const neverRecorded = Array.from({ length: 12 }, (_, index) => index + 1).filter(
    (month) => inMonth[month] === 0,
  );
  return { emptyMonths, neverRecorded };
}

function tell(
  summary: RecordSummary,
  firstMonth: number,
  onNotice: (notice: Notice) => void,
): void {
  const { gaps, gapRuns, longestGap, days, stuck, zeroDays, completeYears, years } = summary;
  const say = (
    code: string,
    severity: Notice["severity"],
    path: Notice["path"],
    message: string,
  ): void =>
    onNotice({ code: `record/${code}`, severity, path, message: `record-summary: ${message}` });
  if (longestGap) {
    say(
      "gaps",
      "note",
      ["record", longestGap.row],
      `${gaps} of ${days} days are gaps, in ${gapRuns} runs, the longest of ${longestGap.days} days from row ${longestGap.row}, ${longestGap.from}. They are counted, not filled.`,
    );
  }
  for (const run of stuck) {
    say(
      "stuck",
      "caution",
      ["record", run.row],
      `${run.days} equal flows in a row from row ${run.row}, ${run.from}. Look whether the sensor was stuck or iced in; flag the days as suspect if so.`,
    );
  }
  if (zeroDays > 0) {
    say(
      "zeros",
      "note",
      ["record"],
      `${zeroDays} days have no flow. Make sure that the stream was dry and that a zero does not stand for nothing recorded.`,
    );
  }
  if (summary.neverRecorded.length > 0) {
    say(
      "empty-months",
      "caution",
      ["record"],
      `no year has a day of month ${summary.neverRecorded.join(", ")}. What is made of this record does not hold for the whole year.`,
    );
  }
  if (completeYears === 0) {
    say(
      "no-complete-year",
      "caution",
      ["record"],
      `none of ${years.length} years from month ${firstMonth} is complete. State another first month, or the share of days that may be missing.`,
    );
  }
}
