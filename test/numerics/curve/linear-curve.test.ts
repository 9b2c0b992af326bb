import { linearCurve } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

describe("linearCurve", () => {
  const curve = linearCurve([0, 1, 3], [0, 10, 50]);

  it("lies on the lines between the samples", () => {
    expect([0, 0.25, 1, 1.5, 2.9, 3].map((x) => curve.at(x))).toEqual([0, 2.5, 10, 20, 48, 50]);
    expect(curve.domain).toEqual([0, 3]);
    expect(curve.range).toEqual([0, 50]);
    expect(curve.trend).toBe("rising");
  });

  it("has the slope to the right at a corner, to the left at the end", () => {
    expect([0, 1, 2, 3].map((x) => curve.derivative(x))).toEqual([10, 20, 20, 20]);
  });

  it("inverts rising and falling samples", () => {
    expect(curve.inverse(30)).toBe(2);
    const falling = linearCurve([0, 1, 3], [5, 4, -6]);
    expect(falling.trend).toBe("falling");
    expect([5, 4.5, 4, -1, -6].map((y) => falling.inverse(y))).toEqual([0, 0.5, 1, 2, 3]);
  });

  it("meets every sample exactly, and stays between neighbours", () => {
    const points = fc.uniqueArray(
      fc.tuple(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      ),
      { minLength: 2, maxLength: 12, selector: ([x]) => (x === 0 ? 0 : x) },
    );
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (samples, part) => {
        const sorted = samples.toSorted((p, q) => p[0] - q[0]);
        const xs = sorted.map((p) => p[0]);
        const ys = sorted.map((p) => p[1]);
        const line = linearCurve(xs, ys);
        for (let i = 0; i < xs.length; i++) {
          expect(line.at(xs[i]!) === ys[i]).toBe(true);
          if (i === 0) continue;
          const x = Math.min(xs[i]!, xs[i - 1]! + part * (xs[i]! - xs[i - 1]!));
          expect(line.at(x)).toBeGreaterThanOrEqual(Math.min(ys[i - 1]!, ys[i]!));
          expect(line.at(x)).toBeLessThanOrEqual(Math.max(ys[i - 1]!, ys[i]!));
        }
      }),
    );
  });

  it("copies its samples", () => {
    const ys = [0, 1];
    const copied = linearCurve([0, 1], ys);
    ys[1] = 100;
    expect(copied.at(1)).toBe(1);
  });

  it("refuses extrapolation", () => {
    const error = refusalOf(() => curve.at(3.5));
    expect(error.code).toBe("extrapolation");
    expect(error.message).toBe(
      "linearCurve: x = 3.5 is outside the samples, [0, 3]. Add samples that reach it.",
    );
    expect(refusalOf(() => curve.at(-1e-9)).code).toBe("extrapolation");
    expect(refusalOf(() => curve.derivative(4)).code).toBe("extrapolation");
    expect(refusalOf(() => curve.inverse(51)).message).toBe(
      "linearCurve: y = 51 is outside the samples, [0, 50]. Add samples that reach it.",
    );
    expect(refusalOf(() => curve.at(NaN)).message).toBe(
      "linearCurve: x = NaN is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => curve.inverse(NaN)).code).toBe("non-finite");
  });

  it("refuses an inverse where there are two", () => {
    const level = linearCurve([0, 1, 2], [0, 1, 1]);
    expect(level.trend).toBe("neither");
    const error = refusalOf(() => level.inverse(0.5));
    expect(error.code).toBe("not-monotone");
    expect(error.message).toBe(
      "linearCurve: the ordinates neither strictly rise nor strictly fall, so y = 0.5 has no single abscissa. " +
        "Invert a part that does.",
    );
    expect(linearCurve([0, 1, 2], [0, 1, 0]).trend).toBe("neither");
  });

  it("refuses samples that are not a curve", () => {
    const error = refusalOf(() => linearCurve([0, 2, 2], [1, 2, 3]));
    expect(error.code).toBe("not-increasing");
    expect(error.message).toBe(
      "linearCurve: xs[2] = 2 does not exceed xs[1] = 2. Sort the samples and merge equal abscissae.",
    );
    expect(refusalOf(() => linearCurve([0], [1])).message).toBe(
      "linearCurve: 1 abscissae and 1 ordinates. Pass as many of one as of the other, 2 or more.",
    );
    expect(refusalOf(() => linearCurve([0, 1], [1, 2, 3])).code).toBe("bad-argument");
    expect(refusalOf(() => linearCurve([0, NaN], [1, 2])).message).toBe(
      "linearCurve: xs[1] = NaN is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => linearCurve([0, 1], [1, Infinity])).code).toBe("non-finite");
  });
});
