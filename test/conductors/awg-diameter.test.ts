import { awgDiameter, gaugeNumber } from "@leat/conductors";
import { OutOfValidityError } from "@leat/formula";
import { foot, inch, millimetre, one, QuantityError } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const inches = (gauge: number): number => awgDiameter({ gauge: one.of(gauge) }).in(inch);

describe("awgDiameter", () => {
  it("goes from 4/0 to 36 in 39 equal ratios, halving in six numbers, near enough", () => {
    expect(inches(-3) / inches(36)).toBeCloseTo(92, 10);
    for (let n = -3; n < 56; n += 1)
      expect(inches(n) / inches(n + 1)).toBeCloseTo(92 ** (1 / 39), 10);
    expect(inches(10) / inches(16)).toBeCloseTo(2, 1);
  });

  it("is the same in inches and millimetres", () => {
    const d = awgDiameter({ gauge: one.of(6) });
    expect(d.in(millimetre)).toBeCloseTo(d.in(inch) * 25.4, 12);
  });

  it("refuses what the gauge does not have, and tells whose range it is", () => {
    expect(inches(56)).toBeLessThan(0.0005);
    expect(() => inches(56.1)).toThrow(OutOfValidityError);
    expect(() => inches(-4)).toThrow(
      "awg-diameter: gauge = -4 is below -3, the range ASTM B258 gives",
    );
  });

  it("refuses anything but a number of the gauge", () => {
    expect(() => awgDiameter({ gauge: foot.of(4) as never })).toThrow(QuantityError);
  });
});

describe("gaugeNumber", () => {
  it("reads the names of the gauge", () => {
    expect(["4/0", "3/0", "2/0", "1/0", "1", "12", "56"].map(gaugeNumber)).toEqual([
      -3, -2, -1, 0, 1, 12, 56,
    ]);
  });

  it("refuses every other name", () => {
    for (const name of ["5/0", "0", "00", "57", "-1", "2/1", "250", "1.5", "", "12 AWG"]) {
      expect(() => gaugeNumber(name)).toThrow(QuantityError);
    }
    expect(() => gaugeNumber("5/0")).toThrow(
      "5/0 is not an AWG size: give 56 to 1, or 1/0 to 4/0.",
    );
  });
});
