import { luFactors, luSolve, reciprocalCondition, solveDense } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";
import { mathjsInverse, mathjsSolution, oneNorm } from "./mathjs-oracle.ts";

// Nothing so small that a product would lose digits to underflow.
const element = fc
  .double({ min: -10, max: 10, noNaN: true })
  .map((value) => (Math.abs(value) < 1e-9 ? 0 : value));

/** A matrix whose diagonal outweighs its rows, so that it is well conditioned, with its rows rolled around. */
const wellConditioned = fc
  .integer({ min: 1, max: 7 })
  .chain((n) =>
    fc.record({
      rows: fc.array(fc.array(element, { minLength: n, maxLength: n }), {
        minLength: n,
        maxLength: n,
      }),
      b: fc.array(element, { minLength: n, maxLength: n }),
      roll: fc.integer({ min: 0, max: n - 1 }),
    }),
  )
  .map(({ rows, b, roll }) => {
    const n = rows.length;
    const heavy = rows.map((row, i) => row.map((value, j) => (i === j ? 11 * n + value : value)));
    return { a: heavy.map((_, i) => heavy[(i + roll) % n]!), b };
  });

describe("solveDense", () => {
  it("agrees with mathjs", () => {
    fc.assert(
      fc.property(wellConditioned, ({ a, b }) => {
        const { x, residual, pivotRatio } = solveDense(a, b);
        const oracle = mathjsSolution(a, b);
        oracle.forEach((value, i) => expect(x[i]).toBeCloseTo(value, 12));
        expect(residual).toBeLessThan(1e-12);
        expect(pivotRatio).toBeGreaterThan(0.01);
        expect(pivotRatio).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("takes a flat matrix, and leaves it alone", () => {
    const flat = Float64Array.of(0, 1, 2, 3);
    expect([...solveDense(flat, [1, 8]).x]).toEqual([2.5, 1]);
    expect([...flat]).toEqual([0, 1, 2, 3]);
  });

  it("solves the Hilbert equations, as far as their condition leaves digits", () => {
    // The inverse of a Hilbert matrix is whole: sums of its rows for order 5, by Choi, Amer. Math. Monthly 90 (1983).
    const hilbert = Array.from({ length: 5 }, (_, i) =>
      Array.from({ length: 5 }, (_unused, j) => 1 / (i + j + 1)),
    );
    const { x } = solveDense(hilbert, [1, 1, 1, 1, 1]);
    [5, -120, 630, -1120, 630].forEach((value, i) => expect(x[i]! / value).toBeCloseTo(1, 10));
    // numpy 2.4.6: 1 / linalg.cond(hilbert(5), 1)
    expect(reciprocalCondition(hilbert)).toBeCloseTo(1.0597081987484613e-6, 15);
  });

  const exponents = fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 7, maxLength: 7 });

  it("gives the same digits whatever the units of the equations: rows times powers of two", () => {
    fc.assert(
      fc.property(wellConditioned, exponents, ({ a, b }, scale) => {
        const scaled = a.map((row, i) => row.map((value) => value * 2 ** scale[i]!));
        const one = solveDense(a, b);
        const other = solveDense(
          scaled,
          b.map((value, i) => value * 2 ** scale[i]!),
        );
        expect(other.pivotRatio).toBe(one.pivotRatio);
        expect(other.x).toEqual(one.x);
      }),
    );
  });

  it("solves as well whatever the units of the unknowns: columns times powers of two", () => {
    fc.assert(
      fc.property(wellConditioned, exponents, ({ a, b }, scale) => {
        const scaled = a.map((row) => row.map((value, j) => value * 2 ** scale[j]!));
        const one = solveDense(a, b);
        const other = solveDense(scaled, b);
        one.x.forEach((value, j) => expect(other.x[j]! * 2 ** scale[j]!).toBeCloseTo(value, 11));
      }),
    );
  });

  it("refines what badly matched units spoil", () => {
    const unit = 2 ** 33;
    const { x } = solveDense(
      [
        [77 * unit, 1e-9, 1e-9],
        [-8 * unit, 77, 0],
        [-10 * unit, 0, 77],
      ],
      [0, 0, 6],
    );
    const oracle = mathjsSolution(
      [
        [77, 1e-9, 1e-9],
        [-8, 77, 0],
        [-10, 0, 77],
      ],
      [0, 0, 6],
    );
    expect((x[0]! * unit) / oracle[0]!).toBeCloseTo(1, 12);
    expect(x[1]! / oracle[1]!).toBeCloseTo(1, 12);
    expect(x[2]! / oracle[2]!).toBeCloseTo(1, 12);
  });

  it("reports the fraction of a pivot that elimination leaves", () => {
    // By hand: 1.25 - 0.5 * 1 = 0.75 of 1.75, in any units.
    expect(
      solveDense(
        [
          [2, 1],
          [1, 1.25],
        ],
        [0, 0],
      ).pivotRatio,
    ).toBeCloseTo(0.75 / 1.75, 15);
    expect(
      solveDense(
        [
          [2e9, 1e-9],
          [1e3, 1.25e-15],
        ],
        [0, 0],
      ).pivotRatio,
    ).toBeCloseTo(0.75 / 1.75, 13);
    expect(
      solveDense(
        [
          [1e-12, 0],
          [0, 1],
        ],
        [0, 0],
      ).pivotRatio,
    ).toBe(1);
    expect(
      solveDense(
        [
          [1, 1],
          [1, 1 + 2 ** -40],
        ],
        [0, 0],
      ).pivotRatio,
    ).toBeCloseTo(2 ** -41, 20);
  });

  it("refuses singular equations, whatever their units", () => {
    const error = refusalOf(() =>
      solveDense(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 1],
      ),
    );
    expect(error.code).toBe("singular");
    expect(error.message).toBe(
      "solveDense: the equations do not determine unknown 1 (ratio 0). Remove what is dependent, or add an equation.",
    );
    expect(
      refusalOf(() =>
        solveDense(
          [
            [1, 2],
            [0, 0],
          ],
          [1, 1],
        ),
      ).code,
    ).toBe("singular");
    expect(
      refusalOf(() =>
        solveDense(
          [
            [0, 1],
            [0, 2],
          ],
          [1, 1],
        ),
      ).code,
    ).toBe("singular");
    expect(
      refusalOf(() =>
        solveDense(
          [
            [1e9, 2e-9],
            [0.1, 0.2e-18],
          ],
          [1, 1],
        ),
      ).code,
    ).toBe("singular");
    expect(
      refusalOf(() =>
        solveDense(
          [
            [1, 2, 3],
            [4, 5, 6],
            [7, 8, 9],
          ],
          [1, 1, 1],
        ),
      ).code,
    ).toBe("singular");
    // Far apart in units, and sound.
    expect(
      solveDense(
        [
          [1e9, 0],
          [0, 1e-12],
        ],
        [1e9, 1e-12],
      ).x,
    ).toEqual(Float64Array.of(1, 1));
  });

  it("refuses what is not a square system of finite numbers", () => {
    expect(refusalOf(() => solveDense([[1, 2]], [1])).message).toBe(
      "solveDense: the matrix is not square. Pass its rows, or a Float64Array with row after row.",
    );
    expect(refusalOf(() => solveDense([[1, 2], [3]], [1, 1])).code).toBe("bad-argument");
    expect(refusalOf(() => solveDense([], [])).code).toBe("bad-argument");
    expect(refusalOf(() => solveDense(new Float64Array(3), [1])).code).toBe("bad-argument");
    expect(refusalOf(() => solveDense([[1]], [1, 2])).message).toBe(
      "solveDense: b has 2 elements. Pass 1, one for each equation.",
    );
    expect(
      refusalOf(() =>
        solveDense(
          [
            [1, 2],
            [3, NaN],
          ],
          [1, 1],
        ),
      ).message,
    ).toBe("solveDense: a[1][1] = NaN is not finite. Pass a finite number.");
    expect(refusalOf(() => solveDense([[1]], [Infinity])).message).toBe(
      "solveDense: b[0] = Infinity is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => solveDense([[1e-200]], [1e200])).message).toBe(
      "solveDense: x[0] = Infinity is not finite. Pass a finite number.",
    );
  });
});

describe("luFactors and luSolve", () => {
  it("solve for many right-hand sides, into the room given", () => {
    const factors = luFactors([
      [2, 1],
      [1, 3],
    ]);
    const x = new Float64Array(2);
    expect(luSolve(factors, [3, 4], x)).toBe(x);
    expect([...x]).toEqual([1, 1]);
    expect([...luSolve(factors, [4, 7])]).toEqual([1, 2]);
    expect(factors.size).toBe(2);
  });

  it("refuse under their own names", () => {
    expect(refusalOf(() => luFactors([[0]])).message).toMatch(
      /^luFactors: the equations do not determine unknown 0/,
    );
    expect(refusalOf(() => luSolve(luFactors([[1]]), [NaN])).message).toMatch(
      /^luSolve: b\[0\] = NaN/,
    );
  });
});

describe("reciprocalCondition", () => {
  it("agrees with the norms of mathjs", () => {
    fc.assert(
      fc.property(wellConditioned, ({ a }) => {
        const oracle = 1 / (oneNorm(a) * oneNorm(mathjsInverse(a)));
        expect(reciprocalCondition(a) / oracle).toBeCloseTo(1, 12);
      }),
    );
  });

  it("is 1 for the identity, flat or not", () => {
    expect(reciprocalCondition(Float64Array.of(1, 0, 0, 1))).toBe(1);
    expect(
      reciprocalCondition([
        [1, 0],
        [0, 4],
      ]),
    ).toBe(0.25);
  });
});
