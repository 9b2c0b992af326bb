import { conductor, conductorResistance } from "@leat/conductors";
import { loopDrop, loopLoss, loopResistance } from "@leat/dc-transmission";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  ampere,
  celsius,
  fahrenheit,
  foot,
  metre,
  ohm,
  QuantityError,
  volt,
  watt,
} from "@leat/quantity";
import { readSize } from "@leat/quantity/text";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const { resistancePerLength, at, temperatureCoefficient } = conductor(readSize("2 AWG"), "copper");
const wire = { resistancePerLength, at, temperatureCoefficient };
const metres = fc.double({ min: 1, max: 3000, noNaN: true });
const degrees = fc.double({ min: -50, max: 145, noNaN: true });
const amps = fc.double({ min: 0, max: 500, noNaN: true });

describe("loopResistance", () => {
  it("is that of a conductor as long as there and back", () => {
    fc.assert(
      fc.property(metres, degrees, (m, t) => {
        const temperature = celsius.at(t);
        const loop = loopResistance({ ...wire, temperature, length: metre.of(m) }).in(ohm);
        expect(
          loop / conductorResistance({ ...wire, temperature, length: metre.of(2 * m) }).in(ohm),
        ).toBeCloseTo(1, 12);
      }),
    );
  });

  it("is the same in feet and degrees Fahrenheit", () => {
    const us = loopResistance({ ...wire, temperature: fahrenheit.at(104), length: foot.of(600) });
    expect(us.in(ohm)).toBeCloseTo(
      loopResistance({ ...wire, temperature: celsius.at(40), length: metre.of(182.88) }).in(ohm),
      12,
    );
  });

  it("refuses a length below zero, a temperature out of range, and a wrong kind", () => {
    const temperature = celsius.at(20);
    expect(() => loopResistance({ ...wire, temperature, length: metre.of(-1) })).toThrow(
      NonPhysicalError,
    );
    expect(() =>
      loopResistance({ ...wire, temperature: celsius.at(160), length: metre.of(1) }),
    ).toThrow(OutOfValidityError);
    expect(() =>
      loopResistance({ ...wire, temperature, length: metre.of(1).as("pipe length") as never }),
    ).toThrow(QuantityError);
  });
});

describe("loopDrop and loopLoss", () => {
  it("agree with Ohm's law over the resistance of the loop", () => {
    fc.assert(
      fc.property(metres, amps, (m, i) => {
        const [length, current] = [metre.of(m), ampere.of(i)];
        const resistance = loopResistance({ ...wire, temperature: at, length });
        const drop = loopDrop({ length, resistancePerLength, current });
        expect(drop.in(volt)).toBeCloseTo(resistance.in(ohm) * i, 9);
        expect(loopLoss({ current, resistance }).in(watt)).toBeCloseTo(drop.in(volt) * i, 6);
      }),
    );
  });

  it("are nothing without current, and four times the loss at twice the current", () => {
    const resistance = ohm.of(0.2328);
    expect(
      loopDrop({ length: foot.of(600), resistancePerLength, current: ampere.of(0) }).in(volt),
    ).toBe(0);
    expect(loopLoss({ current: ampere.of(0), resistance }).in(watt)).toBe(0);
    expect(loopLoss({ current: ampere.of(31), resistance }).in(watt)).toBe(
      4 * loopLoss({ current: ampere.of(15.5), resistance }).in(watt),
    );
    expect(loopLoss({ current: ampere.of(1), resistance }).kind).toBe("electric power");
  });

  it("refuse what cannot be", () => {
    expect(() =>
      loopDrop({ length: foot.of(600), resistancePerLength, current: ampere.of(-1) }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      loopDrop({ length: foot.of(600), resistancePerLength, current: volt.of(1) as never }),
    ).toThrow("loop-drop: current = 1 V (voltage) is refused");
    expect(() => loopLoss({ current: ampere.of(1), resistance: ohm.of(-1) })).toThrow(
      NonPhysicalError,
    );
  });
});
