import { monotoneCurve } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

// Expected values: scipy 1.17.1, interpolate.PchipInterpolator.
const xs = [0, 1, 2.5, 3, 4.7, 6, 7, 9];
const ys = [0, 0.2, 0.2, 3, 2.1, 5, 5.5, 20];
const scipy: [number, number, number][] = [
  // x, value, derivative
  [0.3, 0.08435999999999999, 0.2716],
  [1.7, 0.2, 0],
  [2.9, 2.7087999999999988, 5.376000000000001],
  [3.6, 2.7428048035823327, -0.725422348870344],
  [4, 2.432118868308569, -0.7693873397109707],
  [4.71, 2.1004514699587635, 0.09007703646157238],
  [5.5, 3.8924817838606436, 3.092690596072334],
  [6.5, 5.242756608006731, 0.3380161957512445],
  [8.2, 11.675764705882347, 8.757058823529409],
  [8.99, 19.88263062132353, 11.723828308823528],
  [0, 0, 0.28],
  [3, 3, 0],
  [9, 20, 11.749999999999998],
];

/** Samples with a strictly rising or falling ordinate. */
const strictlyMonotone = fc
  .record({
    dx: fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 1, maxLength: 10 }),
    dy: fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 10, maxLength: 10 }),
    sign: fc.constantFrom(1, -1),
  })
  .map(({ dx, dy, sign }) => {
    const x = [0];
    const y = [0];
    dx.forEach((step, i) => {
      x.push(x[i]! + step);
      y.push(y[i]! + sign * dy[i]!);
    });
    return { x, y, sign };
  });

