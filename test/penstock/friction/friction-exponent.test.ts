import { frictionExponentOf, frictionFactorOf } from "@leat/penstock";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

/** 2 + d ln f/d ln Re by a difference. */
function byDifference(reynolds: number, relative: number): number {
  const step = 1e-5;
  const [low, high] = [reynolds * (1 - step), reynolds * (1 + step)];
  return (
    2 +
    Math.log(frictionFactorOf(high, relative) / frictionFactorOf(low, relative)) /
      Math.log(high / low)
  );
}

describe("frictionExponentOf", () => {
  it("is the slope of the loss over the flow, in every regime", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (log, relative) => {
          const reynolds = 10 ** log;
          fc.pre(Math.abs(reynolds - 2000) > 1 && Math.abs(reynolds - 4000) > 1);
          expect(frictionExponentOf(reynolds, relative)).toBeCloseTo(
            byDifference(reynolds, relative),
            6,
          );
        },
      ),
    );
  });

  it("is 1 in laminar flow, 2 on a rough wall, 1.8 or so in smooth plastic", () => {
    expect(frictionExponentOf(500, 0.01)).toBe(1);
    expect(frictionExponentOf(1e9, 0.05)).toBeCloseTo(2, 5);
    expect(frictionExponentOf(1.5e5, 3e-5)).toBeGreaterThan(1.78);
    expect(frictionExponentOf(1.5e5, 3e-5)).toBeLessThan(1.84);
  });
});
