import { monthNames } from "@leat/hydrology";
import { QuantityError } from "@leat/quantity";

import type { Problem } from "./problem.ts";
import type { Table } from "./table.ts";

/** A column of dates or times. */
export interface DateColumn {
  /** Its heading, or its number from 1. */
  readonly column: string | number;
  /** The form that they are in: see {@link dateForm}. */
  readonly form: string;
  /** The first of the hundred years that two digits stand for: 1969 where it is not stated. */
  readonly yearsFrom?: number | undefined;
}

/** How dates and times of day are written in a column. */
export interface DateForm {
  /** The form as it was stated. */
  readonly form: string;
  /** Whether it has a year, a month and a day. */
  readonly dated: boolean;
  /** Whether it has hours and minutes. */
  readonly timed: boolean;
  /** Whether its years have two digits. */
  readonly shortYears: boolean;
  /**
   * Seconds since 1970-01-01T00:00 where the form has a date, else since midnight.
   *
   * @param cell - As written, trimmed.
   * @returns The seconds; NaN where the cell is not of the form or does not exist, for {@link DateForm.fault} to say.
   */
  secondsOf(cell: string): number;
  /**
   * What is wrong with a cell that has no seconds.
   *
   * @param cell - As written, trimmed.
   * @returns The rest of a sentence about it.
   */
  fault(cell: string): string;
}

/** The parts that a form may be asked to have. */
export type DateParts = "date" | "time of day" | "any";

/** The first of the hundred years that two digits stand for, where none is stated: POSIX, `strptime`, `%y`. */
const posixYearsFrom = 1969;

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Parts of a date, each with a place in an array. */
const year = 0;
const month = 1;
const day = 2;
const hour = 3;
const minute = 4;
const second = 5;
const half = 6;

/** The parts that a cell gave. */
type Found = [number, number, number, number, number, number, number];

/** One piece of a form. */
interface Piece {
  /** Which part it gives; none for a separator. */
  readonly part: number | undefined;
  /** The separator. */
  readonly mark: string;
  /** Fewest and most digits. */
  readonly least: number;
  readonly most: number;
  /** What it is besides digits. */
  readonly as: "digits" | "month name" | "seconds with a fraction" | "half of the day";
}

const digits = (part: number, least: number, most: number): Piece => ({
  part,
  mark: "",
  least,
  most,
  as: "digits",
});

const pieces: Readonly<Record<string, Piece>> = {
  YYYY: digits(year, 4, 4),
  YY: digits(year, 2, 2),
  MMM: { ...digits(month, 0, 0), as: "month name" },
  DD: digits(day, 2, 2),
  D: digits(day, 1, 2),
  HH: digits(hour, 2, 2),
  H: digits(hour, 1, 2),
  SS: digits(second, 2, 2),
  "SS.S": { ...digits(second, 2, 2), as: "seconds with a fraction" },
  AM: { ...digits(half, 0, 0), as: "half of the day" },
};

/**
 * Reads the form that dates or times are written in.
 *
 * The form is made of YYYY or YY; MM, M (one or two digits) or MMM (Jan to Dec, in English); DD or D; HH or H, then
 * MM for minutes; SS, or SS.S with a fraction that may follow; AM where the day is told in halves; and separators:
 * `- / . : , _ T` and spaces. Cells are read strictly by it: DD takes two digits, no more and no fewer.
 *
 * Years of two digits lie within the hundred years from `yearsFrom`; by default 69 to 99 are 1969 to 1999 and
 * 00 to 68 are 2000 to 2068, as POSIX has it (`strptime`, `%y`).
 *
 * @param form - Such as `YYYY-MM-DD`, `DD-MMM-YY`, `HH:MM:SS`.
 * @param yearsFrom - The first of the hundred years that two digits stand for.
 * @param needs - What it must have.
 * @returns The form.
 * @throws QuantityError `time` for a form that says too little, too much or something else.
 */
