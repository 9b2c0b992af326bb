import { normalQuantile, studentQuantile } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, read in a reprint of the table: upper critical values
// at 0.10, 0.05, 0.025, 0.01, 0.005. The column 0.001 is of another reprint (Journal of the American Statistical
// Association, 1959) where the two differ, but for 10.215: at 3 degrees the other is one digit low.
const probabilities = [0.9, 0.95, 0.975, 0.99, 0.995, 0.999];
const printed: [number, number[]][] = [
  [1, [3.078, 6.314, 12.706, 31.821, 63.657, 318.309]],
  [2, [1.886, 2.92, 4.303, 6.965, 9.925, 22.327]],
  [3, [1.638, 2.353, 3.182, 4.541, 5.841, 10.215]],
  [4, [1.533, 2.132, 2.776, 3.747, 4.604, 7.173]],
  [5, [1.476, 2.015, 2.571, 3.365, 4.032, 5.893]],
  [6, [1.44, 1.943, 2.447, 3.143, 3.707, 5.208]],
  [10, [1.372, 1.812, 2.228, 2.764, 3.169, 4.144]],
  [17, [1.333, 1.74, 2.11, 2.567, 2.898, 3.646]],
  [30, [1.31, 1.697, 2.042, 2.457, 2.75, 3.385]],
  [60, [1.296, 1.671, 2, 2.39, 2.66, 3.232]],
  [100, [1.29, 1.66, 1.984, 2.364, 2.626, 3.174]],
];

// mpmath 1.3 at 40 digits: the root of its regularised incomplete beta function.
const exact: [number, number, number][] = [
  [1e-30, 3.7, -158387684.38826202],
  [1e-10, 1, -3183098861.8379066],
  [0.0001, 0.5, -10284911.563163385],
  [0.01, 2.5, -5.3531111730308743],
  [0.2, 10, -0.87905782855058865],
  [0.3, 0.3, -1.6126582577896126],
  [0.4999, 4, -0.00026666667061725468],
  [0.6, 7, 0.26316686135202275],
  [0.9, 1.5, 2.1963984175655378],
  [0.975, 7.3, 2.3450667365477031],
  [0.975, 1000, 1.9623390808264081],
  [0.975, 999999, 1.9599663568164789],
  [0.999, 200000, 3.0902730573051985],
  [0.975, 1e6, 1.9599663568141067],
  [0.9999999, 1e6, 5.1993740209144228],
  [0.975, 1e9, 1.9599639869123251],
];

describe("studentQuantile", () => {
  it.each(printed)("is the printed row of %i degrees of freedom", (degrees, row) => {
    row.forEach((t, i) => {
      expect(Math.abs(studentQuantile(probabilities[i]!, degrees) - t)).toBeLessThanOrEqual(
        0.00050001,
      );
    });
  });

  it.each(exact)("agrees with mpmath at p = %f, %f degrees", (p, degrees, t) => {
    expect(Math.abs(studentQuantile(p, degrees) / t - 1)).toBeLessThanOrEqual(2e-11);
  });

  it("keeps its digits far out from a million degrees on, where it is a series", () => {
    // mpmath 1.3 at 60 digits: the root of the integral of the density.
    expect(Math.abs(studentQuantile(1e-300, 1e6) / -37.0598208727692715 - 1)).toBeLessThanOrEqual(
      5e-13,
    );
  });

  it("has closed forms at 1, 2 and 4 degrees of freedom", () => {
    // Cauchy's distribution, and W. T. Shaw, Sampling Student's T distribution, 2006.
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (p) => {
        const a = 4 * p * (1 - p);
        const one = -1 / Math.tan(Math.PI * p);
        const two = (2 * p - 1) / Math.sqrt(a / 2);
        const root = Math.sqrt(a);
        const four = Math.sign(p - 0.5) * 2 * Math.sqrt(Math.cos(Math.acos(root) / 3) / root - 1);
        expect(Math.abs(studentQuantile(p, 1) - one)).toBeLessThanOrEqual(
          1e-9 * Math.abs(one) + 1e-9,
        );
        expect(Math.abs(studentQuantile(p, 2) - two)).toBeLessThanOrEqual(
          1e-9 * Math.abs(two) + 1e-9,
        );
        expect(Math.abs(studentQuantile(p, 4) - four)).toBeLessThanOrEqual(
          1e-9 * Math.abs(four) + 1e-7,
        );
      }),
    );
  });

  it("rises with p, is odd about one half, and falls towards the normal quantile", () => {
    const degrees = fc.double({ min: 0.5, max: 1e8, noNaN: true });
    const below = fc.integer({ min: 1, max: 2 ** 30 - 1 }).map((k) => k * 2 ** -31);
    fc.assert(
      fc.property(below, degrees, degrees, (p, n, m) => {
        expect(studentQuantile(1 - p, n)).toBe(-studentQuantile(p, n));
        expect(studentQuantile(p, n)).toBeLessThan(studentQuantile(p * 1.0001, n));
        const [few, many] = n < m ? [n, m] : [m, n];
        const t = studentQuantile(p, many);
        expect(studentQuantile(p, few)).toBeLessThanOrEqual(t * (1 - 1e-10));
        expect(t).toBeLessThanOrEqual(normalQuantile(p) * (1 - 1e-10));
      }),
    );
    expect(studentQuantile(0.5, 3)).toBe(0);
  });

  it("refuses what is not a probability and degrees of freedom that are not above zero", () => {
    const error = refusalOf(() => studentQuantile(1, 5));
    expect(error.code).toBe("bad-argument");
    expect(error.message).toBe(
      "studentQuantile: p = 1 is not a probability above 0 and below 1. Pass the part of the distribution that lies below.",
    );
    for (const p of [0, -0.1, 1.1, NaN]) {
      expect(refusalOf(() => studentQuantile(p, 5)).code).toBe("bad-argument");
    }
    expect(refusalOf(() => studentQuantile(0.9, 0)).message).toBe(
      "studentQuantile: degreesOfFreedom = 0 is not above zero. Pass a positive, finite number.",
    );
    for (const n of [-1, NaN, Infinity]) {
      expect(refusalOf(() => studentQuantile(0.9, n)).code).toBe("bad-argument");
    }
  });

  it("refuses a t that is too large to be held", () => {
    expect(refusalOf(() => studentQuantile(1e-200, 1)).message).toBe(
      "studentQuantile: at p = 1e-200 and so few degrees of freedom, 1, t is above 1e149. Ask for a p nearer the middle.",
    );
    expect(refusalOf(() => studentQuantile(0.75, 1e-3)).code).toBe("bad-argument");
  });
});
