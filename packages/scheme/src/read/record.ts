import type { AnyUnit } from "@leat/quantity";
import { Column, Quality, TimeAxis } from "@leat/quantity/column";

import { type DateColumn, type DateForm, dateForm, isoDay, shortYearsNote } from "./date.ts";
import { ProblemList, type Said } from "./problem-list.ts";
import type { Problem } from "./problem.ts";
import type { NumberColumn } from "./quantity-cell.ts";
import {
  readTable,
  type Table,
  type TableCounts,
  type TableForm,
  type WantedColumn,
} from "./table.ts";
import { refuseOtherHeading, stated, unitOfKind } from "./unit-cell.ts";

/** What a flag of a record may mean; `good` is a flag that says nothing against the value. */
export type FlagMeaning = "good" | "partial" | "ice" | "estimated" | "suspect" | "gap";

const bits: Readonly<Record<FlagMeaning, number>> = {
  good: 0,
  partial: Quality.partial,
  ice: Quality.ice,
  estimated: Quality.estimated,
  suspect: Quality.suspect,
  gap: Quality.gap,
};

/** What a flag may mean, for messages and for the schema. */
export const flagMeanings: readonly string[] = Object.keys(bits);

/** How a record of daily flows is written. */
export interface DailyRecordSpec extends TableForm {
  /** Column of the dates. */
  readonly date: DateColumn;
  /** Column of the flows. */
  readonly flow: NumberColumn;
  /** Rows are kept that have these values in these columns, letter by letter; the others are counted. */
  readonly where?: Readonly<Record<string, string>> | undefined;
  /** Column of the flags, and what each means; a row may have none. */
  readonly flag?:
    | {
        readonly column: string | number;
        readonly meanings: Readonly<Record<string, FlagMeaning>>;
      }
    | undefined;
  /** What stands for a missing flow, besides an empty cell. */
  readonly gaps?: readonly string[] | undefined;
  /** Month, 1 to 12, that the water year begins with. */
  readonly waterYearStart?: number | undefined;
  /** What the station's clock is ahead of UTC; `+00:00` where it is not stated, which moves no day. */
  readonly utcOffset?: string | undefined;
}

/** What became of the rows and the days of a record: `days` is the sum of the five after it. */
interface DailyRecordCounts extends TableCounts {
  /** Rows of the table. */
  readonly rows: number;
  /** Rows that were left out, because `where` asks for others. */
  readonly rowsLeftOut: number;
  /** Rows that did not stand in the order of their dates, and were put there. */
  readonly rowsMoved: number;
  /** Days from the first to the last. */
  readonly days: number;
  /** Days with a flow. */
  readonly recorded: number;
  /** Days without a row. */
  readonly absent: number;
  /** Days with a row and no flow. */
  readonly empty: number;
  /** Days with one of the words for a missing flow. */
  readonly coded: number;
  /** Days whose flag means that there is a gap; what was written as their flow is not kept. */
  readonly flaggedAsGap: number;
  /** Days with each flag. */
  readonly flags: Readonly<Record<string, number>>;
}

/** A record of daily flows. */
export interface DailyRecord {
  /** The flows, a row for each day, with a time axis; a day without one is a gap. */
  readonly flow: Column<"volume flow">;
  /** The line of the file that each day stands on; 0 for a day without a row. */
  readonly lines: Uint32Array;
  /** What became of the rows and the days. */
  readonly counts: DailyRecordCounts;
  /** What is worth knowing and stops nothing. */
  readonly notes: readonly Problem[];
}

const secondsInDay = 86_400;

/** Longest record that is believed, in days: three hundred years. A mistyped year makes longer ones. */
const longest = 109_575;

/**
 * Reads a record of daily flows.
 *
 * Nothing is left out but what `where` asks for; nothing is mended. A date that does not exist or stands twice, a
 * flow that is negative or no number, and a flag without a meaning are problems. Days without a row, with an empty
 * flow and with a word for a missing flow are gaps, and are counted. Rows in another order are put in the order of
 * their dates, and that is said.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @param spec - How it is written.
 * @returns The record.
 * @throws FileError with every problem, each with its line and column; of each kind the first twenty.
 * @throws QuantityError `time` for a water year or an offset that is none.
 */
