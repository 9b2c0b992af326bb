import { NumericsError, solveCholesky } from "@leat/numerics";

/** Covariances of quantities that share named sources. */
export function covariances(sources: readonly ReadonlyMap<string, number>[]): number[][] {
  return sources.map((a) =>
    sources.map((b) => {
      let sum = 0;
      for (const [id, c] of a) sum += c * (b.get(id) ?? 0);
      return sum;
    }),
  );
}

/**
 * A hundred-millionth of each variance is added to itself: members that are the same in everything would otherwise
 * leave the weights undetermined, and so each of them gets as much as the others.
 */
const own = 1e-8;

/** Correlations of the members, their own part made certain to be there. */
function correlations(v: readonly (readonly number[])[]): number[][] {
  return v.map((row, i) =>
    row.map((cov, j) =>
      i === j ? 1 + own : cov / Math.sqrt((v[i]?.[i] as number) * (v[j]?.[j] as number)),
    ),
  );
}

/**
 * Weights of a mean, none below zero and one together, that make its variance least.
 *
 * Without covariances they go as one over the variance. Where all members share a source alike they go as one over
 * what is left of the variance without it. Least squares alone would give weights below zero to a member that is
 * tightly bound to a better one, and a mean outside of all that was measured.
 *
 * The active-set method of Lawson and Hanson, on min ½·xᵀCx − bᵀx, x ≥ 0, whose solution is proportional to the weights.
 *
 * @param v - Covariances; variances above zero.
 * @returns The weights.
 * @see C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974, ch. 23
 */
export function leastVarianceWeights(v: readonly (readonly number[])[]): number[] {
  const n = v.length;
  const c = correlations(v);
  const smallest = Math.min(...v.map((row, i) => row[i] as number));
  const b = v.map((row, i) => Math.sqrt(smallest / (row[i] as number)));
  let x = b.map(() => 0);
  const inside = new Set<number>();
  const slope = (i: number): number =>
    (b[i] as number) - x.reduce((sum, xj, j) => sum + (c[i]?.[j] as number) * xj, 0);
  for (let round = 0; ; round++) {
    let next = -1;
    let steepest = 1e-10;
    for (let i = 0; i < n; i++) {
      const s = inside.has(i) ? 0 : slope(i);
      if (s > steepest) [next, steepest] = [i, s];
    }
    if (next < 0) break;
    if (round > 100 * n) {
      throw new NumericsError(
        "not-converged",
        `leastVarianceWeights: no weights were found in ${round} rounds.`,
        { where: "leastVarianceWeights", round },
      );
    }
    inside.add(next);
    for (;;) {
      const target = restricted(
        c,
        b,
        [...inside].toSorted((i, j) => i - j),
      );
      // How far towards the target each may go before its weight is gone.
      const reach = [...inside]
        .filter((i) => (target[i] as number) <= 0)
        .map((i) => [i, (x[i] as number) / ((x[i] as number) - (target[i] as number))] as const);
      if (reach.length === 0) {
        x = target;
        break;
      }
      const step = Math.min(...reach.map(([, far]) => far));
      x = x.map((xi, i) => xi + step * ((target[i] as number) - xi));
      for (const [i, far] of reach) {
        if (far > step) continue;
        inside.delete(i);
        x[i] = 0;
      }
    }
  }
  const weights = x.map((xi, i) => xi * (b[i] as number));
  const sum = weights.reduce((a, w) => a + w, 0);
  return weights.map((w) => w / sum);
}

/** The solution of C·x = b among some members, 0 elsewhere. */
function restricted(c: number[][], b: readonly number[], members: readonly number[]): number[] {
  const solved = solveCholesky(
    members.map((i) => members.map((j) => c[i]?.[j] as number)),
    members.map((i) => b[i] as number),
  ).x;
  const x = b.map(() => 0);
  members.forEach((i, k) => (x[i] = solved[k] as number));
  return x;
}

/**
 * Sum of squared differences from the best mean, over their covariances.
 *
 * @param values - The members.
 * @param v - Their covariances.
 * @returns χ².
 */
export function chiSquare(values: readonly number[], v: readonly (readonly number[])[]): number {
  const c = correlations(v);
  const u = v.map((row, i) => Math.sqrt(row[i] as number));
  const first = values[0] as number;
  const z = values.map((value, i) => (value - first) / (u[i] as number));
  const b = u.map((ui) => (u[0] as number) / ui);
  const [y, s] = [solveCholesky(c, z).x, solveCholesky(c, b).x];
  const dot = (p: ArrayLike<number>, q: readonly number[]): number =>
    q.reduce((sum, qi, i) => sum + qi * (p[i] as number), 0);
  const mean = dot(y, b) / dot(s, b);
  const r = z.map((zi, i) => zi - mean * (b[i] as number));
  return dot(solveCholesky(c, r).x, r);
}
