import { solveCholesky } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";
import { mathjsSolution, mathjsSquare } from "./mathjs-oracle.ts";

const element = fc.double({ min: -3, max: 3, noNaN: true });

describe("solveCholesky", () => {
  it("agrees with mathjs", () => {
    const problem = fc.integer({ min: 1, max: 6 }).chain((n) =>
      fc.record({
        m: fc.array(fc.array(element, { minLength: n, maxLength: n }), {
          minLength: n,
          maxLength: n,
        }),
        b: fc.array(element, { minLength: n, maxLength: n }),
      }),
    );
    fc.assert(
      fc.property(problem, ({ m, b }) => {
        const square = mathjsSquare(m);
        // MᵀM + I is symmetric and positive definite; made symmetric to the last digit, as its user would.
        const a = square.map((row, i) =>
          row.map((value, j) => (value + square[j]![i]!) / 2 + (i === j ? 1 : 0)),
        );
        const { x, pivotRatio } = solveCholesky(a, b);
        const oracle = mathjsSolution(a, b);
        oracle.forEach((value, i) => expect(x[i]).toBeCloseTo(value, 11));
        expect(pivotRatio).toBeGreaterThan(0);
        expect(pivotRatio).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("solves a case done by hand", () => {
    // L = [[2, 0], [1, 1]]
    const report = solveCholesky(
      [
        [4, 2],
        [2, 2],
      ],
      [6, 4],
    );
    expect([...report.x]).toEqual([1, 1]);
    expect(report.pivotRatio).toBe(0.5);
    expect([...solveCholesky(Float64Array.of(4, 2, 2, 2), [6, 4]).x]).toEqual([1, 1]);
  });

  it("refuses a matrix that is not symmetric", () => {
    const error = refusalOf(() =>
      solveCholesky(
        [
          [2, 1],
          [1.001, 2],
        ],
        [1, 1],
      ),
    );
    expect(error.code).toBe("not-symmetric");
    expect(error.message).toBe("solveCholesky: a[1][0] = 1.001 but a[0][1] = 1. Use solveDense.");
    // A last digit's difference is a rounding.
    expect(
      solveCholesky(
        [
          [2, 1],
          [1 + 2 ** -52, 2],
        ],
        [3, 3],
      ).x[0],
    ).toBeCloseTo(1, 14);
  });

  it("refuses a matrix that is not positive definite", () => {
    const error = refusalOf(() =>
      solveCholesky(
        [
          [1, 2],
          [2, 1],
        ],
        [1, 1],
      ),
    );
    expect(error.code).toBe("not-positive-definite");
    expect(error.message).toBe(
      "solveCholesky: pivot 1 = -3 is not above zero. Check the matrix, or use solveDense.",
    );
    expect(refusalOf(() => solveCholesky([[-1]], [1])).code).toBe("not-positive-definite");
    expect(refusalOf(() => solveCholesky([[0]], [1])).code).toBe("not-positive-definite");
    expect(
      refusalOf(() =>
        solveCholesky(
          [
            [1, 1],
            [1, 1],
          ],
          [1, 1],
        ),
      ).code,
    ).toBe("not-positive-definite");
  });

  it("refuses what is not a square system of finite numbers", () => {
    expect(refusalOf(() => solveCholesky([[1, 2]], [1])).code).toBe("bad-argument");
    expect(refusalOf(() => solveCholesky([[1]], [])).code).toBe("bad-argument");
    expect(refusalOf(() => solveCholesky([[NaN]], [1])).code).toBe("non-finite");
    expect(refusalOf(() => solveCholesky([[1e-200]], [1e200])).code).toBe("non-finite");
  });
});
