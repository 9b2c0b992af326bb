import { vNotchDischarge } from "@leat/flow-measurement";
import { NonPhysicalError, type Notice, OutOfValidityError, series } from "@leat/formula";
import {
  cubicMetrePerSecond,
  degree,
  foot,
  inch,
  metre,
  millimetre,
  pascal,
  QuantityError,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const site = { angle: degree.of(90), crestHeight: metre.of(1), approachWidth: metre.of(2) };
const q = (head: number): number =>
  vNotchDischarge({ ...site, head: metre.of(head) }).in(cubicMetrePerSecond);
const heads = fc.double({ min: 0.061, max: 0.38, noNaN: true });

describe("vNotchDischarge", () => {
  it("draws its coefficients through the printed points of the curves", () => {
    const { Ce, kh } = vNotchDischarge.definition.steps as Record<
      string,
      { of: (letters: never) => number }
    >;
    const at = (degrees: number): never =>
      ({ ...vNotchDischarge.constants, θ: (degrees * Math.PI) / 180 }) as never;
    // Blevins 1984, after Shen, WSP 1617-B: angle, Ce, kh in millimetres.
    const printed = [
      [20, 0.59, 2.8],
      [40, 0.58, 1.7],
      [60, 0.575, 1.2],
      [80, 0.575, 1.0],
      [100, 0.58, 1.0],
    ] as const;
    for (const [angle, coefficient, correction] of printed) {
      expect(Math.abs(Ce!.of(at(angle)) / coefficient - 1)).toBeLessThan(0.005);
      expect(Math.abs(kh!.of(at(angle)) * 1000 - correction)).toBeLessThan(0.125);
    }
    // A university's laboratory note for 90°: 0.578 and 0.0029 ft; ISO 1438 has 0.85 mm.
    expect(Ce!.of(at(90))).toBeCloseTo(0.578, 3);
    expect(kh!.of(at(90)) / 0.3048).toBeCloseTo(0.0029, 5);
    expect(Math.abs(kh!.of(at(90)) * 1000 - 0.85)).toBeLessThan(0.05);
  });

  it("rises with the head, a little less fast than its power 5/2", () => {
    fc.assert(
      fc.property(heads, fc.double({ min: 1.001, max: 1.2, noNaN: true }), (h, by) => {
        fc.pre(h * by < 0.38);
        const ratio = q(h * by) / q(h);
        expect(ratio).toBeGreaterThan(1);
        expect(ratio).toBeLessThan(by ** 2.5);
      }),
    );
  });

  it("is the same in feet as in millimetres", () => {
    fc.assert(
      fc.property(heads, (h) => {
        const us = vNotchDischarge({
          head: inch.of(h / 0.0254),
          angle: degree.of(90),
          crestHeight: foot.of(1 / 0.3048),
          approachWidth: foot.of(2 / 0.3048),
        });
        expect(us.in(cubicMetrePerSecond)).toBeCloseTo(q(h), 15);
      }),
    );
  });

  it("gives the same flows over a column as one by one", () => {
    const values = Array.from({ length: 50 }, (_, i) => 0.07 + 0.006 * i);
    const flows = series(vNotchDischarge, { ...site, head: Column.of(metre, values) });
    expect(Array.from(flows.values)).toEqual(values.map(q));
  });

  it.each([
    [{ head: millimetre.of(50) }, "head = 50 mm is below 0.06 m, the range ISO 1438 gives"],
    [{ head: metre.of(0.39) }, "head = 0.39 m is above 1.25 ft (0.381 m), the range USBR gives"],
    [
      { head: metre.of(0.3), crestHeight: metre.of(0.7) },
      "head/crestHeight = 0.4286 is above 0.4, the range ISO 1438 gives",
    ],
    [
      { head: metre.of(0.3), approachWidth: metre.of(1.4) },
      "head/approachWidth = 0.2143 is above 0.2, the range ISO 1438 gives",
    ],
    [
      { head: metre.of(0.06), crestHeight: metre.of(0.08) },
      "crestHeight = 0.08 m is below 0.09 m, the range ISO 1438 gives",
    ],
    [
      { head: metre.of(0.2), angle: degree.of(20) },
      "angle = 20° is below 25° (0.4363 rad), the range USBR gives",
    ],
    [
      { head: metre.of(0.2), angle: degree.of(120) },
      "angle = 120° is above 100° (1.745 rad), the range USBR gives",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const args = { ...site, ...change };
    expect(() => vNotchDischarge(args)).toThrow(OutOfValidityError);
    expect(() => vNotchDischarge(args)).toThrow(`v-notch-discharge: ${message}`);
    const told: Notice[] = [];
    expect(
      vNotchDischarge(args, { onNotice: (notice) => told.push(notice) }).in(cubicMetrePerSecond),
    ).toBeGreaterThan(0);
    expect(told.length).toBeGreaterThan(0);
  });

  it("refuses what is not physical or not a length, whatever the caller accepts", () => {
    const onNotice = (): void => undefined;
    expect(() => vNotchDischarge({ ...site, head: metre.of(-0.1) }, { onNotice })).toThrow(
      NonPhysicalError,
    );
    expect(() => vNotchDischarge({ ...site, head: pascal.of(1) as never })).toThrow(QuantityError);
    expect(() => vNotchDischarge({ head: metre.of(0.2), angle: degree.of(90) } as never)).toThrow(
      "crestHeight is missing",
    );
  });
});
