import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  hoopPressureOf,
  isoPressureRating,
  pePressureRating,
  pvcPressureRating,
} from "@leat/pipe-sizes";
import { bar, megapascal, one, poundPerSquareInch, unit } from "@leat/quantity";
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
});
