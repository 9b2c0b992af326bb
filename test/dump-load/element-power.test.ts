import { elementPower, elementsNeeded } from "@leat/dump-load";
import { NonPhysicalError } from "@leat/formula";
import { kilowatt, QuantityError, volt, watt } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const element = { ratedPower: watt.of(4500), ratedVoltage: volt.of(240) };
const volts = fc.double({ min: 1, max: 300, noNaN: true });

describe("elementPower", () => {
  it("is the rated power at the rated voltage, nothing at none, and goes with the square", () => {
    expect(elementPower({ ...element, voltage: volt.of(240) }).in(watt)).toBe(4500);
    expect(elementPower({ ...element, voltage: volt.of(0) }).in(watt)).toBe(0);
    fc.assert(
      fc.property(volts, (v) => {
        const [once, twice] = [v, 2 * v].map((V) =>
          elementPower({ ...element, voltage: volt.of(V) }).in(watt),
        ) as [number, number];
        expect(twice / once).toBeCloseTo(4, 12);
        // Rating it at another voltage changes nothing.
        const rerated = {
          ratedPower: elementPower({ ...element, voltage: volt.of(v) }),
          ratedVoltage: volt.of(v),
        };
        expect(elementPower({ ...rerated, voltage: volt.of(240) }).in(watt)).toBeCloseTo(4500, 8);
      }),
    );
  });

  it("is an electric power, and takes its rating as one or as a plain power, in watts or kilowatts", () => {
    const plain = elementPower({ ...element, ratedPower: kilowatt.of(4.5), voltage: volt.of(48) });
    expect(plain.kind).toBe("electric power");
    expect(plain.in(watt)).toBe(
      elementPower({
        ...element,
        ratedPower: watt.of(4500).as("electric power"),
        voltage: volt.of(48),
      }).in(watt),
    );
  });

  it("refuses no rated voltage, a power below zero, and shaft power", () => {
    expect(() =>
      elementPower({ ...element, ratedVoltage: volt.of(0), voltage: volt.of(48) }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      elementPower({ ...element, ratedPower: watt.of(-1), voltage: volt.of(48) }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      elementPower({
        ...element,
        ratedPower: watt.of(1).as("shaft power") as never,
        voltage: volt.of(48),
      }),
    ).toThrow(QuantityError);
  });
});

describe("elementsNeeded", () => {
  const on48 = { ratedPower: watt.of(4500), ratedVoltage: volt.of(240), voltage: volt.of(48) };

  it("is the least number that takes the power", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), volts, (p, v) => {
        const at = { ...on48, voltage: volt.of(v) };
        const n = elementsNeeded({ ...at, power: watt.of(p) });
        const each = elementPower(at).in(watt);
        expect(n * each).toBeGreaterThanOrEqual(p * (1 - 2e-9));
        expect((n - 1) * each).toBeLessThan(p);
      }),
    );
  });

  it("does not count rounding as an element: five of 180 W take 900 W", () => {
    expect(elementsNeeded({ ...on48, power: watt.of(900) })).toBe(5);
    expect(elementsNeeded({ ...on48, power: watt.of(900.001) })).toBe(6);
    for (let n = 1; n <= 200; n += 1) {
      expect(elementsNeeded({ ...on48, power: elementPower(on48).times(n) })).toBe(n);
    }
    expect(elementsNeeded({ ...on48, power: watt.of(0) })).toBe(0);
  });

  it("refuses elements that take nothing, and power below zero", () => {
    expect(() => elementsNeeded({ ...on48, voltage: volt.of(0), power: watt.of(900) })).toThrow(
      "no number of elements of 0 W each takes 900 W. Check the voltage and the power.",
    );
    expect(() => elementsNeeded({ ...on48, power: watt.of(-1) })).toThrow(QuantityError);
  });
});
