import { type Notice, NonPhysicalError } from "@leat/formula";
import { recordSummary } from "@leat/hydrology";
import { cubicMetrePerSecond, litrePerSecond, metre, percent } from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, flowsOf, longRecord, noRealRecords, record } from "../records.ts";

const noticesOf = (input: Parameters<typeof recordSummary>[0]): Notice[] => {
  const notices: Notice[] = [];
  recordSummary(input, { onNotice: (notice) => notices.push(notice) });
  return notices;
};

describe("recordSummary", () => {
  it("counts every day once, whatever the flags", () => {
    const days = fc.array(
      fc.tuple(fc.option(fc.integer({ min: 0, max: 9 })), fc.integer({ min: 0, max: 31 })),
      { minLength: 1, maxLength: 900 },
    );
    fc.assert(
      fc.property(
        days,
        fc.integer({ min: 1, max: 12 }),
        fc.boolean(),
        (list, firstMonth, leave) => {
          const plain = record(list.map(([flow]) => flow));
          const quality = plain.quality.map((bits, row) => bits | (list[row]![1] << 1));
          const flows = Column.wrap("volume flow", plain.values, quality, { axis: plain.axis });
          const leaveOut = leave ? Quality.ice | Quality.suspect : 0;
          const taken = list.filter(
            ([flow], row) => flow !== null && (quality[row]! & leaveOut) === 0,
          );
          fc.pre(taken.length > 0);
          const summary = recordSummary({ record: flows, leaveOut, firstMonth });
          expect(summary.days).toBe(list.length);
          expect(summary.gaps).toBe(list.filter(([flow]) => flow === null).length);
          expect(summary.used).toBe(taken.length);
          expect(summary.used + summary.gaps + summary.leftOut).toBe(list.length);
          expect(summary.zeroDays).toBe(taken.filter(([flow]) => flow === 0).length);
          const flagged = (bit: number): number =>
            list.filter(([flow], row) => flow !== null && (quality[row]! & bit) !== 0).length;
          expect(summary.flagged).toEqual({
            suspect: flagged(Quality.suspect),
            estimated: flagged(Quality.estimated),
            outOfRange: flagged(Quality.outOfRange),
            ice: flagged(Quality.ice),
            partial: flagged(Quality.partial),
          });
          expect(summary.years.reduce((sum, { used }) => sum + used, 0)).toBe(taken.length);
          for (const year of summary.years) {
            expect(year.used + year.missing).toBe(year.days);
            expect(year.complete).toBe(year.missing === 0);
          }
          const mean = taken.reduce((sum, [flow]) => sum + flow!, 0) / taken.length;
          expect(summary.mean.in(litrePerSecond)).toBeCloseTo(mean, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("finds the longest gap, a stuck sensor and months of which nothing was recorded", () => {
    const flows = flowsOf(396, (row): number | null => {
      if (row >= 31 && row < 59) return null;
      if (row === 100 || row === 101) return null;
      return row >= 200 && row < 215 ? 7 : 20 + (row % 9);
    });
    const summary = recordSummary({ record: record(flows) });
    expect([summary.gaps, summary.gapRuns]).toEqual([30, 2]);
    expect(summary.longestGap).toEqual({ row: 31, from: "2001-02-01", days: 28 });
    expect(summary.stuck).toEqual([{ row: 200, from: "2001-07-20", days: 15 }]);
    expect(recordSummary({ record: record(flows), stuckDays: 16 }).stuck).toEqual([]);
    expect(summary.emptyMonths).toEqual(["2001-02"]);
    expect(summary.neverRecorded).toEqual([2]);
    expect([summary.from, summary.to]).toEqual(["2001-01-01", "2002-01-31"]);
    expect(summary.completeYears).toBe(0);
    const allowed = recordSummary({ record: record(flows), missingShare: percent.of(10) });
    expect(allowed.years.map(({ name, missing, complete }) => [name, missing, complete])).toEqual([
      ["2001", 30, true],
      ["2002", 334, false],
    ]);
  });

  it("does not take a dry bed for a stuck sensor, and lets a gap end a run", () => {
    const dry = flowsOf(60, (row) => (row < 30 ? 0 : row));
    expect(recordSummary({ record: record(dry) }).stuck).toEqual([]);
    const parted = flowsOf(19, (row) => (row === 9 ? null : 5));
    expect(recordSummary({ record: record(parted) }).stuck).toEqual([]);
    expect(recordSummary({ record: record(flowsOf(10, () => 5)) }).stuck).toHaveLength(1);
  });

  it("takes the year of the axis unless another is stated", () => {
    const flows = flowsOf(730, () => 3);
    const october = record(flows, { start: "2001-10-01", waterYearStart: 10 });
    expect(recordSummary({ record: october }).years.map(({ name }) => name)).toEqual([
      "2001/02",
      "2002/03",
    ]);
    expect(recordSummary({ record: october, firstMonth: 1 }).years).toHaveLength(3);
  });

  it("carries what all days share into the mean, and noise as its root of days", () => {
    const uncertainty = {
      offset: [["staff", 0.002]],
      scale: [["rating", 0.05]],
      noise: [["waves", 0.01]],
    } as const;
    const { mean } = recordSummary({ record: record([10, 20, 30, 40], { uncertainty }) });
    const sources = [...mean.sources()].map(([id, u]) => [id, u.in(cubicMetrePerSecond)]);
    expect(sources).toEqual([
      ["staff", expect.closeTo(0.002, 12)],
      ["rating", expect.closeTo(0.05 * 0.025, 12)],
      ["waves[mean of 4 days]", expect.closeTo(0.005, 12)],
    ]);
  });

  it("tells what is out of the ordinary, with its row and date", () => {
    const flows = flowsOf(59, (row): number | null => (row > 30 ? null : row < 12 ? 4 : 0));
    expect(noticesOf({ record: record(flows) }).map(({ message }) => message)).toEqual([
      "record-summary: 28 of 59 days are gaps, in 1 runs, the longest of 28 days from row 31, 2001-02-01. They are counted, not filled.",
      "record-summary: 12 equal flows in a row from row 0, 2001-01-01. Look whether the sensor was stuck or iced in; flag the days as suspect if so.",
      "record-summary: 19 days have no flow. Make sure that the stream was dry and that a zero does not stand for nothing recorded.",
      "record-summary: no year has a day of month 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12. What is made of this record does not hold for the whole year.",
      "record-summary: none of 1 years from month 1 is complete. State another first month, or the share of days that may be missing.",
    ]);
    expect(noticesOf({ record: record(flowsOf(365, (row) => 1 + (row % 5))) })).toEqual([]);
  });

  it("refuses a negative flow with its row and date, unless the day is left out", () => {
    const flows = record([3, 2, -1, 4]);
    expect(() => recordSummary({ record: flows })).toThrow(NonPhysicalError);
    expect(() => recordSummary({ record: flows })).toThrow(
      "daily-record: row 2, 2001-01-03, has a flow of -0.001 m³/s. Flag it as a gap, or correct it; where water really runs backwards these figures mean nothing.",
    );
    const suspect = flows.withQuality(Quality.suspect, [2]);
    expect(recordSummary({ record: suspect, leaveOut: Quality.suspect }).leftOut).toBe(1);
  });

  it("refuses a record of gaps alone, and options that are none", () => {
    expect(() => recordSummary({ record: record([null, null]) })).toThrow(
      "daily-record: record has 2 days and no flow among them that is taken. Check how its gaps and its quality were read.",
    );
    const flows = record([1, 2]);
    expect(() => recordSummary({ record: flows, leaveOut: 64 })).toThrow(
      "daily-record: leaveOut 64 is not a sum of bits of Quality, such as Quality.ice | Quality.estimated",
    );
    expect(() => recordSummary({ record: flows, stuckDays: 1 })).toThrow(
      "record-summary: stuckDays 1 is no number of days in a row, 2 or more",
    );
    expect(() => recordSummary({ record: flows, missingShare: percent.of(100) })).toThrow(
      "daily-record: missingShare = 100 % is no share of a year; give a ratio from 0 up to, not including, 1",
    );
    expect(() => recordSummary({ record: flows, missingShare: metre.of(0) as never })).toThrow(
      "missingShare = 0 m is no share of a year",
    );
    expect(() => recordSummary({ record: undefined as never })).toThrow(
      "daily-record: undefined is no record of flows",
    );
  });
});

// Counted apart, in Python from the files, by dates in a dictionary.
describe.skipIf(noRealRecords)("real records (absent: skipped)", () => {
  it("a creek with gaps, ice and estimates is counted as a count of its file has it", () => {
    const summary = recordSummary({ record: creekRecord(), firstMonth: 1 });
    expect([summary.from, summary.to]).toEqual(["1993-09-07", "2019-12-31"]);
    expect([summary.days, summary.used, summary.gaps]).toEqual([9612, 8585, 1027]);
    expect([summary.gapRuns, summary.longestGap]).toEqual([
      14,
      { row: 846, from: "1996-01-01", days: 366 },
    ]);
    expect(summary.flagged).toEqual({
      suspect: 0,
      estimated: 1189,
      outOfRange: 0,
      ice: 394,
      partial: 109,
    });
    expect(summary.mean.in(cubicMetrePerSecond)).toBeCloseTo(3.965226208503204, 12);
    expect(summary.completeYears).toBe(20);
    expect(summary.stuck).toEqual([]);
    const without = recordSummary({
      record: creekRecord(),
      leaveOut: Quality.ice | Quality.estimated | Quality.partial,
    });
    expect(without.leftOut).toBe(394 + 1189 + 109);
  });

  it("a record without a gap has its 32 water years", () => {
    const summary = recordSummary({ record: longRecord() });
    expect([summary.days, summary.used, summary.gapRuns]).toEqual([11_688, 11_688, 0]);
    expect(summary.longestGap).toBeUndefined();
    expect(summary.completeYears).toBe(32);
    expect(summary.mean.in(cubicMetrePerSecond)).toBeCloseTo(4.086576573479314, 12);
  });
});