export function readDailyRecord(text: string, file: string, spec: DailyRecordSpec): DailyRecord {
  const problems = new ProblemList(file);
  const form = stated(file, "record/date-form", ["date", "form"], () =>
    dateForm(spec.date.form, spec.date.yearsFrom, "date"),
  );
  const unit = stated(file, "record/unit", ["flow", "unit"], () =>
    unitOfKind(spec.flow.unit, "volume flow", "m3/s"),
  );
  const asked = Object.entries(spec.where ?? {});
  const columns: Record<string, WantedColumn> = {
    date: { column: spec.date.column, reads: "text" },
    flow: { column: spec.flow.column, reads: "number" },
    ...(spec.flag && { flag: { column: spec.flag.column, reads: "text" } }),
  };
  for (const [column] of asked) columns[`where ${column}`] = { column, reads: "text" };
  const table = readTable(text, file, { ...spec, columns });
  refuseOtherHeading(table, "flow", unit, problems, "record/unit");

  const rows = keptRows(table, asked, problems);
  const taken = takeDays({ table, rows, form, unit, spec, problems });
  problems.throwIfAny();
  const { order, moved } = inOrder(taken.day, rows, table, problems);
  problems.throwIfAny();
  return onAxis({ table, rows, form, spec, problems, taken, order, moved });
}

/** What each kept row says. */
interface Taken {
  /** Days since 1970-01-01. */
  readonly day: Int32Array;
  /** Flow in m³/s, 0 in a gap. */
  readonly value: Float64Array;
  readonly quality: Uint8Array;
  readonly counted: Pick<DailyRecordCounts, "empty" | "coded" | "flaggedAsGap" | "flags">;
}

/** Reads the rows that are kept, each a day. */
function takeDays(about: {
  readonly table: Table<string>;
  readonly rows: readonly number[];
  readonly form: DateForm;
  readonly unit: AnyUnit;
  readonly spec: DailyRecordSpec;
  readonly problems: ProblemList;
}): Taken {
  const { table, rows, form, unit, spec, problems } = about;
  const dates = table.cells["date"] as readonly string[];
  const flows = table.cells["flow"] as readonly string[];
  const marksOf = flagReader(table, spec.flag?.meanings ?? {}, problems);
  const isGap = gapTest(spec.gaps ?? [], table);
  const complain = (code: string, row: number, key: string, fault: string): void => {
    problems.add(code, () =>
      table.say(row, key, `${table.headings[key]} ${quoted(table.cells[key]?.[row])} ${fault}`),
    );
  };
  const day = new Int32Array(rows.length);
  const value = new Float64Array(rows.length);
  const quality = new Uint8Array(rows.length);
  const counted = { empty: 0, coded: 0, flaggedAsGap: 0 };
  for (const [at, row] of rows.entries()) {
    const date = dates[row] as string;
    const seconds = form.secondsOf(date);
    if (Number.isNaN(seconds)) complain("record/date", row, "date", `${form.fault(date)}.`);
    day[at] = Math.floor(seconds / secondsInDay);

    const flow = flows[row] as string;
    let marks = marksOf.read(row);
    if (flow === "") {
      marks |= Quality.gap;
      counted.empty += 1;
    } else if (isGap(flow)) {
      marks |= Quality.gap;
      counted.coded += 1;
    } else {
      const number = table.numberOf(flow);
      const orGap = "If it stands for a missing flow, list it under gaps.";
      if (Number.isNaN(number)) complain("record/number", row, "flow", `is not a number. ${orGap}`);
      else if (number < 0) complain("record/negative", row, "flow", `is negative. ${orGap}`);
      else if (marks & Quality.gap) counted.flaggedAsGap += 1;
      else value[at] = unit.toSI(number) + 0;
    }
    quality[at] = marks;
  }
  const flags = marksOf.finish();
  if (problems.empty && counted.empty + counted.coded + counted.flaggedAsGap === rows.length) {
    problems.add("record/no-flow", () =>
      table.say(
        rows[0] as number,
        "flow",
        `${table.headings["flow"]} has no flow in any of ${several(rows.length, "row")}. Is it the right column?`,
      ),
    );
  }
  return { day, value, quality, counted: { ...counted, flags } };
}

