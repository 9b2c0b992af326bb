import { type Notice, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  annualMinima,
  gringortenPosition,
  logMoments,
  lowFlowByPosition,
  lowFlowQuantile,
} from "@leat/hydrology";
import {
  cubicMetrePerSecond,
  day,
  litrePerSecond,
  metre,
  one,
  type Quantity,
  year,
} from "@leat/quantity";
import type { Column } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, flowsOf, longRecord, noRealRecords, record } from "../records.ts";

/** Years from April, each of one flow in L/s. */
const minimaOf = (...lows: number[]) => {
  const flows = lows.flatMap((low, at) => flowsOf(at % 4 === 2 ? 366 : 365, () => low));
  // 2002/03 is the third year from 2000/01 … the leap day of 2004 lies in 2003/04.
  return annualMinima({ record: record(flows, { start: "2001-04-01" }) });
};
const twelve = [12, 8, 16, 10, 11, 7, 20, 13, 11, 6, 9, 14];
const q = (flow: Quantity<"volume flow">): number => flow.in(litrePerSecond);

describe("logMoments", () => {
  it("shift with the flows, stretch with their powers, and turn with their reciprocals", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 1000, noNaN: true }), { minLength: 10, maxLength: 40 }),
        (flows) => {
          fc.pre(new Set(flows).size > 2 && Math.max(...flows) / Math.min(...flows) > 1.01);
          const of = (list: readonly number[]) => {
            const { geometricMean, logDeviation, skew } = logMoments({
              flows: list.map((flow) => ({ flow: litrePerSecond.of(flow) })),
            });
            return [q(geometricMean), logDeviation.in(one), skew.in(one)] as const;
          };
          const [mean, deviation, skew] = of(flows);
          const [doubled, same, sameSkew] = of(flows.map((flow) => 2 * flow));
          expect(doubled / mean).toBeCloseTo(2, 9);
          expect(same).toBeCloseTo(deviation, 9);
          expect(sameSkew).toBeCloseTo(skew, 6);
          const [, turned, turnedSkew] = of(flows.map((flow) => 1000 / flow));
          expect(turned).toBeCloseTo(deviation, 9);
          expect(turnedSkew).toBeCloseTo(-skew, 6);
        },
      ),
    );
  });

  it("refuse fewer than three flows, flows all alike, and a dry year; ten are wanted", () => {
    const of = (...flows: number[]) => ({
      flows: flows.map((flow) => ({ flow: litrePerSecond.of(flow) })),
    });
    const accepted = { onNotice: () => {} };
    expect(() => logMoments(of(1, 2), accepted)).toThrow(NonPhysicalError);
    expect(() => logMoments(of(1, 2), accepted)).toThrow(
      "log-moments: flows has 2 of them, and a skew needs three. Give more years.",
    );
    expect(() => logMoments(of(3, 3, 3), accepted)).toThrow(
      "log-moments: flows are all alike, which have no skew. Take the flow itself.",
    );
    expect(() => logMoments(of(3, 0, 3), accepted)).toThrow("flows.1.flow = 0 L/s is not above");
    expect(() => logMoments(of(1, 2, 3))).toThrow(
      "log-moments: number of years = 3 is below 10, the range common practice gives",
    );
  });
});

