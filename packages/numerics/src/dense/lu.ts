import { binaryExponent } from "../binary-exponent.ts";
import { requireFinite } from "../requirement.ts";
import { checkedMatrix, requireVector, singular } from "./matrix.ts";
import type { Matrix } from "./matrix.ts";

/** A square matrix as triangular factors, to solve with many right-hand sides. */
export interface LuFactors {
  /** Number of equations. */
  readonly size: number;
  /** Both factors of the scaled matrix in one, row after row; the lower one's diagonal of ones is left out. */
  readonly factors: Float64Array;
  /** Which equation became row i. */
  readonly order: Int32Array;
  /** Power of two by which each equation was multiplied. */
  readonly rowScale: Float64Array;
  /** Power of two by which each unknown's column was multiplied. */
  readonly columnScale: Float64Array;
  /**
   * The smallest pivot over the largest, after scaling, so that units do not matter: about the fraction of the
   * digits' worth that is left. 1 is best; at `size` units in the last place the matrix counts as singular.
   */
  readonly pivotRatio: number;
}

/** A solution of linear equations and how far it may be trusted. */
export interface DenseReport {
  /** The unknowns. */
  readonly x: Float64Array;
  /** See {@link LuFactors}: digits are lost as this falls towards 1e-16. */
  readonly pivotRatio: number;
  /** The largest |b - A x|, in the units of b. */
  readonly residual: number;
}

/**
 * Factorises a square matrix by elimination with row exchanges, after scaling rows and columns by powers of two.
 *
 * For small full matrices: the work is n^3 / 3 multiplications.
 *
 * @param a - The matrix, as rows or flat; copied.
 * @returns The factors.
 * @throws {@link NumericsError} `singular`, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { luFactors, luSolve } from "@leat/numerics";
 *
 * const factors = luFactors([[2, 1], [1, 3]]);
 * [...luSolve(factors, [3, 4])]; // => [1, 1]
 * [...luSolve(factors, [4, 7])]; // => [1, 2]
 * ```
 * @see G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, section 3.4.
 */
export function luFactors(a: Matrix): LuFactors {
  return factorise("luFactors", a);
}

/**
 * Solves A x = b with factors of A. Allocates nothing if given room for x.
 *
 * @param lu - From {@link luFactors}.
 * @param b - Right-hand side, finite.
 * @param x - Room for the unknowns, other than `b`. Default: a new array.
 * @returns The unknowns, in `x`.
 * @throws {@link NumericsError} `non-finite`, `bad-argument`.
 */
export function luSolve(
  lu: LuFactors,
  b: ArrayLike<number>,
  x: Float64Array = new Float64Array(lu.size),
): Float64Array {
  return substitute("luSolve", lu, b, x);
}

/**
 * Solves a small full system A x = b.
 *
 * @param a - The square matrix, as rows or flat; copied.
 * @param b - Right-hand side.
 * @returns The unknowns, the pivot ratio and the residual.
 * @throws {@link NumericsError} `singular`, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { solveDense } from "@leat/numerics";
 *
 * const { x, residual } = solveDense([[2, 1], [1, 3]], [3, 4]);
 * [...x]; // => [1, 1]
 * residual; // => 0
 * ```
 */
export function solveDense(a: Matrix, b: ArrayLike<number>): DenseReport {
  const lu = factorise("solveDense", a);
  const n = lu.size;
  const x = substitute("solveDense", lu, b, new Float64Array(n));
  let residual = 0;
  for (let i = 0; i < n; i++) {
    let left = b[i]!;
    for (let j = 0; j < n; j++) {
      left -= (a instanceof Float64Array ? a[i * n + j]! : a[i]![j]!) * x[j]!;
    }
    residual = Math.max(residual, Math.abs(left));
  }
  requireFinite("solveDense", "residual", residual);
  return { x, pivotRatio: lu.pivotRatio, residual };
}

/**
 * The reciprocal of a square matrix's condition number, 1 / (|A| |A^-1|) in the 1-norm, from its whole inverse.
 *
 * A relative change of b or A may come out multiplied by the condition number in x. It depends on the units of
 * equations and unknowns; {@link LuFactors.pivotRatio} does not.
 *
 * @param a - The matrix, as rows or flat.
 * @returns Between 0 and 1.
 * @throws {@link NumericsError} `singular`, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { reciprocalCondition } from "@leat/numerics";
 *
 * reciprocalCondition([[1, 0], [0, 4]]); // => 0.25
 * ```
 */
