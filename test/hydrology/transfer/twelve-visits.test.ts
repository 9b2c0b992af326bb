// The trial that `twelveVisitSpread` was made of, once more: first worked in numpy, independently of this code.
import { monthlyPatternOfRecord, monthlyPatternOfVisits, twelveVisitSpread } from "@leat/hydrology";
import { seededRandom } from "@leat/numerics";
import { percent } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";
import { describe, expect, it } from "vitest";

import { creekRecord, longRecord, noRealRecords } from "../records.ts";

if (noRealRecords) console.log("skipped: the real records are not in ../shared/reference/data");

const draws = 8;

function trialOn(record: Column<"volume flow">): { year: number; month: number; low: number } {
  const axis = record.axis!;
  const truth = monthlyPatternOfRecord({ record });
  const random = seededRandom(7);
  const years = new Map<number, number[][]>();
  for (let row = 0; row < record.length; row++) {
    if (!record.at(row)) continue;
    const { year, month } = axis.civilAt(row);
    const months = years.get(year) ?? Array.from({ length: 12 }, () => []);
    months[month - 1]!.push(row);
    years.set(year, months);
  }
  const [levels, own]: [number[], number[]] = [[], []];
  for (const months of years.values()) {
    if (months.reduce((days, rows) => days + rows.length, 0) < 365) continue;
    for (let draw = 0; draw < draws; draw++) {
      const visits = months.map((rows) => {
        const row = rows[random.below(rows.length)]!;
        return { at: axis.isoAt(row), flow: record.at(row)! };
      });
      const pattern = monthlyPatternOfVisits({ name: "trial", visits });
      const level = Math.log(pattern.meanFlow!.dividedBy(truth.meanFlow!)["~si"]);
      levels.push(level);
      for (const [i, { flow }] of pattern.months.entries()) {
        own.push(Math.log(flow!.dividedBy(truth.months[i]!.flow!)["~si"]) - level);
      }
    }
  }
  const root = (all: readonly number[]): number =>
    Math.sqrt(all.reduce((sum, off) => sum + off * off, 0) / all.length);
  return {
    year: root(levels),
    month: root(own),
    low: levels.reduce((sum, off) => sum + off, 0) / levels.length,
  };
}

describe("a year of monthly visits", () => {
  it.skipIf(noRealRecords)("misses the months of many years by as much as the table says", () => {
    for (const [record, stream, low] of [
      [longRecord(), "rain and storms, flat country", -0.116],
      [creekRecord(), "snow melt, steep creek", -0.026],
    ] as const) {
      const found = trialOn(record);
      const said = (column: "year" | "month"): number =>
        twelveVisitSpread.get(stream, column).in(percent) / 100;
      expect(Math.abs(found.year / said("year") - 1)).toBeLessThan(0.15);
      expect(Math.abs(found.month / said("month") - 1)).toBeLessThan(0.1);
      expect(Math.abs(found.low - low)).toBeLessThan(0.04);
    }
  });
});
