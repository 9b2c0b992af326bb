import { NonPhysicalError } from "@leat/formula";
import {
  designFlows,
  type DesignFlowsInput,
  percentileFlow,
  residualAndUsable,
} from "@leat/hydrology";
import {
  cubicMetre,
  cubicMetrePerSecond,
  day,
  kilowattHour,
  litrePerSecond,
  metre,
  percent,
  type Quantity,
  QuantityError,
  watt,
  year,
} from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { longRecord, noRealRecords } from "../records.ts";

if (noRealRecords) console.log("skipped: the real records are not in ../shared/reference/data");

const L = (flow: number): Quantity<"volume flow"> => litrePerSecond.of(flow);
const m3 = (flow: number): Quantity<"volume flow"> => cubicMetrePerSecond.of(flow);
const leastShare = percent.of(20);

function usableOf(flows: readonly (number | null)[], start = "2023-01-01"): Column<"volume flow"> {
  const axis = TimeAxis.regular({
    start,
    step: day.of(1),
    count: flows.length,
    utcOffset: "+10:00",
  });
  return Column.of(litrePerSecond, flows, { axis });
}

describe("designFlows", () => {
  it.skipIf(noRealRecords)("agrees with numpy on a real record", () => {
    const record = longRecord();
    const { usable, left } = residualAndUsable({
      record,
      rule: percentileFlow({ exceeded: percent.of(95) }),
    });
    const answer = designFlows({
      usable,
      left,
      candidates: [1, 2, 4, 8, 40].map(m3),
      leastShare: percent.of(15),
      firstMonth: 1,
      powerAt: (flow, design) => 1000 * 9.80665 * flow * 30 * 0.75 * (1 - (1 - flow / design) ** 4),
    });
    // numpy 2.4.6: days full, part and idle in a year, mean flow used, used and spilled in m³, mean W, kWh a year, least, middle and most kWh
    // of 31 calendar years, least, middle and most m³.
    const numpy = [
      [
        244.96875, 78.78125, 41.5, 0.782709988, 790414359.2, 2998922552.9, 170918.49464,
        1498271.524, 981603.6747, 1457368.2011, 1936041.3108, 16291824.8, 24094893.7, 31587515.1,
      ],
      [
        186.0625, 120.125, 59.0625, 1.361176013, 1374574341, 2414762571, 294890.8047, 2585012.794,
        1735857.5603, 2530229.5356, 3806586.0523, 28910263.3, 41819452.8, 62119310,
      ],
      [
        99.75, 173.6875, 91.8125, 2.080393418, 2100871146.2, 1688465765.9, 443561.75451, 3888262.34,
        2287185.2813, 3665820.9574, 6819304.532, 41625912.1, 61766467.9, 112040744.4,
      ],
      [
        35.53125, 197.75, 131.96875, 2.638581603, 2664553689.1, 1124783223, 535646.00178,
        4695472.8516, 1895741.4916, 4175408.8747, 10336233.7851, 39048865.6, 74216536, 174556359.9,
      ],
      [
        2.21875, 54.09375, 308.9375, 1.973282151, 1992705561.4, 1796631350.7, 347336.65713,
        3044753.1364, 355301.0144, 2305743.762, 10834970.2445, 9032756.8, 47092109.9, 213258039.4,
      ],
    ];
    for (const [i, each] of answer.candidates.entries()) {
      const found = [
        each.full.in(day),
        each.part.in(day),
        each.idle.in(day),
        each.meanUsed.in(cubicMetrePerSecond),
        each.water.used.in(cubicMetre),
        each.water.spilled.in(cubicMetre),
        each.meanPower!.in(watt),
        each.energy!.in(kilowattHour),
        each.energyByYear!.least.in(kilowattHour),
        each.energyByYear!.middle.in(kilowattHour),
        each.energyByYear!.most.in(kilowattHour),
        each.usedByYear!.least.in(cubicMetre),
        each.usedByYear!.middle.in(cubicMetre),
        each.usedByYear!.most.in(cubicMetre),
      ];
      for (const [k, number] of numpy[i]!.entries())
        expect(found[k]! / number, `${i}, ${k}`).toBeCloseTo(1, 8);
      expect(each.water.left!.in(cubicMetre)).toBeCloseTo(337464651.953, 1);
      expect(each.water.total.in(cubicMetre)).toBeCloseTo(4126801564.007, 1);
    }
    expect([answer.greatest, answer.completeYears, answer.recorded, answer.gaps]).toEqual([
      3, 31, 11688, 0,
    ]);
    expect(answer.candidates[3]!.gain!.in(kilowattHour)).toBeCloseTo(4695472.8516 - 3888262.34, 1);
    expect(answer.candidates[0]!.gain).toBeUndefined();
    expect(answer.notices).toEqual([]);
  });

  it("closes the account of water and time, and gives no more power than full", () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.double({ min: 0, max: 100, noNaN: true }), { freq: 8 }), {
          minLength: 1,
          maxLength: 200,
        }),
        fc.uniqueArray(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (flows, sizes, least) => {
          fc.pre(flows.some((flow) => flow !== null));
          const usable = usableOf(flows);
          const left = usableOf(flows.map((flow) => flow && 3));
          const candidates = sizes.toSorted((a, b) => a - b).map(L);
          const { candidates: answers, recorded } = designFlows({
            usable,
            left,
            candidates,
            leastShare: percent.of(100 * least),
            powerAt: (flow) => 500 * flow,
          });
          const offered = usable.values.reduce((sum, flow) => sum + flow, 0) * 86_400;
          for (const { flow, full, part, idle, water, meanUsed, meanPower } of answers) {
            expect(full.plus(part).plus(idle).in(year)).toBeCloseTo(1, 12);
            const parts = water.used.plus(water.spilled).plus(water.left!).in(cubicMetre);
            expect(parts).toBeCloseTo(water.total.in(cubicMetre), 6);
            expect(water.used.plus(water.spilled).in(cubicMetre)).toBeCloseTo(offered, 6);
            expect(water.spilled.in(cubicMetre)).toBeGreaterThanOrEqual(-1e-9 * offered);
            expect(meanUsed.in(litrePerSecond)).toBeLessThanOrEqual(
              flow.in(litrePerSecond) * (1 + 1e-12),
            );
            expect(meanPower!.in(watt)).toBeCloseTo(500 * meanUsed.in(cubicMetrePerSecond), 9);
            expect(meanUsed.in(cubicMetrePerSecond) * 86_400 * recorded).toBeCloseTo(
              water.used.in(cubicMetre),
              6,
            );
          }
          // A larger machine that runs on any flow uses more, and is full on fewer days.
          const any = designFlows({ usable, candidates, leastShare: percent.of(0) }).candidates;
          for (let i = 1; i < any.length; i++) {
            expect(any[i]!.meanUsed["~si"]).toBeGreaterThanOrEqual(
              any[i - 1]!.meanUsed["~si"] * (1 - 1e-12),
            );
            expect(any[i]!.full["~si"]).toBeLessThanOrEqual(any[i - 1]!.full["~si"]);
          }
        },
      ),
    );
  });

  it("gives the power of the textbook for a stream that never changes", () => {
    // Any text: ρ·g·Q·H·η = 999.7 · 9.80665 · 0.01 · 50 · 0.5 = 2450.9 W.
    const usable = Column.of(cubicMetrePerSecond, new Float64Array(30).fill(0.01));
    const { candidates, greatest } = designFlows({
      usable,
      candidates: [m3(0.01), m3(0.02)],
      leastShare: percent.of(60),
      powerAt: (flow) => 999.7 * 9.80665 * flow * 50 * 0.5,
    });
    expect(candidates[0]!.meanPower!.in(watt)).toBeCloseTo(2450.9, 1);
    expect(candidates[0]!.energy!.in(kilowattHour)).toBeCloseTo((2450.93 * 8766) / 1000, 0);
    expect(candidates[1]!.meanPower!.in(watt)).toBe(0);
    // At its design flow a machine runs full.
    expect(
      candidates.map(({ full, part, idle }) => [full, part, idle].map((time) => time.in(year))),
    ).toEqual([
      [1, 0, 0],
      [0, 0, 1],
    ]);
    expect(greatest).toBe(0);
  });

  it("does not mind the order of days that have no dates", () => {
    const flows = [5, 40, 20, 10];
    const of = (column: Column<"volume flow">): number[] =>
      designFlows({ usable: column, candidates: [L(8), L(15)], leastShare }).candidates.map(
        ({ meanUsed }) => Number(meanUsed.in(litrePerSecond).toPrecision(12)),
      );
    expect(of(Column.of(litrePerSecond, flows))).toEqual([7.25, 11.25]);
    expect(of(Column.of(litrePerSecond, [5, 10, 20, 40]))).toEqual([7.25, 11.25]);
    const { completeYears, candidates } = designFlows({
      usable: Column.of(litrePerSecond, flows),
      candidates: [L(8), L(15)],
      leastShare,
    });
    expect([completeYears, candidates[0]!.usedByYear, candidates[0]!.energy]).toEqual([
      0,
      undefined,
      undefined,
    ]);
  });

  it("compares complete years only, from the month that is stated, leap days and all", () => {
    // 2023 from July: 184 days; 2024: 366; 2025 to the end of November.
    const flows = Array.from({ length: 184 + 366 + 334 }, (_, row) =>
      row < 184 ? 1 : row < 550 ? 2 : 4,
    );
    const usable = usableOf(flows, "2023-07-01");
    const of = (firstMonth?: number, column = usable): ReturnType<typeof designFlows> =>
      designFlows({
        usable: column,
        candidates: [L(10)],
        leastShare: percent.of(0),
        ...(firstMonth && { firstMonth }),
      });
    expect(of().completeYears).toBe(1);
    const only = of().candidates[0]!.usedByYear!;
    for (const each of [only.least, only.middle, only.most]) {
      expect(each.in(cubicMetre)).toBeCloseTo(2 * 86.4 * 366, 6);
    }
    const from = of(7).candidates[0]!.usedByYear!;
    expect(of(7).completeYears).toBe(2);
    expect(from.middle.in(cubicMetre)).toBeCloseTo((86.4 * (548 + 1092)) / 2, 6);
    expect(from.most.in(cubicMetre)).toBeCloseTo(86.4 * (2 * 184 + 4 * 181), 6);
    expect(from.least.in(cubicMetre)).toBeCloseTo(86.4 * (184 + 2 * 182), 9);
    expect(of(undefined, usable.withQuality(1, [300])).completeYears).toBe(0);
  });

  it("tells of gaps, of no complete year, of a greatest that is the last and of one that never runs", () => {
    const told: string[] = [];
    const { notices, greatest } = designFlows(
      {
        usable: usableOf([5, null, 7]),
        candidates: [L(4), L(6), L(100)],
        leastShare,
      },
      { onNotice: ({ message }) => told.push(message) },
    );
    expect(greatest).toBe(1);
    expect(notices.map(({ message }) => message)).toEqual(told);
    expect(told).toEqual([
      "design-flows: 1 of 3 days are gaps. A year is made of the others: where one season is missing more than another, it is the wrong year.",
      "design-flows: no year of the record is complete, and how far years differ cannot be said. Give a longer record, or another first month.",
      "design-flows: candidate 2, 100 L/s, runs on none of 2 days. Take a smaller one, or several machines.",
    ]);
    const rising = designFlows({ usable: usableOf([5, 7]), candidates: [L(4), L(6)], leastShare });
    expect(rising.notices.at(-1)?.message).toBe(
      "design-flows: the last candidate, 6 L/s, gives the most. A larger one might give more; whether it pays is another question.",
    );
    // One that gives no more is not taken for it.
    expect(
      designFlows({ usable: usableOf([4, 4]), candidates: [L(4), L(6)], leastShare }).greatest,
    ).toBe(0);
  });

  it("refuses what is no candidate, no share, no power and no flow", () => {
    const good: DesignFlowsInput = { usable: usableOf([5, 7]), candidates: [L(4)], leastShare };
    const refused = (
      change: Partial<DesignFlowsInput>,
      message: string,
      error: typeof NonPhysicalError | typeof QuantityError = NonPhysicalError,
    ): void => {
      expect(() => designFlows({ ...good, ...change })).toThrow(error);
      expect(() => designFlows({ ...good, ...change })).toThrow(message);
    };
    refused(
      { candidates: [] },
      "design-flows: candidates has none. Give flows that the scheme could be built for, the smallest first.",
    );
    refused(
      { candidates: [L(4), L(4)] },
      "design-flows: candidate 1, 4 L/s, is not above candidate 0, 4 L/s. Give them from the smallest to the largest, each once.",
    );
    refused({ candidates: [L(0)] }, "design-flows: candidate 0, 0 L/s, is not above zero.");
    refused(
      { candidates: [metre.of(1) as never] },
      "design-flows: candidates.0 = 1 m is refused: give a volume flow (such as 20 L/s)",
      QuantityError,
    );
    refused(
      { leastShare: percent.of(101) },
      "design-flows: leastShare = 101 % is not from 0 to 100 %. Give the share of its design flow on which the machine still runs.",
    );
    refused(
      { powerAt: () => Number.NaN },
      "design-flows: powerAt gives NaN W at 0.004 m³/s of a design of 0.004 m³/s. Give a power of zero or more for every flow up to the design.",
    );
    refused(
      { candidates: [L(6)], powerAt: (flow, design) => (flow < design ? -1 : 1) },
      "design-flows: powerAt gives -1 W at 0.005 m³/s of a design of 0.006 m³/s.",
    );
    refused(
      { left: usableOf([1]) },
      "design-flows: left has 1 rows and usable has 2. Give both of the same days.",
    );
    refused(
      { usable: usableOf([1, -2]) },
      "design-flows: row 1 of usable is -0.002 m³/s, below zero. Pass what residualAndUsable gives.",
    );
    refused(
      { usable: usableOf([null]) },
      "design-flows: usable has 1 days and no flow among them.",
    );
    refused(
      { usable: Column.of(metre, [1]) as never },
      "design-flows: usable is no column of volume flow; pass what residualAndUsable gives",
      QuantityError,
    );
  });
});
