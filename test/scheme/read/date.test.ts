import { QuantityError } from "@leat/quantity";
import { TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { dateForm, isoDay } from "../../../packages/scheme/src/read/date.ts";

const day = 86_400;

/** Seconds of a day by the other calendar that we have: the time axis counts years from March. */
function secondsOf(iso: string): number {
  return TimeAxis.regular({ start: iso, step: day, count: 1, utcOffset: "+00:00" }).secondsAt(0);
}

const monthNames = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** Writes a date the way each form asks for. */
const writers: Record<string, (y: string, m: string, d: string) => string> = {
  "YYYY-MM-DD": (y, m, d) => `${y}-${m}-${d}`,
  "YYYY/MM/DD": (y, m, d) => `${y}/${m}/${d}`,
  "DD/MM/YYYY": (y, m, d) => `${d}/${m}/${y}`,
  "MM/DD/YYYY": (y, m, d) => `${m}/${d}/${y}`,
  "M/D/YYYY": (y, m, d) => `${Number(m)}/${Number(d)}/${y}`,
  "DD.MM.YYYY": (y, m, d) => `${d}.${m}.${y}`,
  YYYYMMDD: (y, m, d) => `${y}${m}${d}`,
  "DD-MMM-YYYY": (y, m, d) => `${d}-${monthNames[Number(m) - 1]}-${y}`,
  "D MMM YYYY": (y, m, d) => `${Number(d)} ${monthNames[Number(m) - 1]?.toUpperCase()} ${y}`,
  YYYY_MM_DD: (y, m, d) => `${y}_${m}_${d}`,
};

describe("the form of dates", () => {
  it.each(Object.entries(writers))("%s reads what is written by it", (form, write) => {
    const { secondsOf: read } = dateForm(form);
    fc.assert(
      fc.property(
        fc.date({ min: new Date("1583-01-01"), max: new Date("9999-12-31"), noInvalidDate: true }),
        (date) => {
          const iso = date.toISOString().slice(0, 10);
          const [y = "", m = "", d = ""] = iso.split("-");
          expect(read(write(y, m, d))).toBe(secondsOf(iso));
          expect(isoDay(read(write(y, m, d)) / day)).toBe(iso);
        },
      ),
    );
  });

  it.each([
    ["HH:MM:SS", "23:59:58", 86_398],
    ["HH:MM", "06:30", 23_400],
    ["H:MM", "6:30", 23_400],
    ["HH:MM:SS.S", "00:00:01.25", 1.25],
    ["HH:MM:SS.S", "00:00:01,5", 1.5],
    ["HH:MM:SS.S", "00:00:01", 1],
    ["H:MM:SS AM", "12:00:00 AM", 0],
    ["H:MM:SS AM", "12:00:00 pm", 43_200],
    ["H:MM:SS AM", "1:00:05 PM", 46_805],
    ["YYYY-MM-DD HH:MM", "1970-01-02 00:01", 86_460],
    ["YYYY-MM-DDTHH:MM:SS", "1970-01-02T00:01:02", 86_462],
    ["MM/DD/YY HH:MM:SS AM", "01/02/70 01:00:00 AM", 90_000],
  ])("%s reads %s as %d s", (form, cell, seconds) => {
    expect(dateForm(form).secondsOf(cell)).toBe(seconds);
  });

  it.each([
    // POSIX, strptime, %y: 69 to 99 are of the twentieth century, 00 to 68 of the twenty-first.
    [undefined, "01-Jan-69", "1969-01-01"],
    [undefined, "31-Dec-99", "1999-12-31"],
    [undefined, "01-jan-00", "2000-01-01"],
    [undefined, "31-DEC-68", "2068-12-31"],
    [1930, "01-Jan-30", "1930-01-01"],
    [1930, "31-Dec-29", "2029-12-31"],
    [1900, "31-Dec-99", "1999-12-31"],
    [1900, "01-Jan-00", "1900-01-01"],
  ])("a year of two digits, from %s: %s is %s", (from, cell, iso) => {
    const form = dateForm("DD-MMM-YY", from);
    expect(form.shortYears).toBe(true);
    expect(form.secondsOf(cell)).toBe(secondsOf(iso));
  });

  it.each([
    ["YYYY-MM-DD", "2020-1-05", "is not of the form YYYY-MM-DD"],
    ["YYYY-MM-DD", "2020-01-05 ", "is not of the form YYYY-MM-DD"],
    ["YYYY-MM-DD", "2020/01/05", "is not of the form YYYY-MM-DD"],
    ["YYYY-MM-DD", "20-01-05", "is not of the form YYYY-MM-DD"],
    ["YYYY-MM-DD", "", "is not of the form YYYY-MM-DD"],
    ["DD-MMM-YY", "05-Mai-20", "is not of the form DD-MMM-YY"],
    ["DD/MM/YYYY", "5/1/2020", "is not of the form DD/MM/YYYY"],
    ["H:MM AM", "5:00", "is not of the form H:MM AM"],
    ["YYYY-MM-DD", "2019-02-29", "does not exist: February 2019 has 28 days"],
    ["YYYY-MM-DD", "1900-02-29", "does not exist: February 1900 has 28 days"],
    ["YYYY-MM-DD", "2020-04-31", "does not exist: April 2020 has 30 days"],
    ["YYYY-MM-DD", "2020-04-00", "does not exist: April 2020 has 30 days"],
    ["YYYY-MM-DD", "2020-00-01", "has a month 0, of 1 to 12"],
    ["YYYY-MM-DD", "0020-01-01", "has the year 20, before the present calendar"],
    [
      "MM/DD/YYYY",
      "25/12/2020",
      "has a month 25, of 1 to 12; does the day stand before the month?",
    ],
    ["HH:MM:SS", "24:00:00", "has an hour 24, of 0 to 23"],
    ["HH:MM:SS", "12:60:00", "has a minute 60, of 0 to 59"],
    ["HH:MM:SS", "12:00:60", "has a second 60, of 0 to 59"],
    ["H:MM AM", "0:30 AM", "has an hour 0, of 1 to 12"],
  ])("%s refuses %s", (form, cell, fault) => {
    const read = dateForm(form);
    expect(read.secondsOf(cell)).toBeNaN();
    expect(read.fault(cell)).toBe(fault);
  });

  it("knows the leap day of 2000", () => {
    expect(dateForm("YYYYMMDD").secondsOf("20000229")).toBe(secondsOf("2000-02-29"));
  });

  it("finds no parts of an earlier cell in the next", () => {
    const form = dateForm("YYYY-MM-DD HH:MM:SS");
    expect(form.secondsOf("1970-01-01 05:06:07")).toBe(18_367);
    expect(form.secondsOf("1970-01-01 00:00:00")).toBe(0);
  });

  it.each([
    ["", '"" has no year (YYYY) and no month (MM) and no day (DD)'],
    ["YYYY-MM", '"YYYY-MM" has no day (DD)'],
    ["MM-DD", '"MM-DD" has no year (YYYY)'],
    ["YYYY HH:MM", '"YYYY HH:MM" has no month (MM) and no day (DD)'],
    ["DD HH:MM", '"DD HH:MM" has no year (YYYY) and no month (MM)'],
    ["HH", '"HH" has no minutes (MM)'],
    ["SS", '"SS" has no hours (HH) and no minutes (MM)'],
    ["yyyy-mm-dd", '"yyyy-mm-dd" holds "y", which is no part of a date'],
    ["%Y-%m-%d", '"%Y-%m-%d" holds "%", which is no part of a date'],
    ["YYYY-MM-DD-DD", '"YYYY-MM-DD-DD" has DD where that part stands already'],
    ["YYYYMD", '"YYYYMD" does not say where D begins'],
    ["YYY-MM-DD", '"YYY-MM-DD" holds "Y", which is no part of a date'],
  ])("refuses itself: %s", (form, fault) => {
    expect(() => dateForm(form)).toThrow(
      new QuantityError(
        "time",
        `${fault}; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals`,
      ),
    );
  });

  it("refuses to be without what is needed", () => {
    expect(() => dateForm("HH:MM:SS", undefined, "date")).toThrow('"HH:MM:SS" has no date; write');
    expect(() => dateForm("YYYY-MM-DD", undefined, "time of day")).toThrow(
      '"YYYY-MM-DD" has no time of day; write',
    );
  });

  it.each([1500, 9950, 1930.5])("refuses a hundred years from %d", (from) => {
    expect(() => dateForm("DD-MMM-YY", from)).toThrow(
      `${from} is not a year that a hundred years can begin with; write one such as 1930`,
    );
  });
});
