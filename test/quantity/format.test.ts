import {
  celsius,
  each,
  fahrenheit,
  foot,
  format,
  formatFeetAndInches,
  inch,
  kelvin,
  kilopascal,
  litrePerSecond,
  metre,
  one,
  percent,
  poundPerSquareInch,
} from "@leat/quantity";
import { read, unitOf } from "@leat/quantity/text";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";

describe("format", () => {
  it("prints significant digits, without an exponent", () => {
    expect(format(litrePerSecond.of(24.6532), litrePerSecond, 3)).toBe("24.7 L/s");
    expect(format(metre.of(12_345), metre, 2)).toBe("12000 m");
    expect(format(metre.of(2.5), metre, 1)).toBe("3 m");
    expect(format(metre.of(0.5), metre, 3)).toBe("0.500 m");
    expect(format(metre.of(1e-7), metre)).toBe("0.0000001 m");
    expect(format(metre.of(1e20), metre)).toBe("100000000000000000000 m");
  });

  it("prints what was written as it was written, else up to 15 digits", () => {
    expect(format(read("3.20 USD/ft", "price per length"), unitOf("USD/ft") as never)).toBe(
      "3.20 USD/ft",
    );
    expect(format(read("110 ± 2 ft", "length"), foot)).toBe("110 ft");
    expect(format(read("3 1/4 in", "length"), inch)).toBe("3.25 in");
    expect(format(metre.of(0.1 + 0.2), metre)).toBe("0.3 m");
    expect(format(metre.of(1).dividedBy(3), metre)).toBe("0.333333333333333 m");
  });

  it("rounds by the uncertainty", () => {
    expect(format(read("110 ± 2 ft", "length"), metre)).toBe("33.53 m");
    expect(format(metre.of(33.5284).plusMinus(metre.of(12), "a").times(1), metre)).toBe("34 m");
    expect(format(metre.of(33_528.4).plusMinus(metre.of(1234), "a").times(1), metre)).toBe(
      "33500 m",
    );
  });

  it("prints ± with its k", () => {
    expect(format(read("110 ± 2 ft", "length"), foot, { plusMinus: true })).toBe(
      "110 ± 2 ft (k = 1.96)",
    );
    expect(format(read("110 ± 2 ft", "length"), metre, { plusMinus: true })).toBe(
      "33.53 ± 0.61 m (k = 1.96)",
    );
    expect(format(read("110 ± 2 ft", "length"), metre, { plusMinus: true, digits: 1 })).toBe(
      "33.5 ± 0.6 m (k = 1.96)",
    );
    expect(
      format(metre.of(12_345).plusMinus(metre.of(1234), "a"), metre, { plusMinus: true }),
    ).toBe("12300 ± 1200 m (k = 1.96)");
    expect(format(percent.of(85).plusMinus(percent.of(2), "a"), percent, { plusMinus: true })).toBe(
      "(85 ± 2) % (k = 1.96)",
    );
    expect(
      format(read("110 ± 2.5 ft", "length"), foot, { plusMinus: true, decimalMark: "," }),
    ).toBe("110,0 ± 2,5 ft (k = 1,96)");
    expect(format(metre.of(3), metre, { plusMinus: true })).toBe("3 m");
  });

  it("prints points in their units, with what a pressure is counted from", () => {
    expect(format(read("72 °F", "absolute zero"), fahrenheit)).toBe("72 °F");
    expect(format(read("72 °F", "absolute zero"), celsius, 3)).toBe("22.2 °C");
    expect(format(read("0 °C", "absolute zero"), kelvin)).toBe("273.15 K");
    expect(format(read("72 ± 2 °F", "absolute zero"), celsius, { plusMinus: true })).toBe(
      "22.2 ± 1.1 °C (k = 1.96)",
    );
    expect(format(read("50 psig", "local atmosphere"), poundPerSquareInch)).toBe("50 psig");
    expect(format(read("50 psig", "local atmosphere"), kilopascal, 3)).toBe("345 kPa(g)");
    expect(format(read("14.7 psia", "vacuum"), poundPerSquareInch)).toBe("14.7 psia");
    expect(format(read("12.5 m", "site datum", { instance: "peg" }), metre)).toBe("12.5 m");
  });

  it("marks and groups as it is told", () => {
    expect(format(metre.of(1_234_567.5), metre, { grouping: " " })).toBe("1 234 567.5 m");
    expect(format(metre.of(1_234_567.5), metre, { grouping: ".", decimalMark: "," })).toBe(
      "1.234.567,5 m",
    );
    expect(format(metre.of(-1234), metre, { grouping: "," })).toBe("-1,234 m");
    expect(format(metre.of(-123), metre, { grouping: "," })).toBe("-123 m");
  });

  it("prints ratios, counts and angles as one writes them", () => {
    expect(format(one.of(0.85), one)).toBe("0.85");
    expect(format(each.of(3), each)).toBe("3 each");
    expect(format(unitOf("°").of(45), unitOf("°"))).toBe("45°");
  });

  it("never prints minus zero", () => {
    const doubtful = metre.of(-0.001).plusMinus(metre.of(1), "a").times(1);
    for (const text of [
      format(metre.of(-0), metre),
      format(metre.of(-0), metre, 3),
      format(doubtful, metre),
      format(doubtful, metre, { plusMinus: true }),
      format(doubtful.times(1000).dividedBy(100), metre, { plusMinus: true }),
    ]) {
      expect(text).not.toMatch(/^-0(\.0*)?\b(?!\.\d*[1-9])/);
    }
  });

  it("refuses", () => {
    expect(thrown(() => format(metre.of(1), metre, 0))).toBe(
      "number: 0 significant digits are not from 1 to 17",
    );
    expect(thrown(() => format(metre.of(1), metre, 101))).toBe(
      "number: 101 significant digits are not from 1 to 17",
    );
    expect(thrown(() => format(metre.of(1), metre, { grouping: "." }))).toBe(
      "number: . cannot group and be the decimal mark",
    );
    expect(thrown(() => format(metre.of(1), untyped(kilopascal)))).toBe(
      "kind: 1 m (length) has no kPa (pressure)",
    );
  });

  it("prints any double, and any uncertainty of it", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e300, max: 1e300, noNaN: true }),
        fc.double({ min: 0, max: 1e300, noNaN: true }),
        fc.integer({ min: 1, max: 17 }),
        (x, half, digits) => {
          const value = one.of(x).plusMinus(one.of(half), "a");
          for (const text of [
            format(value, one, digits),
            format(value, one),
            format(value.times(1), one),
            format(value, one, { plusMinus: true }),
          ]) {
            expect(text).not.toMatch(/NaN|Infinity|undefined/);
          }
          const [shown = "", spread = ""] = format(value, one, { plusMinus: true }).split(
            / ± | \(/,
          );
          // The number is shown to the last digit of the ±, or better.
          if (half > 1e-80)
            expect(Math.abs(Number(shown) - x)).toBeLessThanOrEqual(
              Math.max(Number(spread), 1e-14 * Math.abs(x)),
            );
        },
      ),
      { numRuns: 5000 },
    );
  });
});

