import { specificConductivity, streamTemperatureCoefficient } from "@leat/flow-measurement";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  celsius,
  fahrenheit,
  kelvin,
  metre,
  microsiemensPerCentimetre,
  perKelvin,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const at = (conductivity: number, temperature: number): number =>
  specificConductivity({
    conductivity: microsiemensPerCentimetre.of(conductivity),
    temperature: celsius.at(temperature),
  }).in(microsiemensPerCentimetre);
const readings = fc.double({ min: 1, max: 2000, noNaN: true });
const degrees = fc.double({ min: 0, max: 35, noNaN: true });

describe("specificConductivity", () => {
  it("is greater than the reading below 25 °C and smaller above, in proportion to the reading", () => {
    fc.assert(
      fc.property(readings, degrees, (reading, t) => {
        expect(Math.sign(at(reading, t) - reading)).toBe(Math.sign(25 - t));
        expect(at(2 * reading, t)).toBeCloseTo(2 * at(reading, t), 9);
      }),
    );
  });

  it("takes back what a raw reading was made of", () => {
    fc.assert(
      fc.property(readings, degrees, (at25, t) => {
        expect(at(at25 * (1 + 0.02 * (t - 25)), t)).toBeCloseTo(at25, 9);
      }),
    );
  });

  it("is the same in degrees Fahrenheit", () => {
    const conductivity = microsiemensPerCentimetre.of(120);
    const there = specificConductivity({ conductivity, temperature: fahrenheit.at(50) });
    expect(there.in(microsiemensPerCentimetre)).toBeCloseTo(at(120, 10), 9);
  });

  it("carries the doubt about the coefficient, which all readings share", () => {
    const coefficient = streamTemperatureCoefficient();
    // 1.9 % to 2.1 % a kelvin, 95 %: what the meters' makers print lies within.
    expect(coefficient.standardUncertainty().in(perKelvin) * 1.959964).toBeCloseTo(0.001, 9);
    const spread = specificConductivity({
      conductivity: microsiemensPerCentimetre.of(70),
      temperature: celsius.at(10),
    });
    // d ln κ25 / dα = 15 K / 0.7.
    expect(spread.standardUncertainty().in(microsiemensPerCentimetre) * 1.959964).toBeCloseTo(
      (100 * 0.001 * 15) / 0.7,
      3,
    );
    expect([...spread.sources().keys()]).toEqual(["temperature coefficient"]);
  });

  it("tells whose range is left, and refuses what is not physical or of another kind", () => {
    const cold = {
      conductivity: microsiemensPerCentimetre.of(50),
      temperature: celsius.at(-1),
    };
    expect(() => specificConductivity(cold)).toThrow(OutOfValidityError);
    expect(() => specificConductivity(cold)).toThrow(
      "specific-conductivity: temperature in °C = -1 is below 0, the range ISO 7888 gives",
    );
    expect(() => specificConductivity({ ...cold, temperature: celsius.at(40) })).toThrow(
      "temperature in °C = 40 is above 36, the range ISO 7888 gives",
    );
    expect(() =>
      specificConductivity({
        ...cold,
        temperature: celsius.at(10),
        conductivity: microsiemensPerCentimetre.of(-9999),
      }),
    ).toThrow(NonPhysicalError);
    expect(() => specificConductivity({ ...cold, conductivity: metre.of(1) as never })).toThrow(
      QuantityError,
    );
    expect(() => specificConductivity({ ...cold, temperature: kelvin.of(10) as never })).toThrow(
      QuantityError,
    );
  });
});
