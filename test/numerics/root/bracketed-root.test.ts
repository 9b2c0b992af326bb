import { bracketedRoot, NumericsError } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

/** f, interval, root. Roots known exactly, or from mpmath 1.3 at 40 digits, or printed where named. */
const problems: [string, (x: number) => number, number, number, number][] = [
  // Wallis's equation, root in every textbook of numerical analysis; scipy 1.17 brentq agrees.
  ["x^3 - 2x - 5", (x) => x * x * x - 2 * x - 5, 2, 3, 2.0945514815423265],
  // G. E. Alefeld, F. A. Potra, Y. Shi, ACM TOMS 21 (1995) 327, problem 1: sin x = x / 2.
  ["sin x - x/2", (x) => Math.sin(x) - x / 2, Math.PI / 2, Math.PI, 1.895494267033981],
  // scipy 1.17 optimize.brentq
  ["cos x - x", (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  // mpmath 1.3 at 40 digits: the Colebrook equation in 1/sqrt(f) at Re 1e5, roughness 1e-4
  [
    "x + 2 log10(a + b x)",
    (x) => x + 2 * Math.log10(1e-4 / 3.7 + (2.51 / 1e5) * x),
    1,
    20,
    7.349392486953611,
  ],
  ["x^2 - 2", (x) => x * x - 2, 0, 1e3, Math.SQRT2],
  ["steep: 1e12 (x - 1/3)", (x) => 1e12 * (x - 1 / 3), -5, 7, 1 / 3],
  ["ninth power, flat at its root", (x) => (x - 0.5) ** 9, -1, 1.7, 0.5],
  ["falling", (x) => 3 - x, 0, 10, 3],
];

const wallis = (x: number): number => x * x * x - 2 * x - 5;
const identity = (x: number): number => x;
const thrower = (): number => {
  throw new RangeError("mine");
};

describe("bracketedRoot", () => {
  it.each(problems)("finds the root of %s", (_name, f, lo, hi, root) => {
    const report = bracketedRoot(f, lo, hi);
    expect(report.converged).toBe(true);
    // Where terms cancel in f its own rounding moves the root by some last places.
    expect(Math.abs(report.root - root)).toBeLessThanOrEqual(8 * Number.EPSILON * Math.abs(root));
    expect(report.residual).toBe(f(report.root));
    expect(report.bracket[0]).toBeLessThanOrEqual(report.root);
    expect(report.bracket[1]).toBeGreaterThanOrEqual(report.root);
    expect(report.iterations).toBeLessThanOrEqual(200);
  });

  it("finds the Wallis root in fewer calls than bisection, which needs 52", () => {
    let calls = 0;
    const report = bracketedRoot(
      (x) => {
        calls++;
        return x * x * x - 2 * x - 5;
      },
      2,
      3,
    );
    expect(calls).toBeLessThanOrEqual(14);
    expect(calls).toBe(report.iterations + 2);
  });

  it("finds polynomial roots that were put there", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (root, other, below, above) => {
          // (x - root) ((x - root)^2 + other^2): one real root
          const f = (x: number): number => (x - root) * ((x - root) ** 2 + other * other);
          const report = bracketedRoot(f, root - below, root + above);
          expect(report.converged).toBe(true);
          expect(Math.abs(report.root - root)).toBeLessThanOrEqual(
            4 * Number.EPSILON * Math.abs(root) + 1e-29 * (below + above),
          );
        },
      ),
    );
  });

  it("brackets the root by opposite signs, no wider than asked", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 1e-9, max: 1e-2, noNaN: true }),
        (target, xTolerance) => {
          const f = (x: number): number => x * Math.exp(x / 20) - target;
          const { bracket, root, residual } = bracketedRoot(f, 0, 100, { xTolerance });
          expect(bracket).toContain(root);
          if (residual === 0) return;
          expect(f(bracket[0]) * f(bracket[1])).toBeLessThan(0);
          expect(bracket[1] - bracket[0]).toBeLessThanOrEqual(xTolerance + 1e-13);
        },
      ),
    );
  });

  it("gives the same digits in units that are 4^k times as large", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.integer({ min: -20, max: 20 }),
        fc.integer({ min: -20, max: 20 }),
        (target, k, m) => {
          const one = bracketedRoot((x) => x * x * x - target, 0, 100);
          const unit = 4 ** k;
          const size = 4 ** m;
          const f = (x: number): number => size * ((x / unit) * (x / unit) * (x / unit) - target);
          const other = bracketedRoot(f, 0, 100 * unit);
          expect(other.root).toBe(one.root * unit);
          expect(other.residual).toBe(one.residual * size);
          expect(other.iterations).toBe(one.iterations);
        },
      ),
    );
  });

  it("ends at a root at zero, though no last place exists there", () => {
    const report = bracketedRoot((x) => Math.tanh(x) + 0.01 * x * x * x, -1, 0.7);
    expect(report.converged).toBe(true);
    expect(Math.abs(report.root)).toBeLessThan(1e-25);
  });

  it("stops as soon as f is within fTolerance", () => {
    const loose = bracketedRoot((x) => x * x - 2, 0, 2, { fTolerance: 0.01 });
    expect(Math.abs(loose.residual)).toBeLessThanOrEqual(0.01);
    expect(loose.iterations).toBeLessThan(bracketedRoot((x) => x * x - 2, 0, 2).iterations);
  });

  it("takes an end that is already a root", () => {
    expect(bracketedRoot((x) => x, 0, 1)).toEqual({
      root: 0,
      residual: 0,
      iterations: 0,
      bracket: [0, 1],
      converged: true,
    });
    expect(bracketedRoot((x) => x - 1, 0, 1).root).toBe(1);
  });

  it("closes in on a step across zero, and its residual tells", () => {
    const report = bracketedRoot((x) => (x < 0.3 ? -1 : 1), 0, 1);
    expect(report.root).toBeCloseTo(0.3, 14);
    expect(Math.abs(report.residual)).toBe(1);
  });

  it("survives function values near the largest number", () => {
    const report = bracketedRoot((x) => (x - 0.3) * 1.5e308, -0.7, 1.3);
    expect(report.root).toBeCloseTo(0.3, 14);
  });

  it("refuses a bracket without a change of sign", () => {
    const error = refusalOf(() => bracketedRoot((x) => x * x + 1, 0, 2));
    expect(error.code).toBe("no-sign-change");
    expect(error.message).toBe(
      "bracketedRoot: f(0) = 1 and f(2) = 5 have the same sign, so no root is bracketed. " +
        "Change the interval, or widen it with expandBracket.",
    );
    expect(error.details).toEqual({ where: "bracketedRoot", lo: 0, fLo: 1, hi: 2, fHi: 5 });
    expect(error.name).toBe("NumericsError");
    expect(error).toBeInstanceOf(Error);
  });

  it("refuses function values that are not finite, by name", () => {
    const error = refusalOf(() => bracketedRoot((x) => (x === 0.5 ? NaN : x - 0.7), 0, 1));
    expect(error.code).toBe("non-finite");
    expect(error.message).toBe(
      "bracketedRoot: f(0.5) = NaN is not finite. Keep the search where f is defined.",
    );
    expect(refusalOf(() => bracketedRoot(() => NaN, 0, 1)).details).toMatchObject({ x: 0 });
    const atEnd = refusalOf(() => bracketedRoot((x) => (x === 1 ? Infinity : -1), 0, 1));
    expect(atEnd.details).toMatchObject({ x: 1, value: Infinity });
  });

  it("refuses a pole", () => {
    const error = refusalOf(() => bracketedRoot((x) => 1 / (x - 1 / 3), 0, 1));
    expect(error.code).toBe("pole");
    expect(error.message).toMatch(
      /^bracketedRoot: f changes sign at 0\.33333\d+ by way of -?\d.*, a pole and not a root\. Choose an interval without it\.$/,
    );
  });

  it("says that it has not converged, with the bracket so far", () => {
    const error = refusalOf(() => bracketedRoot(wallis, 2, 3, { maxIterations: 2 }));
    expect(error.code).toBe("not-converged");
    expect(error.message).toMatch(
      /^bracketedRoot: no root within the tolerances after 2 iterations; it lies in \[2.*, 2.*\]\. Raise maxIterations or loosen a tolerance\.$/,
    );
    const report = bracketedRoot(wallis, 2, 3, { maxIterations: 2, returnUnconverged: true });
    expect(report.converged).toBe(false);
    expect(report.iterations).toBe(2);
    expect(wallis(report.bracket[0])).toBeLessThan(0);
    expect(wallis(report.bracket[1])).toBeGreaterThan(0);
    expect(error.details).toMatchObject({ ...report });
  });

  it("refuses arguments that make no sense", () => {
    expect(refusalOf(() => bracketedRoot(identity, NaN, 1)).message).toBe(
      "bracketedRoot: lo = NaN is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => bracketedRoot(identity, 0, Infinity)).code).toBe("non-finite");
    expect(refusalOf(() => bracketedRoot(identity, 2, 1)).message).toBe(
      "bracketedRoot: [2, 1] is not an interval. Pass lo below hi, with a finite width.",
    );
    expect(refusalOf(() => bracketedRoot(identity, 1, 1)).code).toBe("bad-argument");
    expect(refusalOf(() => bracketedRoot(identity, -1.7e308, 1.7e308)).code).toBe("bad-argument");
    expect(refusalOf(() => bracketedRoot(identity, -1, 1, { xTolerance: -1 })).message).toBe(
      "bracketedRoot: xTolerance = -1 is not a tolerance. Pass a finite number, 0 or more.",
    );
    expect(refusalOf(() => bracketedRoot(identity, -1, 1, { fTolerance: NaN })).code).toBe(
      "bad-argument",
    );
    expect(refusalOf(() => bracketedRoot(identity, -1, 1, { maxIterations: 0 })).message).toBe(
      "bracketedRoot: maxIterations = 0 is not a count. Pass a whole number, 1 or more.",
    );
    expect(refusalOf(() => bracketedRoot(identity, -1, 1, { maxIterations: 2.5 })).code).toBe(
      "bad-argument",
    );
  });

  it("lets the function's own errors through", () => {
    expect(() => bracketedRoot(thrower, 0, 1)).toThrow(RangeError);
    expect(() => bracketedRoot(thrower, 0, 1)).not.toThrow(NumericsError);
  });
});
