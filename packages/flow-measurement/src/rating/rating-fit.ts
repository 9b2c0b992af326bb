import { leastSquares, normalQuantile, studentQuantile } from "@leat/numerics";

import { type PowerFit, type RatingFit, weightOf, zeroSlope } from "./fit-power-law.ts";
import { logFlow, type PowerRow, powerRow } from "./power-law.ts";

/** What is known of the parameters of a fit, and of the scatter about it: numbers in metres and seconds. */
export interface FitStatistics {
  /** The fit. */
  readonly fit: PowerFit;
  /** What was made least. */
  readonly by: RatingFit;
  /** Which segments have the zero that was found; none where it was given. */
  readonly shares: readonly boolean[];
  /** Gaugings less parameters. */
  readonly degreesOfFreedom: number;
  /** Standard deviation of a gauging about the rating: of ln Q, or of Q. */
  readonly scatter: number;
  /** Part of the variance of ln Q, or of Q, that the rating explains. */
  readonly determination: number;
  /** Row of the design of each gauging: change of ln Q, or of Q, with each parameter. */
  readonly design: readonly (readonly number[])[];
  /** Covariance of the parameters over the square of the scatter: a, each bⱼ, the zero that was found. */
  readonly unscaled: readonly (readonly number[])[];
}

/**
 * Covariance and scatter of a fit, linear about its parameters.
 *
 * @param fit - The fit.
 * @param by - What was made least.
 * @param q - Flows.
 * @param shares - Which segments have the zero that was found.
 * @returns The statistics.
 * @throws NumericsError `singular` where the parameters cannot be told apart.
 */
export function fitStatistics(
  fit: PowerFit,
  by: RatingFit,
  q: Float64Array,
  shares: readonly boolean[],
): FitStatistics {
  const design = fit.rows.map((row, i) =>
    gradient(fit, row, shares).map((each) => each * weightOf(fit, by, i)),
  );
  const { unscaledCovariance: flat, degreesOfFreedom } = leastSquares(design, fit.residuals);
  const p = design[0]!.length;
  const unscaled = Array.from({ length: p }, (_, i) =>
    Array.from(flat.subarray(i * p, (i + 1) * p)),
  );
  const values = by === "logarithms" ? q.map(Math.log) : q;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const about = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return {
    fit,
    by,
    shares,
    degreesOfFreedom,
    scatter: Math.sqrt(fit.squares / degreesOfFreedom),
    determination: 1 - fit.squares / about,
    design,
    unscaled,
  };
}

/** Change of ln Q with a, each bⱼ and, where it was found, the zero. */
function gradient({ theta }: PowerFit, row: PowerRow, shares: readonly boolean[]): number[] {
  const change = [1, ...row.g];
  if (shares.includes(true)) change.push(zeroSlope(theta, row, shares));
  return change;
}

/** A flow of the rating and what it may be off by. */
export interface RatedFlow {
  /** Flow of the rating. */
  readonly flow: number;
  /** Standard deviation of ln Q, or of Q, of the rating itself, over the scatter. */
  readonly spread: number;
}

/**
 * Flow at a stage, with the spread of the rating there.
 *
 * @param statistics - The fit.
 * @param h - A stage above the zero of its segment.
 * @returns Flow and spread.
 */
export function ratedFlow(statistics: FitStatistics, h: number): RatedFlow {
  const { fit, by, shares, unscaled } = statistics;
  const row = powerRow(fit.law, h);
  const flow = Math.exp(logFlow(fit.theta, row.g));
  const weight = by === "logarithms" ? 1 : flow;
  const change = gradient(fit, row, shares).map((each) => each * weight);
  return { flow, spread: Math.sqrt(form(unscaled, change, change)) };
}

/**
 * Residual of each gauging over its own standard deviation, the gauging itself left out of the scatter.
 *
 * @param statistics - The fit.
 * @returns One a gauging: it follows Student's distribution with one degree of freedom less. Absent where the scatter
 * is only rounding, where one degree of freedom is all there is, or where the gauging alone decides its parameter.
 * @see R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 1982, section 2.2.1.
 */
export function studentizedResiduals(statistics: FitStatistics): (number | undefined)[] {
  const { fit, scatter, degreesOfFreedom: n, design, unscaled } = statistics;
  const size = Math.max(...design.map(([flow]) => flow!));
  return design.map((row, i) => {
    const freedom = 1 - form(unscaled, row, row);
    if (n < 2 || scatter <= 1e-12 * size || freedom <= 1e-9) return undefined;
    const internal = fit.residuals[i]! / (scatter * Math.sqrt(freedom));
    const left = n - internal * internal;
    return left <= 1e-9 * n ? Math.sign(internal) * Infinity : internal * Math.sqrt((n - 1) / left);
  });
}

/**
 * The studentized residual beyond which a gauging lies outside the 95 % that the others set.
 *
 * @param statistics - The fit.
 * @returns Student's t; infinite where one degree of freedom is all there is.
 */
export function outlyingBeyond({ degreesOfFreedom }: FitStatistics): number {
  return degreesOfFreedom < 2 ? Infinity : studentQuantile(0.975, degreesOfFreedom - 1);
}

/**
 * Standard deviations of the parameters as independent parts, for quantities to carry.
 *
 * The covariance is taken apart by Cholesky in the order zero, exponents, flow: so the first part moves all three
 * as a wrong zero would, and the last the flow alone. It is enlarged by Student's t over the normal quantile, so that
 * 95 % of a quantity is 95 % of a fit with few gaugings.
 *
 * @param statistics - The fit.
 * @returns For each part, the change of a, each bⱼ and the zero; parts in the order of the parameters.
 */
export function parameterParts(statistics: FitStatistics): number[][] {
  const { scatter, degreesOfFreedom, unscaled } = statistics;
  const enlarged = (scatter * studentQuantile(0.975, degreesOfFreedom)) / normalQuantile(0.975);
  const p = unscaled.length;
  const order = Array.from({ length: p }, (_, k) => p - 1 - k);
  const parts: number[][] = Array.from({ length: p }, () => Array.from({ length: p }, () => 0));
  order.forEach((k, place) => {
    let pivot = unscaled[k]![k]!;
    for (const before of order.slice(0, place)) pivot -= parts[before]![k]! * parts[before]![k]!;
    const root = Math.sqrt(pivot);
    for (const j of order.slice(place)) {
      let sum = unscaled[j]![k]!;
      for (const before of order.slice(0, place)) sum -= parts[before]![j]! * parts[before]![k]!;
      parts[k]![j] = sum / root;
    }
  });
  return parts.map((part) => part.map((each) => each * enlarged));
}

/**
 * Change of the parameters where what was fitted to changes: ln Q, or Q, of each gauging. To the first order: what
 * a change of the stages does to the design is left out, which is as small beside it as the residuals are.
 *
 * @param statistics - The fit.
 * @param changes - One a gauging.
 * @returns Change of a, each bⱼ and the zero.
 */
export function parameterShift(statistics: FitStatistics, changes: Float64Array): number[] {
  const { design, unscaled } = statistics;
  const moved = unscaled.map((_, j) =>
    design.reduce((sum, row, i) => sum + row[j]! * changes[i]!, 0),
  );
  return unscaled.map((row) => row.reduce((sum, each, j) => sum + each * moved[j]!, 0));
}

// uᵀ C v
function form(
  c: readonly (readonly number[])[],
  u: readonly number[],
  v: readonly number[],
): number {
  let sum = 0;
  for (let i = 0; i < u.length; i++) {
    for (let j = 0; j < v.length; j++) sum += u[i]! * c[i]![j]! * v[j]!;
  }
  return sum;
}
