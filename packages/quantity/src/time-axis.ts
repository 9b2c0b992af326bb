import { QuantityError } from "./error.ts";
import { readList, readNumber, readRecord } from "./plain-data.ts";
import { isQuantity, type Quantity } from "./quantity.ts";

/** What goes with the times of an axis. */
export interface TimeAxisOptions {
  /** What the clock is ahead of UTC, all year round: `+10:00`, `-07:00`. */
  readonly utcOffset: string;
  /** Month, 1 to 12, whose first day begins the water year; needed only to ask for water years. */
  readonly waterYearStart?: number | undefined;
}

/** An axis of equal steps. */
export interface RegularTimes extends TimeAxisOptions {
  /** Time of row 0: `2024-02-28T00:00`, without a zone. */
  readonly start: string;
  /** Time from a row to the next, or the number of seconds. */
  readonly step: Quantity<"time"> | number;
  /** Number of rows. */
  readonly count: number;
}

/** A date and a time of day, as the clock of the station shows it. */
export interface CivilTime {
  /** Year of the proleptic Gregorian calendar. */
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
  /** 0 to 23. */
  readonly hour: number;
  /** 0 to 59. */
  readonly minute: number;
  /** 0 to 59.999. */
  readonly second: number;
}

/** A time axis as plain data, with a version. */
export interface TimeAxisJson {
  /** Version of the form. */
  v: 1;
  /** What the clock is ahead of UTC. */
  utcOffset: string;
  /** First month of the water year. */
  waterYearStart?: number;
  /** Time of row 0, of an axis of equal steps. */
  start?: string;
  /** Its step in seconds. */
  step?: number;
  /** Its number of rows. */
  count?: number;
  /** Times of an axis of unequal steps, in seconds since 1970-01-01T00:00 on its clock. */
  times?: number[];
}

const day = 86_400;

/** Seconds, thirty thousand years either way: beyond, a double could not tell the milliseconds. */
const farthest = 1e12;

/**
 * The times of the rows of a column, on the clock of the station.
 *
 * The clock has a fixed offset from UTC and no summer time, as loggers are set. Days are those of
 * the proleptic Gregorian calendar, leap days included, and have 86 400 s. Times are told to the
 * millisecond. Rows are counted from 0.
 */
export class TimeAxis {
  /** Number of rows. */
  readonly length: number;
  /** What the clock is ahead of UTC. */
  readonly utcOffset: string;
  /** First month of the water year, where it is stated. */
  readonly waterYearStart: number | undefined;
  /** @internal */
  readonly "~start": number;
  /** @internal */
  readonly "~step": number;
  /** @internal */
  readonly "~times": Float64Array | undefined;

  private constructor(
    length: number,
    start: number,
    step: number,
    options: TimeAxisOptions,
    times?: Float64Array,
  ) {
    const { utcOffset, waterYearStart: month } = options;
    if (typeof utcOffset !== "string" || !/^(?!-00:00)[+-](0\d|1[0-4]):[0-5]\d$/.test(utcOffset)) {
      throw refuse(`utcOffset ${utcOffset} is not an offset such as +10:00`);
    }
    if (month !== undefined && !(Number.isInteger(month) && month > 0 && month < 13)) {
      throw refuse(`waterYearStart ${month} is not a month, 1 to 12`);
    }
    this.length = length;
    this.utcOffset = utcOffset;
    this.waterYearStart = month;
    this["~start"] = start;
    this["~step"] = step;
    this["~times"] = times;
  }

  /**
   * An axis of equal steps.
   *
   * @param times - Start, step, number of rows, and what goes with them.
   * @returns The axis.
   * @throws {@link QuantityError} `time` for a date that does not exist, a step or a count out of range.
   */
  static regular(times: RegularTimes): TimeAxis {
    const { start, step, count } = times;
    const seconds = isQuantity(step) && step.kind === "time" ? step["~si"] : step;
    if (typeof seconds !== "number" || !(seconds >= 0.001)) {
      throw refuse(`step ${String(step)} is not a time of a millisecond or more`);
    }
    const from = secondsOf(start);
    if (!Number.isSafeInteger(count) || count < 0 || !(from + count * seconds < farthest)) {
      throw refuse(`count ${count} is not a number of rows`);
    }
    return new TimeAxis(count, from, seconds, times);
  }

