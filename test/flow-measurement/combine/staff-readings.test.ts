import { staffReadings, type StaffReadingsInput } from "@leat/flow-measurement";
import { type Notice, NonPhysicalError } from "@leat/formula";
import {
  centimetre,
  foot,
  metre,
  millimetre,
  point,
  type Point,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const on = (staff: string, ...mm: number[]): Point<"staff zero">[] =>
  mm.map((h) => point("staff zero", millimetre.of(h), staff));
const bridge = (change: Partial<StaffReadingsInput> = {}): StaffReadingsInput => ({
  name: "3 May",
  readings: on("bridge", 412, 415, 413, 414, 416),
  division: millimetre.of(5),
  calibration: millimetre.of(3),
  ...change,
});
const heard = (input: StaffReadingsInput) => {
  const notices: Notice[] = [];
  const result = staffReadings(input, { onNotice: (notice) => notices.push(notice) });
  return { result, notices, codes: notices.map(({ code }) => code.replace("staff-readings/", "")) };
};
const k = 1.959963984540054;
const parts = (level: Point<"staff zero">): Record<string, number> =>
  Object.fromEntries(Array.from(level.overOrigin().sources(), ([id, c]) => [id, c.in(millimetre)]));

describe("staffReadings", () => {
  it("has the mean, the noise and Student's interval that scipy makes of the same", () => {
    const { result, notices } = heard(bridge());
    expect(notices).toEqual([]);
    expect(result.level.in(millimetre)).toBeCloseTo(414, 9);
    expect(result.level.instance).toBe("bridge");
    expect(result.noise?.in(millimetre)).toBeCloseTo(1.58113883, 8);
    expect(result.standardError?.in(millimetre)).toBeCloseTo(0.7071067812, 8);
    const of = parts(result.level);
    expect(of["3 May: noise of reading"]! * k).toBeCloseTo(1.9632431615, 8);
    expect(of["bridge: calibration of the staff"]! * k).toBeCloseTo(3, 9);
    expect(Object.keys(of).length).toBe(2);
    expect(result.outliers).toEqual([]);
  });

  it("averages noise out and not the calibration, however many read", () => {
    const at = (n: number) => {
      const readings = on("bridge", ...Array.from({ length: n }, (_, i) => 400 + 6 * (i % 2)));
      return staffReadings(bridge({ readings, division: millimetre.of(1) }));
    };
    const [few, many] = [at(4), at(400)];
    expect(few.standardError!.in(millimetre)).toBeGreaterThan(
      9 * many.standardError!.in(millimetre),
    );
    expect(parts(few.level)["bridge: calibration of the staff"]).toBeCloseTo(3 / k, 9);
    expect(parts(many.level)["bridge: calibration of the staff"]).toBeCloseTo(3 / k, 9);
  });

  it("shares the staff's calibration between two days, so that a rise is free of it", () => {
    const may = staffReadings(bridge()).level;
    const june = staffReadings(
      bridge({ name: "9 June", readings: on("bridge", 520, 523, 521, 522, 524) }),
    ).level;
    const rise = june.minus(may);
    expect(rise.in(millimetre)).toBeCloseTo(108, 9);
    expect([...rise.sources().keys()].toSorted()).toEqual([
      "3 May: noise of reading",
      "9 June: noise of reading",
    ]);
  });

  it("counts the rounding as common where the readers all round alike", () => {
    const { result, notices } = heard(bridge({ readings: on("bridge", 415, 415, 415, 415) }));
    expect(parts(result.level)["3 May: rounding to the division"]).toBeCloseTo(
      5 / Math.sqrt(12),
      9,
    );
    expect(result.noise?.in(millimetre)).toBe(0);
    expect(notices.map(({ message }) => message)).toEqual([
      "staff-readings: 4 readers differ by less than their rounding to 5 mm: half a division either way is taken, common to all.",
    ]);
    // 1.414 mm of scatter is less than 5/√12 = 1.443 mm; 1.581 mm, above, is more.
    expect(heard(bridge({ readings: on("bridge", 413, 415) })).codes).toEqual(["rounding"]);
    const alone = heard(bridge({ readings: on("bridge", 415) }));
    expect(parts(alone.result.level)["3 May: rounding to the division"]).toBeCloseTo(
      5 / Math.sqrt(12),
      9,
    );
    expect(alone.result.noise).toBeUndefined();
    expect(alone.result.standardError).toBeUndefined();
    expect(alone.notices.map(({ message }) => message)).toEqual([
      "staff-readings: one reader shows no noise: half a division either way is taken.",
    ]);
  });

  it("tells of ten readers which one stands out, and counts him", () => {
    const readings = [41, 42, 41.5, 41, 42, 42, 41.5, 41, 42, 46].map((h) =>
      point("staff zero", centimetre.of(h), "bridge"),
    );
    const { result, notices } = heard(bridge({ readings, division: centimetre.of(1) }));
    expect(result.outliers).toEqual([9]);
    expect(result.level.in(centimetre)).toBeCloseTo(42, 9);
    expect(notices.map(({ message }) => message)).toEqual([
      "staff-readings: readings.9, 0.46 m, stands out of 10 readings: it lies 2.72 standard deviations from their mean of 0.42 m, and 2.29 is as far as one in twenty good sets would. It is counted all the same. Was a whole mark misread? Ask for another look.",
    ]);
  });

  it("says that nothing is known of the staff", () => {
    const { calibration: _, ...bare } = bridge();
    expect(heard(bare).notices.map(({ message }) => message)).toEqual([
      "staff-readings: nothing is said of the staff's own error, which no number of readers averages out: the ± is that of reading alone.",
    ]);
  });

  it("keeps what the readings bring along", () => {
    const readings = on("bridge", 412, 418).map((h) => h.plusMinus(millimetre.of(4), "parallax"));
    expect(parts(staffReadings(bridge({ readings })).level)["parallax"]! * k).toBeCloseTo(4, 9);
  });

  it("does not change with the order, moves with the staff, and is the same in feet", () => {
    const levels = fc.array(fc.double({ min: 100, max: 900, noNaN: true }), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(levels, fc.double({ min: -50, max: 50, noNaN: true }), (all, shift) => {
        const of = (mm: readonly number[]) =>
          staffReadings(bridge({ readings: on("bridge", ...mm) }));
        const there = of(all);
        expect(of(all.toReversed()).level.in(millimetre)).toBeCloseTo(
          there.level.in(millimetre),
          8,
        );
        const moved = of(all.map((h) => h + shift));
        expect(moved.level.in(millimetre)).toBeCloseTo(there.level.in(millimetre) + shift, 8);
        expect(moved.noise!.in(millimetre)).toBeCloseTo(there.noise!.in(millimetre), 7);
        const feet = staffReadings(
          bridge({
            readings: all.map((h) => point("staff zero", foot.of(h / 304.8), "bridge")),
          }),
        );
        expect(feet.level.in(millimetre)).toBeCloseTo(there.level.in(millimetre), 8);
      }),
    );
  });

  it("refuses readings of two staffs, none, and a staff without divisions", () => {
    expect(() =>
      staffReadings(bridge({ readings: [...on("bridge", 412), ...on("weir", 413)] })),
    ).toThrow(QuantityError);
    expect(() => staffReadings(bridge({ readings: [] }))).toThrow(
      "staff-readings: readings = none. Read the staff once or more.",
    );
    expect(() => staffReadings(bridge({ division: metre.of(0) }))).toThrow(NonPhysicalError);
    expect(() => staffReadings(bridge({ division: metre.of(0) }))).toThrow(
      "staff-readings: division = 0 m is not above zero, which no staff has.",
    );
  });
});
