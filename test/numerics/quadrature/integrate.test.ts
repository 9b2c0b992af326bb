import { integrate } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

/** Integrand, from, to, the integral by antiderivative unless named. */
const known: [string, (x: number) => number, number, number, number][] = [
  ["exp", Math.exp, 0, 1, Math.E - 1],
  ["sin over half a turn", Math.sin, 0, Math.PI, 2],
  ["exp(-x^2), scipy 1.17 erf(3) sqrt(pi) / 2", (x) => Math.exp(-x * x), 0, 3, 0.8862073482595211],
  ["sqrt, infinite slope at 0", Math.sqrt, 0, 1, 2 / 3],
  ["log, infinite at 0", Math.log, 0, 1, -1],
  ["|x - 1/3|, a corner", (x) => Math.abs(x - 1 / 3), 0, 1, 5 / 18],
  ["1 / (1 + 25 x^2), Runge", (x) => 1 / (1 + 25 * x * x), -1, 1, (2 / 5) * Math.atan(5)],
  ["a narrow peak", (x) => 1e-3 / (x * x + 1e-6), -1, 1, 2 * Math.atan(1000)],
  ["an odd function", (x) => x * x * x, -2, 2, 0],
  ["a constant", () => 7, -1, 4, 35],
  ["zero", () => 0, 0, 1, 0],
  ["backwards", Math.exp, 1, 0, 1 - Math.E],
];

const wavy = (x: number): number => Math.exp(-x * x) + Math.sin(3 * x);
const spike = (x: number): number => Math.abs(x - 1 / 3) ** -0.9;
// Sixteen neighbouring numbers, with f at each its last bit.
const lastBit = (x: number): number => ((x - 1) * 2 ** 52) % 2;

describe("integrate", () => {
  it.each(known)("integrates %s, within its own error estimate", (_name, f, a, b, expected) => {
    const report = integrate(f, a, b);
    expect(report.converged).toBe(true);
    expect(Math.abs(report.value - expected)).toBeLessThanOrEqual(
      report.errorEstimate + 1e-14 * Math.max(1, Math.abs(expected)),
    );
    expect(Math.abs(report.value - expected)).toBeLessThanOrEqual(
      1e-10 * Math.max(1, Math.abs(expected)),
    );
    expect(report.evaluations % 15).toBe(0);
  });

  // The 15-point Kronrod rule is exact to degree 3 * 7 + 1 = 22, and by symmetry for 23; not for 24.
  it.each(Array.from({ length: 24 }, (_, degree) => [degree]))(
    "is exact for x^%i in one pass",
    (degree) => {
      const loose = { relTolerance: 1e6 };
      const { value, evaluations } = integrate((x) => (1 + x) ** degree, 0, 1, loose);
      expect(evaluations).toBe(15);
      const exact = (2 ** (degree + 1) - 1) / (degree + 1);
      expect(Math.abs(value - exact)).toBeLessThanOrEqual(4e-15 * exact);
    },
  );

  it("is not exact for x^24, and the 7-point rule's estimate is zero up to degree 13 only", () => {
    const loose = { absTolerance: 10 };
    const power = (degree: number) => integrate((x) => x ** degree, -1, 1, loose);
    expect(Math.abs(power(24).value - 2 / 25)).toBeGreaterThan(1e-9);
    for (let degree = 0; degree <= 13; degree++) {
      expect(power(degree).errorEstimate).toBeLessThan(1e-18);
    }
    expect(power(14).errorEstimate).toBeGreaterThan(1e-4);
    expect(power(16).errorEstimate).toBeGreaterThan(1e-3);
  });

  it("is additive, and turns its sign with the ends", () => {
    const end = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(end, end, end, (a, b, c) => {
        const ab = integrate(wavy, a, b).value;
        expect(ab + integrate(wavy, b, c).value).toBeCloseTo(integrate(wavy, a, c).value, 8);
        expect(integrate(wavy, b, a).value).toBeCloseTo(-ab, 12);
      }),
    );
  });

  it("gives the same digits in units that are 4^k times as large", () => {
    const one = integrate(Math.sqrt, 0, 2);
    const unit = 4 ** 6;
    const other = integrate((x) => Math.sqrt(x / unit), 0, 2 * unit);
    expect(other.value).toBe(one.value * unit);
    expect(other.errorEstimate).toBe(one.errorEstimate * unit);
    expect(other.evaluations).toBe(one.evaluations);
  });

  it("integrates inside an integrand", () => {
    // The volume under x y over the triangle 0 < y < x < 1 is 1/8.
    const { value } = integrate((x) => integrate((y) => x * y, 0, x).value, 0, 1);
    expect(value).toBeCloseTo(1 / 8, 14);
  });

  it("gives nothing over nothing", () => {
    expect(integrate(() => NaN, 2, 2)).toEqual({
      value: 0,
      errorEstimate: 0,
      evaluations: 0,
      converged: true,
    });
  });

  it("says that it has not converged, and where", () => {
    const error = refusalOf(() => integrate(spike, 0, 1, { maxSubdivisions: 5 }));
    expect(error.code).toBe("not-converged");
    expect(error.message).toMatch(
      /^integrate: the error estimate is \S+ after 5 subdivisions, above \S+; it is worst near 0\.3\d+\. Split the integral there, raise maxSubdivisions or loosen a tolerance\.$/,
    );
    // 200 subdivisions by default: 201 intervals, and 200 that were halved.
    expect(refusalOf(() => integrate((x) => Math.cos(1e6 * x), 0, 1)).details).toMatchObject({
      evaluations: 15 * 401,
    });
    const report = integrate(spike, 0, 1, { maxSubdivisions: 5, returnUnconverged: true });
    expect(report.converged).toBe(false);
    expect(report.evaluations).toBe(165);
    expect(error.details).toMatchObject({ ...report });
  });

  it("gives up on an interval that cannot be halved", () => {
    const report = integrate(lastBit, 1, 1 + 2 ** -48, {
      maxSubdivisions: 1000,
      returnUnconverged: true,
    });
    expect(report.converged).toBe(false);
    expect(report.evaluations).toBeLessThanOrEqual(15 * (2 * 16 - 1));
  });

  it("stops at an absolute tolerance", () => {
    const { evaluations } = integrate(Math.sqrt, 0, 1, { absTolerance: 1e-3, relTolerance: 0 });
    expect(evaluations).toBeLessThan(integrate(Math.sqrt, 0, 1).evaluations);
  });

  it("refuses what is not finite, and options that make no sense", () => {
    expect(refusalOf(() => integrate((x) => 1 / x, -1, 1)).message).toBe(
      "integrate: f(0) = Infinity is not finite. Keep the search where f is defined.",
    );
    expect(refusalOf(() => integrate(() => 1.7e308, 0, 10)).message).toBe(
      "integrate: the integral of |f| = Infinity is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => integrate(Math.exp, 0, Infinity)).code).toBe("non-finite");
    expect(refusalOf(() => integrate(Math.exp, NaN, 0)).code).toBe("non-finite");
    expect(refusalOf(() => integrate(Math.exp, -1.7e308, 1.7e308)).code).toBe("non-finite");
    expect(refusalOf(() => integrate(Math.exp, 0, 1, { absTolerance: -1 })).code).toBe(
      "bad-argument",
    );
    expect(refusalOf(() => integrate(Math.exp, 0, 1, { relTolerance: NaN })).code).toBe(
      "bad-argument",
    );
    expect(refusalOf(() => integrate(Math.exp, 0, 1, { maxSubdivisions: 0 })).code).toBe(
      "bad-argument",
    );
  });
});