  /**
   * An axis of unequal steps.
   *
   * @param times - Times such as `2024-02-28T06:30` or dates, which are their midnights, or seconds since 1970-01-01T00:00 on the clock of the axis; each later than the one before. Seconds are kept, not copied: they are not to be written to afterwards.
   * @param options - What goes with them.
   * @returns The axis.
   * @throws {@link QuantityError} `time` for a date that does not exist, and for a row that is not later than the row before it.
   */
  static irregular(times: readonly string[] | Float64Array, options: TimeAxisOptions): TimeAxis {
    const seconds =
      times instanceof Float64Array
        ? times
        : Float64Array.from(times, (text, row) => secondsOf(text, `row ${row}, `));
    for (const [row, at] of seconds.entries()) {
      if (!(Math.abs(at) < farthest && (row === 0 || at > (seconds[row - 1] as number)))) {
        throw refuse(
          `row ${row}, ${times[row]}, is not ${row === 0 ? "a time" : `later than row ${row - 1}`}`,
        );
      }
    }
    return new TimeAxis(seconds.length, 0, 0, options, seconds);
  }

  /**
   * Seconds since 1970-01-01T00:00 on the clock of the axis.
   *
   * @param row - The row, from 0.
   * @returns The seconds.
   * @throws {@link QuantityError} `time` where there is no such row.
   */
  secondsAt(row: number): number {
    if (!Number.isInteger(row) || row < 0 || row >= this.length) {
      throw refuse(`row ${row} is not in an axis of ${this.length}`);
    }
    return this["~times"]?.[row] ?? this["~start"] + row * this["~step"];
  }

  /**
   * Date and time of day.
   *
   * @param row - The row, from 0.
   * @returns The date and the time of day.
   * @throws {@link QuantityError} `time` where there is no such row.
   */
  civilAt(row: number): CivilTime {
    return civilOf(this.secondsAt(row));
  }

  /**
   * Date and time of day as text: `2024-02-28T06:30`, with seconds where there are any.
   *
   * @param row - The row, from 0.
   * @returns The text, without a zone.
   * @throws {@link QuantityError} `time` where there is no such row.
   */
  isoAt(row: number): string {
    return isoOf(this.secondsAt(row));
  }

  /**
   * The water year, called by the calendar year in which it ends, as the U.S. Geological Survey calls it.
   *
   * @param row - The row, from 0.
   * @returns The year.
   * @throws {@link QuantityError} `time` where there is no such row, or where its first month was not stated.
   */
  waterYearAt(row: number): number {
    const start = this.waterYearStart;
    if (start === undefined) throw refuse("state waterYearStart to ask for a water year");
    const { year, month } = this.civilAt(row);
    return start > 1 && month >= start ? year + 1 : year;
  }

  /**
   * The day of the calendar year.
   *
   * @param row - The row, from 0.
   * @returns 1 on the first of January, to 366.
   * @throws {@link QuantityError} `time` where there is no such row.
   */
  dayOfYear(row: number): number {
    const seconds = this.secondsAt(row);
    return Math.floor(seconds / day) - daysOf(civilOf(seconds).year, 1, 1) + 1;
  }

  /**
   * The first row at a time or after it.
   *
   * @param time - Such as `2024-02-28T06:30`, or seconds as in {@link TimeAxis.secondsAt}.
   * @returns The row; `length` where every row is before.
   * @throws {@link QuantityError} `time` for a date that does not exist.
   */
  indexAtOrAfter(time: string | number): number {
    const seconds = typeof time === "number" ? time : secondsOf(time);
    let low = 0;
    let high = this.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.secondsAt(middle) < seconds) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /**
   * As plain data.
   *
   * @returns The versioned form that {@link TimeAxis.fromJSON} reads.
   */
  toJSON(): TimeAxisJson {
    const { utcOffset, waterYearStart } = this;
    return {
      v: 1,
      utcOffset,
      ...(waterYearStart !== undefined && { waterYearStart }),
      ...(this["~times"]
        ? { times: [...this["~times"]] }
        : { start: isoOf(this["~start"]), step: this["~step"], count: this.length }),
    };
  }

