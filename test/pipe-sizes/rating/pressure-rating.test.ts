import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  hoopPressureOf,
  insideHoopPressureOf,
  isoPressureRating,
  pePressureRating,
  peSidrPressureRating,
  pvcIsoPressureRating,
  pvcPressureRating,
  steelPressureRating,
} from "@leat/pipe-sizes";
import { bar, inch, megapascal, one, poundPerSquareInch, unit } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const psi = poundPerSquareInch;

describe("pressure ratings", () => {
  it("balance the ring: pressure on the mean diameter is carried by two walls", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 64, noNaN: true }),
        fc.double({ min: 1, max: 1e8, noNaN: true }),
        (ratio, stress) => {
          const wall = 1 / ratio;
          expect((hoopPressureOf(stress, ratio) * (1 - wall)) / (2 * wall * stress)).toBeCloseTo(
            1,
            12,
          );
        },
      ),
    );
  });

  it("agree among themselves, in psi and in bar", () => {
    const dimensionRatio = one.of(11);
    const pe = pePressureRating({ designStress: psi.of(1000), dimensionRatio });
    expect(pe.in(psi)).toBeCloseTo(200, 9);
    expect(pvcPressureRating({ designStress: psi.of(1000), dimensionRatio }).in(psi)).toBeCloseTo(
      200,
      9,
    );
    expect(
      isoPressureRating({ requiredStrength: megapascal.of(10), dimensionRatio }).in(bar),
    ).toBeCloseTo(16, 9);
    expect(
      pePressureRating({
        designStress: psi.of(1000),
        dimensionRatio,
        temperatureFactor: one.of(0.8),
      }).in(psi),
    ).toBeCloseTo(160, 9);
  });

  it("fall as the ratio rises", () => {
    const at = (ratio: number): number =>
      pvcPressureRating({ designStress: psi.of(2000), dimensionRatio: one.of(ratio) })["~si"];
    expect(at(13.5)).toBeGreaterThan(at(17));
  });

  it("refuse ratios that are not made, factors above 1 and coefficients below the least", () => {
    const designStress = psi.of(1000);
    const requiredStrength = megapascal.of(10);
    expect(() => pePressureRating({ designStress, dimensionRatio: one.of(5) })).toThrow(
      "pe-pressure-rating: dimensionRatio = 5 is below 7, the range AWWA M55 gives",
    );
    expect(() => pePressureRating({ designStress, dimensionRatio: one.of(41) })).toThrow(
      "pe-pressure-rating: dimensionRatio = 41 is above 32.5, the range AWWA M55 gives",
    );
    expect(() =>
      pePressureRating({
        designStress,
        dimensionRatio: one.of(11),
        temperatureFactor: one.of(1.1),
      }),
    ).toThrow("pe-pressure-rating: temperatureFactor = 1.1 is above 1, the range PPI TR-4 gives");
    expect(() => isoPressureRating({ requiredStrength, dimensionRatio: one.of(5) })).toThrow(
      "iso-pressure-rating: dimensionRatio = 5 is below 6, the range ISO 4427 gives",
    );
    expect(() =>
      isoPressureRating({
        requiredStrength,
        dimensionRatio: one.of(11),
        designCoefficient: unit("coefficient", "1", 1).of(1.2),
      }),
    ).toThrow(
      "iso-pressure-rating: designCoefficient = 1.2 is below 1.25, the range ISO 4427 gives",
    );
    expect(() => pvcPressureRating({ designStress, dimensionRatio: one.of(3) })).toThrow(
      "pvc-pressure-rating: dimensionRatio = 3 is below 4, the range ASTM D1785 gives",
    );
    expect(() => pvcPressureRating({ designStress, dimensionRatio: one.of(65) })).toThrow(
      OutOfValidityError,
    );
    expect(() => pvcPressureRating({ designStress, dimensionRatio: one.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() =>
      pvcPressureRating({ designStress: one.of(2000) as never, dimensionRatio: one.of(21) }),
    ).toThrow("designStress = 2000 (ratio) is refused");
  });

  it("are the same by the outside and by the inside: DR is SIDR and two walls more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5.3, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 1e8, noNaN: true }),
        (inside, stress) => {
          expect(
            insideHoopPressureOf(stress, inside) / hoopPressureOf(stress, inside + 2),
          ).toBeCloseTo(1, 12);
        },
      ),
    );
    const designStress = psi.of(1000);
    const pe = peSidrPressureRating({ designStress, insideDimensionRatio: one.of(9) });
    expect(pe.in(psi)).toBeCloseTo(
      pePressureRating({ designStress, dimensionRatio: one.of(11) }).in(psi),
      9,
    );
    expect(() => peSidrPressureRating({ designStress, insideDimensionRatio: one.of(24) })).toThrow(
      "pe-sidr-pressure-rating: insideDimensionRatio = 24 is above 19, the range ASTM D2239 gives",
    );
    expect(() => peSidrPressureRating({ designStress, insideDimensionRatio: one.of(5) })).toThrow(
      "is below 5.3",
    );
    expect(() =>
      peSidrPressureRating({
        designStress,
        insideDimensionRatio: one.of(9),
        temperatureFactor: one.of(1.1),
      }),
    ).toThrow("pe-sidr-pressure-rating: temperatureFactor = 1.1 is above 1");
  });

  it("are of metric PVC a quarter higher above 90 mm", () => {
    const dimensionRatio = one.of(21);
    const small = pvcIsoPressureRating({ dimensionRatio });
    const wide = pvcIsoPressureRating({
      dimensionRatio,
      designCoefficient: unit("coefficient", "1", 1).of(2),
    });
    expect(small.in(bar)).toBeCloseTo(10, 9);
    expect(wide.in(bar) / small.in(bar)).toBeCloseTo(1.25, 12);
    expect(() =>
      pvcIsoPressureRating({
        dimensionRatio,
        designCoefficient: unit("coefficient", "1", 1).of(1.6),
      }),
    ).toThrow(
      "pvc-iso-pressure-rating: designCoefficient = 1.6 is below 2, the range ISO 1452-2 gives",
    );
    expect(() => pvcIsoPressureRating({ dimensionRatio: one.of(51) })).toThrow(
      "pvc-iso-pressure-rating: dimensionRatio = 51 is above 41, the range ISO 1452-2 gives",
    );
  });

  it("are of steel in proportion to what is left of the wall, and refuse what would flatter it", () => {
    const pipe = {
      outsideDiameter: inch.of(3.5),
      wall: inch.of(0.216),
      yieldStrength: psi.of(30_000),
    };
    const whole = steelPressureRating(pipe).in(psi);
    const rusty = steelPressureRating({ ...pipe, corrosionAllowance: inch.of(0.0945) }).in(psi);
    // Half of the least wall of 0.189 in is gone.
    expect(rusty / whole).toBeCloseTo(0.5, 12);
    expect(() => steelPressureRating({ ...pipe, designFactor: one.of(0.8) })).toThrow(
      "steel-pressure-rating: designFactor = 0.8 is above 0.75, the range AWWA M11 gives",
    );
    expect(() => steelPressureRating({ ...pipe, jointFactor: one.of(1.1) })).toThrow(
      "steel-pressure-rating: jointFactor = 1.1 is above 1",
    );
    expect(() => steelPressureRating({ ...pipe, wallShare: one.of(1.1) })).toThrow(
      "steel-pressure-rating: wallShare = 1.1 is above 1",
    );
    expect(() => steelPressureRating({ ...pipe, corrosionAllowance: inch.of(0.15) })).toThrow(
      "steel-pressure-rating: corrosionAllowance/wall = 0.6944 is above 0.5",
    );
    expect(() => steelPressureRating({ ...pipe, wall: inch.of(-0.1) })).toThrow(NonPhysicalError);
  });
});
