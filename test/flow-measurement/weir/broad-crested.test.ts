import {
  broadCrestedCoefficients,
  broadCrestedDischarge,
  broadCrestedModularLimit,
} from "@leat/flow-measurement";
import { type Assumption, OutOfValidityError } from "@leat/formula";
import { cubicMetrePerSecond, metre, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const columns = Object.keys(broadCrestedCoefficients.definition.units);
const table = broadCrestedCoefficients.definition.rows.map((row) => ({
  heads: Number(row.relativeHead),
  values: columns.map((column) => (row as unknown as Record<string, number>)[column]!),
}));

describe("broadCrestedDischarge", () => {
  const flow = (h: number, P: number, L: number): number =>
    broadCrestedDischarge({
      head: metre.of(h),
      notchWidth: metre.of(1),
      crestHeight: metre.of(P),
      crestLength: metre.of(L),
    }).in(cubicMetrePerSecond);

  it("keeps its table in order: more flow nearer the bed, and over a shorter crest", () => {
    expect(table.map(({ heads }) => heads)).toEqual(
      Array.from({ length: 16 }, (_, i) => (i + 1) / 10),
    );
    expect(columns.map(Number)).toEqual(Array.from({ length: 14 }, (_, i) => (i + 1) / 10));
    table.forEach(({ values }, i) => {
      expect(values).toEqual(values.toSorted((a, b) => a - b));
      if (i > 0) values.forEach((c, j) => expect(c).toBeGreaterThan(table[i - 1]!.values[j]!));
    });
  });

  it("bends smoothly along rows and columns, but for the one value that the print has too low", () => {
    const bend = (a: number, b: number, c: number): number => Math.abs(a - 2 * b + c);
    const rough: string[] = [];
    table.forEach(({ values }, i) => {
      values.forEach((c, j) => {
        if (j > 0 && j < 13 && bend(values[j - 1]!, c, values[j + 1]!) > 0.0115)
          rough.push(`${i},${j}`);
        const [above, below] = [table[i - 1]?.values[j], table[i + 1]?.values[j]];
        if (above && below && bend(above, c, below) > 0.009) rough.push(`${i},${j}`);
      });
    });
    expect(rough).toEqual(["0,6"]);
  });

  it("has no steps where one line of the table meets the next", () => {
    for (const P of [0.5, 0.4, 0.25]) {
      expect(flow(0.2, P - 1e-9, 0.8) / flow(0.2, P + 1e-9, 0.8)).toBeCloseTo(1, 7);
    }
    for (const L of [1, 0.5, 0.4]) {
      expect(flow(0.2, 0.4, L - 1e-9) / flow(0.2, 0.4, L + 1e-9)).toBeCloseTo(1, 7);
    }
  });

  it("takes the tail water to be free where nothing is said of it, and says so", () => {
    const assumed: Assumption[] = [];
    broadCrestedDischarge(
      {
        head: metre.of(0.2),
        notchWidth: metre.of(1),
        crestHeight: metre.of(0.5),
        crestLength: metre.of(0.8),
      },
      { onAssumed: (assumption) => assumed.push(assumption) },
    );
    expect(assumed.map(({ input, value }) => [input, value])).toEqual([
      ["tailwaterHead", "0 m"],
      ["gravity", "9.80665 m/s²"],
    ]);
  });

  it("refuses tail water above the modular limit, and only there", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.12, max: 0.5, noNaN: true }), (h) => {
        const sill = {
          head: metre.of(h),
          notchWidth: metre.of(1),
          crestHeight: metre.of(0.6),
          crestLength: metre.of(0.6),
        };
        const { head, crestLength } = sill;
        const limit = broadCrestedModularLimit({ head, crestLength }).in(one);
        const at = (share: number): unknown =>
          broadCrestedDischarge({ ...sill, tailwaterHead: metre.of(share * limit * h) });
        expect(() => at(0.99)).not.toThrow();
        expect(() => at(1.01)).toThrow(
          "broad-crested-discharge: tail water over the crest as a share of its modular limit = 1.01 is above 1, the range Bos gives",
        );
      }),
    );
  });

  it.each([
    [{ head: metre.of(0.05) }, "head = 0.05 m is below 0.06 m, the range ISO 3846 gives"],
    [{ notchWidth: metre.of(0.2) }, "notchWidth = 0.2 m is below 0.3 m, the range ISO 3846 gives"],
    [
      { crestHeight: metre.of(0.14) },
      "crestHeight = 0.14 m is below 0.15 m, the range ISO 3846 gives",
    ],
    [{ crestLength: metre.of(2.5) }, "head/crestLength = 0.08 is below 0.1, the range ISO 3846"],
    [{ crestLength: metre.of(0.1) }, "head/crestLength = 2 is above 1.4, the range ISO 3846 gives"],
    [{ crestHeight: metre.of(0.12) }, "head/crestHeight = 1.667 is above 1.6, the range ISO 3846"],
    [
      { crestHeight: metre.of(0.18) },
      "crestLength/crestHeight = 4.444 is above 4, the range ISO 3846 gives",
    ],
    [
      { crestHeight: metre.of(0.2), crestLength: metre.of(0.22) },
      "head over crest height, where head over crest length is above 0.85, = 1 is above 0.85, the range ISO 3846 gives",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const sill = {
      head: metre.of(0.2),
      notchWidth: metre.of(1),
      crestHeight: metre.of(0.6),
      crestLength: metre.of(0.8),
      ...change,
    };
    expect(() => broadCrestedDischarge(sill)).toThrow(OutOfValidityError);
    expect(() => broadCrestedDischarge(sill)).toThrow(`broad-crested-discharge: ${message}`);
  });
});

describe("broadCrestedModularLimit", () => {
  it("falls with the head, and never rises", () => {
    const at = (h: number): number =>
      broadCrestedModularLimit({ head: metre.of(h), crestLength: metre.of(1) }).in(one);
    fc.assert(
      fc.property(fc.double({ min: 0.08, max: 1.4, noNaN: true }), (h) => {
        expect(at(h * 1.05)).toBeLessThanOrEqual(at(h));
      }),
    );
    expect(() => at(1.6)).toThrow(
      "broad-crested-modular-limit: head/crestLength = 1.6 is above 1.5, the range Bos gives",
    );
  });
});
