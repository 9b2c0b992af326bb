import {
  grainVelocity,
  scourVelocity,
  settlingBasin,
  settlingVelocityLimit,
  stokesVelocity,
  trappedGrainSize,
} from "@leat/intake";
import {
  coherentUnit,
  inch,
  kilogramPerCubicMetre,
  litrePerSecond,
  metre,
  metrePerSecond,
  millimetre,
  millipascalSecond,
  one,
  pascalSecond,
  squareMillimetrePerSecond,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = coherentUnit("coefficient");
const kinematicViscosity = squareMillimetrePerSecond.of(1);
const size = fc.double({ min: 0.002, max: 50, noNaN: true });

describe("grainVelocity", () => {
  it("rises with the grain, its weight and the warmth of the water", () => {
    fc.assert(
      fc.property(size, (mm) => {
        const at = (more: object): number =>
          grainVelocity({ grainSize: millimetre.of(mm), kinematicViscosity, ...more })["~si"];
        expect(at({ grainSize: millimetre.of(mm * 1.05) })).toBeGreaterThan(at({}));
        expect(at({ excessDensity: one.of(1.8) })).toBeGreaterThan(at({}));
        expect(at({ kinematicViscosity: squareMillimetrePerSecond.of(1.8) })).toBeLessThan(at({}));
        expect(at({ dragCoefficient: coefficient.of(1.2) })).toBeLessThan(at({}));
      }),
    );
  });

  it("lies below both laws that it joins, and tends to each", () => {
    fc.assert(
      fc.property(size, (mm) => {
        const d = mm / 1000;
        const w = grainVelocity({ grainSize: millimetre.of(mm), kinematicViscosity })["~si"];
        expect(w).toBeLessThan((1.65 * 9.80665 * d * d) / 18e-6);
        expect(w).toBeLessThan(Math.sqrt((4 * 1.65 * 9.80665 * d) / 3));
      }),
    );
    const stokes = stokesVelocity({
      grainSize: millimetre.of(0.001),
      grainDensity: kilogramPerCubicMetre.of(2650),
      density: kilogramPerCubicMetre.of(1000),
      viscosity: millipascalSecond.of(1),
    });
    const same = grainVelocity({ grainSize: millimetre.of(0.001), kinematicViscosity });
    expect(same["~si"] / stokes["~si"]).toBeCloseTo(1, 3);
  });

  it("is the same in inches, and cold water holds sand up as it is said to", () => {
    const at = (grainSize: ReturnType<typeof inch.of>, nu: number): number =>
      grainVelocity({ grainSize, kinematicViscosity: squareMillimetrePerSecond.of(nu) })["~si"];
    expect(at(inch.of(0.2 / 25.4), 1) / at(millimetre.of(0.2), 1)).toBeCloseTo(1, 12);
    expect(at(millimetre.of(0.2), 1.787) / at(millimetre.of(0.2), 1.004)).toBeCloseTo(2 / 3, 2);
  });
});

describe("stokesVelocity", () => {
  const silt = {
    grainSize: millimetre.of(0.07),
    grainDensity: kilogramPerCubicMetre.of(2600),
    density: kilogramPerCubicMetre.of(1000),
    viscosity: millipascalSecond.of(1),
  };

  it("says that a grain is too large, or does not sink", () => {
    expect(() => stokesVelocity({ ...silt, grainSize: millimetre.of(0.2) })).toThrow(
      "stokes-velocity: Reynolds number of the grain = 6.974 is above 1",
    );
    expect(() => stokesVelocity({ ...silt, grainDensity: kilogramPerCubicMetre.of(900) })).toThrow(
      "stokes-velocity: grainDensity/density = 0.9 is below 1",
    );
    expect(() => stokesVelocity({ ...silt, viscosity: pascalSecond.of(0) })).toThrow(
      "stokes-velocity: viscosity = 0 Pa·s is not above zero",
    );
  });

  it("goes with the square of the grain", () => {
    const half = stokesVelocity({ ...silt, grainSize: millimetre.of(0.035) });
    expect(stokesVelocity(silt)["~si"] / half["~si"]).toBeCloseTo(4, 12);
  });
});

describe("basins", () => {
  it("trap the grain that they are made for: the one is the inverse of the other", () => {
    fc.assert(
      fc.property(
        size,
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        (mm, k, litres) => {
          const sinkingVelocity = grainVelocity({
            grainSize: millimetre.of(mm),
            kinematicViscosity,
          });
          const basin = {
            flow: litrePerSecond.of(litres),
            basinWidth: metre.of(0.8),
            turbulenceFactor: one.of(k),
          };
          const { basinLength } = settlingBasin({ ...basin, sinkingVelocity, depth: metre.of(1) });
          const { grainSize, convergence } = trappedGrainSize({
            ...basin,
            basinLength,
            kinematicViscosity,
          });
          expect(grainSize.in(millimetre) / mm).toBeCloseTo(1, 9);
          expect(convergence.iterations).toBeLessThan(60);
        },
      ),
    );
  });

  it("need area whatever their depth, and twice as much with the guidelines' factor", () => {
    const basin = {
      flow: litrePerSecond.of(20),
      sinkingVelocity: metrePerSecond.of(0.02),
      basinWidth: metre.of(0.5),
      depth: metre.of(0.4),
    };
    const still = settlingBasin({ ...basin, turbulenceFactor: one.of(1) });
    expect(settlingBasin(basin).basinArea["~si"] / still.basinArea["~si"]).toBe(2);
    const deep = settlingBasin({ ...basin, depth: metre.of(0.8) });
    expect(deep.basinArea).toEqual(settlingBasin(basin).basinArea);
    expect(deep.meanVelocity["~si"]).toBeLessThan(settlingBasin(basin).meanVelocity["~si"]);
  });

  it("refuse no flow and no width", () => {
    const basin = {
      flow: litrePerSecond.of(20),
      basinLength: metre.of(2),
      basinWidth: metre.of(0),
      turbulenceFactor: one.of(2),
      kinematicViscosity,
    };
    expect(() => trappedGrainSize(basin)).toThrow(
      "trapped-grain-size: basinWidth = 0 m is not above zero",
    );
  });
});

describe("velocities in a basin", () => {
  it("agree by two ways for sand, within a tenth", () => {
    for (const mm of [0.1, 0.3, 1]) {
      const grainSize = millimetre.of(mm);
      const guide = settlingVelocityLimit({ grainSize })["~si"];
      const camp = scourVelocity({ grainSize, scourFactor: coefficient.of(0.04) })["~si"];
      expect(Math.abs(camp / guide - 1)).toBeLessThan(0.1);
    }
  });

  it("flush only above what settles", () => {
    fc.assert(
      fc.property(size, (mm) => {
        const at = (scourFactor: number): number =>
          scourVelocity({
            grainSize: millimetre.of(mm),
            scourFactor: coefficient.of(scourFactor),
          })["~si"];
        expect(at(0.06) / at(0.04)).toBeCloseTo(Math.sqrt(1.5), 9);
      }),
    );
  });

  it("say where the guide's figure ends", () => {
    expect(() => settlingVelocityLimit({ grainSize: millimetre.of(5) })).toThrow(
      "settling-velocity-limit: grainSize = 5 mm is above 1 mm, the range Practical Action gives",
    );
  });
});
