import { type Notice, NonPhysicalError } from "@leat/formula";
import { annualMinima } from "@leat/hydrology";
import { cubicMetrePerSecond, litrePerSecond, percent } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, flowsOf, longRecord, noRealRecords, record } from "../records.ts";

type Minima = Map<string, { flow: number; from: string }>;

/** By a plain loop over dates: every window of every year that is whole, summed afresh. */
function byHand(flows: Column<"volume flow">, days: number, firstMonth: number): Minima {
  const byDate = new Map<string, number>();
  for (let row = 0; row < flows.length; row++) {
    const flow = flows.at(row)?.["~si"];
    if (flow !== undefined) byDate.set(flows.axis!.isoAt(row).slice(0, 10), flow);
  }
  const first = flows.axis!.civilAt(0).year - 1;
  const last = flows.axis!.civilAt(flows.length - 1).year;
  const minima: Minima = new Map();
  for (let year = first; year <= last; year++) {
    const from = Date.UTC(year, firstMonth - 1, 1);
    const count = (Date.UTC(year + 1, firstMonth - 1, 1) - from) / 864e5;
    const dates = flowsOf(count, (day) => new Date(from + day * 864e5).toISOString().slice(0, 10));
    const year365 = dates.map((date) => byDate.get(date));
    if (year365.includes(undefined)) continue;
    let lowest = { flow: Number.POSITIVE_INFINITY, from: "" };
    for (let day = 0; day + days <= count; day++) {
      let sum = 0;
      for (let at = day; at < day + days; at++) sum += year365[at]!;
      if (sum / days < lowest.flow) lowest = { flow: sum / days, from: dates[day]! };
    }
    minima.set(firstMonth === 1 ? `${year}` : `${year}/${String(year + 1).slice(-2)}`, lowest);
  }
  return minima;
}

function expectByHand(flows: Column<"volume flow">, days: number, firstMonth = 4): void {
  const { years } = annualMinima({ record: flows, days, firstMonth });
  const expected = byHand(flows, days, firstMonth);
  expect(years.map(({ name }) => name)).toEqual([...expected.keys()]);
  for (const { name, flow, at } of years) {
    const hand = expected.get(name)!;
    expect(flow["~si"]).toBeCloseTo(hand.flow, 12);
    expect(at.days).toBe(days);
    // Two windows may be equal but for rounding: the one that is named must be as low.
    const rows = flowsOf(days, (day) => flows.values[at.row + day]!);
    expect(rows.reduce((sum, each) => sum + each, 0) / days).toBeCloseTo(hand.flow, 12);
    expect(flows.axis!.isoAt(at.row).slice(0, 10)).toBe(at.from);
  }
}

