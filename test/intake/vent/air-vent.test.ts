import { airVent } from "@leat/intake";
import {
  celsius,
  kilopascal,
  litrePerSecond,
  metre,
  millimetre,
  one,
  pascal,
  point,
  poundPerSquareInch,
  squareMillimetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const vent = {
  flow: litrePerSecond.of(15),
  collapsePressure: kilopascal.of(30),
  safetyFactor: one.of(4),
};

describe("airVent", () => {
  it("is larger for more water, for a weaker pipe and for a greater factor", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        (litres, kPa, factor) => {
          const at = (l: number, p: number, f: number): number =>
            airVent({
              flow: litrePerSecond.of(l),
              collapsePressure: kilopascal.of(p),
              safetyFactor: one.of(f),
            }).area["~si"];
          const here = at(litres, kPa, factor);
          expect(at(litres * 2, kPa, factor) / here).toBeCloseTo(2, 9);
          expect(at(litres, kPa * 1.2, factor)).toBeLessThanOrEqual(here);
          expect(at(litres, kPa, factor * 1.2)).toBeGreaterThanOrEqual(here);
        },
      ),
    );
  });

  it("reckons with no more than 5 psi, whatever the pipe bears", () => {
    const strong = airVent({ ...vent, collapsePressure: kilopascal.of(1000) });
    expect(strong.pressureDrop.in(poundPerSquareInch)).toBeCloseTo(5, 12);
    const stronger = airVent({ ...vent, collapsePressure: kilopascal.of(2000) });
    expect(stronger.area["~si"]).toBe(strong.area["~si"]);
    expect(airVent(vent).pressureDrop.in(kilopascal)).toBeCloseTo(7.5, 12);
  });

  it("tends to Bernoulli's law without expansion as the drop tends to nothing", () => {
    const { airVelocity } = airVent({ ...vent, collapsePressure: pascal.of(4) });
    const density = 101_325 / (287.053 * 288.15);
    expect(airVelocity["~si"] / (0.6 * Math.sqrt(2 / density))).toBeCloseTo(1, 4);
  });

  it("is smaller where the air is thin, and the same in US units", () => {
    const high = airVent({
      ...vent,
      airPressure: point("vacuum", kilopascal.of(70)),
      airTemperature: celsius.at(-10),
    });
    expect(high.area["~si"]).toBeLessThan(airVent(vent).area["~si"]);
    const us = airVent({ ...vent, collapsePressure: poundPerSquareInch.of(4.351132132) });
    expect(us.area.in(squareMillimetre) / airVent(vent).area.in(squareMillimetre)).toBeCloseTo(
      1,
      8,
    );
    const { area, diameter } = airVent(vent);
    expect((Math.PI * diameter.in(millimetre) ** 2) / 4).toBeCloseTo(area.in(squareMillimetre), 9);
  });

  it("says that the factor is none, and that the air would go at the speed of sound", () => {
    expect(() => airVent({ ...vent, safetyFactor: one.of(0.5) })).toThrow(
      "air-vent: safetyFactor = 0.5 is below 1",
    );
    expect(() =>
      airVent({
        ...vent,
        collapsePressure: kilopascal.of(500),
        airPressure: point("vacuum", kilopascal.of(60)),
      }),
    ).toThrow(
      "air-vent: pressure inside over that outside = 0.4254 is below 0.53, the range AWWA M51 gives",
    );
    expect(() => airVent({ ...vent, collapsePressure: metre.of(1) as never })).toThrow(
      "collapsePressure = 1 m (length) is refused",
    );
  });
});
