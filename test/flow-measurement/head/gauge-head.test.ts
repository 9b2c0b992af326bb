import {
  gaugeClasses,
  gaugeGrades,
  gaugeHead,
  type GaugeHeadInput,
  hoseAndGaugeHead,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError, type Notice } from "@leat/formula";
import {
  bar,
  foot,
  kilogramPerCubicMetre,
  kilopascal,
  metre,
  metrePerSecondSquared,
  percent,
  point,
  poundPerSquareInch,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const psi = (n: number): Quantity<"pressure"> => poundPerSquareInch.of(n);
const reads = (pressure: Quantity<"pressure">) => point("local atmosphere", pressure, "powerhouse");
const dial = (n: number, more: Partial<GaugeHeadInput> = {}): GaugeHeadInput => ({
  gauge: reads(psi(n)),
  fullScale: psi(100),
  accuracy: "1.6",
  gaugeAboveJet: metre.of(0),
  ...more,
});
const limit = (n: number, more: Partial<GaugeHeadInput>): number =>
  gaugeHead(dial(n, more)).limit.in(poundPerSquareInch);
const noticesOf = (input: GaugeHeadInput): Notice[] => [...gaugeHead(input).notices];

describe("gaugeHead", () => {
  it("is the head of hoseAndGaugeHead, less what the gauge shows at no pressure", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 100, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (n, zero) => {
          const gaugeAboveJet = foot.of(1.5);
          const expected = hoseAndGaugeHead({ gauge: reads(psi(n - zero)), gaugeAboveJet });
          const { head } = gaugeHead(dial(n, { zero: psi(zero), gaugeAboveJet }));
          expect(head.kind).toBe("gross head");
          expect(head.in(metre)).toBeCloseTo(expected.in(metre), 9);
        },
      ),
    );
  });

  it("may be wrong by a share of its scale, anywhere on it (a course's gauge of 500 psi: 10 psi are 2 %)", () => {
    expect(10 / 500).toBe(gaugeGrades.get("B", "middleHalf").in(percent) / 100);
    expect(
      gaugeHead({
        ...dial(0),
        gauge: reads(psi(250)),
        fullScale: psi(500),
        accuracy: "B",
      }).limit.in(poundPerSquareInch),
    ).toBeCloseTo(10, 9);
    expect(limit(10, {})).toBeCloseTo(1.6, 9);
    expect(limit(90, {})).toBeCloseTo(1.6, 9);
    expect([10, 25, 50, 75, 90].map((n) => Math.round(limit(n, { accuracy: "B" })))).toEqual([
      3, 2, 2, 2, 3,
    ]);
    expect([10, 50, 90].map((n) => Math.round(limit(n, { accuracy: "A" })))).toEqual([2, 1, 2]);
  });

  it("counts the limit and half of a division as rectangles, each by its name", () => {
    const { head } = gaugeHead(dial(50, { division: psi(2), name: "gauge 7" }));
    const sources = head.sources();
    expect([...sources.keys()]).toEqual(["gauge 7.accuracy", "gauge 7.reading"]);
    const perPsi = head.in(metre) / 50;
    expect(sources.get("gauge 7.accuracy")!.in(metre)).toBeCloseTo(
      (1.6 * perPsi) / Math.sqrt(3),
      6,
    );
    expect(sources.get("gauge 7.reading")!.in(metre)).toBeCloseTo(perPsi / Math.sqrt(3), 6);
  });

  it("takes the density and the gravity of the site, and reports those that it assumes", () => {
    const assumed: Assumption[] = [];
    const onAssumed = (each: Assumption) => assumed.push(each);
    const site = {
      density: kilogramPerCubicMetre.of(998.2),
      gravity: metrePerSecondSquared.of(9.79),
    };
    const { head } = gaugeHead(
      { ...dial(0), gauge: reads(kilopascal.of(300)), fullScale: kilopascal.of(600), ...site },
      { onAssumed },
    );
    expect(head.in(metre)).toBeCloseTo(300000 / (998.2 * 9.79), 9);
    expect(assumed).toEqual([]);
    gaugeHead(dial(50), { onAssumed });
    expect(assumed.map(({ input }) => input)).toEqual(["density", "gravity"]);
  });

  it("notes a reading in the lowest quarter of the scale", () => {
    expect(noticesOf(dial(25))).toEqual([]);
    const [notice] = noticesOf(dial(20, { accuracy: "B" }));
    expect(notice?.severity).toBe("note");
    expect(notice?.message).toBe(
      "gauge-head: gauge = 20 psi is in the lowest quarter of a scale of 100 psi: the gauge may be wrong by 15 % of it. Read a gauge of which it is half the scale.",
    );
    const told: string[] = [];
    gaugeHead(dial(20), { onNotice: ({ code }) => told.push(code) });
    expect(told).toEqual(["gauge-head/low-on-scale"]);
  });

  it("warns of a gauge that does not come back to zero", () => {
    expect(noticesOf(dial(50, { zero: psi(-1.5) }))).toEqual([]);
    expect(noticesOf(dial(50, { zero: psi(-2) })).map(({ message }) => message)).toEqual([
      "gauge-head: zero = -2 psi is more than this gauge may be wrong by anywhere. It was strained: read another gauge.",
    ]);
  });

  it("refuses what no gauge can read", () => {
    const bad = (input: GaugeHeadInput) => () => gaugeHead(input);
    expect(bad(dial(-1))).toThrow(NonPhysicalError);
    expect(bad(dial(-1))).toThrow(
      "gauge-head: gauge = -1 psi is not above zero: no water stands over it. Fill the pipe to the intake and let it come to rest.",
    );
    expect(bad(dial(101))).toThrow(
      "gauge-head: gauge = 101 psi is beyond a scale of 100 psi, where no gauge can read. Check its unit.",
    );
    expect(bad(dial(0, { gauge: reads(bar.of(52)) }))).toThrow(
      "gauge-head: gauge = 52 bar is beyond a scale of 100 psi, where no gauge can read. Was it 52 psi?",
    );
    expect(bad(dial(50, { fullScale: psi(0), division: psi(0) }))).toThrow(
      "gauge-head: fullScale = 0 psi is not above zero. Give what stands on the dial.\ngauge-head: division = 0 psi is not above zero. Give what stands on the dial.",
    );
    expect(bad(dial(50, { gauge: psi(50) as never }))).toThrow(QuantityError);
    expect(bad(dial(50, { accuracy: "5" as never }))).toThrow(
      "gauge-classes: 5 is not in the table",
    );
  });
});

describe("tables of gauges", () => {
  it("name a class after its limit", () => {
    for (const key of gaugeClasses.keys()) expect(gaugeClasses.row(key).limit).toBe(Number(key));
  });

  it("have grades from the finest to the coarsest, the middle of the scale never the worst", () => {
    const rows = gaugeGrades.keys().map((key) => gaugeGrades.row(key));
    const middles = rows.map(({ middleHalf }) => middleHalf);
    expect(middles).toEqual(middles.toSorted((a, b) => a - b));
    for (const { lowerQuarter, middleHalf, upperQuarter } of rows) {
      expect(upperQuarter).toBe(lowerQuarter);
      expect(middleHalf).toBeLessThanOrEqual(lowerQuarter);
    }
  });
});
