import {
  btuInchPerHourSquareFootDegree,
  coolingAlongPipe,
  coolingTime,
  freezingTime,
  groundResistance,
  insulationResistance,
  kelvinMetrePerWatt,
  leastFlowAgainstFreezing,
  surfaceResistance,
  wattPerMetreKelvin,
  wattPerSquareMetreKelvin,
} from "@leat/intake";
import {
  celsius,
  fahrenheit,
  hour,
  inch,
  kelvin,
  litrePerSecond,
  metre,
  millimetre,
  one,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const pipe = { insideDiameter: millimetre.of(90), pipeResistance: kelvinMetrePerWatt.of(2.94) };
const still = { ...pipe, waterTemperature: celsius.at(4), surroundings: celsius.at(-15) };
const length = metre.of(300).as("pipe length");
const run = { length, pipeResistance: kelvinMetrePerWatt.of(0.34) };

describe("resistances", () => {
  it("add up layer by layer", () => {
    fc.assert(
      fc.property(fc.double({ min: 111, max: 209, noNaN: true }), (between) => {
        const layer = (from: number, to: number): number =>
          insulationResistance({
            innerDiameter: millimetre.of(from),
            outerDiameter: millimetre.of(to),
            conductivity: wattPerMetreKelvin.of(0.035),
          })["~si"];
        expect(layer(110, between) + layer(between, 210)).toBeCloseTo(layer(110, 210), 12);
      }),
    );
  });

  it("grow with depth, and tend to ln(4·z/D)/(2·π·k) deep down", () => {
    const at = (depth: number): number =>
      groundResistance({
        depthOfAxis: metre.of(depth),
        outsideDiameter: millimetre.of(110),
        conductivity: wattPerMetreKelvin.of(2),
      })["~si"];
    for (const depth of [0.06, 0.3, 1, 3]) expect(at(depth * 1.1)).toBeGreaterThan(at(depth));
    expect(at(3) / (Math.log(12 / 0.11) / (4 * Math.PI))).toBeCloseTo(1, 4);
    expect(at(0.055)).toBe(0);
  });

  it("take a conductivity in inches, feet and hours", () => {
    expect(btuInchPerHourSquareFootDegree.of(1).in(wattPerMetreKelvin)).toBeCloseTo(0.144228, 6);
    const at = (conductivity: ReturnType<typeof wattPerMetreKelvin.of>): number =>
      insulationResistance({
        innerDiameter: inch.of(2.375),
        outerDiameter: inch.of(5.375),
        conductivity,
      })["~si"];
    expect(
      at(btuInchPerHourSquareFootDegree.of(0.3)) / at(wattPerMetreKelvin.of(0.0432683667)),
    ).toBeCloseTo(1, 7);
  });

  it("say that a layer or a depth is none", () => {
    expect(() =>
      insulationResistance({
        innerDiameter: millimetre.of(110),
        outerDiameter: millimetre.of(100),
        conductivity: wattPerMetreKelvin.of(0.035),
      }),
    ).toThrow("insulation-resistance: outerDiameter/innerDiameter = 0.9091 is below 1");
    expect(() =>
      groundResistance({
        depthOfAxis: millimetre.of(40),
        outsideDiameter: millimetre.of(110),
        conductivity: wattPerMetreKelvin.of(2),
      }),
    ).toThrow("ground-resistance: 2·depthOfAxis/outsideDiameter = 0.7273 is below 1");
    expect(() =>
      surfaceResistance({
        outsideDiameter: millimetre.of(110),
        surfaceCoefficient: wattPerSquareMetreKelvin.of(0),
      }),
    ).toThrow("surface-resistance: surfaceCoefficient = 0 W/(m²·K) is not above zero");
  });
});

describe("water at rest", () => {
  it("lasts longer with insulation, bore and warmth, and shorter in greater cold", () => {
    const at = (more: object): number => coolingTime({ ...still, ...more })["~si"];
    expect(at({ pipeResistance: kelvinMetrePerWatt.of(5.88) }) / at({})).toBeCloseTo(2, 12);
    expect(at({ insideDiameter: millimetre.of(180) }) / at({})).toBeCloseTo(4, 12);
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 15, noNaN: true }),
        fc.double({ min: -40, max: -0.5, noNaN: true }),
        (water, cold) => {
          const here = { waterTemperature: celsius.at(water), surroundings: celsius.at(cold) };
          expect(at({ ...here, waterTemperature: celsius.at(water + 1) })).toBeGreaterThan(
            at(here),
          );
          expect(at({ ...here, surroundings: celsius.at(cold - 1) })).toBeLessThan(at(here));
        },
      ),
    );
    expect(at({ waterTemperature: celsius.at(0) })).toBe(0);
  });

  it("is the same in Fahrenheit", () => {
    const us = coolingTime({
      ...still,
      waterTemperature: fahrenheit.at(39.2),
      surroundings: fahrenheit.at(5),
    });
    expect(us.in(hour) / coolingTime(still).in(hour)).toBeCloseTo(1, 9);
  });

  it("takes far longer to freeze than to cool, in step with the share of ice", () => {
    const at = (iceShare: number): number =>
      freezingTime({ ...pipe, iceShare: one.of(iceShare), surroundings: celsius.at(-15) })["~si"];
    expect(at(1)).toBeGreaterThan(10 * coolingTime(still)["~si"]);
    expect(at(1) / at(0.1)).toBeCloseTo(10, 12);
    expect(at(0)).toBe(0);
  });

  it("does not freeze where it is not cold", () => {
    expect(() => coolingTime({ ...still, surroundings: celsius.at(3) })).toThrow(
      "cooling-time: surroundings over endTemperature, from absolute zero = 1.011 is above 1",
    );
    expect(() => coolingTime({ ...still, waterTemperature: celsius.at(-3) })).toThrow(
      "cooling-time: waterTemperature over endTemperature, from absolute zero = 0.989 is below 1",
    );
    expect(() =>
      freezingTime({ ...pipe, iceShare: one.of(0.1), surroundings: celsius.at(3) }),
    ).toThrow(
      "freezing-time: surroundings over freezingPoint, from absolute zero = 1.011 is above 1",
    );
    expect(() => coolingTime({ ...still, surroundings: celsius.at(0) })).toThrow(
      "cooling-time: t is not a number for these inputs",
    );
  });
});

