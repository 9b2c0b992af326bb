import { NonPhysicalError, type Notice } from "@leat/formula";
import {
  allOf,
  fishPassage,
  fixedFlow,
  flowDuration,
  flowExceeded,
  licenceFlows,
  monthlyPercentileFlow,
  percentileFlow,
  residualAndUsable,
  type ResidualAndUsable,
  type ResidualRule,
  seasonalShares,
  shareAboveHandsOff,
  shareOfMeanFlow,
  tennantSeasons,
} from "@leat/hydrology";
import {
  cubicMetre,
  cubicMetrePerSecond,
  day,
  litrePerSecond,
  metre,
  one,
  percent,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import { Column, type ColumnOptions, Quality, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, noRealRecords } from "../records.ts";

if (noRealRecords) console.log("skipped: the real records are not in ../shared/reference/data");

const L = (flow: number): Quantity<"volume flow"> => litrePerSecond.of(flow);
const m3 = (flow: number): Quantity<"volume flow"> => cubicMetrePerSecond.of(flow);

function recordOf(
  flows: readonly (number | null)[],
  start = "2024-02-27",
  options: ColumnOptions = {},
): Column<"volume flow"> {
  const axis = TimeAxis.regular({
    start,
    step: day.of(1),
    count: flows.length,
    utcOffset: "+10:00",
  });
  return Column.of(litrePerSecond, flows, { axis, ...options });
}

/** What a rule asks for on each day, in L/s, of a stream that flows alike. */
function asked(rule: ResidualRule, flows: readonly number[], start?: string): number[] {
  const { required } = residualAndUsable({ rule, record: recordOf(flows, start) });
  return [...required.in(litrePerSecond)].map((flow) => Number(flow.toPrecision(12)));
}

const total = (column: Column<"volume flow">): number =>
  column.values.reduce((sum, flow) => sum + flow, 0);

const flow = fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e4, noNaN: true }));
const share = fc.double({ min: 0, max: 1, noNaN: true });
const simple: fc.Arbitrary<ResidualRule> = fc.oneof(
  flow.map((each) => fixedFlow({ flow: L(each) })),
  share.map((each) => shareOfMeanFlow({ share: one.of(each) })),
  fc
    .tuple(flow, share)
    .map(([off, part]) => shareAboveHandsOff({ handsOff: L(off), share: one.of(part) })),
  fc
    .array(flow, { minLength: 12, maxLength: 12 })
    .map((each) => licenceFlows({ flows: each.map(L) })),
  fc
    .double({ min: 0.3, max: 0.7, noNaN: true })
    .map((each) => percentileFlow({ exceeded: one.of(each) })),
);
const anyRule: fc.Arbitrary<ResidualRule> = fc.oneof(
  simple,
  fc
    .tuple(simple, flow)
    .map(([over, extra]) => fishPassage({ over, flow: L(extra), from: "10-20", to: "03-01" })),
  fc.array(simple, { minLength: 1, maxLength: 3 }).map((rules) => allOf(...rules)),
);