describe("annualMinima", () => {
  it("is a plain loop over dates, in any year and with gaps", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom(1, 7, 30),
        fc.integer({ min: 0, max: 999 }),
        (firstMonth, days, seed) => {
          const flows = record(
            flowsOf(1600, (row): number | null =>
              seed % 3 === 0 && row === 700 ? null : ((row * 193 + seed) * 71) % 89,
            ),
            { start: "1999-02-11" },
          );
          expectByHand(flows, days, firstMonth);
        },
      ),
      { numRuns: 25 },
    );
  });

  it("keeps each window within its year", () => {
    // Low on the last three and the first four days: no window of seven days holds them all.
    const flows = flowsOf(730, (row) => (row >= 362 && row < 369 ? 1 : 8));
    const { years } = annualMinima({ record: record(flows, { start: "2001-04-01" }) });
    expect(years.map(({ flow }) => flow.in(litrePerSecond))).toEqual([
      expect.closeTo((3 * 1 + 4 * 8) / 7, 12),
      expect.closeTo((4 * 1 + 3 * 8) / 7, 12),
    ]);
    expect(years.map(({ name, at }) => [name, at.from])).toEqual([
      ["2001/02", "2002-03-25"],
      ["2002/03", "2002-04-01"],
    ]);
  });

  it("finds a zero that a running sum would miss", () => {
    const flows = flowsOf(365, (row) => (row < 300 ? 0.1 * row + 1 / 3 : row < 310 ? 0 : 5));
    const { years } = annualMinima({ record: record(flows, { start: "2001-04-01" }) });
    expect(years[0]?.flow["~si"]).toBe(0);
    expect(years[0]?.at.from).toBe("2002-01-26");
  });

  it("rises with the days that are averaged", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(999), (days, seed) => {
        const flows = record(
          flowsOf(365, (row) => ((row * 193 + seed) * 71) % 89),
          { start: "2001-04-01" },
        );
        const of = (n: number): number => annualMinima({ record: flows, days: n }).mean["~si"];
        expect(of(days)).toBeGreaterThanOrEqual(of(1) - 1e-15);
        expect(of(2 * days)).toBeGreaterThanOrEqual(of(days) - 1e-15);
      }),
      { numRuns: 40 },
    );
  });

  it("leaves out and counts years that lack days, unless so many may be missing", () => {
    const flows = flowsOf(1096, (row): number | null => (row === 400 ? null : 3 + (row % 5)));
    const made = record(flows, { start: "2001-04-01" });
    const notices: Notice[] = [];
    const { years, excluded } = annualMinima(
      { record: made },
      { onNotice: (notice) => notices.push(notice) },
    );
    expect(years.map(({ name }) => name)).toEqual(["2001/02", "2003/04"]);
    expect(excluded).toEqual([{ name: "2002/03", missing: 1 }]);
    expect(notices.map(({ message }) => message)).toEqual([
      "annual-minima: 1 of 3 years are left out, because of the days that they lack: 2002/03 (1 days). State the share that may be missing if their low season is known to be there.",
    ]);
    const allowed = annualMinima({ record: made, missingShare: percent.of(1) });
    expect(allowed.years.map(({ missing }) => missing)).toEqual([0, 1, 0]);
    // No window holds the gap.
    expect(allowed.years[1]!.at.row + 7 <= 400 || allowed.years[1]!.at.row > 400).toBe(true);
  });

  it("says when the year begins in the low season", () => {
    const notices: Notice[] = [];
    const cosine = flowsOf(1826, (row) => 10 - 9 * Math.cos((2 * Math.PI * row) / 365.25));
    const made = record(cosine, { start: "2001-01-01" });
    annualMinima({ record: made, firstMonth: 1 }, { onNotice: (notice) => notices.push(notice) });
    expect(notices.map(({ message }) => message)).toEqual([
      "annual-minima: 5 of 5 minima touch an end of their year, which begins in month 1: the low season is split, and one drought may count twice. Begin the year in a month in which the stream is high.",
    ]);
    annualMinima({ record: made, firstMonth: 7 }, { onNotice: (notice) => notices.push(notice) });
    expect(notices.map(({ code }) => code)).toEqual([
      "annual-minima/season-split",
      "annual-minima/years-left-out",
    ]);
    // Falling until the last day of each year.
    const falling = flowsOf(730, (row) => 400 - (row % 365));
    const codes: string[] = [];
    const onNotice = ({ code }: Notice): number => codes.push(code);
    annualMinima({ record: record(falling), firstMonth: 1 }, { onNotice });
    expect(codes).toEqual(["annual-minima/season-split"]);
  });

  it("gives each minimum a noise of its own, and the mean the noise of all", () => {
    const uncertainty = { scale: [["rating", 0.05]], noise: [["waves", 0.014]] } as const;
    const flows = record(
      flowsOf(730, () => 20),
      { start: "2001-04-01", uncertainty },
    );
    const { years, mean } = annualMinima({ record: flows });
    const sources = (of: typeof mean): unknown[] =>
      [...of.sources()].map(([id, u]) => [id, u.in(cubicMetrePerSecond)]);
    expect(sources(years[1]!.flow)).toEqual([
      ["rating", expect.closeTo(0.001, 12)],
      ["waves[365]", expect.closeTo(0.014 / Math.sqrt(7), 12)],
    ]);
    expect(sources(mean)).toEqual([
      ["rating", expect.closeTo(0.001, 12)],
      ["waves[mean of 2 minima]", expect.closeTo(0.014 / Math.sqrt(14), 12)],
    ]);
  });

  it("refuses a record without a year, and a number of days that is none", () => {
    const half = record(flowsOf(180, () => 1));
    expect(() => annualMinima({ record: half })).toThrow(NonPhysicalError);
    expect(() => annualMinima({ record: half })).toThrow(
      "annual-minima: none of 2 years from 2000/01, each from month 4, has enough of its days. State another first month, or the share of days that may be missing.",
    );
    expect(() => annualMinima({ record: half, days: 0 })).toThrow(
      "annual-minima: 0 days cannot be averaged; state a whole number from 1 to 183",
    );
  });
});

describe.skipIf(noRealRecords)("real records (absent: skipped)", () => {
  it.each([1, 7, 30])("minima of %s days are those of a plain loop", (days) => {
    expectByHand(longRecord(), days);
    expectByHand(creekRecord(), days);
  });

  // Python over the files, by dates, with math.fsum.
  it.each([
    [1, 0.3882605015808485, 0.809],
    [7, 0.4673545426913682, 0.8552777777777778],
    [30, 0.686231977309622, 0.9621907407407407],
  ])("their mean over %s days is that of an independent sum", (days, long, creek) => {
    const mean = (flows: Column<"volume flow">): number =>
      annualMinima({ record: flows, days }).mean.in(cubicMetrePerSecond);
    expect(mean(longRecord())).toBeCloseTo(long, 12);
    expect(mean(creekRecord())).toBeCloseTo(creek, 12);
  });

  it("a creek that is lowest in late winter splits its season in April, and says so", () => {
    const codes: string[] = [];
    const onNotice = ({ code }: Notice): number => codes.push(code);
    expect(annualMinima({ record: creekRecord() }, { onNotice }).years).toHaveLength(18);
    expect(codes).toContain("annual-minima/season-split");
    codes.length = 0;
    annualMinima({ record: creekRecord(), firstMonth: 7 }, { onNotice });
    expect(codes).not.toContain("annual-minima/season-split");
  });
});
