import { all, create } from "mathjs";

const math = create(all!);

/** The solution of A x = b, by mathjs. */
export function mathjsSolution(a: number[][], b: number[]): number[] {
  return math
    .matrix(math.lusolve(math.matrix(a), b))
    .toArray()
    .flat(2)
    .map(Number);
}

/** AᵀA, by mathjs. */
export function mathjsSquare(a: number[][]): number[][] {
  return a[0]!.map((_, j) =>
    mathjsProjection(
      a,
      a.map((row) => row[j]!),
    ),
  );
}

/** Aᵀb, by mathjs. */
export function mathjsProjection(a: number[][], b: number[]): number[] {
  return math
    .matrix(math.multiply(math.matrix(math.transpose(a)), math.matrix(b)))
    .toArray()
    .flat(2)
    .map(Number);
}

/** A^-1, by mathjs. */
export function mathjsInverse(a: number[][]): number[][] {
  return math.inv(a);
}

/** The largest sum of sizes in a column. */
export function oneNorm(a: number[][]): number {
  return Math.max(...a[0]!.map((_, j) => a.reduce((sum, row) => sum + Math.abs(row[j]!), 0)));
}