  /**
   * Reads what {@link TimeAxis.toJSON} wrote.
   *
   * @param json - Parsed JSON, or an object.
   * @returns The axis.
   * @throws {@link QuantityError} `json`, `time`.
   */
  static fromJSON(json: unknown): TimeAxis {
    const field = readRecord(json, "a time axis");
    const options = {
      utcOffset: field("utcOffset") as string,
      waterYearStart: field("waterYearStart") as number | undefined,
    };
    const times = field("times");
    return times === undefined
      ? TimeAxis.regular({
          ...options,
          start: field("start") as string,
          step: field("step") as number,
          count: field("count") as number,
        })
      : TimeAxis.irregular(
          Float64Array.from(readList(times, "times"), (at) => readNumber(at, "a time")),
          options,
        );
  }
}

function refuse(message: string): QuantityError {
  return new QuantityError("time", message);
}

// Years are counted from March here, so that a leap day is the last day of its year.

/** Days from 0000-03-01 to the first of March of a year. */
function daysToMarch(year: number): number {
  return 365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

/** Days from 0000-03-01 to 1970-01-01. */
const epoch = 719_468;

/** Days since 1970-01-01. The months from March have 31, 30, 31, 30, 31 days, and again: 153 in five. */
function daysOf(year: number, month: number, date: number): number {
  const fromMarch = (month + 9) % 12;
  return (
    daysToMarch(fromMarch > 9 ? year - 1 : year) +
    Math.floor((153 * fromMarch + 2) / 5) +
    date -
    1 -
    epoch
  );
}

/** Date and time of day of seconds since 1970-01-01T00:00, to the nearest millisecond. */
function civilOf(seconds: number): CivilTime {
  const ms = Math.round(seconds * 1000);
  const days = Math.floor(ms / (day * 1000));
  const inDay = ms - days * day * 1000;
  // Divided by the mean length of a year, days may come out a year early or late.
  let year = Math.floor((days + epoch) / 365.2425) + 1;
  while (daysToMarch(year) > days + epoch) year -= 1;
  const ofYear = days + epoch - daysToMarch(year);
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  return {
    year: fromMarch > 9 ? year + 1 : year,
    month: ((fromMarch + 2) % 12) + 1,
    day: ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
    hour: Math.floor(inDay / 3_600_000),
    minute: Math.floor(inDay / 60_000) % 60,
    second: (inDay % 60_000) / 1000,
  };
}

function two(n: number): string {
  return n < 10 ? `0${n}` : `${n}`;
}

function isoOf(seconds: number): string {
  const { year, month, day: date, hour, minute, second } = civilOf(seconds);
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(date)}T${two(hour)}:${two(minute)}${second ? `:${two(second)}` : ""}`;
}

/** Seconds since 1970-01-01T00:00 of a text as ISO 8601 has it; a date alone is its midnight. */
function secondsOf(text: unknown, where = ""): number {
  const full = String(text)
    .slice(0, 60)
    .replace(/^[\d-]{10}$/, "$&T00:00");
  const [, year = NaN, month = NaN, date = NaN, hour = NaN, minute = NaN, second] =
    /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::([0-5]\d(?:\.\d{1,3})?))?$/.exec(full)?.map(Number) ??
    [];
  const seconds = daysOf(year, month, date) * day + hour * 3600 + minute * 60 + (second || 0);
  // 2023-02-29 and 24:00 come back as the day after.
  if (isoOf(seconds).slice(0, 16) !== full.slice(0, 16)) {
    throw refuse(`${where}${full} is not a time without a zone, such as 2024-02-28T06:30`);
  }
  return seconds;
}
