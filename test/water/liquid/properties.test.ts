import { type Assumption, OutOfValidityError } from "@leat/formula";
import {
  celsius,
  fahrenheit,
  joulePerKilogramKelvin,
  kilogramPerCubicMetre,
  megapascal,
  metre,
  metrePerSecond,
  pascal,
  pascalSecond,
  point,
  QuantityError,
  squareMetrePerSecond,
} from "@leat/quantity";
import {
  bulkModulus,
  kinematicViscosity,
  soundSpeed,
  vapourPressure,
  waterDensity,
  waterSpecificHeat,
  waterViscosity,
  waterViscosityAtDensity,
} from "@leat/water";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const temperatures = fc.double({ min: 0, max: 99, noNaN: true });
const megapascals = fc.double({ min: 0.102, max: 20, noNaN: true });
const at = (t: number, MPa = 0.101325) => ({
  temperature: celsius.at(t),
  pressure: point("vacuum", megapascal.of(MPa)),
});
const density = (t: number, MPa?: number): number =>
  waterDensity(at(t, MPa)).in(kilogramPerCubicMetre);

describe("liquid water", () => {
  it("is densest at 3.98 °C at one atmosphere", () => {
    // Tanaka et al., Metrologia 38 (2001) 301: 3.983 °C, from memory.
    let best = 0;
    for (let t = 3; t <= 5; t += 0.001) if (density(t) > density(best)) best = t;
    expect(Math.abs(best - 3.98)).toBeLessThan(0.02);
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 98, noNaN: true }),
        (t) => density(t) > density(t + 0.1),
      ),
    );
  });

  it("is denser under pressure, as its bulk modulus at one temperature says", () => {
    fc.assert(
      fc.property(temperatures, megapascals, (t, MPa) => {
        expect(density(t, MPa + 1)).toBeGreaterThan(density(t, MPa));
        // dρ/dp at constant entropy is 1/w²; at constant temperature a little more.
        const slope = (density(t, MPa + 0.05) - density(t, MPa)) / 0.05e6;
        const w = soundSpeed(at(t, MPa)).in(metrePerSecond);
        expect(slope * w * w).toBeGreaterThan(0.995);
        expect(slope * w * w).toBeLessThan(1.13);
      }),
    );
  });

  it("expands as cp, the speed of sound and the slope of density bind it", () => {
    // ∂ρ/∂p at T less 1/w² is T·α²/cp: four derivatives of one potential, and none of them free.
    fc.assert(
      fc.property(fc.double({ min: 10, max: 95, noNaN: true }), megapascals, (t, MPa) => {
        const T = t + 273.15;
        const isothermal = (density(t, MPa + 0.05) - density(t, MPa - 0.0005)) / 0.0505e6;
        const w = soundSpeed(at(t, MPa)).in(metrePerSecond);
        const α = -(density(t + 0.05, MPa) - density(t - 0.05, MPa)) / 0.1 / density(t, MPa);
        const cp = waterSpecificHeat(at(t, MPa)).in(joulePerKilogramKelvin);
        expect(isothermal - 1 / (w * w)).toBeCloseTo((T * α * α) / cp, 9);
      }),
    );
  });

  it("has the bulk modulus of its density and speed of sound", () => {
    fc.assert(
      fc.property(temperatures, (t) => {
        const w = soundSpeed(at(t)).in(metrePerSecond);
        expect(bulkModulus(at(t)).in(pascal) / (density(t) * w * w)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("runs thinner as it warms, by three routes that agree", () => {
    fc.assert(
      fc.property(temperatures, (t) => {
        const μ = waterViscosity(at(t)).in(pascalSecond);
        expect(waterViscosity(at(t + 0.5)).in(pascalSecond)).toBeLessThan(μ);
        const direct = waterViscosityAtDensity({
          temperature: celsius.at(t),
          density: waterDensity(at(t)),
        });
        expect(direct.in(pascalSecond) / μ).toBeCloseTo(1, 12);
        expect(kinematicViscosity(at(t)).in(squareMetrePerSecond) / (μ / density(t))).toBeCloseTo(
          1,
          12,
        );
      }),
    );
  });

  it("boils under less pressure the cooler it is, and at 99.97 °C under one atmosphere", () => {
    const pressure = (t: number): number =>
      vapourPressure({ temperature: celsius.at(t) }).in(pascal);
    fc.assert(fc.property(temperatures, (t) => pressure(t) < pressure(t + 0.5)));
    expect(pressure(99.97)).toBeLessThan(101325);
    expect(pressure(99.98)).toBeGreaterThan(101325);
  });

  it("is the same in Fahrenheit", () => {
    fc.assert(
      fc.property(temperatures, (t) => {
        const warm = { temperature: fahrenheit.at((t * 9) / 5 + 32) };
        expect(waterDensity(warm).in(kilogramPerCubicMetre)).toBeCloseTo(density(t), 9);
      }),
    );
  });

  it("takes one atmosphere where no pressure is given, and says so", () => {
    const assumed: Assumption[] = [];
    const plain = waterDensity(
      { temperature: celsius.at(20) },
      { onAssumed: (assumption) => assumed.push(assumption) },
    );
    expect(plain.in(kilogramPerCubicMetre)).toBe(density(20));
    expect(assumed.map(({ input }) => input)).toEqual(["pressure"]);
  });

  it.each([
    ["water-density", waterDensity],
    ["water-specific-heat", waterSpecificHeat],
    ["sound-speed", soundSpeed],
    ["bulk-modulus", bulkModulus],
    ["water-viscosity", waterViscosity],
    ["kinematic-viscosity", kinematicViscosity],
  ] as const)("ends at ice, at steam and at 100 MPa: %s", (id, property) => {
    expect(() => property(at(-0.1))).toThrow(OutOfValidityError);
    expect(() => property(at(-0.1))).toThrow(
      `${id}: temperature = -0.1 °C is below 273.15 K, the range common practice gives`,
    );
    expect(() => property(at(101, 0.2))).toThrow(
      `${id}: temperature = 101 °C is above 373.15 K, the range common practice gives`,
    );
    expect(() => property(at(50, 0.01))).toThrow(
      `${id}: pressure over vapour pressure = 0.8096 is below 1, the range IAPWS gives`,
    );
    expect(() => property(at(50, 101))).toThrow(
      `${id}: pressure = 101 MPa over vacuum is above 100 MPa (100000000 Pa), the range IAPWS gives`,
    );
    expect(() => property(at(0))).not.toThrow();
  });

  it("ends there for vapour pressure and for viscosity at a density too", () => {
    expect(() => vapourPressure({ temperature: celsius.at(-1) })).toThrow(
      "vapour-pressure: temperature = -1 °C is below 273.15 K",
    );
    const hot = { temperature: celsius.at(150), density: kilogramPerCubicMetre.of(900) };
    expect(() => waterViscosityAtDensity(hot)).toThrow(
      "water-viscosity-at-density: temperature = 150 °C is above 373.15 K",
    );
  });

  it("refuses a temperature difference, a gauge pressure and no density", () => {
    expect(() => waterDensity({ temperature: metre.of(1) as never })).toThrow(QuantityError);
    const gauge = point("local atmosphere", pascal.of(1000), "tank");
    expect(() => waterDensity({ temperature: celsius.at(20), pressure: gauge as never })).toThrow(
      QuantityError,
    );
    const none = { temperature: celsius.at(20), density: kilogramPerCubicMetre.of(0) };
    expect(() => waterViscosityAtDensity(none)).toThrow("density = 0 kg/m³ is not above zero");
  });
});
