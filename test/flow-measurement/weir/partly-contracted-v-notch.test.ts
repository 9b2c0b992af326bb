import {
  partlyContractedCoefficients,
  partlyContractedVNotchDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { OutOfValidityError } from "@leat/formula";
import { cubicMetrePerSecond, degree, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const flow = (h: number, P: number, B: number): number =>
  partlyContractedVNotchDischarge({
    head: metre.of(h),
    crestHeight: metre.of(P),
    approachWidth: metre.of(B),
  }).in(cubicMetrePerSecond);

describe("partlyContractedVNotchDischarge", () => {
  it("is the fully contracted notch where bed and sides are far, within 0.3 %", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.06, max: 0.38, noNaN: true }), (h) => {
        const place = {
          crestHeight: metre.of(2.6 * h + 0.1),
          approachWidth: metre.of(5.1 * h + 0.4),
        };
        const full = vNotchDischarge({ ...place, head: metre.of(h), angle: degree.of(90) });
        const partly = partlyContractedVNotchDischarge({ ...place, head: metre.of(h) });
        expect(
          Math.abs(partly.in(cubicMetrePerSecond) / full.in(cubicMetrePerSecond) - 1),
        ).toBeLessThan(0.003);
      }),
    );
  });

  it("gives the Japanese standard's flows within 0.7 % over all of the range that both have", () => {
    // JIS B 8302: K = 81.2 + 0.24/h + (8.4 + 12/√D)·(h/B − 0.09)², m³/min; B 0.5 to 1.2 m, D 0.1 to 0.75 m, h 0.07 to 0.26 m
    // and no more than a third of B.
    fc.assert(
      fc.property(
        fc.double({ min: 0.07, max: 0.26, noNaN: true }),
        fc.double({ min: 0.6, max: 1.2, noNaN: true }),
        fc.double({ min: 0.1, max: 0.75, noNaN: true }),
        (h, B, D) => {
          fc.pre(h <= B / 3 && h / D <= 1.2 && D / B >= 0.1 && D / B <= 1);
          const K = 81.2 + 0.24 / h + (8.4 + 12 / Math.sqrt(D)) * (h / B - 0.09) ** 2;
          expect(Math.abs((flow(h, D, B) * 60) / (K * h ** 2.5) - 1)).toBeLessThan(0.007);
        },
      ),
    );
  });

  it("has no steps where one read point meets the next", () => {
    for (const P of [0.18, 0.27, 0.36, 0.54, 0.72]) {
      expect(flow(0.2, P - 1e-9, 0.9) / flow(0.2, P + 1e-9, 0.9)).toBeCloseTo(1, 7);
    }
    for (const h of [0.1, 0.2, 0.3]) {
      expect(flow(h - 1e-10, 0.5, 0.8) / flow(h + 1e-10, 0.5, 0.8)).toBeCloseTo(1, 7);
    }
  });

  it("keeps its table in order: curves begin together, and part as bed and sides draw near", () => {
    const { rows } = partlyContractedCoefficients.definition;
    const columns = ["0.1", "0.2", "0.3", "0.4", "0.6", "0.8", "1.0"] as const;
    expect(columns.map((column) => rows[0]![column])).toEqual(columns.map(() => 0.578));
    for (const row of rows) {
      const drawn = columns.map((column) => row[column]).filter((c) => c !== undefined);
      expect(drawn).toEqual(drawn.toSorted((a, b) => a - b));
      // A curve goes on to a head of 0.4 of the channel's width, and one step beyond at most.
      columns.forEach((column) => {
        const headInWidths = Number(row.relativeHead) * Number(column);
        if (headInWidths <= 0.36) expect(row[column]).toBeDefined();
        if (headInWidths > 0.45) expect(row[column]).toBeUndefined();
      });
    }
  });

  it.each([
    [{ head: metre.of(0.05) }, "head = 0.05 m is below 0.06 m, the range ISO 1438 gives"],
    [
      { head: metre.of(0.65), crestHeight: metre.of(1), approachWidth: metre.of(2) },
      "head = 0.65 m is above 0.6 m, the range Bos gives",
    ],
    [
      { crestHeight: metre.of(0.16) },
      "head/crestHeight = 1.25 is above 1.2, the range Kulin and Compton gives",
    ],
    [
      { head: metre.of(0.34), crestHeight: metre.of(0.5) },
      "head/approachWidth = 0.425 is above 0.4, the range Kulin and Compton gives",
    ],
    [
      { head: metre.of(0.07), crestHeight: metre.of(0.09) },
      "crestHeight = 0.09 m is below 0.1 m, the range Bos gives",
    ],
    [
      { approachWidth: metre.of(0.55) },
      "approachWidth = 0.55 m is below 0.6 m, the range Bos gives",
    ],
    [
      { crestHeight: metre.of(0.9) },
      "height of the vertex over width of the channel = 1.125 is above 1, the range Kulin and Compton gives",
    ],
    [
      { approachWidth: metre.of(4) },
      "height of the vertex over width of the channel = 0.075 is below 0.1, the range Kulin",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const place = {
      head: metre.of(0.2),
      crestHeight: metre.of(0.3),
      approachWidth: metre.of(0.8),
      ...change,
    };
    expect(() => partlyContractedVNotchDischarge(place)).toThrow(OutOfValidityError);
    expect(() => partlyContractedVNotchDischarge(place)).toThrow(
      `partly-contracted-v-notch-discharge: ${message}`,
    );
  });
});
