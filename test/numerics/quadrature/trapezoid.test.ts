import { trapezoid } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

const error = (n: number): number => {
  const xs = Array.from({ length: n + 1 }, (_, i) => i / n);
  return trapezoid(xs, xs.map(Math.exp)) - (Math.E - 1);
};

describe("trapezoid", () => {
  it("is the area of trapezia", () => {
    expect(trapezoid([0, 1, 3], [0, 2, 2])).toBe(5);
    expect(trapezoid([-1, 0, 2], [1, -1, 4])).toBe(3);
  });

  it("is exact for lines, however they are sampled", () => {
    const steps = fc.array(fc.double({ min: 1e-3, max: 10, noNaN: true }), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(steps, (dx) => {
        const xs = [0];
        for (const step of dx) xs.push(xs.at(-1)! + step);
        const end = xs.at(-1)!;
        const area = trapezoid(
          xs,
          xs.map((x) => 3 * x + 2),
        );
        expect(Math.abs(area / (1.5 * end * end + 2 * end) - 1)).toBeLessThan(1e-13);
      }),
    );
  });

  it("errs by a quarter when the spacing is halved", () => {
    expect(error(50) / error(100)).toBeCloseTo(4, 3);
  });

  it("refuses what it cannot add up", () => {
    expect(refusalOf(() => trapezoid([0, 0], [1, 1])).message).toBe(
      "trapezoid: xs[1] = 0 does not exceed xs[0] = 0. Sort the samples and merge equal abscissae.",
    );
    expect(refusalOf(() => trapezoid([0, 1], [1])).code).toBe("bad-argument");
    expect(refusalOf(() => trapezoid([0, 1, 2], [1, NaN, 1])).code).toBe("non-finite");
    expect(refusalOf(() => trapezoid([0, 1e300], [1e300, 1e300])).message).toBe(
      "trapezoid: an area = Infinity is not finite. Pass a finite number.",
    );
  });
});
