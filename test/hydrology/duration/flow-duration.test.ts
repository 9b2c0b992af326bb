import { type Notice, NonPhysicalError } from "@leat/formula";
import {
  annualDurations,
  flowDuration,
  flowExceeded,
  gringortenPosition,
  hazenPosition,
  monthlyDurations,
  monthlyFlows,
} from "@leat/hydrology";
import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  foot,
  litrePerSecond,
  one,
  percent,
} from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, flowsOf, longRecord, noRealRecords, record } from "../records.ts";

const at = (
  duration: ReturnType<typeof flowDuration>,
  share: number,
  unit = cubicMetrePerSecond,
): number => flowExceeded({ duration, share: percent.of(share) }).in(unit);

const daysOfFlow = fc.array(fc.option(fc.double({ min: 0, max: 500, noNaN: true })), {
  minLength: 1,
  maxLength: 800,
});

describe("flowDuration", () => {
  it("never rises, holds every day once, and counts the others", () => {
    fc.assert(
      fc.property(daysOfFlow, fc.uniqueArray(fc.integer({ min: 1, max: 12 })), (list, months) => {
        const flows = record(list);
        const dates = list.map((_, row) => new Date(Date.UTC(2001, 0, 1 + row)).getUTCMonth() + 1);
        const wanted = list.flatMap((flow, row) =>
          flow !== null && months.includes(dates[row]!) ? [flows.values[row]!] : [],
        );
        fc.pre(wanted.length > 0);
        const duration = flowDuration({ record: flows, months });
        expect([...duration.flows.values]).toEqual(wanted.toSorted((a, b) => b - a));
        expect(duration.days).toEqual({
          used: wanted.length,
          gaps: list.filter((flow) => flow === null).length,
          leftOut: 0,
          notAsked: list.filter((flow) => flow !== null).length - wanted.length,
        });
        const table = duration.table.map(({ flow }) => flow["~si"]);
        expect(table.toSorted((a, b) => b - a)).toEqual(table);
      }),
      { numRuns: 60 },
    );
  });

  it("does not care for the order of the days, nor for the unit", () => {
    const list = flowsOf(500, (row) => ((row * 7919) % 503) + 1);
    const duration = flowDuration({ record: record(list) });
    const back = flowDuration({ record: record(list.toReversed()) });
    expect([...back.flows.values]).toEqual([...duration.flows.values]);
    const { axis } = record(list);
    const feet = flowDuration({
      record: Column.of(cubicFootPerSecond, list, { axis }),
    });
    expect(at(feet, 37, cubicFootPerSecond)).toBeCloseTo(at(duration, 37, litrePerSecond), 9);
  });

  it("reads on straight lines between the days, and gives each day back at its own share", () => {
    const duration = flowDuration({ record: record([40, 10, 30, 20]) });
    expect([...duration.shares.values]).toEqual([0.2, 0.4, 0.6, 0.8]);
    expect([20, 40, 50, 60, 75, 80].map((share) => at(duration, share, litrePerSecond))).toEqual([
      40,
      30,
      expect.closeTo(25, 9),
      20,
      expect.closeTo(12.5, 9),
      10,
    ]);
  });

  it("takes the formula for positions that it is given", () => {
    const flows = record([40, 10, 30, 20]);
    const hazen = flowDuration({ record: flows, position: hazenPosition });
    expect([...hazen.shares.values]).toEqual([0.125, 0.375, 0.625, 0.875]);
    const gringorten = flowDuration({ record: flows, position: gringortenPosition });
    expect(gringorten.shares.values[0]).toBeCloseTo(0.56 / 4.12, 12);
  });

  it("is not drawn on beyond its days", () => {
    const duration = flowDuration({ record: record([40, 10, 30, 20]) });
    for (const share of [19.9, 80.1, 0, 100, Number.NaN]) {
      expect(() => at(duration, share)).toThrow(share >= 0 ? NonPhysicalError : "NaN");
    }
    expect(() => at(duration, 5)).toThrow(
      "flow-exceeded: share = 5 % is outside 20 % to 80 %, the positions of 4 days. Ask for a share between them, or give a longer record: the curve is not drawn on.",
    );
    expect(() => flowExceeded({ duration, share: foot.of(1) as never })).toThrow(
      "flow-exceeded: 1 ft is no share; give a ratio, such as 95 %",
    );
    expect(duration.table.map(({ share }) => share.in(percent))).toEqual([
      20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80,
    ]);
  });

  it("picks months and years, by water year where the axis says so", () => {
    const list = flowsOf(3 * 365, (row) => Math.floor(row / 365) + 1);
    const flows = record(list, { start: "2001-10-01", waterYearStart: 10 });
    const second = flowDuration({ record: flows, years: [2002] });
    expect(new Set(second.flows.in(litrePerSecond))).toEqual(new Set([2]));
    expect(second.days).toEqual({ used: 365, gaps: 0, leftOut: 0, notAsked: 730 });
    expect(second.years).toBe(1);
    const calendar = flowDuration({ record: flows, years: [2002], firstMonth: 1 });
    expect(calendar.flows.in(litrePerSecond).filter((flow) => flow === 1)).toHaveLength(273);
    const summer = flowDuration({ record: flows, months: [6, 7, 8] });
    expect(summer.days.used).toBe(3 * 92);
    expect(() => flowDuration({ record: flows, years: [1990], months: [2, 3] })).toThrow(
      "flow-duration: record has no day that is taken in months 2, 3 of years 1990. It begins in 2001 and ends in 2003.",
    );
    expect(() => flowDuration({ record: flows, months: [0] })).toThrow(
      "flow-duration: month 0 is none; give months, 1 to 12",
    );
  });

  it("leaves days out for their quality when asked, and counts them", () => {
    const flows = record(flowsOf(50, (row) => row)).withQuality(Quality.ice, [40, 41, 42]);
    expect(flowDuration({ record: flows }).days.leftOut).toBe(0);
    const { days, flows: left } = flowDuration({ record: flows, leaveOut: Quality.ice });
    expect(days).toEqual({ used: 47, gaps: 0, leftOut: 3, notAsked: 0 });
    expect(left.in(litrePerSecond)).not.toContain(41);
  });

  it("keeps what the days share of their uncertainty, and not the noise of single days", () => {
    const uncertainty = {
      offset: [["staff", 0.001]],
      scale: [["rating", 0.1]],
      noise: [["waves", 0.5]],
    } as const;
    const duration = flowDuration({ record: record([10, 20, 30], { uncertainty }) });
    const flow = flowExceeded({ duration, share: percent.of(50) });
    expect([...flow.sources()].map(([id, u]) => [id, u.in(litrePerSecond)])).toEqual([
      ["staff", expect.closeTo(1, 9)],
      ["rating", expect.closeTo(2, 9)],
    ]);
    expect(flowDuration({ record: record([1, 2]) }).flows.uncertainty).toBeUndefined();
  });

  it("says when the years are few and the table is cut short", () => {
    const notices: Notice[] = [];
    flowDuration({ record: record([40, 10, 30, 20]) }, { onNotice: (each) => notices.push(each) });
    expect(notices.map(({ message }) => message)).toEqual([
      "flow-duration: record has days of 1 years, which is fewer than 10. Wet and dry years come in runs: compare with a longer record near by.",
      "flow-duration: 4 days reach from 20 % to 80 % of the time. The table stops there: the curve is not drawn on.",
    ]);
  });
});

