import { heatingRate, heatingTime } from "@leat/dump-load";
import { NonPhysicalError } from "@leat/formula";
import {
  celsius,
  fahrenheit,
  gallon,
  kelvin,
  kilogram,
  kilogramPerCubicMetre,
  kilowatt,
  litre,
  one,
  QuantityError,
  second,
  volt,
  watt,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const density = kilogramPerCubicMetre.of(998.2);
const efficiency = one.of(0.9).as("efficiency");

describe("heatingTime and heatingRate", () => {
  it("are inverse: a tank is heated in the time in which its volume flows through", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1000, noNaN: true }),
        fc.double({ min: 0.1, max: 80, noNaN: true }),
        fc.double({ min: 10, max: 20_000, noNaN: true }),
        (litres, k, w) => {
          const heat = { rise: kelvin.of(k), power: watt.of(w), efficiency };
          const time = heatingTime({ ...heat, mass: litre.of(litres).times(density) });
          const volume = heatingRate({ ...heat, density }).times(time);
          expect(volume.in(litre) / litres).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it("are the same in gallons and degrees Fahrenheit", () => {
    const heat = { power: kilowatt.of(4.5), efficiency };
    const us = heatingTime({
      ...heat,
      mass: gallon.of(40).times(density),
      rise: fahrenheit.at(140).minus(fahrenheit.at(50)),
    });
    const metric = heatingTime({
      ...heat,
      mass: litre.of(151.41647136).times(density),
      rise: celsius.at(60).minus(celsius.at(10)),
    });
    expect(us.in(second)).toBeCloseTo(metric.in(second), 6);
  });

  it("take no time for no rise, twice the time for twice the water, and less with more power", () => {
    const heat = { power: watt.of(500), efficiency, rise: kelvin.of(40) };
    const time = heatingTime({ ...heat, mass: kilogram.of(100) }).in(second);
    expect(heatingTime({ ...heat, mass: kilogram.of(100), rise: kelvin.of(0) }).in(second)).toBe(0);
    expect(heatingTime({ ...heat, mass: kilogram.of(200) }).in(second)).toBe(2 * time);
    expect(heatingTime({ ...heat, mass: kilogram.of(100), power: watt.of(1000) }).in(second)).toBe(
      time / 2,
    );
  });

  it("refuse to cool, to heat without power, and an efficiency that is none", () => {
    const heat = { mass: kilogram.of(100), power: watt.of(500), efficiency, rise: kelvin.of(40) };
    expect(() => heatingTime({ ...heat, rise: celsius.at(10).minus(celsius.at(60)) })).toThrow(
      "heating-time: rise = -50 K is below zero, which no physical rise can be.",
    );
    expect(() => heatingTime({ ...heat, power: watt.of(0) })).toThrow(NonPhysicalError);
    expect(() => heatingTime({ ...heat, efficiency: one.of(0).as("efficiency") })).toThrow(
      "heating-time: t is not a number for these inputs.",
    );
    expect(() => heatingTime({ ...heat, efficiency: one.of(1.01).as("efficiency") })).toThrow(
      NonPhysicalError,
    );
    expect(() => heatingTime({ ...heat, efficiency: one.of(0.9) as never })).toThrow(QuantityError);
    const flow = { power: watt.of(500), efficiency, rise: kelvin.of(40) };
    expect(() => heatingRate({ ...flow, rise: kelvin.of(0) })).toThrow(NonPhysicalError);
    expect(() => heatingRate({ ...flow, power: watt.of(-1) })).toThrow(NonPhysicalError);
    expect(() => heatingRate({ ...flow, power: volt.of(1) as never })).toThrow(QuantityError);
  });

  it("say what they take for granted", () => {
    const assumed: string[] = [];
    heatingRate(
      { power: watt.of(500), efficiency, rise: kelvin.of(40) },
      { onAssumed: ({ input, value }) => assumed.push(`${input} = ${value}`) },
    );
    expect(assumed).toEqual(["specificHeat = 4186 J/(kg·K)", "density = 998.2 kg/m³"]);
  });
});
