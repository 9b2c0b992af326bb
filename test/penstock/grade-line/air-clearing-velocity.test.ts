import { airClearingVelocity } from "@leat/penstock";
import { degree, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const at = (bore: number, slope: number): number =>
  airClearingVelocity({ insideDiameter: metre.of(bore), downSlope: degree.of(slope) })["~si"];

describe("airClearingVelocity", () => {
  it("grows with the slope, and with the root of the bore", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 80, noNaN: true }),
        (bore, slope) => {
          expect(at(bore, slope + 5)).toBeGreaterThan(at(bore, slope));
          expect(at(4 * bore, slope) / at(bore, slope)).toBeCloseTo(2, 10);
        },
      ),
    );
  });

  it("refuses a slope that goes up, and one that is steeper than plumb", () => {
    expect(() => at(0.1, -1)).toThrow("downSlope = -1° is below zero");
    expect(() => at(0.1, 91)).toThrow("downSlope = 91° is above 90°");
  });
});
