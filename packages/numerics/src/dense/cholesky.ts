import { NumericsError } from "../numerics-error.ts";
import { requireFinite } from "../requirement.ts";
import { checkedMatrix, requireVector } from "./matrix.ts";
import type { Matrix } from "./matrix.ts";

const where = "solveCholesky";

/** A solution of symmetric equations and how far it may be trusted. */
export interface CholeskyReport {
  /** The unknowns. */
  readonly x: Float64Array;
  /**
   * The smallest of each pivot over its own diagonal element, so that units do not matter: what is left of an
   * unknown once the others are known. 1 is best; at n units in the last place the matrix counts as indefinite.
   */
  readonly pivotRatio: number;
}

/**
 * Solves a small full system A x = b where A is symmetric and positive definite.
 *
 * Half the work of {@link solveDense}, and a check: a matrix that ought to be positive definite and is not is refused.
 *
 * @param a - The square matrix, as rows or flat; copied. Both halves are read and must agree to rounding.
 * @param b - Right-hand side.
 * @returns The unknowns and the pivot ratio.
 * @throws {@link NumericsError} `not-symmetric`, `not-positive-definite`, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { solveCholesky } from "@leat/numerics";
 *
 * [...solveCholesky([[4, 2], [2, 2]], [6, 4]).x]; // => [1, 1]
 * ```
 * @see G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, section 4.2.
 */
export function solveCholesky(a: Matrix, b: ArrayLike<number>): CholeskyReport {
  const { elements: l, columns: n } = checkedMatrix(where, a);
  requireVector(where, "b", b, n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const below = l[i * n + j]!;
      const above = l[j * n + i]!;
      if (
        Math.abs(below - above) >
        8 * Number.EPSILON * Math.max(Math.abs(below), Math.abs(above))
      ) {
        throw new NumericsError(
          "not-symmetric",
          `${where}: a[${i}][${j}] = ${below} but a[${j}][${i}] = ${above}. Use solveDense.`,
          { where, row: i, column: j, below, above },
        );
      }
    }
  }

  let pivotRatio = 1;
  for (let j = 0; j < n; j++) {
    const diagonal = l[j * n + j]!;
    let pivot = diagonal;
    for (let k = 0; k < j; k++) pivot -= l[j * n + k]! * l[j * n + k]!;
    const ratio = pivot / diagonal;
    if (!(diagonal > 0 && ratio > n * Number.EPSILON)) {
      throw new NumericsError(
        "not-positive-definite",
        `${where}: pivot ${j} = ${pivot} is not above zero. Check the matrix, or use solveDense.`,
        { where, column: j, pivot },
      );
    }
    pivotRatio = Math.min(pivotRatio, ratio);
    const root = Math.sqrt(pivot);
    l[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = l[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      l[i * n + j] = sum / root;
    }
  }

  const x = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
    requireFinite(where, `x[${i}]`, x[i]!);
  }
  return { x, pivotRatio };
}
