import { type Notice, NonPhysicalError } from "@leat/formula";
import { durationConfidence, flowDuration, flowExceeded } from "@leat/hydrology";
import { cubicMetrePerSecond, litrePerSecond, percent } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { flowsOf, longRecord, noRealRecords, record } from "../records.ts";

const shares = [percent.of(5), percent.of(50), percent.of(95)];
/** Years from 2001 on, each of one flow; 2004 and every fourth year is a day longer. */
const yearsOf = (...flows: number[]): (number | null)[] =>
  flows.flatMap((flow, year) => flowsOf(year % 4 === 3 ? 366 : 365, () => flow));

describe("durationConfidence", () => {
  it("has no interval where all years are alike", () => {
    const days = flowsOf(365, (row) => row + 1);
    const { quantiles } = durationConfidence({
      record: record([...days, ...days, ...days]),
      shares,
    });
    for (const { flow, low, high } of quantiles) {
      expect(low["~si"]).toBeCloseTo(flow["~si"], 12);
      expect(high["~si"]).toBeCloseTo(flow["~si"], 12);
      expect(flow.standardUncertainty()["~si"]).toBeCloseTo(0, 12);
    }
  });

  it("is the binomial of two unlike years, by arithmetic", () => {
    // Two years of 10 and 30 L/s: Q50 is 10 when both draws are dry, 30 when both are wet, and lies between the
    // two, at 20, when there is one of each: a quarter, a quarter and a half of the draws. Its variance is 50.
    const { quantiles } = durationConfidence({
      record: record(yearsOf(10, 30)),
      shares: [percent.of(50)],
      draws: 4000,
      seed: "two years",
    });
    const [{ flow, low, high }] = quantiles as [(typeof quantiles)[0]];
    expect(flow.in(litrePerSecond)).toBeCloseTo(20, 9);
    expect([low, high].map((each) => each.in(litrePerSecond))).toEqual([10, 30]);
    const spread = flow.sources().get("years of the record")?.in(litrePerSecond);
    expect(spread).toBeGreaterThan(Math.sqrt(50) * 0.97);
    expect(spread).toBeLessThan(Math.sqrt(50) * 1.03);
  });

  it("gives the same answer to the same seed, and another to another", () => {
    const flows = record(yearsOf(10, 30, 20, 17, 50, 5, 33));
    const ask = (seed: string) => durationConfidence({ record: flows, shares, draws: 200, seed });
    expect(ask("a")).toEqual(ask("a"));
    expect(ask("a").quantiles).not.toEqual(ask("b").quantiles);
  });

  it("gives the flow of all complete years, and leaves out and counts the others", () => {
    const list = yearsOf(10, 30, 20);
    list[400] = null;
    const { years, excluded, quantiles, draws } = durationConfidence({
      record: record(list),
      shares,
    });
    expect([years, draws]).toEqual([2, 1000]);
    expect(excluded).toEqual([{ name: "2002", missing: 1 }]);
    const duration = flowDuration({ record: record(yearsOf(10, 30, 20)), years: [2001, 2003] });
    quantiles.forEach(({ flow, share }) => {
      expect(flow["~si"]).toBe(flowExceeded({ duration, share })["~si"]);
    });
    const taken = durationConfidence({
      record: record(list),
      shares,
      missingShare: percent.of(1),
    });
    expect(taken.years).toBe(3);
  });

  it("says when the years are few, and refuses one", () => {
    const notices: Notice[] = [];
    const onNotice = (notice: Notice): number => notices.push(notice);
    durationConfidence({ record: record(yearsOf(10, 30)), shares }, { onNotice });
    expect(notices.map(({ code, actual }) => [code, actual])).toEqual([
      ["duration-confidence/few-years", "2"],
    ]);
    expect(() => durationConfidence({ record: record(yearsOf(10)), shares })).toThrow(
      "duration-confidence: record has 1 complete years of 1, and one year says nothing about another. Give two or more, or state the share of days that may be missing.",
    );
  });

  it("refuses shares that no draw reaches, and too few draws", () => {
    const flows = record(yearsOf(10, 30));
    expect(() => durationConfidence({ record: flows, shares: [percent.of(99.9)] })).toThrow(
      NonPhysicalError,
    );
    expect(() => durationConfidence({ record: flows, shares: [percent.of(0.1)] })).toThrow(
      "duration-confidence: share = 0.1 % is outside 0.1368 % to 99.86 %, the positions of 730 days.",
    );
    expect(() => durationConfidence({ record: flows, shares, draws: 99 })).toThrow(
      "duration-confidence: 99 draws show no 95 % interval; take 100 or more",
    );
    expect(() =>
      durationConfidence({ record: flows, shares: [litrePerSecond.of(1) as never] }),
    ).toThrow("duration-confidence: 1 L/s is no share");
  });

  // numpy: 4000 draws of whole water years, np.quantile(…, method="weibull") of each; seeds and generators differ, so
  // that the two agree within the noise of the draws, some 2 %.
  it.skipIf(noRealRecords)(
    "of a long record is that of an independent bootstrap (absent: skipped)",
    () => {
      const { quantiles, years } = durationConfidence({
        record: longRecord(),
        shares,
        draws: 4000,
      });
      expect(years).toBe(32);
      const expected = [
        [1.21373, 10.7604, 15.461],
        [0.20301, 2.0105, 2.80337],
        [0.03512, 0.27184, 0.39644],
      ];
      quantiles.forEach(({ flow, low, high }, index) => {
        const spread = flow.sources().get("years of the record");
        [spread, low, high].forEach((got, which) => {
          const ratio = got!.in(cubicMetrePerSecond) / expected[index]![which]!;
          expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
        });
      });
    },
  );
});
