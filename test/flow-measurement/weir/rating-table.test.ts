import {
  francisContractedDischarge,
  kindsvaterCarterDischarge,
  ratingTable,
  rehbockDischarge,
  type Ruler,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import {
  centimetre,
  degree,
  each,
  foot,
  gallonPerMinute,
  inch,
  litrePerSecond,
  metre,
  millimetre,
  one,
} from "@leat/quantity";
import { describe, expect, it } from "vitest";

const notch = {
  notchWidth: inch.of(16),
  contractions: each.of(2),
  crestHeight: foot.of(1),
  approachWidth: foot.of(4),
};
const ruler: Ruler = { unit: inch, division: inch.of(1 / 8), from: inch.of(0), to: inch.of(6) };
const exact = { equationUncertainty: one.of(0) };

describe("ratingTable", () => {
  it("has a line for each division of the ruler, with its mark", () => {
    const lines = ratingTable(francisContractedDischarge, notch, ruler);
    expect(lines).toHaveLength(49);
    expect(lines.slice(0, 5).map(({ mark }) => mark)).toEqual([
      '0"',
      '1/8"',
      '1/4"',
      '3/8"',
      '1/2"',
    ]);
    expect(lines.map(({ head }) => head.in(inch))).toEqual(
      Array.from({ length: 49 }, (_, i) => i / 8),
    );
    for (const { head, flow } of lines) {
      const alone = francisContractedDischarge({ ...notch, head }, { onNotice: () => undefined });
      expect(flow!.in(gallonPerMinute)).toBe(alone.in(gallonPerMinute));
    }
  });

  it("marks what lies outside the range, and drops nothing", () => {
    const lines = ratingTable(francisContractedDischarge, notch, ruler);
    const valid = lines.filter((line) => line.valid).map(({ head }) => head.in(inch));
    // From 0.2 ft, 2.4 in, to a third of the width, 5.33 in.
    expect([valid[0], valid.at(-1), valid.length]).toEqual([2.5, 5.25, 23]);
    for (const { valid: kept, notices } of lines) expect(kept).toBe(notices.length === 0);
    expect(lines[8]!.notices[0]!.message).toBe(
      "francis-contracted-discharge: head = 1 in is below 0.2 ft (0.06096 m), the range USBR gives (Water Measurement Manual, ch. 7).",
    );
  });

  it("reads sixteenths, millimetres, tenths of a foot and centimetres", () => {
    const marks = (
      unit: Ruler["unit"],
      division: Ruler["division"],
      from: number,
      to: number,
    ): string[] =>
      ratingTable(
        rehbockDischarge,
        { notchWidth: metre.of(1), crestHeight: metre.of(1) },
        {
          unit,
          division,
          from: unit.of(from),
          to: unit.of(to),
        },
      ).map(({ mark }) => mark);
    expect(marks(inch, inch.of(1 / 16), 11.9, 12.1)).toEqual(['11 15/16"', `1'-0"`, `1'-0 1/16"`]);
    expect(marks(millimetre, millimetre.of(1), 98.5, 101)).toEqual(["99 mm", "100 mm", "101 mm"]);
    expect(marks(foot, foot.of(0.1), 0.3, 0.7)).toEqual([
      "0.3 ft",
      "0.4 ft",
      "0.5 ft",
      "0.6 ft",
      "0.7 ft",
    ]);
    expect(marks(foot, foot.of(0.1), 1.1, 1.25)).toEqual(["1.1 ft", "1.2 ft"]);
    expect(marks(inch, inch.of(0.1), 3, 3.2)).toEqual(["3 in", "3.1 in", "3.2 in"]);
    expect(marks(centimetre, centimetre.of(0.5), 10, 11)).toEqual(["10 cm", "10.5 cm", "11 cm"]);
    expect(marks(millimetre, inch.of(1 / 8), 80, 83)).toEqual(["82.55 mm"]);
  });

  it("counts the reading, the zero of the ruler, the notch and the equation, each by its name", () => {
    const [line] = ratingTable(
      kindsvaterCarterDischarge,
      {
        notchWidth: metre.of(0.5).plusMinus(millimetre.of(3), "width"),
        crestHeight: metre.of(0.4),
        approachWidth: metre.of(2),
      },
      {
        unit: millimetre,
        division: millimetre.of(1),
        from: millimetre.of(150),
        to: millimetre.of(150),
        reading: millimetre.of(2),
        zero: millimetre.of(1),
      },
    );
    const { flow } = line!;
    const relative = (id: string): number =>
      flow!.sources().get(id)!.in(litrePerSecond) / flow!.in(litrePerSecond);
    expect([...flow!.sources().keys()].toSorted()).toEqual([
      "equation kindsvater-carter-discharge",
      "ruler reading",
      "ruler zero",
      "width",
    ]);
    expect(relative("ruler reading")).toBeCloseTo((1.5 * (2 / Math.sqrt(3))) / 151, 3);
    expect(relative("ruler zero")).toBeCloseTo(1.5 / 1.959963984540054 / 151, 4);
    expect(relative("width")).toBeCloseTo(0.006 / 1.959963984540054, 4);
    expect(relative("equation kindsvater-carter-discharge")).toBeCloseTo(
      0.015 / 1.959963984540054,
      12,
    );
  });

  it("takes half a division for the reading where nothing is said, and no zero", () => {
    const [line] = ratingTable(
      rehbockDischarge,
      { notchWidth: metre.of(1), crestHeight: metre.of(1) },
      { unit: inch, division: inch.of(1 / 8), from: inch.of(8), to: inch.of(8) },
      exact,
    );
    const { flow } = line!;
    expect([...flow!.sources().keys()]).toEqual(["ruler reading"]);
    expect(flow!.standardUncertainty().in(litrePerSecond) / flow!.in(litrePerSecond)).toBeCloseTo(
      (1.5 * (0.0625 / Math.sqrt(3))) / 8.047 + 0.0003,
      3,
    );
  });

  it("has no flow where the form has none: at no head, and where contractions take all of the width", () => {
    const vNotch = { angle: degree.of(90), crestHeight: metre.of(1), approachWidth: metre.of(2) };
    const [zero, ...others] = ratingTable(vNotchDischarge, vNotch, {
      unit: millimetre,
      division: millimetre.of(10),
      from: millimetre.of(0),
      to: millimetre.of(60),
    });
    expect(zero!.flow).toBeUndefined();
    expect(zero!.notices.at(-1)!.code).toBe("v-notch-discharge/no-flow");
    expect(zero!.notices.at(-1)!.message).toBe(
      "v-notch-discharge: at head = 0 mm the form gives 0.000032 L/s, which is no flow over a weir. Read the table where it is valid.",
    );
    expect(others.every(({ flow }) => flow !== undefined)).toBe(true);
    expect(others.map(({ valid }) => valid)).toEqual([false, false, false, false, false, true]);
    const far = ratingTable(francisContractedDischarge, notch, {
      ...ruler,
      division: inch.of(40),
      from: inch.of(40),
      to: inch.of(120),
    });
    expect(far.map(({ flow, valid }) => [flow === undefined, valid])).toEqual([
      [false, false],
      [true, false],
      [true, false],
    ]);
  });

  it("tells once of what it assumes", () => {
    const told: string[] = [];
    ratingTable(rehbockDischarge, { notchWidth: metre.of(1), crestHeight: metre.of(1) }, ruler, {
      onAssumed: ({ input }) => told.push(input),
    });
    expect(told).toEqual(["gravity"]);
  });

  it("refuses a ruler that cannot be, and what a call refuses", () => {
    const table = (change: Partial<Ruler>): unknown =>
      ratingTable(francisContractedDischarge, notch, { ...ruler, ...change });
    expect(() => table({ division: inch.of(0) })).toThrow(NonPhysicalError);
    expect(() => table({ division: inch.of(0) })).toThrow(
      "rating table: division = 0 in is not above zero. Give the ruler's smallest division.",
    );
    expect(() => table({ from: inch.of(-1) })).toThrow(
      "rating table: from = -1 in is below the crest. Begin at the crest, or above it.",
    );
    expect(() => table({ from: inch.of(5), to: inch.of(4) })).toThrow(
      "rating table: to = 4 in is below from = 5 in. Give the ends the other way round.",
    );
    expect(() => table({ to: foot.of(200) })).toThrow(
      "rating table: 19201 lines are more than 10000; take a coarser division or less of the ruler",
    );
    const loose = ratingTable as unknown as (...given: unknown[]) => unknown;
    expect(() => loose(rehbockDischarge, { notchWidth: metre.of(0) }, ruler)).toThrow(
      "crestHeight is missing",
    );
    expect(() =>
      loose(rehbockDischarge, { notchWidth: metre.of(0), crestHeight: metre.of(1) }, ruler),
    ).toThrow(NonPhysicalError);
  });

  it("is empty where no mark lies between the ends", () => {
    expect(
      ratingTable(francisContractedDischarge, notch, {
        ...ruler,
        from: inch.of(3.01),
        to: inch.of(3.1),
      }),
    ).toEqual([]);
  });
});
