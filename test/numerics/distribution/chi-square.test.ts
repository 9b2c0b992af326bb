import { chiSquareProbability, chiSquareQuantile, normalQuantile } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, read in a reprint of the table: lower critical values
// at 0.10, 0.05, 0.025, 0.01, 0.001.
const lower: [number, number[]][] = [
  [1, [0.016, 0.004, 0.001, 0, 0]],
  [2, [0.211, 0.103, 0.051, 0.02, 0.002]],
  [5, [1.61, 1.145, 0.831, 0.554, 0.21]],
  [9, [4.168, 3.325, 2.7, 2.088, 1.152]],
  [20, [12.443, 10.851, 9.591, 8.26, 5.921]],
  [50, [37.689, 34.764, 32.357, 29.707, 24.674]],
  [100, [82.358, 77.929, 74.222, 70.065, 61.918]],
];

// The usual table of upper percentage points (Abramowitz and Stegun, table 26.8, and every textbook after it), read in
// a textbook's copy: 0.10, 0.05, 0.025, 0.01, 0.005.
const upper: [number, number[]][] = [
  [1, [2.70554, 3.84146, 5.02389, 6.6349, 7.87944]],
  [2, [4.60517, 5.99146, 7.37776, 9.21034, 10.5966]],
  [4, [7.77944, 9.48773, 11.1433, 13.2767, 14.8603]],
  [8, [13.3616, 15.5073, 17.5345, 20.0902, 21.955]],
  [10, [15.9872, 18.307, 20.4832, 23.2093, 25.1882]],
  [15, [22.3071, 24.9958, 27.4884, 30.5779, 32.8013]],
];

// mpmath 1.3 at 40 digits.
const exact: [number, number, number][] = [
  [1e-8, 0.3, 0.060945943449088668],
  [0.01, 1, 0.079655674554057964],
  [2.5, 4.5, 0.28430424513776199],
  [10, 10, 0.55950671493478759],
  [13, 10, 0.77632818318850069],
  [40, 10, 0.99998305525606993],
  [1000, 1001.5, 0.49256649487907213],
  [1010, 1001.5, 0.58093065258293648],
];

describe("chiSquareQuantile", () => {
  it.each(lower)("is the printed lower row of %i degrees of freedom", (degrees, row) => {
    const probabilities = [0.1, 0.05, 0.025, 0.01, 0.001];
    row.forEach((x, i) => {
      const miss = Math.abs(chiSquareQuantile(probabilities[i]!, degrees) - x);
      expect(miss).toBeLessThanOrEqual(0.00050001);
    });
  });

  it.each(upper)("is the printed upper row of %i degrees of freedom", (degrees, row) => {
    const probabilities = [0.9, 0.95, 0.975, 0.99, 0.995];
    row.forEach((x, i) => {
      const digits = x < 10 ? 0.0000050001 : 0.000050001;
      const miss = Math.abs(chiSquareQuantile(probabilities[i]!, degrees) - x);
      expect(miss).toBeLessThanOrEqual(digits);
    });
  });

  it("is a normal quantile squared at 1 degree, and exponential at 2", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1 - 1e-6, noNaN: true }), (p) => {
        const z = normalQuantile(0.5 - p / 2);
        expect(Math.abs(chiSquareQuantile(p, 1) / (z * z) - 1)).toBeLessThanOrEqual(1e-9);
        expect(Math.abs(chiSquareQuantile(p, 2) / (-2 * Math.log1p(-p)) - 1)).toBeLessThanOrEqual(
          1e-10,
        );
      }),
    );
  });

  it("refuses what has no answer", () => {
    expect(refusalOf(() => chiSquareQuantile(1, 3)).code).toBe("bad-argument");
    expect(refusalOf(() => chiSquareQuantile(0.5, -3)).message).toBe(
      "chiSquareQuantile: degreesOfFreedom = -3 is not above zero. Pass a positive, finite number.",
    );
  });
});

describe("chiSquareProbability", () => {
  it.each(exact)("agrees with mpmath at x = %f, %f degrees", (x, degrees, p) => {
    expect(Math.abs(chiSquareProbability(x, degrees) / p - 1)).toBeLessThanOrEqual(1e-12);
  });

  it("undoes the quantile, for degrees that are whole or not", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        fc.double({ min: 0.2, max: 1e5, noNaN: true }),
        (p, degrees) => {
          const back = chiSquareProbability(chiSquareQuantile(p, degrees), degrees);
          expect(Math.abs(back / p - 1)).toBeLessThanOrEqual(1e-10);
        },
      ),
    );
  });

  it("is 0 at 0 and 1 far out", () => {
    expect(chiSquareProbability(0, 3)).toBe(0);
    expect(chiSquareProbability(1e300, 3)).toBe(1);
  });

  it("refuses a negative sum of squares and what is not finite", () => {
    expect(refusalOf(() => chiSquareProbability(-1, 3)).message).toBe(
      "chiSquareProbability: x = -1 is negative. A sum of squares is 0 or more.",
    );
    expect(refusalOf(() => chiSquareProbability(NaN, 3)).code).toBe("non-finite");
    expect(refusalOf(() => chiSquareProbability(1, 0)).code).toBe("bad-argument");
  });
});