describe("monotoneCurve", () => {
  const curve = monotoneCurve(xs, ys);

  it.each(scipy)("agrees with scipy at x = %f", (x, value, derivative) => {
    expect(curve.at(x)).toBeCloseTo(value, 13);
    expect(curve.derivative(x)).toBeCloseTo(derivative, 12);
  });

  it("agrees with scipy on falling samples", () => {
    const falling = monotoneCurve([0, 1, 3, 4], [10, 7, 6.5, 1]);
    // scipy 1.17.1 PchipInterpolator
    expect(falling.at(0.5)).toBeCloseTo(8.074095911949685, 13);
    expect(falling.at(2)).toBeCloseTo(6.755706025562995, 13);
    expect(falling.at(3.5)).toBeCloseTo(4.589717741935484, 13);
    expect(falling.derivative(0)).toBeCloseTo(-3.9166666666666665, 13);
    expect(falling.derivative(1)).toBeCloseTo(-0.5094339622641509, 13);
    expect(falling.derivative(3)).toBeCloseTo(-0.532258064516129, 13);
    expect(falling.derivative(4)).toBeCloseTo(-7.25, 13);
  });

  it("agrees with scipy where an end slope is limited", () => {
    // scipy 1.17.1 PchipInterpolator: to three times the chord, and to zero.
    const steep = monotoneCurve([0, 1, 2], [0, 1, -20]);
    expect([0, 1, 2].map((x) => steep.derivative(x))).toEqual([3, 0, -32]);
    expect(steep.at(0.4)).toBeCloseTo(0.784, 13);
    // By hand: the parabola's slope is (3 * 1 + 3.03) / 2 = 3.015 chords, just over the bound.
    expect(monotoneCurve([0, 1, 2], [0, 1, -2.03]).derivative(0)).toBe(3);
    expect(monotoneCurve([0, 1, 2], [0, 1, -1.97]).derivative(0)).toBeCloseTo(2.985, 13);
    const bent = monotoneCurve([0, 1, 2], [0, 1, 50]);
    expect(bent.derivative(0)).toBe(0);
    expect(bent.derivative(1)).toBeCloseTo(1.96, 13);
    expect(bent.derivative(2)).toBeCloseTo(73, 12);
    expect(bent.at(0.4)).toBeCloseTo(0.16384, 13);
    const level = monotoneCurve([0, 1, 2], [1, 1, 5]);
    expect(level.derivative(0)).toBe(0);
    expect(level.at(0.5)).toBe(1);
  });

  it("knows where it begins and ends", () => {
    expect(curve).toMatchObject({ domain: [0, 9], range: [0, 20], trend: "neither" });
    expect(monotoneCurve([1, 2], [3, 1])).toMatchObject({ range: [1, 3], trend: "falling" });
  });

  it("is the straight line through two samples, or through many on a line", () => {
    const two = monotoneCurve([1, 3], [2, 8]);
    expect(two.at(2)).toBe(5);
    expect(two.derivative(2.2)).toBe(3);
    const many = monotoneCurve([0, 1, 2.5, 7], [1, 3, 6, 15]);
    expect(many.at(4.1)).toBeCloseTo(9.2, 13);
    expect(many.derivative(4.1)).toBeCloseTo(2, 13);
  });

  it("meets its samples exactly and never turns between them", () => {
    fc.assert(
      fc.property(strictlyMonotone, ({ x, y, sign }) => {
        const monotone = monotoneCurve(x, y);
        x.forEach((sample, i) => expect(monotone.at(sample)).toBe(y[i]));
        const end = x.at(-1)!;
        let last = y[0]!;
        for (let i = 1; i <= 200; i++) {
          const value = monotone.at(Math.min(end, (i / 200) * end));
          expect(sign * (value - last)).toBeGreaterThanOrEqual(-1e-12 * Math.abs(value));
          last = value;
          expect(sign * monotone.derivative(Math.min(end, (i / 200) * end))).toBeGreaterThanOrEqual(
            -1e-10,
          );
        }
      }),
    );
  });

  it("has a continuous slope, and the slope its own differences have", () => {
    for (const x of [0.5, 2.6, 3.7, 5.2, 6.4, 8]) {
      const difference = (curve.at(x + 1e-6) - curve.at(x - 1e-6)) / 2e-6;
      expect(curve.derivative(x)).toBeCloseTo(difference, 6);
    }
    for (const x of xs.slice(1, -1)) {
      expect(curve.derivative(x - 1e-9)).toBeCloseTo(curve.derivative(x), 6);
    }
  });

  it("inverts itself", () => {
    fc.assert(
      fc.property(
        strictlyMonotone,
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ x, y }, part) => {
          const monotone = monotoneCurve(x, y);
          const ordinate = part * y.at(-1)!;
          const back = monotone.at(monotone.inverse(ordinate));
          expect(back).toBeCloseTo(ordinate, 9);
          y.forEach((sample, i) => expect(monotone.inverse(sample)).toBeCloseTo(x[i]!, 9));
        },
      ),
    );
  });

  it("gives the same digits in units that are 4^k times as large", () => {
    const a = 4 ** 7;
    const b = 4 ** -11;
    const scaled = monotoneCurve(
      xs.map((x) => a * x),
      ys.map((y) => b * y),
    );
    for (const [x] of scipy) {
      expect(scaled.at(a * x)).toBe(b * curve.at(x));
      expect(scaled.derivative(a * x)).toBe((b / a) * curve.derivative(x));
    }
  });

  it("refuses extrapolation, ambiguity and bad samples under its own name", () => {
    expect(refusalOf(() => curve.at(9.0001)).message).toBe(
      "monotoneCurve: x = 9.0001 is outside the samples, [0, 9]. Add samples that reach it.",
    );
    expect(refusalOf(() => curve.derivative(-1)).code).toBe("extrapolation");
    expect(refusalOf(() => curve.inverse(2.5)).code).toBe("not-monotone");
    expect(refusalOf(() => monotoneCurve([0, 1], [0, 1]).inverse(2)).code).toBe("extrapolation");
    expect(refusalOf(() => monotoneCurve([1, 0], [0, 1])).code).toBe("not-increasing");
    expect(refusalOf(() => monotoneCurve([0, 1], [0, NaN])).code).toBe("non-finite");
  });
});