describe("formatFeetAndInches", () => {
  it.each([
    [67.25, 16, `5'-7 1/4"`],
    [11 + 31 / 32, 16, `1'-0"`],
    [11 + 31 / 32, 32, `11 31/32"`],
    [60, 16, `5'-0"`],
    [60.5, 16, `5'-0 1/2"`],
    [0.5, 16, `1/2"`],
    [0.5, 1, `1"`],
    [7, 16, `7"`],
    [0, 16, `0"`],
    [-67.25, 16, `-5'-7 1/4"`],
    [-0.01, 16, `0"`],
  ])("prints %d in to 1/%d as %s", (inches, denominator, expected) => {
    expect(formatFeetAndInches(inch.of(inches), denominator)).toBe(expected);
  });

  it("is read again to the half of a part", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128),
        (inches, denominator) => {
          const text = formatFeetAndInches(inch.of(inches), denominator);
          expect(Math.abs(read(text, "length").in(inch) - inches)).toBeLessThanOrEqual(
            (0.5 / denominator) * (1 + 1e-9),
          );
        },
      ),
    );
  });

  it("refuses", () => {
    expect(thrown(() => formatFeetAndInches(inch.of(1), 10))).toBe("number: a tape has no 1/10 in");
    expect(thrown(() => formatFeetAndInches(untyped(kilopascal.of(1))))).toBe(
      "kind: 1 kPa (pressure) has no in (length)",
    );
  });
});