/** Reads flags as bits of quality, and counts them; a flag without a meaning is a problem. */
function flagReader(
  table: Table<string>,
  meanings: Readonly<Record<string, FlagMeaning>>,
  problems: ProblemList,
): { read(row: number): number; finish(): Record<string, number> } {
  const marks = new Map<string, number>();
  for (const [flag, meaning] of Object.entries(meanings)) {
    if (!Object.hasOwn(bits, meaning)) {
      problems.add("record/meaning", () => ({
        place: { line: 1, column: 1 },
        path: ["flag", "meanings", flag],
        message: `flag meanings: ${quoted(meaning)}, of ${quoted(flag)}, is not known here; write one of ${flagMeanings.join(", ")}.`,
      }));
    }
    marks.set(flag, bits[meaning]);
  }
  const counts = new Map<string, number>();
  const unknown = new Map<string, number>();
  return {
    read(row) {
      const flag = table.cells["flag"]?.[row] ?? "";
      if (flag === "") return 0;
      counts.set(flag, (counts.get(flag) ?? 0) + 1);
      const mark = marks.get(flag);
      if (mark === undefined && !unknown.has(flag)) unknown.set(flag, row);
      return mark ?? 0;
    },
    finish() {
      for (const [flag, row] of unknown) {
        const count = counts.get(flag) as number;
        problems.add("record/flag", () =>
          table.say(
            row,
            "flag",
            `${table.headings["flag"]} ${quoted(flag)} has no meaning here, and stands in ${count === 1 ? "this row" : `${count} rows, the first of them here`}. Add it to flags with one of ${flagMeanings.join(", ")}.`,
          ),
        );
      }
      return Object.fromEntries(counts);
    },
  };
}

/** Puts the days on an axis without holes. */
function onAxis(about: {
  readonly table: Table<string>;
  readonly rows: readonly number[];
  readonly form: DateForm;
  readonly spec: DailyRecordSpec;
  readonly problems: ProblemList;
  readonly taken: Taken;
  readonly order: Uint32Array;
  readonly moved: Moved | undefined;
}): DailyRecord {
  const { table, rows, form, spec, problems, order, moved } = about;
  const { day, value, quality, counted } = about.taken;
  const [earliest, latest] = [order[0] as number, order.at(-1) as number];
  const first = day[earliest] as number;
  const days = (day[latest] as number) - first + 1;
  const lineOf = (at: number): number => table.lines[rows[at] as number] as number;
  const say = (at: number, message: string): Said => table.say(rows[at] as number, "date", message);
  if (days > longest) {
    problems.add("record/span", () =>
      say(
        latest,
        `the record runs from ${isoDay(first)} (line ${lineOf(earliest)}) to ${isoDay(day[latest] as number)}, over three hundred years. Is a year mistyped?`,
      ),
    );
    problems.throwIfAny();
  }
  const values = new Float64Array(days);
  const qualities = new Uint8Array(days).fill(Quality.gap);
  const lines = new Uint32Array(days);
  for (const at of order) {
    const index = (day[at] as number) - first;
    values[index] = value[at] as number;
    qualities[index] = quality[at] as number;
    lines[index] = lineOf(at);
  }
  const axis = TimeAxis.regular({
    start: isoDay(first),
    step: secondsInDay,
    count: days,
    utcOffset: spec.utcOffset ?? "+00:00",
    waterYearStart: spec.waterYearStart,
  });

  const notes: Problem[] = [...table.notes];
  const note = (code: string, { place, path, message }: Said): void => {
    notes.push({ file: table.file, ...place, code, path, message });
  };
  if (moved) {
    note(
      "record/order",
      say(
        moved.first,
        `${isoDay(day[moved.first] as number)} stands after a later day${moved.count === 1 ? "" : `, the first of ${moved.count} that do`}. The rows were put in the order of their dates.`,
      ),
    );
  }
  notes.push(...shortYearsNote(form, spec.date, table, "date"));
  const absent = days - rows.length;
  if (absent > 0) {
    const hole = longestHole(lines);
    const before = order.find((at) => day[at] === first + hole.after) as number;
    note(
      "record/absent-days",
      say(
        before,
        `${several(absent, "day")} without a row, in ${several(hole.count, "gap")}; the longest is of ${several(hole.days, "day")}, after ${isoDay(first + hole.after)}.`,
      ),
    );
  }
  const { empty, coded, flaggedAsGap } = counted;
  return {
    flow: Column.wrap("volume flow", values, qualities, { axis }),
    lines,
    counts: {
      ...table.counts,
      ...counted,
      rows: table.lines.length,
      rowsLeftOut: table.lines.length - rows.length,
      rowsMoved: moved?.count ?? 0,
      days,
      recorded: rows.length - empty - coded - flaggedAsGap,
      absent,
    },
    notes,
  };
}

