import { NumericsError } from "../numerics-error.ts";
import { requireFinite } from "../requirement.ts";
import { checkedMatrix, requireVector, singular } from "./matrix.ts";
import type { Matrix } from "./matrix.ts";

const where = "leastSquares";

/** A fit and how far it may be trusted. */
export interface LeastSquaresReport {
  /** The coefficients. */
  readonly x: Float64Array;
  /** b - A x, one for each observation. */
  readonly residuals: Float64Array;
  /** The root of the sum of the squared residuals. */
  readonly residualNorm: number;
  /** Observations less coefficients; 0 leaves nothing to judge the fit by. */
  readonly degreesOfFreedom: number;
  /**
   * The smallest, over the columns, of the part of a column that the ones before it do not explain (0 to 1): the
   * sine of the angle between them. Units do not matter. Digits are lost as it falls towards 1e-16.
   */
  readonly independence: number;
  /**
   * The inverse of AᵀA, row after row. Times the variance of an observation it is the covariance of the
   * coefficients; `residualNorm² / degreesOfFreedom` estimates that variance where it is not known.
   */
  readonly unscaledCovariance: Float64Array;
}

/**
 * Finds the x that makes the sum of the squares of b - A x least, by Householder reflections.
 *
 * For weighted observations multiply each row of A and of b by 1 / (standard deviation) beforehand.
 *
 * @param a - One row for each observation, one column for each coefficient, as rows or flat; copied.
 * @param b - The observations, at least as many as coefficients.
 * @returns The coefficients, the residuals and their covariance.
 * @throws {@link NumericsError} `singular` where columns are dependent, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { leastSquares } from "@leat/numerics";
 *
 * // A line through (0, 1), (1, 3), (2, 5), (3, 8).
 * const { x, residualNorm } = leastSquares([[1, 0], [1, 1], [1, 2], [1, 3]], [1, 3, 5, 8]);
 * [...x].map((c) => c.toFixed(6)); // => ["0.800000", "2.300000"]
 * residualNorm.toFixed(6); // => "0.547723"
 * ```
 * @see G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, section 5.2.
 */
export function leastSquares(a: Matrix, b: ArrayLike<number>): LeastSquaresReport {
  const m = b.length;
  requireVector(where, "b", b, m);
  const { elements: q, columns: n } = checkedMatrix(where, a, m);
  if (m < n) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${m} observations cannot fix ${n} coefficients. Observe more, or fit fewer.`,
      { where, observations: m, coefficients: n },
    );
  }
  const original = q.slice();
  const projected = Float64Array.from(b);
  const diagonal = new Float64Array(n);
  let independence = 1;
  for (let k = 0; k < n; k++) {
    const whole = norm(original, n, k, 0, m);
    const rest = norm(q, n, k, k, m);
    const unexplained = whole > 0 ? rest / whole : 0;
    if (!(unexplained > m * Number.EPSILON)) throw singular(where, k, unexplained);
    independence = Math.min(independence, unexplained);

    // The reflection I + v vᵀ / (v₀ r), with v the column less r, sends the column to r on the diagonal; r takes the sign that cancels no digits.
    const r = q[k * n + k]! > 0 ? -rest : rest;
    diagonal[k] = r;
    q[k * n + k] = q[k * n + k]! - r;
    const divisor = q[k * n + k]! * r;
    for (let j = k + 1; j < n; j++) {
      let dot = 0;
      for (let i = k; i < m; i++) dot += q[i * n + k]! * q[i * n + j]!;
      const factor = dot / divisor;
      for (let i = k; i < m; i++) q[i * n + j] = q[i * n + j]! + factor * q[i * n + k]!;
    }
    let dot = 0;
    for (let i = k; i < m; i++) dot += q[i * n + k]! * projected[i]!;
    const factor = dot / divisor;
    for (let i = k; i < m; i++) projected[i] = projected[i]! + factor * q[i * n + k]!;
  }

  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let sum = projected[i]!;
    for (let j = i + 1; j < n; j++) sum -= q[i * n + j]! * x[j]!;
    x[i] = sum / diagonal[i]!;
    requireFinite(where, `x[${i}]`, x[i]!);
  }
  const residuals = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    let left = b[i]!;
    for (let j = 0; j < n; j++) left -= original[i * n + j]! * x[j]!;
    residuals[i] = left;
  }
  const residualNorm = norm(residuals, 1, 0, 0, m);
  requireFinite(where, "residualNorm", residualNorm);
  return {
    x,
    residuals,
    residualNorm,
    degreesOfFreedom: m - n,
    independence,
    unscaledCovariance: inverseOfSquare(q, diagonal, n),
  };
}

// The length of a column from one row to another, scaled so that squares neither overflow nor vanish.
function norm(a: Float64Array, columns: number, column: number, from: number, to: number): number {
  let largest = 0;
  for (let i = from; i < to; i++) largest = Math.max(largest, Math.abs(a[i * columns + column]!));
  if (largest === 0) return 0;
  let sum = 0;
  for (let i = from; i < to; i++) {
    const part = a[i * columns + column]! / largest;
    sum += part * part;
  }
  return largest * Math.sqrt(sum);
}

// (RᵀR)^-1 from the triangle R, whose diagonal is kept apart.
function inverseOfSquare(q: Float64Array, diagonal: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    inverse[k * n + k] = 1 / diagonal[k]!;
    for (let i = k - 1; i >= 0; i--) {
      let sum = 0;
      for (let j = i + 1; j <= k; j++) sum -= q[i * n + j]! * inverse[j * n + k]!;
      inverse[i * n + k] = sum / diagonal[i]!;
    }
  }
  const product = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += inverse[i * n + k]! * inverse[j * n + k]!;
      requireFinite(where, `unscaledCovariance[${i}][${j}]`, sum);
      product[i * n + j] = sum;
      product[j * n + i] = sum;
    }
  }
  return product;
}
