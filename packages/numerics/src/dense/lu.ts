import { binaryExponent } from "../binary-exponent.ts";
import { requireFinite } from "../requirement.ts";
import { checkedMatrix, requireVector, singular } from "./matrix.ts";
import type { Matrix } from "./matrix.ts";

// One is enough in theory, where the first solution has any digits at all; the second is for where it has few.
const refinements = 2;

/** A square matrix as triangular factors, to solve with many right-hand sides. */
export interface LuFactors {
  /** Number of equations. */
  readonly size: number;
  /** Both factors of the scaled matrix in one, row after row; the lower one's diagonal of ones is left out. */
  readonly factors: Float64Array;
  /** The scaled matrix itself, for refinement. */
  readonly scaled: Float64Array;
  /** Room to work in: what a solution leaves of the right-hand side. */
  readonly residual: Float64Array;
  /** Room to work in: what is added to a solution. */
  readonly correction: Float64Array;
  /** Which equation became row i. */
  readonly order: Int32Array;
  /** Power of two by which each equation was multiplied. */
  readonly rowScale: Float64Array;
  /** Power of two by which each unknown's column was multiplied. */
  readonly columnScale: Float64Array;
  /**
   * The smallest fraction of a pivot that elimination left of the terms it was added up from: 1 is best, and as
   * many decimals are lost as it begins with zeros; at `size` units in the last place the matrix counts as
   * singular. Being a fraction of like terms, it does not see in which units equations and unknowns are.
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
 * For small full matrices: the work grows with the cube of the size. {@link luSolve} refines each solution twice,
 * which makes up for an order of pivots that badly matched units can spoil.
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
 * @see G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, sections 3.4 and 3.5; R. D. Skeel,
 * Iterative refinement implies numerical stability for Gaussian elimination, Math. Comp. 35 (1980) 817-832.
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

// Elimination, for whichever function asks.
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

  const scaled = lu.slice();
  const order = new Int32Array(n);
  for (let i = 0; i < n; i++) order[i] = i;
  // The sum of the sizes of all terms that went into each element, to see what cancels.
  const sizes = lu.map(Math.abs);
  let pivotRatio = 1;
  for (let k = 0; k < n; k++) {
    let pivotRow = k;
    for (let i = k + 1; i < n; i++) {
      if (Math.abs(lu[i * n + k]!) > Math.abs(lu[pivotRow * n + k]!)) pivotRow = i;
    }
    if (pivotRow !== k) {
      swapRows(lu, n, k, pivotRow);
      swapRows(sizes, n, k, pivotRow);
      const held = order[k]!;
      order[k] = order[pivotRow]!;
      order[pivotRow] = held;
    }
    const pivot = lu[k * n + k]!;
    const ratio = pivot === 0 ? 0 : Math.abs(pivot) / sizes[k * n + k]!;
    if (!(ratio > n * Number.EPSILON)) throw singular(where, k, ratio);
    pivotRatio = Math.min(pivotRatio, ratio);
    for (let i = k + 1; i < n; i++) {
      const multiplier = lu[i * n + k]! / pivot;
      lu[i * n + k] = multiplier;
      if (multiplier === 0) continue;
      for (let j = k + 1; j < n; j++) {
        const term = multiplier * lu[k * n + j]!;
        lu[i * n + j] = lu[i * n + j]! - term;
        sizes[i * n + j] = sizes[i * n + j]! + Math.abs(term);
      }
    }
  }
  return {
    size: n,
    factors: lu,
    scaled,
    residual: new Float64Array(n),
    correction: new Float64Array(n),
    order,
    rowScale,
    columnScale,
    pivotRatio,
  };
}

// Exchanges two rows.
function swapRows(a: Float64Array, n: number, i: number, k: number): void {
  for (let j = 0; j < n; j++) {
    const held = a[i * n + j]!;
    a[i * n + j] = a[k * n + j]!;
    a[k * n + j] = held;
  }
}

// A solution and two refinements of it, for whichever function asks.
function substitute(
  where: string,
  lu: LuFactors,
  b: ArrayLike<number>,
  x: Float64Array,
): Float64Array {
  const { size: n, scaled, residual, correction, rowScale, columnScale } = lu;
  requireVector(where, "b", b, n);
  for (let i = 0; i < n; i++) residual[i] = b[i]! * rowScale[i]!;
  applyFactors(lu, residual, x);
  for (let i = 0; i < n; i++) requireFinite(where, `x[${i}]`, x[i]!);
  for (let pass = 0; pass < refinements; pass++) {
    for (let i = 0; i < n; i++) {
      let left = b[i]! * rowScale[i]!;
      for (let j = 0; j < n; j++) left -= scaled[i * n + j]! * x[j]!;
      residual[i] = left;
    }
    applyFactors(lu, residual, correction);
    for (let i = 0; i < n; i++) x[i] = x[i]! + correction[i]!;
  }
  for (let i = 0; i < n; i++) {
    x[i] = x[i]! * columnScale[i]!;
    requireFinite(where, `x[${i}]`, x[i]!);
  }
  return x;
}

// Forward and backward substitution, in the scaled system.
function applyFactors(lu: LuFactors, right: Float64Array, x: Float64Array): void {
  const { size: n, factors, order } = lu;
  for (let i = 0; i < n; i++) {
    let sum = right[order[i]!]!;
    for (let j = 0; j < i; j++) sum -= factors[i * n + j]! * x[j]!;
    x[i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < n; j++) sum -= factors[i * n + j]! * x[j]!;
    x[i] = sum / factors[i * n + i]!;
  }
}

// The power of two that brings a size to between 1 and 2.
function inversePower(size: number): number {
  return size === 0 ? 1 : 2 ** -binaryExponent(size);
}