describe("residualAndUsable", () => {
  it("leaves what must stay, takes no more than it may, and accounts for every drop", () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(flow, { freq: 8 }), { minLength: 4, maxLength: 400 }),
        anyRule,
        fc.option(flow, { nil: undefined }),
        fc.option(fc.double({ min: 0, max: 50, noNaN: true }), { nil: undefined }),
        (flows, rule, most, least) => {
          fc.pre(flows.filter((each) => each !== null).length > 3);
          fc.pre(most === undefined || least === undefined || most >= least);
          const record = recordOf(flows, "2023-09-13");
          const answer = residualAndUsable({
            record,
            rule,
            ...(most !== undefined && { most: L(most) }),
            ...(least !== undefined && { least: L(least) }),
          });
          const { required, left, usable, days, months, volumes } = answer;
          const [cap, start] = [L(most ?? 1e9)["~si"], L(least ?? 0)["~si"]];
          for (let row = 0; row < flows.length; row++) {
            const [must, stays, take] = [
              required.values[row]!,
              left.values[row]!,
              usable.values[row]!,
            ];
            const comes = record.values[row]!;
            if (flows[row] === null) {
              expect([must, stays, take]).toEqual([0, 0, 0]);
              for (const column of [required, left, usable]) expect(column.at(row)).toBeUndefined();
              continue;
            }
            expect(Math.abs(stays + take - comes)).toBeLessThanOrEqual(2e-16 * comes);
            expect(stays).toBeGreaterThanOrEqual(Math.min(comes, must));
            expect(take).toBeGreaterThanOrEqual(0);
            expect(take).toBeLessThanOrEqual(cap);
            if (take > 0) expect(take).toBeGreaterThanOrEqual(start);
          }
          expect(days.recorded + days.gaps).toBe(flows.length);
          expect(days.taking + days.tooLittle + days.nothing).toBe(days.recorded);
          expect(months.reduce((sum, month) => sum + month.recorded + month.gaps, 0)).toBe(
            flows.length,
          );
          expect(months.reduce((sum, month) => sum + month.taking, 0)).toBe(days.taking);
          const scale = total(record) * 86_400;
          expect(Math.abs(volumes.flow.in(cubicMetre) - scale)).toBeLessThanOrEqual(1e-12 * scale);
          expect(
            Math.abs(volumes.left.plus(volumes.usable).in(cubicMetre) - scale),
          ).toBeLessThanOrEqual(1e-12 * scale);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("takes less where more must stay, and scales with stream, rule and limits", () => {
    fc.assert(
      fc.property(
        fc.array(flow, { minLength: 4, maxLength: 60 }),
        flow,
        flow,
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (flows, a, b, times) => {
          const usable = (must: number, by = 1): number =>
            total(
              residualAndUsable({
                record: recordOf(flows.map((each) => each * by)),
                rule: fixedFlow({ flow: L(must * by) }),
                most: L(2000 * by),
              }).usable,
            );
          const [less, more] = [Math.min(a, b), Math.max(a, b)];
          expect(usable(more)).toBeLessThanOrEqual(usable(less) * (1 + 1e-12));
          expect(usable(a, times)).toBeCloseTo(usable(a) * times, 6);
        },
      ),
    );
  });

  it.skipIf(noRealRecords)("agrees with numpy on a real record", () => {
    const record = creekRecord();
    const q95 = percentileFlow({ exceeded: percent.of(95) });
    const handsOff = shareAboveHandsOff({ handsOff: m3(0.914), share: percent.of(50) });
    const fish = fishPassage({
      flow: m3(0.4),
      from: "10-15",
      to: "01-15",
      over: fixedFlow({ flow: m3(0.5) }),
    });
    const low = [10, 11, 12, 1, 2, 3];
    const digest = ({ volumes, days, months }: ResidualAndUsable): number[] => [
      ...[volumes.usable, volumes.left].map((each) => Number(each.in(cubicMetre).toFixed(1))),
      days.taking,
      days.capped,
      days.tooLittle,
      days.short,
      Number(months[5]!.usable.in(cubicMetre).toFixed(1)),
      months[5]!.taking,
    ];
    // numpy 2.4.6, quantiles of method weibull: usable and left in m³, days taking, capped, too little, short; June's usable and days.
    for (const [rule, most, least, expected] of [
      [q95, undefined, undefined, [2268057110.4, 673125638.4, 8155, 0, 0, 426, 492276614.4, 721]],
      [
        monthlyPercentileFlow({ exceeded: percent.of(95) }),
        3,
        0.2,
        [1059206362.6, 1881976386.2, 7591, 1954, 563, 412, 146740896, 672],
      ],
      [handsOff, 3, 0.2, [934147209.6, 2007035539.2, 6725, 1587, 1430, 426, 176279328, 721]],
      [
        tennantSeasons({ condition: "good", lowFlowMonths: low }),
        5,
        0.5,
        [1594542592.9, 1346640155.9, 6425, 1797, 1732, 428, 295491666.5, 721],
      ],
      [fish, undefined, undefined, [2494858838.4, 446323910.4, 8498, 0, 0, 87, 518066496, 721]],
      [
        allOf(q95, handsOff, fish),
        4,
        0.1,
        [1043978112, 1897204636.8, 7462, 802, 693, 426, 211916908.8, 721],
      ],
    ] as const) {
      const answer = residualAndUsable({
        record,
        rule,
        ...(most !== undefined && { most: m3(most) }),
        ...(least !== undefined && { least: m3(least) }),
      });
      const found = digest(answer);
      for (const [i, number] of expected.entries()) {
        expect(Math.abs(found[i]! - number), `${rule.rule}, ${i}`).toBeLessThanOrEqual(
          number * 1e-10,
        );
      }
      expect(answer.days.recorded).toBe(8585);
    }
    // 0.914 m³/s is Q95 by Weibull's positions in the published values, and by the duration curve.
    expect(
      residualAndUsable({ record, rule: q95 }).required.at(0)!.in(cubicMetrePerSecond),
    ).toBeCloseTo(0.914, 3);
    expect(
      residualAndUsable({ record, rule: q95 }).required.at(0)!.in(cubicMetrePerSecond),
    ).toBeCloseTo(
      flowExceeded({ duration: flowDuration({ record }), share: percent.of(95) }).in(
        cubicMetrePerSecond,
      ),
      12,
    );
  });

  it.skipIf(noRealRecords)(
    "carries offset and scale of the record into volumes, as numpy does",
    () => {
      const record = creekRecord();
      const unsure = (uncertainty: ColumnOptions["uncertainty"]): Column<"volume flow"> =>
        Column.wrap("volume flow", record.values, record.quality, {
          axis: record.axis,
          uncertainty,
        });
      const scaled = residualAndUsable({
        record: unsure({
          scale: [
            ["rating", 0.08],
            ["transfer", 0.06],
          ],
        }),
        rule: percentileFlow({ exceeded: percent.of(95) }),
        most: m3(3),
      }).volumes;
      // The percentile and the flow are off together: 10 % of the flow is 3.4 % of what is usable under a cap.
      expect(scaled.usable.in(cubicMetre)).toBeCloseTo(1265697014.4, 0);
      expect(scaled.usable.standardUncertainty().in(cubicMetre) / 42486932.16).toBeCloseTo(1, 6);
      expect(
        scaled.usable.sources().get("rating")!.in(cubicMetre) / (0.8 * 42486932.16),
      ).toBeCloseTo(1, 6);
      expect(scaled.flow.standardUncertainty().in(cubicMetre) / 294118274.88).toBeCloseTo(1, 9);
      expect(
        scaled.left.standardUncertainty().in(cubicMetre) / (294118274.88 - 42486932.16),
      ).toBeCloseTo(1, 6);
      const shifted = residualAndUsable({
        record: unsure({ offset: [["zero of the gauge", 0.05]], noise: [["reading", 1]] }),
        rule: fixedFlow({ flow: m3(0.5) }),
        most: m3(3),
      }).volumes;
      expect(shifted.usable.in(cubicMetre)).toBeCloseTo(1447270848, 0);
      expect(shifted.usable.standardUncertainty().in(cubicMetre) / 21879331.2).toBeCloseTo(1, 9);
      expect(shifted.flow.standardUncertainty().in(cubicMetre) / 37087200).toBeCloseTo(1, 9);
    },
  );

  it("lets a mean that a rule was given stand while the record moves", () => {
    const record = recordOf([10, 20, 30], "2024-02-27", {
      uncertainty: { scale: [["rating", 0.1]] },
    });
    const spread = (meanFlow?: Quantity<"volume flow">): number => {
      const rule = shareOfMeanFlow({ share: percent.of(50), ...(meanFlow && { meanFlow }) });
      const { usable } = residualAndUsable({ record, rule }).volumes;
      return usable.standardUncertainty().in(cubicMetre) / 86.4;
    };
    // Of 10, 20 and 30 less 10: 30 in all, and a tenth of it where the mean moves too; a tenth of all 60 where 8 stands.
    expect(spread()).toBeCloseTo(3, 9);
    expect(spread(L(16))).toBeCloseTo(6, 9);
    // Half of the way from 25 to 36 where 10 stands: at 10 L/s a little less water is none.
    expect(spread(L(20))).toBeCloseTo(5.5, 9);
  });

  it("always says that the regulator decides, and never only once", () => {
    const told: Notice[] = [];
    const answer = residualAndUsable(
      { record: recordOf([10, 20]), rule: fixedFlow({ flow: L(5) }) },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(told).toEqual(answer.notices);
    expect(
      answer.notices.slice(0, 1).map(({ code, severity, message }) => [code, severity, message]),
    ).toEqual([
      [
        "residual/regulator-decides",
        "caution",
        "residual-and-usable: how much must stay, and whether any may be taken, is for the water regulator to decide, not for this rule. Ask before money is spent; other rights, fish and the season all count.",
      ],
    ]);
  });

  it("counts gaps and names months that are nothing else", () => {
    const flows = Array.from({ length: 366 }, (_, row) => (row >= 60 && row < 91 ? null : 10));
    flows[200] = null;
    const record = recordOf(flows, "2024-01-01").withQuality(Quality.ice, [0, 65]);
    const { notices, months, required, days } = residualAndUsable({
      record,
      rule: fixedFlow({ flow: L(15) }),
      leaveOut: Quality.ice,
    });
    expect(notices.map(({ code, message }) => [code, message]).slice(1)).toEqual([
      [
        "residual/no-days",
        "residual-and-usable: no day of March is recorded: what can be taken then is unknown, and the totals are of the other months. Take another record, or fill those months.",
      ],
      [
        "residual/gaps",
        "residual-and-usable: 33 of 366 days have no flow that counts. They are in no total.",
      ],
      [
        "residual/never-usable",
        "residual-and-usable: on none of 333 days is there anything to take. Check the rule and the least flow against the stream.",
      ],
    ]);
    expect([days.gaps, days.leftOut, days.short]).toEqual([32, 1, 333]);
    expect([months[2]!.recorded, months[2]!.gaps, months[0]!.gaps]).toEqual([0, 31, 1]);
    expect(required.quality[0]).toBe(Quality.ice | Quality.gap);
    expect(required.quality[65]).toBe(Quality.ice | Quality.gap);
    expect(required.quality[1]).toBe(0);
  });

  it("refuses limits that are none", () => {
    const of = { record: recordOf([10]), rule: fixedFlow({ flow: L(5) }) };
    expect(() => residualAndUsable({ ...of, most: L(-1) })).toThrow(
      "residual-and-usable: most = -1 L/s is below zero. Check its sign.",
    );
    expect(() => residualAndUsable({ ...of, most: L(1), least: L(2) })).toThrow(
      "residual-and-usable: most = 1 L/s is below least = 2 L/s, and nothing could ever be taken. Check both.",
    );
    expect(() => residualAndUsable({ ...of, least: metre.of(1) as never })).toThrow(
      "residual-and-usable: least = 1 m is refused: give a volume flow (such as 1 L/s)",
    );
    expect(() => residualAndUsable({ ...of, record: recordOf([null]) })).toThrow(NonPhysicalError);
    expect(() => residualAndUsable({ ...of, record: recordOf([-1]) })).toThrow(
      "row 0, 2024-02-27, has a flow of",
    );
  });

  it("refuses a percentile that so few days do not reach", () => {
    const record = recordOf([10, 20, 30]);
    expect(() =>
      residualAndUsable({ record, rule: percentileFlow({ exceeded: percent.of(95) }) }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      residualAndUsable({ record, rule: percentileFlow({ exceeded: percent.of(95) }) }),
    ).toThrow("percentile-flow: share = 95 % is outside 25 % to 75 %, the positions of 3 days.");
    expect(() =>
      residualAndUsable({ record, rule: monthlyPercentileFlow({ exceeded: percent.of(95) }) }),
    ).toThrow(
      "monthly-percentile-flow, month 2: share = 95 % is outside 25 % to 75 %, the positions of 3 days.",
    );
  });
});

describe("rules", () => {
  it("ask for what they say", () => {
    expect(asked(fixedFlow({ flow: L(7) }), [10, 1])).toEqual([7, 7]);
    expect(asked(shareOfMeanFlow({ share: percent.of(25) }), [10, 20, 60])).toEqual([
      7.5, 7.5, 7.5,
    ]);
    expect(asked(shareOfMeanFlow({ share: percent.of(25), meanFlow: L(100) }), [10, 20])).toEqual([
      25, 25,
    ]);
    expect(
      asked(shareAboveHandsOff({ handsOff: L(10), share: percent.of(30) }), [5, 10, 20]),
    ).toEqual([10, 10, 17]);
    // Three of eleven days exceed it with Weibull's positions: 3/12.
    const days = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];
    expect(asked(percentileFlow({ exceeded: percent.of(25) }), days)[0]).toBe(9);
    expect(asked(percentileFlow({ exceeded: percent.of(30) }), days.toReversed())[0]).toBe(8.4);
  });

  it("know their months and days", () => {
    const flows = Array.from({ length: 12 }, (_, i) => L(i + 1));
    // Two days before and two after a leap day.
    expect(asked(licenceFlows({ flows }), [9, 9, 9, 9, 9])).toEqual([2, 2, 2, 3, 3]);
    const over = fixedFlow({ flow: L(10) });
    expect(
      asked(fishPassage({ flow: L(5), from: "02-28", to: "03-01", over }), [9, 9, 9, 9, 9]),
    ).toEqual([10, 15, 15, 15, 10]);
    expect(
      asked(
        fishPassage({ flow: L(5), from: "12-31", to: "01-01", over }),
        [9, 9, 9, 9],
        "2023-12-30",
      ),
    ).toEqual([10, 15, 15, 10]);
    const seasons = [
      { months: [1, 2], share: percent.of(10) },
      { months: [3, 4, 5, 6, 7, 8, 9, 10, 11, 12], share: percent.of(20) },
    ];
    expect(asked(seasonalShares({ seasons, meanFlow: L(100) }), [9, 9, 9, 9])).toEqual([
      10, 10, 10, 20,
    ]);
    // A January of 3 days and a February of 3 days, a half exceeded in each.
    expect(
      asked(
        monthlyPercentileFlow({ exceeded: percent.of(50) }),
        [1, 2, 3, 30, 10, 20],
        "2024-01-29",
      ),
    ).toEqual([2, 2, 2, 20, 20, 20]);
  });

  it("join to the greatest of them, day by day", () => {
    const rule = allOf(
      fixedFlow({ flow: L(8) }),
      shareAboveHandsOff({ handsOff: L(3), share: percent.of(50) }),
      fishPassage({ flow: L(4), from: "02-29", to: "02-29", over: fixedFlow({ flow: L(5) }) }),
    );
    expect(asked(rule, [4, 20, 4])).toEqual([8, 11.5, 9]);
  });

  it("refuse a month that is missing, named by its row", () => {
    const flows: (Quantity<"volume flow"> | undefined)[] = Array.from({ length: 12 }, () => L(5));
    expect(() => licenceFlows({ flows: flows.with(6, undefined) })).toThrow(
      "licence-flows: flows has nothing for July (row 6). Give every month, January first; a month in which nothing must stay has a zero.",
    );
    expect(() => licenceFlows({ flows: flows.slice(0, 10) })).toThrow(
      "licence-flows: flows has nothing for November, December (row 10 and others).",
    );
    expect(() => licenceFlows({ flows: [...flows, L(1)] })).toThrow(
      "licence-flows: flows has 13 of them, and a year has twelve months. Give one for each, January first.",
    );
    expect(() => licenceFlows({ flows: flows.with(3, L(-2)) })).toThrow(
      "licence-flows: flows.3 = -2 L/s is below zero. Check its sign.",
    );
    expect(() =>
      seasonalShares({ seasons: [{ months: [1, 2, 3], share: percent.of(10) }] }),
    ).toThrow(
      "seasonal-shares: seasons has nothing for April, May, June, July, August, September, October, November, December (row 3 and others).",
    );
  });

  it("refuse a share above 100 %, a date that is none, no rule, and other kinds", () => {
    expect(() => shareOfMeanFlow({ share: percent.of(120) })).toThrow(
      "share-of-mean-flow: share = 120 % is not from 0 to 100 %. Give a share, such as 20 %.",
    );
    expect(() => shareAboveHandsOff({ handsOff: L(1), share: percent.of(-1) })).toThrow(
      "share-above-hands-off: share = -1 % is not from 0 to 100 %.",
    );
    const months = Array.from({ length: 12 }, (_, i) => i + 1);
    expect(() => seasonalShares({ seasons: [{ months, share: percent.of(101) }] })).toThrow(
      "seasonal-shares: seasons.0.share = 101 % is not from 0 to 100 %.",
    );
    const over = fixedFlow({ flow: L(1) });
    expect(() => fishPassage({ flow: L(1), from: "02-30", to: "03-01", over })).toThrow(
      "fish-passage: from = 02-30 is no day of a year. Give month and day, such as 03-15.",
    );
    expect(() => fishPassage({ flow: L(1), from: "02-29", to: "15 March", over })).toThrow(
      "fish-passage: to = 15 March is no day of a year.",
    );
    expect(() => allOf()).toThrow(
      "all-of: there is no rule. Give one, or fixedFlow of nothing where nothing must stay.",
    );
    expect(() => fixedFlow({ flow: metre.of(1) as never })).toThrow(QuantityError);
    expect(() => fixedFlow({ flow: metre.of(1) as never })).toThrow(
      "fixed-flow: flow = 1 m is refused: give a volume flow (such as 1 L/s)",
    );
    expect(() => percentileFlow({ exceeded: 95 as never })).toThrow(
      "percentile-flow: exceeded = 95 is refused: give a ratio (such as 20 %)",
    );
  });
});
