import { OutOfValidityError } from "@leat/formula";
import { pipeDensity, pipeMassPerLength } from "@leat/pipe-sizes";
import { inch, kilogramPerCubicMetre, kilogramPerMetre, millimetre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const mass = (outside: number, wall: number, density = 950): number =>
  pipeMassPerLength({
    outsideDiameter: millimetre.of(outside),
    wall: millimetre.of(wall),
    density: kilogramPerCubicMetre.of(density),
  }).in(kilogramPerMetre);

describe("pipeMassPerLength", () => {
  it("is that of a rod less that of its bore", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 1000, noNaN: true }),
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        (outside, share) => {
          const bore = outside * (1 - 2 * share);
          const rod = (d: number): number => (Math.PI / 4) * d * d * 950e-6;
          expect(mass(outside, share * outside) / (rod(outside) - rod(bore))).toBeCloseTo(1, 6);
        },
      ),
    );
    expect(mass(100, 0)).toBe(0);
  });

  it("is the same from inches, and doubles with the density", () => {
    expect(
      pipeMassPerLength({
        outsideDiameter: inch.of(100 / 25.4),
        wall: inch.of(5 / 25.4),
        density: kilogramPerCubicMetre.of(950),
      }).in(kilogramPerMetre) / mass(100, 5),
    ).toBeCloseTo(1, 12);
    expect(mass(100, 5, 1900) / mass(100, 5)).toBeCloseTo(2, 12);
  });

  it("refuses a wall that leaves no bore", () => {
    expect(() => mass(100, 51)).toThrow(OutOfValidityError);
    expect(() => mass(100, 51)).toThrow(
      "pipe-mass-per-length: wall/outsideDiameter = 0.51 is above 0.5",
    );
  });
});

describe("pipeDensity", () => {
  it("keeps its ranges in order", () => {
    for (const { material, low, typical, high } of pipeDensity.definition.rows)
      expect(low <= typical && typical <= high, material).toBe(true);
  });
});
