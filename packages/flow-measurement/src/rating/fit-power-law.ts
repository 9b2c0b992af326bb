import { leastSquares } from "@leat/numerics";

import { logFlow, type PowerLaw, type PowerRow, powerRow } from "./power-law.ts";

/** What is made least: squares of differences of ln Q, or of Q. */
export type RatingFit = "logarithms" | "flows";

/** A least-squares fit at stages of zero flow that are given. */
export interface PowerFit {
  /** The segments. */
  readonly law: PowerLaw;
  /** a, then each bⱼ. */
  readonly theta: Float64Array;
  /** Row of each gauging. */
  readonly rows: readonly PowerRow[];
  /** ln Q less that of the rating, or Q less that of the rating, of each gauging. */
  readonly residuals: Float64Array;
  /** Sum of the squares of the residuals. */
  readonly squares: number;
}

/**
 * Fits the flow at the reference depth and the exponents.
 *
 * @param law - The segments.
 * @param h - Stages.
 * @param q - Flows, above zero.
 * @param fit - What is made least.
 * @returns The fit, or nothing where the search for the least squares of flows did not end.
 * @throws NumericsError `singular` where the stages do not determine the exponents.
 */
export function fitPowerLaw(
  law: PowerLaw,
  h: Float64Array,
  q: Float64Array,
  fit: RatingFit,
): PowerFit | undefined {
  const rows = Array.from(h, (stage) => powerRow(law, stage));
  const { x, residuals, residualNorm } = leastSquares(
    rows.map(({ g }) => [1, ...g]),
    q.map(Math.log),
  );
  const straight = { law, theta: x, rows, residuals, squares: residualNorm * residualNorm };
  return fit === "logarithms" ? straight : refine(straight, q);
}

// The least squares of the flows themselves, by Levenberg and Marquardt's steps from those of the logarithms.
function refine(start: PowerFit, q: Float64Array): PowerFit | undefined {
  const { rows } = start;
  const residualsAt = (theta: ArrayLike<number>): Float64Array =>
    q.map((flow, i) => flow - Math.exp(logFlow(theta, rows[i]!.g)));
  let theta = start.theta;
  let residuals = residualsAt(theta);
  let squares = sumOfSquares(residuals);
  const n = theta.length;
  let damping = 1e-3;
  for (let pass = 0; pass < 300; pass++) {
    const jacobian = rows.map(({ g }, i) => {
      const flow = q[i]! - residuals[i]!;
      return [flow, ...g.map((each) => each * flow)];
    });
    // Damping in proportion to each column, so that no unit is in it.
    for (let j = 0; j < n; j++) {
      let length = 0;
      for (let i = 0; i < rows.length; i++) length = Math.hypot(length, jacobian[i]![j]!);
      const row: number[] = Array.from({ length: n }, () => 0);
      row[j] = Math.sqrt(damping) * length;
      jacobian.push(row);
    }
    const { x: step } = leastSquares(jacobian, [...residuals, ...new Float64Array(n)]);
    const next = theta.map((value, j) => value + step[j]!);
    const nextResiduals = residualsAt(next);
    const nextSquares = sumOfSquares(nextResiduals);
    const small = step.every((value) => Math.abs(value) <= 1e-11);
    // Equal to rounding is no rise: the last steps change nothing that can be seen in the sum.
    if (nextSquares <= squares * (1 + 1e-12)) {
      theta = next;
      residuals = nextResiduals;
      squares = nextSquares;
      damping = Math.max(damping / 10, 1e-12);
      if (small) return { ...start, theta, residuals, squares };
    } else {
      if (small) return { ...start, theta, residuals, squares };
      damping *= 10;
      if (damping > 1e12) return undefined;
    }
  }
  return undefined;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

/**
 * Change of what a residual is taken of, ln Q or Q, for a change of ln Q by 1.
 *
 * @param at - The fit.
 * @param fit - What was made least.
 * @param i - The gauging.
 * @returns 1, or the flow of the rating.
 */
export function weightOf({ theta, rows }: PowerFit, fit: RatingFit, i: number): number {
  return fit === "logarithms" ? 1 : Math.exp(logFlow(theta, rows[i]!.g));
}

/**
 * Change of ln Q of the rating with the stage of zero flow that several segments share.
 *
 * @param theta - a, then each bⱼ.
 * @param row - Row of the stage.
 * @param shares - Which segments share it.
 * @returns The change.
 */
export function zeroSlope(
  theta: ArrayLike<number>,
  row: PowerRow,
  shares: readonly boolean[],
): number {
  let sum = 0;
  for (let j = 0; j < shares.length; j++) if (shares[j]) sum += theta[j + 1]! * row.dZero[j]!;
  return sum;
}
