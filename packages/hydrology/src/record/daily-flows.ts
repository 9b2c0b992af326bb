import { QuantityError } from "@leat/quantity";
import { type Column, Quality } from "@leat/quantity/column";

import { dailyCalendar, type DailyCalendar, dateOf } from "./calendar.ts";
import { refusal } from "./refusal.ts";

/** A record, and what of it is taken. */
export interface DailyRecord {
  /** Daily mean flows: a row for every day, a gap where nothing was recorded. */
  readonly record: Column<"volume flow">;
  /**
   * Bits of `Quality`: days that have one of them are left out like gaps, and counted. None by default: days that
   * are estimated, partly recorded or under ice are taken.
   */
  readonly leaveOut?: number | undefined;
  /** Month whose first day begins a year, 1 to 12. */
  readonly firstMonth?: number | undefined;
}

/** What became of the days of a record: the four numbers add up to its rows. */
export interface DayCounts {
  /** Days that the answer rests on. */
  readonly used: number;
  /** Days of which nothing was recorded. */
  readonly gaps: number;
  /** Days left out for their quality, as asked. */
  readonly leftOut: number;
  /** Days outside the months or years that were asked for. */
  readonly notAsked: number;
}

/** A record that has been looked through: no negative flow, at least one flow. */
export interface DailyFlows {
  /** The record. */
  readonly record: Column<"volume flow">;
  /** Bits of the days that are not taken, gaps among them. */
  readonly unusable: number;
  /** Its months and years. */
  readonly calendar: DailyCalendar;
}

/**
 * Looks a record through.
 *
 * @param input - The record, and what of it is taken.
 * @param firstMonth - First month of a year where neither the input nor the axis says one.
 * @returns The record with its calendar.
 * @throws NonPhysicalError a record that is not daily, a negative flow, or no flow at all, each with its row.
 * @throws QuantityError a column of another kind, a month that is none, bits that are none.
 */
export function dailyFlows(input: DailyRecord, firstMonth: number): DailyFlows {
  const { record, leaveOut = 0 } = input;
  const { gap, suspect, estimated, outOfRange, ice, partial } = Quality;
  const known = gap | suspect | estimated | outOfRange | ice | partial;
  if (!Number.isInteger(leaveOut) || (leaveOut & known) !== leaveOut) {
    throw new QuantityError(
      "column",
      `daily-record: leaveOut ${leaveOut} is not a sum of bits of Quality, such as Quality.ice | Quality.estimated`,
    );
  }
  const calendar = dailyCalendar(record, input.firstMonth ?? firstMonth);
  const { values, quality } = record;
  let used = 0;
  const unusable = gap | leaveOut;
  for (let row = 0; row < values.length; row++) {
    if (((quality[row] as number) & unusable) !== 0) continue;
    if ((values[row] as number) < 0) throw negativeFlow(record, row);
    used++;
  }
  if (used === 0) {
    throw refusal(
      "record/no-flows",
      ["record"],
      `daily-record: record has ${values.length} days and no flow among them that is taken. Check how its gaps and its quality were read.`,
      { actual: "0", limit: "at least 1" },
    );
  }
  return { record, unusable, calendar };
}

/**
 * The first month of a year that the axis of a record states, or January.
 *
 * @param record - The record.
 * @returns The month, 1 to 12.
 */
export function firstMonthOf(record: Column<"volume flow">): number {
  return record?.axis?.waterYearStart ?? 1;
}

function negativeFlow(record: Column<"volume flow">, row: number): Error {
  const date = record.axis ? `, ${dateOf(record.axis, row)},` : "";
  return refusal(
    "record/negative-flow",
    ["record", row],
    `daily-record: row ${row}${date} has a flow of ${record.values[row]} m³/s. Flag it as a gap, or correct it; where water really runs backwards these figures mean nothing.`,
    { actual: `${record.values[row]} m³/s`, limit: "at least 0 m³/s" },
  );
}