export function dateForm(
  form: string,
  yearsFrom: number = posixYearsFrom,
  needs: DateParts = "any",
): DateForm {
  const list = piecesOf(form);
  const has = (part: number): boolean => list.some((piece) => piece.part === part);
  const dated = has(year) || has(month) || has(day);
  const timed = has(hour) || has(minute) || has(second) || has(half);
  const lacks = [
    ...(dated || !timed ? [year, month, day] : []),
    ...(timed ? [hour, minute] : []),
  ].filter((part) => !has(part));
  if (lacks.length > 0) {
    const words = ["year (YYYY)", "month (MM)", "day (DD)", "hours (HH)", "minutes (MM)"];
    throw refuse(form, `has no ${lacks.map((part) => words[part]).join(" and no ")}`);
  }
  if (!(Number.isInteger(yearsFrom) && yearsFrom >= gregorian && yearsFrom <= 9900)) {
    throw new QuantityError(
      "time",
      `${yearsFrom} is not a year that a hundred years can begin with; write one such as 1930`,
    );
  }
  const shortYears = list.some(({ part, most }) => part === year && most === 2);
  if ((needs === "date" && !dated) || (needs === "time of day" && !timed)) {
    throw refuse(form, `has no ${needs}`);
  }
  const halves = has(half);
  const found: Found = [0, 0, 0, 0, 0, 0, 0];
  const split = (cell: string): boolean => splitInto(found, list, cell);
  return {
    form,
    dated,
    timed,
    shortYears,
    secondsOf(cell) {
      if (!split(cell)) return NaN;
      if (shortYears) widen(found, yearsFrom);
      return faultOf(found, dated, halves) === undefined ? secondsFrom(found, dated, halves) : NaN;
    },
    fault(cell) {
      if (!split(cell)) return `is not of the form ${form}`;
      if (shortYears) widen(found, yearsFrom);
      const fault = faultOf(found, dated, halves) ?? "cannot be read";
      const swapped = dated && found[month] > 12 && found[month] <= 31 && found[day] <= 12;
      return swapped ? `${fault}; does the day stand before the month?` : fault;
    },
  };
}

function refuse(form: string, fault: string): QuantityError {
  return new QuantityError(
    "time",
    `${JSON.stringify(form.slice(0, 40))} ${fault}; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals`,
  );
}

function piecesOf(form: string): Piece[] {
  const list: Piece[] = [];
  let timed = false;
  // Longest first; M is a month, and minutes once there are hours.
  for (const [token] of form.matchAll(/YYYY|YY|MMM|MM|M|DD|D|HH|H|SS\.S|SS|AM|[-/.:,_T ]|./gsu)) {
    const known = pieces[token];
    const piece: Piece =
      token === "MM" || token === "M"
        ? digits(timed ? minute : month, token.length, 2)
        : (known ?? { ...digits(0, 0, 0), part: undefined, mark: token });
    if (piece.part === undefined && !/^[-/.:,_T ]$/.test(token)) {
      throw refuse(form, `holds ${JSON.stringify(token)}, which is no part of a date`);
    }
    const before = list.at(-1);
    if (before && before.part !== undefined && before.least !== before.most && piece.most > 0) {
      throw refuse(form, `does not say where ${token} begins`);
    }
    if (piece.part !== undefined && list.some(({ part }) => part === piece.part)) {
      throw refuse(form, `has ${token} where that part stands already`);
    }
    timed ||= piece.part === hour;
    list.push(piece);
  }
  return list;
}