describe("water that flows", () => {
  it("arrives at the end temperature at the least flow: the one is the inverse of the other", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        fc.double({ min: -40, max: -1, noNaN: true }),
        fc.double({ min: 0.02, max: 5, noNaN: true }),
        (above, cold, resistance) => {
          const here = {
            length,
            pipeResistance: kelvinMetrePerWatt.of(resistance),
            waterTemperature: celsius.at(0.5 + above),
            surroundings: celsius.at(cold),
          };
          const flow = leastFlowAgainstFreezing({ ...here, endTemperature: celsius.at(0.5) });
          expect(coolingAlongPipe({ ...here, flow }).in(kelvin)).toBeCloseTo(above, 8);
        },
      ),
    );
  });

  it("cools less the faster it flows, and to the surroundings where it hardly does", () => {
    const at = (litres: number): number =>
      coolingAlongPipe({
        ...run,
        flow: litrePerSecond.of(litres),
        waterTemperature: celsius.at(2),
        surroundings: celsius.at(-15),
      }).in(kelvin);
    expect(at(12)).toBeLessThan(at(6));
    expect(at(1e-6)).toBeCloseTo(17, 9);
    expect(at(1e6)).toBeCloseTo(0, 5);
  });

  it("says that nothing helps where the end is to be colder than the surroundings", () => {
    expect(() =>
      leastFlowAgainstFreezing({
        ...run,
        waterTemperature: celsius.at(2),
        surroundings: celsius.at(1),
        endTemperature: celsius.at(0.5),
      }),
    ).toThrow(
      "least-flow-against-freezing: surroundings over endTemperature, from absolute zero = 1.002 is above 1",
    );
  });
});
