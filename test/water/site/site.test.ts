import { OutOfValidityError } from "@leat/formula";
import {
  degree,
  foot,
  kelvin,
  kilogramPerCubicMetre,
  kilometre,
  metre,
  metrePerSecondSquared,
  pascal,
  QuantityError,
} from "@leat/quantity";
import { geopotentialHeight, normalGravity, standardAtmosphere } from "@leat/water";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const heights = fc.double({ min: -1900, max: 10900, noNaN: true });
const air = (h: number) => standardAtmosphere({ geopotentialHeight: metre.of(h) });

describe("standardAtmosphere", () => {
  it("rests on itself: its pressure falls by the weight of the air between", () => {
    fc.assert(
      fc.property(heights, (h) => {
        const fall = (air(h - 1).pressure.in(pascal) - air(h + 1).pressure.in(pascal)) / 2;
        expect(fall / (air(h).density.in(kilogramPerCubicMetre) * 9.80665)).toBeCloseTo(1, 6);
        expect(air(h).temperature.in(kelvin)).toBeCloseTo(288.15 - 0.0065 * h, 9);
      }),
    );
  });

  it("is told apart from geometric height: 13 Pa at 3,000 m", () => {
    const geometric = standardAtmosphere({
      geopotentialHeight: geopotentialHeight({ elevation: metre.of(3000) }),
    });
    const difference = geometric.pressure.in(pascal) - air(3000).pressure.in(pascal);
    expect(Math.round(difference)).toBe(13);
  });

  it("is the same in feet, and ends where its layer does", () => {
    expect(
      standardAtmosphere({ geopotentialHeight: foot.of(1000 / 0.3048) }).pressure.in(pascal),
    ).toBeCloseTo(air(1000).pressure.in(pascal), 8);
    expect(() => air(11001)).toThrow(OutOfValidityError);
    expect(() => air(11001)).toThrow(
      "standard-atmosphere: geopotentialHeight = 11001 m is above 11 km (11000 m), the range ISO 2533 gives",
    );
    expect(() => air(-2001)).toThrow(
      "standard-atmosphere: geopotentialHeight = -2001 m is below -2 km (-2000 m), the range ISO 2533 gives",
    );
    expect(() => standardAtmosphere({ geopotentialHeight: pascal.of(1) as never })).toThrow(
      QuantityError,
    );
  });
});

describe("geopotentialHeight", () => {
  it("is below the elevation everywhere but at sea level, and rises with it", () => {
    const H = (z: number): number => geopotentialHeight({ elevation: metre.of(z) }).in(metre);
    expect(H(0)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 1, max: 79000, noNaN: true }), (z) => {
        expect(H(z)).toBeLessThan(z);
        expect(H(z + 1)).toBeGreaterThan(H(z));
      }),
    );
    expect(() => H(80001)).toThrow(
      "geopotential-height: elevation = 80001 m is above 80 km (80000 m), the range ISO 2533 gives",
    );
    expect(() => geopotentialHeight({ elevation: kilometre.of(-3) })).toThrow(
      "elevation = -3 km is below -2 km, the range ISO 2533 gives",
    );
  });
});

describe("normalGravity", () => {
  const g = (φ: number, h: number): number =>
    normalGravity({ latitude: degree.of(φ), elevation: metre.of(h) }).in(metrePerSecondSquared);

  it("grows towards the poles, alike north and south, and shrinks with height", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 89, noNaN: true }),
        fc.double({ min: -400, max: 8900, noNaN: true }),
        (φ, h) => {
          expect(g(φ + 1, h)).toBeGreaterThan(g(φ, h));
          expect(g(-φ, h)).toBe(g(φ, h));
          expect(g(φ, h + 10)).toBeLessThan(g(φ, h));
        },
      ),
    );
  });

  it("falls by the free-air gradient, 3.086 µm/s² a metre", () => {
    // At sea level: over 100 m it is already less by a seventh of half the last digit.
    expect(Math.abs((g(45, -10) - g(45, 10)) / 20 - 3.086e-6)).toBeLessThan(0.5e-9);
  });

  it("agrees with the two-term formula of 1980 to 2.5 µm/s²", () => {
    fc.assert(
      fc.property(fc.double({ min: -90, max: 90, noNaN: true }), (φ) => {
        const s = Math.sin((φ * Math.PI) / 180);
        const s2 = Math.sin((2 * φ * Math.PI) / 180);
        expect(
          Math.abs(g(φ, 0) - 9.780327 * (1 + 0.0053024 * s * s - 0.0000058 * s2 * s2)),
        ).toBeLessThan(2.5e-6);
      }),
    );
  });

  it("ends at the poles and above the land", () => {
    expect(() => g(91, 0)).toThrow(
      "normal-gravity: latitude = 91° is above 90° (1.571 rad), the range NIMA gives",
    );
    expect(() => g(-91, 0)).toThrow(
      "normal-gravity: latitude = -91° is below -90° (-1.571 rad), the range NIMA gives",
    );
    expect(() => g(0, 9001)).toThrow(
      "normal-gravity: elevation = 9001 m is above 9000 m, the range common practice gives",
    );
    expect(() => g(0, -501)).toThrow(
      "normal-gravity: elevation = -501 m is below -500 m, the range common practice gives",
    );
    expect(() => normalGravity({ latitude: metre.of(1) as never, elevation: metre.of(0) })).toThrow(
      QuantityError,
    );
  });
});
