import { NumericsError } from "../numerics-error.ts";
import { requireFinite } from "../requirement.ts";

/** A matrix as rows, or flat, row after row. */
export type Matrix = Float64Array | readonly ArrayLike<number>[];

/**
 * Checks and copies a matrix.
 *
 * @param where - The public function that asks.
 * @param a - The matrix.
 * @param rows - How many rows it must have; absent, it must be square.
 * @returns The elements, row after row, and the number of columns.
 */
export function checkedMatrix(
  where: string,
  a: Matrix,
  rows?: number,
): { readonly elements: Float64Array; readonly columns: number } {
  const m = rows ?? (a instanceof Float64Array ? Math.sqrt(a.length) : a.length);
  const columns =
    a instanceof Float64Array ? a.length / m : rows === undefined ? m : (a[0]?.length ?? 0);
  if (
    !(Number.isInteger(m) && Number.isInteger(columns) && m >= 1 && columns >= 1) ||
    (!(a instanceof Float64Array) && (a.length !== m || a.some((row) => row.length !== columns)))
  ) {
    throw new NumericsError(
      "bad-argument",
      `${where}: the matrix is not ${rows === undefined ? "square" : `${rows} equal rows`}. ` +
        "Pass its rows, or a Float64Array with row after row.",
      { where, length: a.length, rows },
    );
  }
  const elements = new Float64Array(m * columns);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < columns; j++) {
      const value = a instanceof Float64Array ? a[i * columns + j]! : a[i]![j]!;
      requireFinite(where, `a[${i}][${j}]`, value);
      elements[i * columns + j] = value;
    }
  }
  return { elements, columns };
}

/**
 * Checks a vector.
 *
 * @param where - The public function that asks.
 * @param name - The vector's name.
 * @param b - The vector.
 * @param n - How many elements it must have.
 */
export function requireVector(where: string, name: string, b: ArrayLike<number>, n: number): void {
  if (b.length !== n) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${name} has ${b.length} elements. Pass ${n}, one for each equation.`,
      { where, name, length: b.length, equations: n },
    );
  }
  for (let i = 0; i < n; i++) requireFinite(where, `${name}[${i}]`, b[i]!);
}

/**
 * The error for dependent equations.
 *
 * @param where - The public function that found them.
 * @param column - The unknown that the others leave undetermined.
 * @param ratio - How close to dependent they are.
 * @returns The error, to be thrown.
 */
export function singular(where: string, column: number, ratio: number): NumericsError {
  return new NumericsError(
    "singular",
    `${where}: the equations do not determine unknown ${column} (ratio ${ratio}). ` +
      "Remove what is dependent, or add an equation.",
    { where, column, ratio },
  );
}
