import { resistanceAtTemperature } from "@leat/conductors";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  celsius,
  fahrenheit,
  kelvin,
  ohmPerKilofoot,
  ohmPerKilometre,
  perKelvin,
  point,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const copper = {
  resistancePerLength: ohmPerKilometre.of(1.15),
  at: celsius.at(20),
  temperatureCoefficient: perKelvin.of(0.00393),
};
const within = fc.double({ min: -50, max: 145, noNaN: true });

describe("resistanceAtTemperature", () => {
  it("gives the resistance back at its own temperature", () => {
    expect(
      resistanceAtTemperature({ ...copper, temperature: celsius.at(20) }).in(ohmPerKilometre),
    ).toBeCloseTo(1.15, 12);
  });

  it("rises with temperature and comes back with the coefficient of the other temperature", () => {
    fc.assert(
      fc.property(within, within, (a, b) => {
        fc.pre(b - a > 1e-6);
        const at = (t: number) =>
          resistanceAtTemperature({ ...copper, temperature: celsius.at(t) });
        expect(at(b).greaterThan(at(a))).toBe(true);
        const back = resistanceAtTemperature({
          resistancePerLength: at(b),
          at: celsius.at(b),
          temperatureCoefficient: perKelvin.of(0.00393 / (1 + 0.00393 * (b - 20))),
          temperature: celsius.at(a),
        });
        expect(back.in(ohmPerKilometre)).toBeCloseTo(at(a).in(ohmPerKilometre), 10);
      }),
    );
  });

  it("is the same in degrees Fahrenheit and per thousand feet", () => {
    const us = resistanceAtTemperature({
      resistancePerLength: ohmPerKilofoot.of(1.15 * 0.3048),
      at: fahrenheit.at(68),
      temperatureCoefficient: perKelvin.of(0.00393),
      temperature: fahrenheit.at(167),
    });
    const metric = resistanceAtTemperature({ ...copper, temperature: celsius.at(75) });
    expect(us.in(ohmPerKilometre)).toBeCloseTo(metric.in(ohmPerKilometre), 12);
  });

  it("keeps its range to the kelvin, and names it", () => {
    for (const k of [220, 420]) {
      expect(() =>
        resistanceAtTemperature({ ...copper, temperature: point("absolute zero", kelvin.of(k)) }),
      ).not.toThrow();
    }
    for (const k of [219.9, 420.1]) {
      expect(() =>
        resistanceAtTemperature({ ...copper, temperature: point("absolute zero", kelvin.of(k)) }),
      ).toThrow(OutOfValidityError);
    }
    expect(() => resistanceAtTemperature({ ...copper, temperature: celsius.at(200) })).toThrow(
      "resistance-at-temperature: temperature = 200 °C is above 420 K, the range common practice gives",
    );
  });

  it("refuses a resistance below zero and a difference for a temperature", () => {
    expect(() =>
      resistanceAtTemperature({
        ...copper,
        resistancePerLength: ohmPerKilometre.of(-1),
        temperature: celsius.at(20),
      }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      resistanceAtTemperature({ ...copper, temperature: kelvin.of(300) as never }),
    ).toThrow("give a point over absolute zero");
  });
});