describe("curves by month and by year", () => {
  it("hold every day of the record between them", () => {
    const list = flowsOf(800, (row): number | null => (row % 50 === 0 ? null : (row * 31) % 97));
    const flows = record(list);
    const months = monthlyDurations({ record: flows });
    expect(months.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(months.reduce((sum, { duration }) => sum + duration.days.used, 0)).toBe(784);
    const { years, excluded } = annualDurations({ record: flows, missingShare: percent.of(3) });
    expect(years.map(({ name, duration }) => [name, duration.days.used])).toEqual([
      ["2001", 357],
      ["2002", 358],
    ]);
    expect(excluded).toEqual([{ name: "2003", missing: 365 - 69 }]);
    expect(annualDurations({ record: flows }).excluded).toHaveLength(3);
  });

  it("leave out months of which there is no day, and quantiles that few days do not bear", () => {
    const months = monthlyFlows({ record: record(flowsOf(35, (row) => row)) });
    expect(months.map(({ month, days, years }) => [month, days, years])).toEqual([
      [1, 31, 1],
      [2, 4, 1],
    ]);
    const [january, february] = months;
    expect(january?.mean.in(litrePerSecond)).toBeCloseTo(15, 9);
    expect(january?.median?.in(litrePerSecond)).toBeCloseTo(15, 9);
    expect(january?.q95?.in(litrePerSecond)).toBeCloseTo(0.6, 9);
    expect(february?.q80?.in(litrePerSecond)).toBeCloseTo(31, 9);
    expect(february?.q95).toBeUndefined();
  });
});

// numpy.quantile(…, method="weibull"), type 6 of Hyndman and Fan, over the files themselves.
describe.skipIf(noRealRecords)("real records (absent: skipped)", () => {
  it.each([
    [1, 30.613342609177213],
    [5, 13.056897860597177],
    [10, 8.21188544691643],
    [50, 2.40693194133758],
    [80, 0.736238005585611],
    [95, 0.339802156424128],
    [99, 0.158574339664593],
  ])("a long record: Q%s is that of an independent quantile", (share, expected) => {
    expect(at(flowDuration({ record: longRecord() }), share)).toBeCloseTo(expected, 10);
  });

  it.each([
    [1, 14.413999999999943],
    [10, 8.75],
    [50, 2.54],
    [80, 1.27],
    [95, 0.914],
    [99, 0.6514400000000004],
  ])("a creek with gaps: Q%s is that of an independent quantile", (share, expected) => {
    expect(at(flowDuration({ record: creekRecord() }), share)).toBeCloseTo(expected, 10);
  });

  it("a season and the months of both are those of an independent quantile", () => {
    const late = { months: [7, 8, 9] };
    const long = flowDuration({ record: longRecord(), ...late });
    expect(long.days.used).toBe(2944);
    expect(at(long, 95)).toBeCloseTo(0.178396132122667, 10);
    const creek = flowDuration({ record: creekRecord(), ...late });
    expect(creek.days.used).toBe(2216);
    expect(at(creek, 95)).toBeCloseTo(2.25, 10);
    const seen = (flows: Column<"volume flow">, month: number): (number | undefined)[] => {
      const row = monthlyFlows({ record: flows })[month - 1];
      return [row?.days, ...[row?.mean, row?.median, row?.q80, row?.q95].map((q) => q?.["~si"])];
    };
    const close = (list: readonly number[]): unknown[] => list.map((n) => expect.closeTo(n, 10));
    expect(seen(longRecord(), 1)).toEqual(
      close([992, 4.912544666845027, 3.61039791200636, 1.98217924580741, 1.01940646927238]),
    );
    expect(seen(longRecord(), 8)).toEqual(
      close([992, 2.204608359485456, 0.764554851954289, 0.311485310055451, 0.133089177932784]),
    );
    expect(seen(creekRecord(), 1)).toEqual(close([685, 1.4809284671532845, 1.29, 1.06, 0.8269]));
    expect(seen(creekRecord(), 8)).toEqual(close([744, 6.260201612903226, 5.93, 4.66, 3.21]));
  });

  it("the positions of eleven thousand days differ by less than the last digit of a gauge", () => {
    const flows = longRecord();
    const weibull = flowDuration({ record: flows });
    const hazen = flowDuration({ record: flows, position: hazenPosition });
    expect(at(hazen, 95) / at(weibull, 95)).toBeCloseTo(1, 3);
    expect(one.of(weibull.shares.values[0]!).in(percent)).toBeCloseTo(100 / 11_689, 9);
  });
});
