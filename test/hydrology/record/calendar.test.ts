import { dailyCalendar, yearName } from "@leat/hydrology";
import { cubicMetrePerSecond, day, metre } from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const zone = { utcOffset: "-05:00" };
const recordFrom = (start: string, count: number, step = 1): Column<"volume flow"> =>
  Column.of(cubicMetrePerSecond, new Float64Array(count).fill(1), {
    axis: TimeAxis.regular({ start, step: day.of(step), count, ...zone }),
  });

describe("dailyCalendar", () => {
  // Date.UTC is the oracle: the proleptic Gregorian calendar of ECMA-262.
  it("has the months of Date.UTC over two cycles of 400 years", () => {
    const start = Date.UTC(1600, 0, 1);
    const count = 2 * 146_097;
    const { months, yearStarts, beginsIn, yearDays } = dailyCalendar(
      recordFrom("1600-01-01", count),
      1,
    );
    let wrong = 0;
    for (let row = 0; row < count; row++) {
      if (months[row] !== new Date(start + row * 86_400_000).getUTCMonth() + 1) wrong++;
    }
    expect(wrong).toBe(0);
    expect(beginsIn).toHaveLength(800);
    expect(
      Array.from(beginsIn, (year, y) => yearStarts[y] !== (Date.UTC(year, 0, 1) - start) / 864e5),
    ).not.toContain(true);
    expect(yearDays.reduce((sum, each) => sum + each)).toBe(count);
  });

  it("begins and names years as Date.UTC has them, from any day and in any month", () => {
    const anyDay = fc.integer({
      min: Date.UTC(1850, 0, 1) / 864e5,
      max: Date.UTC(2150, 0, 1) / 864e5,
    });
    fc.assert(
      fc.property(
        anyDay,
        fc.integer({ min: 1, max: 1500 }),
        fc.integer({ min: 1, max: 12 }),
        (from, count, firstMonth) => {
          const date = (row: number): Date => new Date((from + row) * 864e5);
          const calendar = dailyCalendar(
            recordFrom(date(0).toISOString().slice(0, 10), count),
            firstMonth,
          );
          const { yearStarts, beginsIn, yearDays } = calendar;
          const starts = Array.from({ length: count }, (_, row) => row).filter(
            (row) =>
              row === 0 ||
              (date(row).getUTCDate() === 1 && date(row).getUTCMonth() === firstMonth - 1),
          );
          expect([...yearStarts]).toEqual([...starts, count]);
          starts.forEach((row, y) => {
            const begins =
              date(row).getUTCFullYear() - (date(row).getUTCMonth() + 1 < firstMonth ? 1 : 0);
            expect(beginsIn[y]).toBe(begins);
            expect(yearDays[y]).toBe(
              (Date.UTC(begins + 1, firstMonth - 1, 1) - Date.UTC(begins, firstMonth - 1, 1)) /
                864e5,
            );
            const name =
              firstMonth === 1 ? `${begins}` : `${begins}/${String(begins + 1).slice(-2)}`;
            expect(yearName(calendar, y)).toBe(name);
          });
        },
      ),
    );
  });

  it("takes any time of day as its date, and equal steps however they are stored", () => {
    const times = ["2024-02-28T09:00", "2024-02-29T09:00", "2024-03-01T09:00"];
    const axis = TimeAxis.irregular(times, zone);
    const record = Column.of(cubicMetrePerSecond, [1, 2, 3], { axis });
    expect([...dailyCalendar(record, 1).months]).toEqual([2, 2, 3]);
  });

  it("refuses a record that is not daily, with row and date", () => {
    expect(() => dailyCalendar(recordFrom("2020-01-01", 40, 7), 1)).toThrow(
      "daily-record: row 1, 2020-01-08T00:00, comes 7 days after row 0, 2020-01-01T00:00. Give every day a row, with a gap where nothing was recorded; average shorter steps to days first.",
    );
    const axis = TimeAxis.irregular(["2020-01-01", "2020-01-02", "2020-01-03", "2020-01-05"], zone);
    const record = Column.of(cubicMetrePerSecond, [1, 2, 3, 4], { axis });
    expect(() => dailyCalendar(record, 1)).toThrow("row 3, 2020-01-05T00:00, comes 2 days after");
  });

  it("refuses a record without dates or rows, another kind, and a month that is none", () => {
    expect(() => dailyCalendar(Column.of(cubicMetrePerSecond, [1, 2]), 1)).toThrow(
      "daily-record: record has 2 rows and no dates. Give the column a TimeAxis with a step of one day.",
    );
    expect(() => dailyCalendar(recordFrom("2020-01-01", 0), 1)).toThrow(
      "daily-record: record has no rows. Give it the flows of some years.",
    );
    expect(() => dailyCalendar(Column.of(metre, [1]) as never, 1)).toThrow(
      "daily-record: a column of length is no record of flows; pass a column of volume flow",
    );
    expect(() => dailyCalendar(recordFrom("2020-01-01", 3), 13)).toThrow(
      "daily-record: a year cannot begin in month 13; state a month, 1 to 12",
    );
  });
});
