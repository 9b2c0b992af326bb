import { conductor, conductorResistance, resistanceAtTemperature } from "@leat/conductors";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { celsius, fahrenheit, foot, metre, ohm, volt } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const { resistancePerLength, at, temperatureCoefficient } = conductor(
  { system: "AWG", name: "2" },
  "copper",
);
const wire = { resistancePerLength, at, temperatureCoefficient };

describe("conductorResistance", () => {
  it("is the resistance per length at its temperature times the length", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 145, noNaN: true }),
        fc.double({ min: 0.01, max: 5000, noNaN: true }),
        (t, m) => {
          const temperature = celsius.at(t);
          const whole = conductorResistance({ ...wire, temperature, length: metre.of(m) });
          const part = resistanceAtTemperature({ ...wire, temperature }).times(metre.of(m));
          expect(whole.in(ohm) / part.in(ohm)).toBeCloseTo(1, 12);
          expect(
            conductorResistance({ ...wire, temperature, length: metre.of(2 * m) }).in(ohm),
          ).toBe(2 * whole.in(ohm));
        },
      ),
    );
  });

  it("is the same in feet and metres, and nothing for no length", () => {
    const us = conductorResistance({
      ...wire,
      temperature: fahrenheit.at(68),
      length: foot.of(1200),
    });
    expect(us.in(ohm)).toBeCloseTo(
      conductorResistance({ ...wire, temperature: celsius.at(20), length: metre.of(365.76) }).in(
        ohm,
      ),
      12,
    );
    expect(
      conductorResistance({ ...wire, temperature: celsius.at(20), length: metre.of(0) }).in(ohm),
    ).toBe(0);
  });

  it("refuses what no conductor has", () => {
    const temperature = celsius.at(20);
    expect(() => conductorResistance({ ...wire, temperature, length: metre.of(-1) })).toThrow(
      NonPhysicalError,
    );
    expect(() =>
      conductorResistance({ ...wire, temperature: celsius.at(-60), length: metre.of(1) }),
    ).toThrow(OutOfValidityError);
    expect(() =>
      conductorResistance({ ...wire, temperature, length: volt.of(1) as never }),
    ).toThrow("length = 1 V (voltage) is refused");
  });
});
