import {
  belowSurfaceVelocity,
  sixTenthsVelocity,
  threePointVelocity,
  twoPointVelocity,
} from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import { foot, footPerSecond, metre, metrePerSecond, one, QuantityError } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const velocities = fc.double({ min: -1, max: 4, noNaN: true });
const v = (value: number) => metrePerSecond.of(value);
const depth = metre.of(0.6);

describe("mean velocity of a vertical", () => {
  it("is the one velocity of a profile that has but one, by every method", () => {
    fc.assert(
      fc.property(velocities, (u) => {
        const points = { atTwoTenths: v(u), atSixTenths: v(u), atEightTenths: v(u), depth };
        const { atSixTenths, ...two } = points;
        expect(sixTenthsVelocity({ atSixTenths, depth }).in(metrePerSecond)).toBe(u);
        expect(twoPointVelocity(two).in(metrePerSecond)).toBe(u);
        expect(threePointVelocity(points).in(metrePerSecond)).toBeCloseTo(u, 14);
      }),
    );
  });

  it("of three points is half way between that of one and that of two", () => {
    fc.assert(
      fc.property(velocities, velocities, velocities, (a, b, c) => {
        const two = twoPointVelocity({ atTwoTenths: v(a), atEightTenths: v(c), depth });
        const three = threePointVelocity({
          atTwoTenths: v(a),
          atSixTenths: v(b),
          atEightTenths: v(c),
          depth,
        });
        expect(three.in(metrePerSecond)).toBeCloseTo((two.in(metrePerSecond) + b) / 2, 14);
      }),
    );
  });

  it("is that of a logarithmic profile within 3 %, by every method", () => {
    // Integrated over the depth, a profile u = 1 + ln(y/d) · s has the mean 1 − s.
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.25, noNaN: true }), (s) => {
        const at = (below: number) => v(1 + s * Math.log(1 - below));
        const mean = 1 - s;
        const near = (got: number) => expect(Math.abs(got / mean - 1)).toBeLessThan(0.03);
        const [atTwoTenths, atSixTenths, atEightTenths] = [at(0.2), at(0.6), at(0.8)];
        near(sixTenthsVelocity({ atSixTenths, depth }).in(metrePerSecond));
        near(twoPointVelocity({ atTwoTenths, atEightTenths, depth }).in(metrePerSecond));
        near(
          threePointVelocity({ atTwoTenths, atSixTenths, atEightTenths, depth }).in(metrePerSecond),
        );
      }),
    );
  });

  it("asks for the depth that its method is for", () => {
    expect(() => sixTenthsVelocity({ atSixTenths: v(1), depth: foot.of(0.2) })).toThrow(
      "six-tenths-velocity: depth = 0.2 ft is below 0.3 ft, the range USGS gives",
    );
    expect(() => sixTenthsVelocity({ atSixTenths: v(1), depth: foot.of(3) })).toThrow(
      "six-tenths-velocity: depth = 3 ft is above 2.5 ft, the range USGS gives",
    );
    const shallow = { atTwoTenths: v(1), atEightTenths: v(1), depth: foot.of(1) };
    expect(() => twoPointVelocity(shallow)).toThrow(
      "two-point-velocity: depth = 1 ft is below 1.5 ft, the range USGS gives",
    );
    expect(() => threePointVelocity({ ...shallow, atSixTenths: v(1) })).toThrow(
      "three-point-velocity: depth = 1 ft is below 1.5 ft, the range USGS gives",
    );
  });

  it("below a surface takes a coefficient of ordinary beds, and is told of another", () => {
    const atSurface = footPerSecond.of(2);
    expect(belowSurfaceVelocity({ atSurface }).in(footPerSecond)).toBeCloseTo(1.7, 12);
    const withCoefficient = (k: number) => ({
      atSurface,
      surfaceCoefficient: one.of(k).as("coefficient"),
    });
    expect(() => belowSurfaceVelocity(withCoefficient(0.7))).toThrow(
      "below-surface-velocity: surfaceCoefficient = 0.7 is below 0.84, the range ISO 748 gives",
    );
    expect(() => belowSurfaceVelocity(withCoefficient(0.95))).toThrow("is above 0.9, the range");
    expect(() => belowSurfaceVelocity(withCoefficient(1.1))).toThrow(NonPhysicalError);
  });

  it("is of velocities alone", () => {
    expect(() => sixTenthsVelocity({ atSixTenths: metre.of(1) as never, depth })).toThrow(
      QuantityError,
    );
  });
});