describe("lowFlowQuantile", () => {
  it("falls with the recurrence, and lies near the position among the years", () => {
    const minima = minimaOf(...twelve);
    const at = (years: number): number =>
      q(lowFlowQuantile({ minima, recurrence: year.of(years) }).flow);
    expect([1.5, 2, 5, 10, 13].map(at)).toEqual(
      [1.5, 2, 5, 10, 13].map(at).toSorted((a, b) => b - a),
    );
    const position = q(lowFlowByPosition({ minima, recurrence: year.of(10) }));
    expect(Math.abs(at(10) / position - 1)).toBeLessThan(0.12);
    const { probability, years, zeroYears } = lowFlowQuantile({ minima, recurrence: year.of(10) });
    expect([probability.in(one), years, zeroYears]).toEqual([0.1, 12, 0]);
  });

  // scipy 1.17: skew(bias=False) and pearson3.ppf over log10 of the years with flow, at (p − p0)/(1 − p0).
  it("answers for years that ran dry", () => {
    const minima = minimaOf(...twelve, 0);
    const { flow, zeroYears, moments } = lowFlowQuantile({ minima, recurrence: year.of(10) });
    expect(zeroYears).toBe(1);
    expect(q(flow)).toBeCloseTo(5.489485983909909, 8);
    expect(moments?.skew.in(one)).toBeCloseTo(-0.009278904737845255, 8);
    const notices: Notice[] = [];
    const onNotice = (notice: Notice): number => notices.push(notice);
    const drier = minimaOf(...twelve, 0, 0);
    const none = lowFlowQuantile({ minima: drier, recurrence: year.of(10) }, { onNotice });
    expect(q(none.flow)).toBe(0);
    expect(none.moments).toBeUndefined();
    expect(notices.map(({ message }) => message)).toEqual([
      "low-flow: 2 of 14 years ran dry, so that the flow of a recurrence of 10 yr is zero. Plan for months without water.",
    ]);
    expect(q(lowFlowByPosition({ minima: drier, recurrence: year.of(10) }))).toBe(0);
  });

  it("asks for ten years and for a recurrence that they bear", () => {
    const minima = minimaOf(12, 8, 16, 10);
    const ask = { minima, recurrence: year.of(10) };
    expect(() => lowFlowQuantile(ask)).toThrow(OutOfValidityError);
    expect(() => lowFlowQuantile(ask)).toThrow(
      /^log-moments: number of years = 4 is below 10.*\nlow-flow: recurrence = 10 yr is beyond 5 yr, what 4 years of minima bear\. Ask for a shorter one\./u,
    );
    const codes: string[] = [];
    const { flow } = lowFlowQuantile(ask, { onNotice: ({ code }) => codes.push(code) });
    expect(codes).toEqual(["log-moments/out-of-range", "low-flow/recurrence-beyond-record"]);
    expect(q(flow)).toBeGreaterThan(0);
    expect(q(flow)).toBeLessThan(8);
  });

  it("refuses a recurrence that is none", () => {
    const minima = minimaOf(...twelve);
    expect(() => lowFlowQuantile({ minima, recurrence: day.of(365) })).toThrow(
      "low-flow-quantile: recurrence = 365 d is not above one year; give a time, such as 10 yr",
    );
    expect(() => lowFlowByPosition({ minima, recurrence: metre.of(10) as never })).toThrow(
      "low-flow-by-position: recurrence = 10 m is not above one year",
    );
  });

  it("carries what all years share, and each year's own", () => {
    const uncertainty = { scale: [["rating", 0.05]], noise: [["waves", 0.001]] } as const;
    const flows = twelve.flatMap((low, at) => flowsOf(at % 4 === 2 ? 366 : 365, () => low));
    const minima = annualMinima({ record: record(flows, { start: "2001-04-01", uncertainty }) });
    const { flow } = lowFlowQuantile({ minima, recurrence: year.of(10) });
    const sources = flow.sources();
    expect(q(sources.get("rating")!) / q(flow)).toBeCloseTo(0.05, 3);
    expect(sources.size).toBe(13);
  });
});

describe("lowFlowByPosition", () => {
  it("is the year itself at its own position, and is not drawn on", () => {
    const minima = minimaOf(...twelve);
    const at = (years: number): number =>
      q(lowFlowByPosition({ minima, recurrence: year.of(years) }));
    expect(at(13)).toBeCloseTo(6, 9);
    expect(at(13 / 2)).toBeCloseTo(7, 9);
    expect(at(13 / 1.5)).toBeCloseTo(6.5, 9);
    expect(() => at(13.1)).toThrow(
      "low-flow-by-position: recurrence = 13.1 yr is outside 1.083 yr to 13 yr, the positions of 12 years. Find a longer record near by, or fit a distribution.",
    );
    expect(() => at(1.05)).toThrow("recurrence = 1.05 yr is outside 1.083 yr to 13 yr");
    const position = gringortenPosition;
    expect(q(lowFlowByPosition({ minima, recurrence: year.of(20), position }))).toBeLessThan(7);
  });
});

// Python over the files: numpy mean and std, scipy.stats.skew(bias=False), pearson3.ppf; numpy quantile "weibull".
describe.skipIf(noRealRecords)("real records (absent: skipped)", () => {
  const cases: readonly (readonly [
    string,
    () => Column<"volume flow">,
    readonly number[],
    readonly (readonly number[])[],
  ])[] = [
    [
      "a long record",
      longRecord,
      [0.3307102342399947, 0.40291318691365646, -0.861550025282858],
      [
        [2, 0.37724444087938663, 0.3721642665597597],
        [5, 0.16139393599781693, 0.18001423762944893],
        [10, 0.09557200161108963, 0.10598591069419236],
        [20, 0.05936909455818096, 0.052135359428502004],
      ],
    ],
    [
      "a creek with gaps",
      creekRecord,
      [0.8348274802838194, 0.10421549442616997, -1.6832175116567052],
      [
        [2, 0.8898062705484013, 0.8612857142857142],
        [5, 0.7121604478220959, 0.7394285714285714],
        [10, 0.6074939670903096, 0.5357428571428572],
      ],
    ],
  ];
  it.each(cases)("7-day low flows of %s are those of scipy", (_, flows, expected, rows) => {
    const minima = annualMinima({ record: flows() });
    for (const [years, pearson, position] of rows) {
      const recurrence = year.of(years!);
      const { flow, moments } = lowFlowQuantile({ minima, recurrence });
      expect(flow.in(cubicMetrePerSecond)).toBeCloseTo(pearson!, 9);
      const { geometricMean, logDeviation, skew } = moments!;
      expect([geometricMean, logDeviation, skew].map((each) => each["~si"])).toEqual(
        expected.map((n) => expect.closeTo(n, 9)),
      );
      expect(lowFlowByPosition({ minima, recurrence }).in(cubicMetrePerSecond)).toBeCloseTo(
        position!,
        9,
      );
    }
  });
});