function several(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function quoted(cell: string | undefined): string {
  return JSON.stringify((cell ?? "").slice(0, 60));
}

/** The rows that have the values that are asked for. */
function keptRows(
  table: Table<string>,
  asked: readonly (readonly [string, string])[],
  problems: ProblemList,
): number[] {
  const rows: number[] = [];
  const pairs = asked.map(
    ([column, value]) => [table.cells[`where ${column}`] as readonly string[], value] as const,
  );
  for (let row = 0; row < table.lines.length; row += 1) {
    if (pairs.every(([cells, value]) => cells[row] === value)) rows.push(row);
  }
  if (rows.length === 0) {
    const found = pairs.map(([cells], n) => {
      const values = [...new Set(cells)];
      return `${table.headings[`where ${asked[n]?.[0]}`]} holds ${values
        .slice(0, 10)
        .map(quoted)
        .join(", ")}${values.length > 10 ? " and more" : ""}`;
    });
    problems.add("record/where", () =>
      table.say(
        0,
        "date",
        `no row has ${asked.map(([column, value]) => `${column} ${quoted(value)}`).join(" and ")}: ${found.join("; ")}.`,
      ),
    );
    problems.throwIfAny();
  }
  return rows;
}

/** Whether a cell is one of the words for a missing flow: letter by letter, or as the same number. */
function gapTest(gaps: readonly string[], table: Table<string>): (cell: string) => boolean {
  const words = new Set(gaps.map((gap) => gap.trim()));
  const numbers = new Set([...words].map((gap) => table.numberOf(gap)));
  numbers.delete(NaN);
  return (cell) => words.has(cell) || (numbers.size > 0 && numbers.has(table.numberOf(cell)));
}

/** Rows that stand after a later day: how many, and which is the first. */
interface Moved {
  readonly count: number;
  readonly first: number;
}

/** The rows in the order of their dates; refuses a date that stands twice. */
function inOrder(
  day: Int32Array,
  kept: readonly number[],
  table: Table<string>,
  problems: ProblemList,
): { order: Uint32Array; moved: Moved | undefined } {
  const order = Uint32Array.from(day.keys());
  let moved: Moved | undefined;
  let latest = -Infinity;
  for (const at of order) {
    const today = day[at] as number;
    if (today < latest) moved = { count: (moved?.count ?? 0) + 1, first: moved?.first ?? at };
    latest = Math.max(latest, today);
  }
  if (moved) order.sort((a, b) => (day[a] as number) - (day[b] as number) || a - b);
  for (let n = 1; n < order.length; n += 1) {
    const [before, at] = [order[n - 1] as number, order[n] as number];
    if (day[before] !== day[at]) continue;
    problems.add("record/twice", () =>
      table.say(
        kept[at] as number,
        "date",
        `${isoDay(day[at] as number)} stands on line ${table.lines[kept[before] as number]} already. Keep one of the two rows.`,
      ),
    );
  }
  return { order, moved };
}

/** Days without a row: how many gaps, and the longest of them with the day before it. */
function longestHole(lines: Uint32Array): { count: number; days: number; after: number } {
  const found = { count: 0, days: 0, after: 0 };
  let last = 0;
  for (const [index, line] of lines.entries()) {
    if (line === 0) continue;
    const days = index - last - 1;
    if (days > 0) found.count += 1;
    if (days > found.days) {
      found.days = days;
      found.after = last;
    }
    last = index;
  }
  return found;
}