export function reciprocalCondition(a: Matrix): number {
  const where = "reciprocalCondition";
  const lu = factorise(where, a);
  const n = lu.size;
  const unit = new Float64Array(n);
  const x = new Float64Array(n);
  let norm = 0;
  let inverseNorm = 0;
  for (let j = 0; j < n; j++) {
    let column = 0;
    for (let i = 0; i < n; i++) {
      column += Math.abs(a instanceof Float64Array ? a[i * n + j]! : a[i]![j]!);
    }
    unit.fill(0);
    unit[j] = 1;
    substitute(where, lu, unit, x);
    let inverseColumn = 0;
    for (let i = 0; i < n; i++) inverseColumn += Math.abs(x[i]!);
    norm = Math.max(norm, column);
    inverseNorm = Math.max(inverseNorm, inverseColumn);
  }
  const reciprocal = 1 / norm / inverseNorm;
  requireFinite(where, "the reciprocal condition", reciprocal);
  return reciprocal;
}

/** Elimination, for whichever function asks. */
function factorise(where: string, a: Matrix): LuFactors {
  const { elements: lu, columns: n } = checkedMatrix(where, a);
  const rowScale = new Float64Array(n);
  const columnScale = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let largest = 0;
    for (let j = 0; j < n; j++) largest = Math.max(largest, Math.abs(lu[i * n + j]!));
    const scale = inversePower(largest);
    rowScale[i] = scale;
    for (let j = 0; j < n; j++) lu[i * n + j] = lu[i * n + j]! * scale;
  }
  for (let j = 0; j < n; j++) {
    let largest = 0;
    for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(lu[i * n + j]!));
    const scale = inversePower(largest);
    columnScale[j] = scale;
    for (let i = 0; i < n; i++) lu[i * n + j] = lu[i * n + j]! * scale;
  }

  const order = new Int32Array(n);
  for (let i = 0; i < n; i++) order[i] = i;
  let smallest = Infinity;
  let largest = 0;
  for (let k = 0; k < n; k++) {
    let pivotRow = k;
    for (let i = k + 1; i < n; i++) {
      if (Math.abs(lu[i * n + k]!) > Math.abs(lu[pivotRow * n + k]!)) pivotRow = i;
    }
    if (pivotRow !== k) {
      for (let j = 0; j < n; j++) {
        const held = lu[k * n + j]!;
        lu[k * n + j] = lu[pivotRow * n + j]!;
        lu[pivotRow * n + j] = held;
      }
      const held = order[k]!;
      order[k] = order[pivotRow]!;
      order[pivotRow] = held;
    }
    const pivot = lu[k * n + k]!;
    smallest = Math.min(smallest, Math.abs(pivot));
    largest = Math.max(largest, Math.abs(pivot));
    const ratio = smallest / Math.max(1, largest);
    if (!(ratio > n * Number.EPSILON)) throw singular(where, k, ratio);
    for (let i = k + 1; i < n; i++) {
      const multiplier = lu[i * n + k]! / pivot;
      lu[i * n + k] = multiplier;
      if (multiplier === 0) continue;
      for (let j = k + 1; j < n; j++) lu[i * n + j] = lu[i * n + j]! - multiplier * lu[k * n + j]!;
    }
  }
  return {
    size: n,
    factors: lu,
    order,
    rowScale,
    columnScale,
    pivotRatio: smallest / largest,
  };
}

/** Forward and backward substitution, for whichever function asks. */
function substitute(
  where: string,
  lu: LuFactors,
  b: ArrayLike<number>,
  x: Float64Array,
): Float64Array {
  const { size: n, factors, order, rowScale, columnScale } = lu;
  requireVector(where, "b", b, n);
  for (let i = 0; i < n; i++) {
    const row = order[i]!;
    let sum = b[row]! * rowScale[row]!;
    for (let j = 0; j < i; j++) sum -= factors[i * n + j]! * x[j]!;
    x[i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < n; j++) sum -= factors[i * n + j]! * x[j]!;
    x[i] = sum / factors[i * n + i]!;
  }
  for (let i = 0; i < n; i++) {
    x[i] = x[i]! * columnScale[i]!;
    requireFinite(where, `x[${i}]`, x[i]!);
  }
  return x;
}

/** The power of two that brings a size to between 1 and 2. */
function inversePower(size: number): number {
  return size === 0 ? 1 : 2 ** -binaryExponent(size);
}
