import { normalQuantile } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

// mpmath 1.3 at 40 digits, by a root of its normal distribution function.
const rows: [number, number][] = [
  [1e-300, -37.0470962993612],
  [1e-100, -21.273453560965326],
  [1e-20, -9.262340089798407],
  [1e-10, -6.361340902404057],
  [1e-5, -4.264890793922825],
  [0.001, -3.0902323061678136],
  [0.02425, -1.972961051311885],
  [0.05, -1.6448536269514726],
  [0.075, -1.439531470938456],
  [0.1, -1.2815515655446004],
  [0.3, -0.5244005127080408],
  [0.5, 0],
  [0.6, 0.2533471031357997],
  [0.9, 1.2815515655446006],
  [0.95, 1.6448536269514722],
  [0.975, 1.9599639845400538],
  [0.999, 3.090232306167813],
  [0.9999999, 5.199337582290661],
];

describe("normalQuantile", () => {
  it.each(rows)("agrees with mpmath at %f", (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThanOrEqual(1e-15 * Math.abs(z));
  });

  it("is the printed 1.645 and 1.960 of every table", () => {
    // ISO/IEC Guide 98-3 (GUM), table G.1: 90 % and 95 %
    expect(normalQuantile(0.95)).toBeCloseTo(1.645, 3);
    expect(normalQuantile(0.975)).toBeCloseTo(1.96, 3);
  });

  it("rises, and is odd about one half", () => {
    const below = fc.double({ min: 1e-300, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(below, below, (p, q) => {
        expect(normalQuantile(Math.min(p, q))).toBeLessThanOrEqual(normalQuantile(Math.max(p, q)));
      }),
    );
    // Fractions whose complement is exact.
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 52 }), (k) => {
        const p = k * 2 ** -53;
        expect(normalQuantile(1 - p) === -normalQuantile(p)).toBe(true);
      }),
    );
  });

  it("refuses what is not a probability between 0 and 1", () => {
    const error = refusalOf(() => normalQuantile(1));
    expect(error.code).toBe("bad-argument");
    expect(error.message).toBe(
      "normalQuantile: p = 1 is not a probability between 0 and 1. Both ends are infinite.",
    );
    for (const p of [0, -0.1, 1.1, NaN, 5e-324]) {
      expect(refusalOf(() => normalQuantile(p)).code).toBe("bad-argument");
    }
  });
});
