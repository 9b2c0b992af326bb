import { NonPhysicalError } from "@leat/formula";
import {
  greatestPowerFlow,
  greatestPowerNozzle,
  greatestPowerShare,
  lossAndExponentOf,
  penstockProfile,
  reachLossOf,
} from "@leat/penstock";
import { ownPipe, type Pipe, readPipe } from "@leat/pipe-sizes";
import {
  celsius,
  coherentUnit,
  kilowatt,
  metre,
  metrePerSecondSquared,
  millimetre,
  one,
  point,
} from "@leat/quantity";
import { kinematicViscosity, waterDensity } from "@leat/water";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const k = coherentUnit("coefficient");
const level = (height: number) => point("site datum", metre.of(height), "nozzle");
const temperature = celsius.at(12);

function down(pipe: Pipe, length: number, fall: number, coefficient = 0) {
  return penstockProfile({
    stations: [
      { chainage: metre.of(0), elevation: level(fall - 0.1) },
      { chainage: metre.of(length), elevation: level(0) },
    ],
    measured: "along the slope",
    reaches: [{ pipe, fittings: [{ coefficient: k.of(coefficient) }] }],
  });
}

const tube = (bore: number, roughness: number): Pipe =>
  ownPipe({
    outsideDiameter: metre.of(bore + 0.02),
    wall: metre.of(0.01),
    roughness: metre.of(roughness),
    material: "steel",
    name: "tube",
  });

describe("greatestPowerFlow", () => {
  it("loses a third in fully rough pipe", () => {
    const { share, lossExponent } = greatestPowerFlow({
      profile: down(tube(0.1, 0.005), 300, 60),
      water: level(60),
      temperature,
    });
    expect(share["~si"]).toBeCloseTo(1 / 3, 3);
    expect(lossExponent["~si"]).toBeCloseTo(2, 2);
  });

  it("loses some 0.36 in smooth plastic, half in laminar flow", () => {
    const plastic = greatestPowerFlow({
      profile: down(readPipe("110 mm PE100 SDR 17"), 320, 50),
      water: level(50),
      temperature,
    });
    expect(plastic.share["~si"]).toBeGreaterThan(0.35);
    expect(plastic.share["~si"]).toBeLessThan(0.365);
    const thin = greatestPowerFlow({
      profile: down(tube(0.002, 1e-7), 20, 2),
      water: level(2),
      temperature,
    });
    expect(thin.share["~si"]).toBeCloseTo(0.5, 9);
  });

  it("gives the power of Subramanya's example 11.28: 531.6 kW from 100 m through 1000 m of 50 cm, f = 0.019", () => {
    // The wall whose factor in fully rough flow is the book's: 1/√f = −2·log10(r/3.7); γ = 9.79 kN/m³.
    const relative = 3.7 * 10 ** (-0.5 / Math.sqrt(0.019));
    const { power, flow } = greatestPowerFlow({
      profile: down(tube(0.5, 0.5 * relative), 1000, 100),
      water: level(100),
      temperature: celsius.at(20),
      gravity: metrePerSecondSquared.of(9.79 / 0.9982),
    });
    expect(Math.abs(power.in(kilowatt) / 531.6 - 1)).toBeLessThan(0.01);
    const jet = greatestPowerNozzle({
      insideDiameter: metre.of(0.5),
      length: metre.of(1000).as("pipe length"),
      frictionFactor: k.of(0.019),
    });
    const through = (Math.PI / 4) * jet["~si"] ** 2 * Math.sqrt(2 * 9.81 * (200 / 3));
    expect(Math.abs(flow["~si"] / through - 1)).toBeLessThan(0.01);
  });

  it("is where power is greatest, and its share is 1/(1 + n)", () => {
    const viscosity = kinematicViscosity({ temperature })["~si"];
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        fc.double({ min: 50, max: 1500, noNaN: true }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (bore, length, fall, coefficient) => {
          const most = greatestPowerFlow({
            profile: down(tube(bore, 3e-6), length, fall, coefficient),
            water: level(fall),
            temperature,
          });
          const q = most.flow["~si"];
          const power = (flow: number): number =>
            flow * (fall - reachLossOf(flow, bore, 3e-6, length, coefficient, viscosity, 9.80665));
          expect(power(q * 0.99)).toBeLessThan(power(q));
          expect(power(q * 1.01)).toBeLessThan(power(q));
          const density = waterDensity({ temperature })["~si"];
          expect(most.power["~si"] / (density * 9.80665 * power(q))).toBeCloseTo(1, 9);
          expect(most.share["~si"]).toBeCloseTo(
            greatestPowerShare({ lossExponent: most.lossExponent })["~si"],
            9,
          );
          expect(most.netHead["~si"]).toBeCloseTo(fall * (1 - most.share["~si"]), 9);
        },
      ),
    );
  });

  it("takes the flow between one law and the next where fittings count too", () => {
    const reach = { bore: 0.1, roughness: 3e-6, length: 100, coefficient: 0 };
    const exponent = (coefficient: number): number =>
      lossAndExponentOf([{ ...reach, coefficient }], 0.012, 1.2e-6, 9.80665).exponent;
    expect(exponent(0)).toBeLessThan(exponent(10));
    expect(exponent(1e6)).toBeCloseTo(2, 4);
    const halves = lossAndExponentOf(
      [
        { ...reach, length: 50 },
        { ...reach, length: 50 },
      ],
      0.012,
      1.2e-6,
      9.80665,
    );
    const whole = lossAndExponentOf([reach], 0.012, 1.2e-6, 9.80665);
    expect(halves.loss).toBeCloseTo(whole.loss, 12);
    expect(halves.exponent).toBeCloseTo(whole.exponent, 12);
    expect(lossAndExponentOf([], 0.012, 1.2e-6, 9.80665)).toEqual({ loss: 0, exponent: 0 });
  });

  it("tells what it assumed, and refuses a pipe that does not end below the water", () => {
    const told: string[] = [];
    const profile = down(readPipe("110 mm PE100 SDR 17"), 320, 50);
    greatestPowerFlow(
      { profile, water: level(50), temperature },
      { onAssumed: ({ input }) => told.push(input) },
    );
    expect(told).toEqual(["gravity"]);
    const dry = (): unknown => greatestPowerFlow({ profile, water: level(-1), temperature });
    expect(dry).toThrow(NonPhysicalError);
    expect(dry).toThrow(
      "greatest-power-flow: water = -1 m over nozzle does not stand above the end of the pipe. Check the two levels.",
    );
  });

  it("is as the nozzle of greatest power has it, where the factor is fixed", () => {
    const d = (bore: number, length: number): number =>
      greatestPowerNozzle({
        insideDiameter: millimetre.of(bore),
        length: metre.of(length).as("pipe length"),
        frictionFactor: k.of(0.02),
      }).in(millimetre);
    // d⁴ goes with D⁵/L.
    expect(d(200, 250) / d(100, 250)).toBeCloseTo(2 ** 1.25, 12);
    expect(d(100, 250 * 16) / d(100, 250)).toBeCloseTo(0.5, 12);
    expect(greatestPowerShare({ lossExponent: one.of(2) })["~si"]).toBeCloseTo(1 / 3, 15);
  });
});
