import { OutOfValidityError } from "@leat/formula";
import {
  type MonthlyPattern,
  monthlyPatternOfNeighbour,
  monthlyPatternOfRecord,
  monthlyPatternOfVisits,
  twelveVisitSpread,
  type Visit,
} from "@leat/hydrology";
import { cubicMetrePerSecond, day, litrePerSecond, one } from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, longRecord, noRealRecords } from "../records.ts";

if (noRealRecords) console.log("skipped: the real records are not in ../shared/reference/data");

const z = 1.959963984540054;
const name = "creek";
const like = "snow melt, steep creek";
const snow = [12, 14, 20, 35, 60, 80, 70, 40, 25, 18, 15, 13];
const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const on = (month: number, date = 15, year = 2024): string =>
  `${year}-${String(month).padStart(2, "0")}-${String(date).padStart(2, "0")}`;
const monthly = (flows: readonly number[]): Visit[] =>
  flows.map((flow, i) => ({ at: on(i + 1), flow: litrePerSecond.of(flow) }));
const flowsOf = ({ months }: MonthlyPattern): number[] =>
  months.map(({ flow }) => flow?.in(litrePerSecond) ?? Number.NaN);

describe("monthlyPatternOfVisits", () => {
  it("agrees with numpy's interp round the year", () => {
    const pattern = monthlyPatternOfVisits({ name, visits: monthly(snow), like });
    const numpy = [
      12.394201, 14.448575, 21.146504, 36.174234, 59.542903, 76.313544, 67.181767, 41.430659,
      25.867914, 18.401345, 15.082651, 13.086729,
    ];
    for (const [i, flow] of flowsOf(pattern).entries()) expect(flow).toBeCloseTo(numpy[i]!, 6);
    expect(pattern.meanFlow!.in(litrePerSecond)).toBeCloseTo(33.5244321, 6);
    expect(pattern.notices).toEqual([]);
    expect(pattern.months.map(({ month, count }) => [month, count])).toEqual(
      Array.from({ length: 12 }, (_, i) => [i + 1, 1]),
    );
  });

  it("has shares whose mean over the days is one, and does not mind order, year or scale", () => {
    const visit = fc.record({
      month: fc.integer({ min: 1, max: 12 }),
      date: fc.integer({ min: 1, max: 28 }),
      year: fc.integer({ min: 2019, max: 2024 }),
      flow: fc.double({ min: 0.1, max: 1e4, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(visit, { minLength: 3, maxLength: 20 }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (rows, times) => {
          const visits = rows.map(({ month, date, year, flow }): Visit => ({
            at: on(month, date, year),
            flow: litrePerSecond.of(flow),
          }));
          const pattern = monthlyPatternOfVisits({ name, visits, like });
          const shares = pattern.months.map(({ share }) => share!.in(one));
          expect(
            shares.reduce((sum, share, i) => sum + (share * monthDays[i]!) / 365, 0),
          ).toBeCloseTo(1, 10);
          const [low, high] = [
            Math.min(...rows.map(({ flow }) => flow)),
            Math.max(...rows.map(({ flow }) => flow)),
          ];
          for (const flow of flowsOf(pattern)) {
            expect(flow).toBeGreaterThanOrEqual(low * (1 - 1e-12));
            expect(flow).toBeLessThanOrEqual(high * (1 + 1e-12));
          }
          const scaled = monthlyPatternOfVisits({
            name,
            like,
            visits: visits.map(({ at, flow }) => ({ at, flow: flow.times(times) })),
          });
          for (const [i, { share }] of scaled.months.entries()) {
            expect(share!.in(one)).toBeCloseTo(shares[i]!, 9);
          }
        },
      ),
    );
    const turned = monthlyPatternOfVisits({ name, like, visits: monthly(snow).toReversed() });
    expect(flowsOf(turned)).toEqual(
      flowsOf(monthlyPatternOfVisits({ name, like, visits: monthly(snow) })),
    );
  });

  it("shares visits of one day of the year among them", () => {
    const visits = [3, 5, 7].map((flow, i) => ({
      at: on(6, 1, 2021 + i),
      flow: litrePerSecond.of(flow),
    }));
    for (const flow of flowsOf(monthlyPatternOfVisits({ name, visits, like })))
      expect(flow).toBeCloseTo(5, 12);
  });

  it("is as unsure as the trial says: the year in all months together, a month beside it, and what visits bring", () => {
    const visits = monthly(snow).map(({ at, flow }) => ({
      at,
      flow: flow.plusMinus(flow.times(0.1 * z), "current meter"),
    }));
    const { months, meanFlow } = monthlyPatternOfVisits({ name, visits, like });
    const june = months[5]!.flow!;
    const part = (id: string): number =>
      june.sources().get(id)!.in(litrePerSecond) / june.in(litrePerSecond);
    expect(part("creek: one year of visits")).toBeCloseTo(0.15, 12);
    expect(part("creek: visits to June")).toBeCloseTo(0.31, 12);
    expect(part("current meter")).toBeCloseTo(0.1, 12);
    const mean = meanFlow!.sources();
    expect(mean.get("creek: one year of visits")!.in(litrePerSecond)).toBeCloseTo(
      0.15 * meanFlow!.in(litrePerSecond),
      9,
    );
    // The meter and the year are in all months alike and leave the shares.
    const left = months[5]!.share!.sources().get("current meter");
    expect(Math.abs(left?.in(one) ?? 0)).toBeLessThan(1e-15);
  });

  it("takes what the visits are off from each other where that is more than the trial", () => {
    const flashy = [30, 5, 60, 8, 70, 6, 40, 4, 90, 9, 50, 5];
    const { months, notices } = monthlyPatternOfVisits({ name, visits: monthly(flashy), like });
    const off = months[0]!.flow!.sources().get("creek: visits to January")!.in(litrePerSecond);
    expect(off / months[0]!.flow!.in(litrePerSecond)).toBeGreaterThan(1.5);
    expect(notices.map(({ code }) => code)).toEqual(["pattern/flashy"]);
    expect(notices[0]?.message).toMatch(
      /^monthly-pattern: the visits are off the line of their neighbours by 2\d\d %, more than the 31 % of the trial, and that is taken\. Measure more often\.$/u,
    );
    // A dry visit has no logarithm: the trial stands.
    const dry = monthlyPatternOfVisits({ name, visits: monthly(flashy.with(3, 0)), like });
    expect(dry.notices).toEqual([]);
  });

  it("names months without a visit and long gaps, and what it assumed", () => {
    const visits = [on(1), on(9), on(4)].map((at) => ({ at, flow: litrePerSecond.of(10) }));
    const { notices } = monthlyPatternOfVisits({ name, visits });
    expect(notices.map(({ code, path, message }) => [code, path, message])).toEqual([
      [
        "pattern/months-without-visit",
        ["visits"],
        "monthly-pattern: no visit fell in February, March, May, June, July, August, October, November, December; those flows lie on a line between the visits before and after. Measure in those months.",
      ],
      [
        "pattern/long-gap",
        ["visits", 0],
        "monthly-pattern: 91 days of the year pass after visit 0 before the next, visit 2: what flows between is guessed. Measure between them.",
      ],
      [
        "pattern/long-gap",
        ["visits", 2],
        "monthly-pattern: 153 days of the year pass after visit 2 before the next, visit 1: what flows between is guessed. Measure between them.",
      ],
      [
        "pattern/long-gap",
        ["visits", 1],
        "monthly-pattern: 122 days of the year pass after visit 1 before the next, visit 0: what flows between is guessed. Measure between them.",
      ],
      [
        "pattern/like-assumed",
        ["like"],
        expect.stringMatching(
          /^monthly-pattern: like was not given, and the spread of "rain and storms, flat country" is taken, the larger \(a trial on open records.*\)\. Say which stream this one is like\.$/u,
        ) as unknown,
      ],
    ]);
  });

  it("refuses two visits, visits that found nothing, and bad ones by their row", () => {
    const visits = monthly(snow);
    expect(() => monthlyPatternOfVisits({ name, visits: visits.slice(0, 2) })).toThrow(
      "monthly-pattern: 2 visits say nothing of twelve months. Measure once a month through a year, three times at the very least.",
    );
    expect(() => monthlyPatternOfVisits({ name, visits: monthly([0, 0, 0]) })).toThrow(
      "monthly-pattern: all 3 visits found no flow. There is nothing to make a pattern of.",
    );
    expect(() =>
      monthlyPatternOfVisits({
        name,
        visits: visits.with(4, { at: on(5), flow: litrePerSecond.of(-1) }),
      }),
    ).toThrow("visits: visit 4 has a flow of -1 L/s, below zero.");
    expect(() =>
      monthlyPatternOfVisits({
        name,
        visits: visits.with(4, { at: "2023-02-29", flow: litrePerSecond.of(1) }),
      }),
    ).toThrow("2023-02-29T00:00 is not a time");
  });
});

describe("monthlyPatternOfRecord", () => {
  it.skipIf(noRealRecords)("agrees with numpy on two real records", () => {
    for (const [record, numpy, mean] of [
      [
        longRecord(),
        [
          4.9125447, 6.1859466, 8.0034483, 6.8230031, 4.3252841, 3.6352341, 1.790855, 2.2046084,
          2.0874117, 1.8525098, 2.7922711, 4.5795077,
        ],
        4.0851386,
      ],
      [
        creekRecord(),
        [
          1.4809285, 1.2127987, 1.3666056, 2.1694151, 5.5410215, 8.8164216, 8.6880295, 6.2602016,
          3.9185262, 2.8398039, 2.750282, 1.6240182,
        ],
        3.9052509,
      ],
    ] as const) {
      const { months, meanFlow } = monthlyPatternOfRecord({ record });
      for (const [i, { flow }] of months.entries()) {
        expect(flow!.in(cubicMetrePerSecond)).toBeCloseTo(numpy[i]!, 6);
      }
      expect(meanFlow!.in(cubicMetrePerSecond)).toBeCloseTo(mean, 6);
    }
  });

  it("knows nothing of a month that is all gaps, and says so", () => {
    const axis = TimeAxis.regular({
      start: "2023-01-01",
      step: day.of(1),
      count: 730,
      utcOffset: "+00:00",
    });
    const flows = Array.from({ length: 730 }, (_, row) =>
      [2, 8].includes(axis.civilAt(row).month) ? null : 10,
    );
    const record = Column.of(litrePerSecond, flows, { axis });
    const { months, meanFlow, notices } = monthlyPatternOfRecord({ record });
    expect(months.map(({ count }) => count)).toEqual([
      62, 0, 62, 60, 62, 60, 62, 0, 60, 62, 60, 61,
    ]);
    expect([months[1]!.flow, months[0]!.share, meanFlow]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(months[0]!.flow!.in(litrePerSecond)).toBeCloseTo(10, 12);
    expect(notices.map(({ code, message }) => [code, message])).toEqual([
      [
        "pattern/no-days",
        "monthly-pattern: no day of February, August is recorded in 2 years: what flows then is unknown, and with it the mean of the year. Take another gauge, or fill those months from one.",
      ],
    ]);
  });

  it("takes offset and scale as they are and divides noise by the root of the days", () => {
    const axis = TimeAxis.regular({
      start: "2023-01-01",
      step: day.of(1),
      count: 365,
      utcOffset: "+00:00",
    });
    const record = Column.of(litrePerSecond, new Float64Array(365).fill(10), {
      axis,
      uncertainty: {
        offset: [["zero", 0.001]],
        scale: [["rating", 0.1]],
        noise: [["reading", 0.002]],
      },
    });
    const { months } = monthlyPatternOfRecord({ record });
    const parts = [...months[3]!.flow!.sources()].map(
      ([id, c]) => [id, c.in(litrePerSecond)] as const,
    );
    expect(parts.map(([id]) => id)).toEqual(["zero", "rating", "reading[April]"]);
    for (const [i, size] of [1, 1, 2 / Math.sqrt(30)].entries())
      expect(parts[i]![1]).toBeCloseTo(size, 9);
  });
});

describe("monthlyPatternOfNeighbour", () => {
  const axis = TimeAxis.regular({
    start: "2023-01-01",
    step: day.of(1),
    count: 730,
    utcOffset: "+00:00",
  });
  const record = Column.of(
    litrePerSecond,
    Array.from({ length: 730 }, (_, row) => 100 * snow[axis.civilAt(row).month - 1]!),
    { axis },
  );
  const visits = [on(2), on(6), on(11)].map((at, i) => ({
    at,
    flow: litrePerSecond.of([14, 80, 15][i]! * 3),
  }));

  it("has the neighbour's shape and the site's size", () => {
    const { months, fit, meanFlow } = monthlyPatternOfNeighbour({ name, visits, record });
    expect(fit.transfer.factor.in(one)).toBeCloseTo(0.03, 12);
    for (const [i, { flow, count }] of months.entries()) {
      expect(flow!.in(litrePerSecond)).toBeCloseTo(3 * snow[i]!, 10);
      // 2023 and 2024, whose last day is not there.
      expect(count).toBe(2 * monthDays[i]! + (i === 1 ? 1 : 0) - (i === 11 ? 1 : 0));
    }
    expect(meanFlow!.in(litrePerSecond)).toBeCloseTo(
      3 * snow.reduce((sum, flow, i) => sum + (flow * monthDays[i]!) / 365, 0),
      9,
    );
  });

  it("is refused and told of as its parts are", () => {
    expect(() => monthlyPatternOfNeighbour({ name, visits: visits.slice(0, 2), record })).toThrow(
      OutOfValidityError,
    );
    const { notices } = monthlyPatternOfNeighbour({ name, visits, record });
    expect(notices.map(({ code }) => code)).toEqual(["transfer/beyond-visits"]);
  });
});

describe("twelveVisitSpread", () => {
  it("asks more of rain than of snow, and has a row for each stream of the trial", () => {
    expect(twelveVisitSpread.keys()).toEqual(["rain and storms, flat country", like]);
    for (const column of ["year", "month"] as const) {
      expect(
        twelveVisitSpread.get("rain and storms, flat country", column).in(one),
      ).toBeGreaterThan(twelveVisitSpread.get(like, column).in(one));
    }
  });
});