/** Parts of a cell, as numbers; whether it is of the form at all. */
function splitInto(found: Found, list: readonly Piece[], cell: string): boolean {
  let at = 0;
  for (const { part, mark, least, most, as } of list) {
    if (part === undefined) {
      if (cell[at] !== mark) return false;
      at += 1;
    } else if (as === "month name") {
      const name = months.indexOf(cell.slice(at, at + 3).toLowerCase());
      if (name < 0) return false;
      found[part] = name + 1;
      at += 3;
    } else if (as === "half of the day") {
      const name = ["am", "pm"].indexOf(cell.slice(at, at + 2).toLowerCase());
      if (name < 0) return false;
      found[part] = name;
      at += 2;
    } else {
      let value = 0;
      let count = 0;
      for (; count < most; count += 1) {
        const digit = digitAt(cell, at);
        if (digit < 0) break;
        value = 10 * value + digit;
        at += 1;
      }
      if (count < least) return false;
      if (as === "seconds with a fraction") {
        const fraction = /^[.,]\d{1,9}/.exec(cell.slice(at))?.[0] ?? "";
        value += Number(`0${fraction.replace(",", ".")}`);
        at += fraction.length;
      }
      found[part] = value;
    }
  }
  return at === cell.length;
}

function digitAt(cell: string, at: number): number {
  const digit = cell.charCodeAt(at) - 48;
  return digit >= 0 && digit <= 9 ? digit : -1;
}

/** The year of two digits within the hundred years from one. */
function widen(found: Found, from: number): void {
  found[year] = from + ((((found[year] - from) % 100) + 100) % 100);
}

/** The calendar that is meant began in October 1582. */
const gregorian = 1583;

/** What of the parts does not exist, if anything. A part that the form has not is zero. */
function faultOf(found: Found, dated: boolean, halves: boolean): string | undefined {
  if (dated) {
    const [y, m, d] = [found[year], found[month], found[day]];
    if (y < gregorian) return `has the year ${y}, before the present calendar`;
    if (m < 1 || m > 12) return `has a month ${m}, of 1 to 12`;
    const length = daysIn(y, m);
    if (d < 1 || d > length) return `does not exist: ${monthNames[m - 1]} ${y} has ${length} days`;
  }
  const h = found[hour];
  if (halves ? h < 1 || h > 12 : h > 23)
    return `has an hour ${h}, of ${halves ? "1 to 12" : "0 to 23"}`;
  if (found[minute] > 59) return `has a minute ${found[minute]}, of 0 to 59`;
  if (found[second] >= 60) return `has a second ${found[second]}, of 0 to 59`;
  return undefined;
}

function daysIn(y: number, m: number): number {
  const leap = y % 4 === 0 && (y % 100 !== 0 || y % 400 === 0);
  return m === 2 && leap ? 29 : (monthLengths[m - 1] as number);
}

function secondsFrom(found: Found, dated: boolean, halves: boolean): number {
  const h = halves ? (found[hour] % 12) + 12 * found[half] : found[hour];
  const midnight = dated ? Date.UTC(found[year], found[month] - 1, found[day]) / 1000 : 0;
  return midnight + 3600 * h + 60 * found[minute] + found[second];
}

/**
 * The date of so many days since 1970-01-01.
 *
 * @param days - A whole number.
 * @returns Such as `2009-01-02`.
 */
export function isoDay(days: number): string {
  return new Date(days * 86_400_000).toISOString().slice(0, 10);
}

/**
 * Says what years of two digits were taken for, where nobody stated it.
 *
 * @param form - The form.
 * @param column - The column, as it was stated.
 * @param table - The table.
 * @param key - Which column of the table it is.
 * @returns The note, if there is one.
 */
export function shortYearsNote<K extends string>(
  form: DateForm,
  column: DateColumn,
  table: Table<K>,
  key: K,
): Problem[] {
  if (!form.shortYears || column.yearsFrom !== undefined) return [];
  const { place, path, message } = table.say(
    0,
    key,
    `years of two digits are taken within ${posixYearsFrom} to ${posixYearsFrom + 99}, as POSIX has it. Where they are others, state the year that they begin from (years from).`,
  );
  return [{ file: table.file, ...place, code: "file/short-years", path, message }];
}
