import { NonPhysicalError } from "@leat/formula";
import { baseFlowIndex, filteredBaseFlow } from "@leat/hydrology";
import { litrePerSecond, metre, one } from "@leat/quantity";
import { type Column, Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, flowsOf, longRecord, noRealRecords, record } from "../records.ts";

const both = [
  ["baseFlowIndex", baseFlowIndex],
  ["filteredBaseFlow", filteredBaseFlow],
] as const;
const anyFlows = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 60, maxLength: 300 });

describe.each(both)("%s", (_, separate) => {
  it("never lies above the flow nor below zero, and counts every day", () => {
    fc.assert(
      fc.property(anyFlows, (list) => {
        const flows = record(list);
        const { baseFlow, index, days, daysWithout } = separate({ record: flows });
        expect(days + daysWithout).toBe(list.length);
        let [base, all] = [0, 0];
        for (let row = 0; row < list.length; row++) {
          if ((baseFlow.quality[row]! & Quality.gap) !== 0) continue;
          expect(baseFlow.values[row]).toBeGreaterThanOrEqual(0);
          expect(baseFlow.values[row]).toBeLessThanOrEqual(flows.values[row]! + 1e-15);
          base += baseFlow.values[row]!;
          all += flows.values[row]!;
        }
        expect(index.in(one)).toBeCloseTo(base / all, 12);
        expect(index.in(one)).toBeLessThanOrEqual(1 + 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  it("is all of a flow that never changes, and the same in any unit of flow", () => {
    const { index } = separate({ record: record(flowsOf(90, () => 12)) });
    expect(index.in(one)).toBeCloseTo(1, 12);
    const list = flowsOf(200, (row) => 10 + ((row * 37) % 53));
    const once = separate({ record: record(list) }).index.in(one);
    const tenfold = separate({ record: record(list.map((flow) => 10 * flow)) }).index.in(one);
    expect(tenfold).toBeCloseTo(once, 12);
  });

  it("takes each side of a gap by itself", () => {
    const side = flowsOf(120, (row) => 10 + ((row * 37) % 53));
    const parted = separate({ record: record([...side, null, ...side]) });
    const alone = separate({ record: record(side) });
    expect(parted.index.in(one)).toBeCloseTo(alone.index.in(one), 12);
    expect(parted.days).toBe(2 * alone.days);
    expect(parted.daysWithout).toBe(2 * alone.daysWithout);
    expect(parted.baseFlow.quality[120]! & Quality.gap).toBe(1);
  });

  it("is not moved by a scale error, and a little by an offset", () => {
    const list = flowsOf(200, (row) => 10 + ((row * 37) % 53));
    const uncertainty = { offset: [["staff", 0.001]], scale: [["rating", 0.1]] } as const;
    const { index, baseFlow } = separate({ record: record(list, { uncertainty }) });
    expect(baseFlow.uncertainty).toMatchObject(uncertainty);
    const moved = separate({ record: record(list.map((flow) => flow + 1)) }).index.in(one);
    expect([...index.sources().keys()]).toEqual(["staff"]);
    // One L/s more each day: turning points may move, so only about as much.
    const step = moved - index.in(one);
    expect(index.standardUncertainty().in(one) / step).toBeGreaterThan(0.7);
    expect(index.standardUncertainty().in(one) / step).toBeLessThan(1.3);
  });
});

describe("smoothed minima", () => {
  it("are worked by hand", () => {
    // Blocks of five: minima 10 (row 2), 8 (row 7), 9 (row 13), 7 (row 16), 9 (row 22).
    const blocks = [
      [15, 12, 10, 11, 30],
      [20, 12, 8, 9, 40],
      [25, 15, 12, 9, 14],
      [10, 7, 8, 9, 12],
      [11, 10, 9, 9, 13],
    ];
    const list = blocks.flat();
    // 0.9 × 8 = 7.2 is below 10 and 9; 0.9 × 9 = 8.1 is not below 7; 0.9 × 7 = 6.3 is below 9 and 9.
    const { baseFlow, index, days } = baseFlowIndex({ record: record(list) });
    expect(days).toBe(10);
    const line = flowsOf(10, (at) => 8 - at / 9);
    expect([...baseFlow.in(litrePerSecond)].slice(7, 17)).toEqual(
      line.map((flow) => expect.closeTo(flow, 9)),
    );
    // 75 L/s days of base flow in 149 of flow.
    expect(index.in(one)).toBeCloseTo(75 / 149, 12);
  });

  it("follow the flow itself where a line would run above it", () => {
    // Minima by block: 12, 9 (row 5), 10 (row 14), 11 (row 15), 12. Nine tenths of 10 are not below 9: row 14 is no
    // turning point, and the line from 9 to 11 passes it at 10.8.
    const list = flowsOf(25, () => 40);
    for (const [row, flow] of [
      [2, 12],
      [5, 9],
      [14, 10],
      [15, 11],
      [22, 12],
    ] as const) {
      list[row] = flow;
    }
    const { baseFlow, days } = baseFlowIndex({ record: record(list) });
    expect(days).toBe(11);
    const [before, there, after] = baseFlow.in(litrePerSecond).slice(13, 16);
    expect([before, there, after]).toEqual([
      expect.closeTo(10.6, 9),
      expect.closeTo(10, 9),
      expect.closeTo(11, 9),
    ]);
  });

  it("need a run of days with two turning points in it", () => {
    expect(() => baseFlowIndex({ record: record(flowsOf(19, () => 5)) })).toThrow(NonPhysicalError);
    expect(() => baseFlowIndex({ record: record(flowsOf(19, () => 5)) })).toThrow(
      "base-flow-index: record has no 20 days in a row, gaps aside, in which anything flows. Give a longer record without gaps.",
    );
    expect(baseFlowIndex({ record: record(flowsOf(20, () => 5)) }).days).toBe(6);
  });
});

describe("the filter", () => {
  it("falls with its parameter where floods recede", () => {
    const flows = record(flowsOf(400, (row) => 10 + 100 * Math.exp(-(row % 40) / 6)));
    const at = (α: number): number =>
      filteredBaseFlow({ record: flows, filterParameter: one.of(α) }).index.in(one);
    expect(at(0.9)).toBeGreaterThan(at(0.925));
    expect(at(0.925)).toBeGreaterThan(at(0.98));
    expect(filteredBaseFlow({ record: flows }).index.in(one)).toBe(at(0.925));
  });

  it("is the same of a record read backwards but for the order of its passes", () => {
    const list = flowsOf(400, (row) => 10 + ((row * 37) % 53));
    const forwards = filteredBaseFlow({ record: record(list) }).index.in(one);
    const backwards = filteredBaseFlow({ record: record(list.toReversed()) }).index.in(one);
    expect(backwards).toBeCloseTo(forwards, 2);
  });

  it("needs 31 days in a row, and a parameter between 0 and 1", () => {
    const flows = record(flowsOf(30, () => 5));
    expect(() => filteredBaseFlow({ record: flows })).toThrow(
      "filtered-base-flow: record has no 31 days in a row, gaps aside, in which anything flows.",
    );
    expect(() => filteredBaseFlow({ record: flows, filterParameter: one.of(1) })).toThrow(
      "filtered-base-flow: filterParameter = 1 is not a ratio above 0 and below 1",
    );
    expect(() =>
      filteredBaseFlow({ record: flows, filterParameter: metre.of(0.9) as never }),
    ).toThrow("filterParameter = 0.9 m is not a ratio");
  });
});

// Written in Python from the texts of the methods, over the files by dates; numpy.interp draws the lines.
describe.skipIf(noRealRecords)("real records (absent: skipped)", () => {
  const seen = (separate: typeof baseFlowIndex, flows: Column<"volume flow">): number[] => {
    const { index, days } = separate({ record: flows });
    return [index.in(one), days];
  };

  it("smoothed minima are those of an independent routine", () => {
    expect(seen(baseFlowIndex, longRecord())).toEqual([
      expect.closeTo(0.5187151116395893, 11),
      11_658,
    ]);
    expect(seen(baseFlowIndex, creekRecord())).toEqual([
      expect.closeTo(0.7702276630698567, 11),
      8417,
    ]);
  });

  it("filtered flows are those of an independent routine", () => {
    expect(seen(filteredBaseFlow, longRecord())).toEqual([
      expect.closeTo(0.5588815892229126, 11),
      11_688,
    ]);
    expect(seen(filteredBaseFlow, creekRecord())).toEqual([
      expect.closeTo(0.7198156331449285, 11),
      8576,
    ]);
  });
});
