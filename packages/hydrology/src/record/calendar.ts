import { QuantityError } from "@leat/quantity";
import type { Column, TimeAxis } from "@leat/quantity/column";

import { refusal } from "./refusal.ts";

/** Months and years of the rows of a daily record, as typed arrays: no object a row. */
export interface DailyCalendar {
  /** Month whose first day begins a year, 1 to 12. */
  readonly firstMonth: number;
  /** Month of each row, 1 to 12. */
  readonly months: Uint8Array;
  /**
   * The row that each year begins at, and the number of rows as the last: year y is the rows from
   * `yearStarts[y]` up to, not including, `yearStarts[y + 1]`. The first and the last year may be cut short.
   */
  readonly yearStarts: Uint32Array;
  /** The calendar year in which each year begins. */
  readonly beginsIn: Int32Array;
  /** Days that each year has in full, 365 or 366, recorded or not. */
  readonly yearDays: Uint16Array;
}

const daySeconds = 86_400;
const monthLengths = [0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days of a month of the Gregorian calendar. */
function daysIn(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && leap ? 29 : (monthLengths[month] as number);
}

/**
 * The calendar of a daily record. A day is the civil date of its row, whatever the time of day of the stamp.
 *
 * @param record - A column of flows whose time axis has a row for every day, gaps included.
 * @param firstMonth - Month whose first day begins a year, 1 to 12.
 * @returns Months and years of its rows.
 * @throws NonPhysicalError no time axis, no rows, or a row that is not a day after the one before, named by its
 * row and date.
 * @throws QuantityError `kind` for anything but a column of volume flow, `time` for a month that is none.
 * @example
 * ```ts
 * import { dailyCalendar } from "@leat/hydrology";
 * import { day, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2023-12-31", step: day.of(1), count: 367, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, new Float64Array(367).fill(20), { axis });
 * const { months, yearStarts, beginsIn, yearDays } = dailyCalendar(record, 1);
 * [months[0], months[1]]; // => [12, 1]
 * [...yearStarts]; // => [0, 1, 367]
 * [...beginsIn]; // => [2023, 2024]
 * [...yearDays]; // => [365, 366]
 * ```
 */
export function dailyCalendar(record: Column<"volume flow">, firstMonth: number): DailyCalendar {
  if (!(Number.isInteger(firstMonth) && firstMonth >= 1 && firstMonth <= 12)) {
    throw new QuantityError(
      "time",
      `daily-record: a year cannot begin in month ${firstMonth}; state a month, 1 to 12`,
    );
  }
  const first = requireDaily(record).civilAt(0);
  const { length } = record;
  const months = new Uint8Array(length);
  // A year more than days allow for, at either end.
  const most = Math.ceil(length / 365) + 2;
  const yearStarts = new Uint32Array(most + 1);
  const beginsIn = new Int32Array(most);
  const yearDays = new Uint16Array(most);
  let years = 0;
  let { year, month } = first;
  let row = 0;
  let left = daysIn(year, month) - first.day + 1;
  while (row < length) {
    if (row === 0 || month === firstMonth) {
      const begins = month < firstMonth ? year - 1 : year;
      yearStarts[years] = row;
      beginsIn[years] = begins;
      yearDays[years] = 337 + daysIn(firstMonth > 2 ? begins + 1 : begins, 2);
      years += 1;
    }
    const end = Math.min(row + left, length);
    months.fill(month, row, end);
    row = end;
    if (month === 12) year += 1;
    month = (month % 12) + 1;
    left = daysIn(year, month);
  }
  yearStarts[years] = length;
  return {
    firstMonth,
    months,
    yearStarts: yearStarts.subarray(0, years + 1),
    beginsIn: beginsIn.subarray(0, years),
    yearDays: yearDays.subarray(0, years),
  };
}

/**
 * A year as it is called: by its calendar year, or by the two that it lies in. The trade calls a year that
 * begins in one calendar year and ends in another now by the first, now by the second.
 *
 * @param calendar - The calendar.
 * @param year - Which of its years, from 0.
 * @returns Such as `2003` or `2003/04`.
 */
export function yearName({ firstMonth, beginsIn }: DailyCalendar, year: number): string {
  const begins = beginsIn[year] as number;
  return firstMonth === 1
    ? String(begins)
    : `${begins}/${String((begins + 1) % 100).padStart(2, "0")}`;
}

/**
 * The date of a row.
 *
 * @param axis - The time axis.
 * @param row - The row, from 0.
 * @returns Such as `2003-02-28`.
 */
export function dateOf(axis: TimeAxis, row: number): string {
  return axis.isoAt(row).slice(0, 10);
}

/** The time axis of a record that has a row for every day; anything else is refused. */
function requireDaily(record: Column<"volume flow">): TimeAxis {
  const given = record as Column<string> | undefined;
  if (given?.["~leat"] !== "column" || given.kind !== "volume flow") {
    throw new QuantityError(
      "kind",
      `daily-record: ${given?.["~leat"] === "column" ? `a column of ${given.kind}` : String(record)} is no record of flows; pass a column of volume flow`,
    );
  }
  const { axis, length } = record;
  if (!axis) {
    throw refusal(
      "record/no-dates",
      ["record", "axis"],
      `daily-record: record has ${length} rows and no dates. Give the column a TimeAxis with a step of one day.`,
    );
  }
  if (length === 0) {
    throw refusal(
      "record/no-rows",
      ["record"],
      "daily-record: record has no rows. Give it the flows of some years.",
    );
  }
  let before = axis.secondsAt(0);
  // Equal steps are told by the first of them.
  const rows = axis["~times"] ? length : Math.min(length, 2);
  for (let row = 1; row < rows; row++) {
    const at = axis.secondsAt(row);
    if (at - before !== daySeconds) {
      const apart = (at - before) / daySeconds;
      throw refusal(
        "record/not-daily",
        ["record", row],
        `daily-record: row ${row}, ${axis.isoAt(row)}, comes ${Number(apart.toPrecision(4))} days after row ${row - 1}, ${axis.isoAt(row - 1)}. Give every day a row, with a gap where nothing was recorded; average shorter steps to days first.`,
        { actual: `${Number(apart.toPrecision(4))} d`, limit: "1 d" },
      );
    }
    before = at;
  }
  return axis;
}
