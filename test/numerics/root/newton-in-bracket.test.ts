import { newtonInBracket } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

type Problem = [string, (x: number) => number, (x: number) => number, number, number, number];

const problems: Problem[] = [
  [
    "x^3 - 2x - 5 (Wallis)",
    (x) => x * x * x - 2 * x - 5,
    (x) => 3 * x * x - 2,
    2,
    3,
    2.0945514815423265,
  ],
  [
    "cos x - x (scipy 1.17 brentq)",
    (x) => Math.cos(x) - x,
    (x) => -Math.sin(x) - 1,
    0,
    1,
    0.7390851332151607,
  ],
  // Plain Newton diverges from the middle, to either side.
  [
    "atan(x - 1), from far off",
    (x) => Math.atan(x - 1),
    (x) => 1 / (1 + (x - 1) ** 2),
    -100,
    20,
    1,
  ],
  // Newton's step from 0 leads to 1 and back again, without end.
  [
    "x^3 - 2x + 2, where Newton cycles",
    (x) => x * x * x - 2 * x + 2,
    (x) => 3 * x * x - 2,
    -3,
    3,
    -1.7692923542386314,
  ],
  ["flat start", (x) => x * x * x - 8, (x) => 3 * x * x, -4, 4, 2],
  ["triple root, where Newton is linear", (x) => (x - 1) ** 3, (x) => 3 * (x - 1) ** 2, 0, 4, 1],
  ["falling", (x) => 1 / x - 4, (x) => -1 / (x * x), 0.01, 10, 0.25],
];

const slopeOfGrowth = (x: number): number => (1 + x / 20) * Math.exp(x / 20);
const identity = (x: number): number => x;
const parabola = (x: number): number => x * x - 2;
const slopeOfParabola = (x: number): number => 2 * x;

describe("newtonInBracket", () => {
  it.each(problems)("finds the root of %s", (_name, f, df, lo, hi, root) => {
    const report = newtonInBracket(f, df, lo, hi);
    expect(report.converged).toBe(true);
    expect(Math.abs(report.root - root)).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(root));
    expect(report.residual).toBe(f(report.root));
    expect(report.bracket).toContain(report.root);
  });

  it("needs fewer passes than the bracketed search when it starts well", () => {
    const report = newtonInBracket(
      (x) => x * x - 2,
      (x) => 2 * x,
      0,
      2,
      { start: 1.4 },
    );
    expect(report.iterations).toBeLessThanOrEqual(6);
  });

  it("calls df only with the x that f was called with last", () => {
    let last = NaN;
    newtonInBracket(
      (x) => {
        last = x;
        return Math.exp(x) - 5;
      },
      (x) => {
        expect(x).toBe(last);
        return Math.exp(x);
      },
      -3,
      9,
    );
    expect.hasAssertions();
  });

  it("closes the bracket from both sides, no wider than asked", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 1e-9, max: 1e-2, noNaN: true }),
        (target, start, xTolerance) => {
          const f = (x: number): number => x * Math.exp(x / 20) - target;
          const { bracket, residual } = newtonInBracket(f, slopeOfGrowth, 0, 100, {
            start,
            xTolerance,
          });
          if (residual === 0) return;
          expect(f(bracket[0]) * f(bracket[1])).toBeLessThan(0);
          expect(bracket[1] - bracket[0]).toBeLessThanOrEqual(xTolerance + 1e-13);
        },
      ),
    );
  });

  it("finds the root even with a derivative that is wrong", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), (slope) => {
        const report = newtonInBracket(
          (x) => x * x - 2,
          () => slope,
          0,
          2,
        );
        expect(Math.abs(report.root - Math.SQRT2)).toBeLessThan(1e-15);
      }),
    );
  });

  it("gives the same digits in units that are 4^k times as large", () => {
    const root = newtonInBracket(
      (x) => x * x * x - 7,
      (x) => 3 * x * x,
      0,
      10,
    ).root;
    for (const unit of [4 ** -9, 4 ** 13]) {
      const f = (x: number): number => (x / unit) * (x / unit) * (x / unit) - 7;
      const df = (x: number): number => (3 * (x / unit) * (x / unit)) / unit;
      expect(newtonInBracket(f, df, 0, 10 * unit).root).toBe(root * unit);
    }
  });

  it("takes an end that is already a root, and stops within fTolerance", () => {
    expect(newtonInBracket(identity, () => 1, 0, 1).iterations).toBe(0);
    expect(
      newtonInBracket(
        (x) => x - 1,
        () => 1,
        0,
        1,
      ).root,
    ).toBe(1);
    const loose = newtonInBracket(
      (x) => x * x - 2,
      (x) => 2 * x,
      0,
      2,
      { fTolerance: 0.3 },
    );
    expect(Math.abs(loose.residual)).toBeLessThanOrEqual(0.3);
    expect(loose.iterations).toBe(2);
  });

  it("refuses what it cannot do", () => {
    expect(
      refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 0, 2, { start: 3 })).message,
    ).toBe("newtonInBracket: start = 3 is outside [0, 2]. Start inside the bracket.");
    expect(
      refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 0, 2, { start: NaN })).code,
    ).toBe("non-finite");
    expect(refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 2, 3)).code).toBe(
      "no-sign-change",
    );
    expect(refusalOf(() => newtonInBracket(parabola, () => NaN, 0, 2)).message).toBe(
      "newtonInBracket: df(1) = NaN is not finite. Keep the search where df is defined.",
    );
    expect(
      refusalOf(() => newtonInBracket(() => NaN, slopeOfParabola, 0, 2)).details,
    ).toMatchObject({
      x: 0,
    });
    expect(
      refusalOf(() => newtonInBracket((x) => (x === 2 ? NaN : parabola(x)), slopeOfParabola, 0, 2))
        .details,
    ).toMatchObject({ name: "f", x: 2 });
    expect(
      refusalOf(() => newtonInBracket((x) => (x === 1 ? NaN : parabola(x)), slopeOfParabola, 0, 2))
        .details,
    ).toMatchObject({ name: "f", x: 1 });
    expect(
      refusalOf(() =>
        newtonInBracket(
          (x) => 1 / (x - 0.3),
          (x) => -1 / (x - 0.3) ** 2,
          0,
          1,
        ),
      ).code,
    ).toBe("pole");
    expect(
      refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 0, 2, { maxIterations: 2 })).code,
    ).toBe("not-converged");
    const options = { maxIterations: 2, returnUnconverged: true };
    expect(newtonInBracket(parabola, slopeOfParabola, 0, 2, options)).toMatchObject({
      iterations: 2,
      converged: false,
    });
    expect(refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 2, 0)).code).toBe(
      "bad-argument",
    );
    expect(
      refusalOf(() => newtonInBracket(parabola, slopeOfParabola, 0, 2, { xTolerance: NaN })).code,
    ).toBe("bad-argument");
  });
});
