import { NumericsError } from "../numerics-error.ts";
import { nonFiniteValue, requireCount, requireFinite, requireTolerance } from "../requirement.ts";
import {
  kronrodNodes,
  kronrodWeights,
  middleGaussWeight,
  middleKronrodWeight,
  sharedGaussWeights,
  sharedKronrodWeights,
  sharedNodes,
} from "./kronrod-15.ts";

const where = "integrate";

/** How closely an integral is wanted, and how much work it may take. */
export interface IntegrateOptions {
  /** Acceptable error, in the unit of the integral. Default 0. */
  readonly absTolerance?: number;
  /** Acceptable error as a fraction of the integral. Default 1e-10. */
  readonly relTolerance?: number;
  /** The cap on subdivisions; each halves the worst interval. Default 200. */
  readonly maxSubdivisions?: number;
  /** Return the report with `converged: false` at the cap, instead of throwing. Default false. */
  readonly returnUnconverged?: boolean;
}

/** An integral and how well it is known. */
export interface IntegralReport {
  /** The integral. */
  readonly value: number;
  /** What it may be off by: an estimate, usually far on the safe side. */
  readonly errorEstimate: number;
  /** Calls of the integrand. */
  readonly evaluations: number;
  /** Whether a tolerance was met; false only if asked for by `returnUnconverged`. */
  readonly converged: boolean;
}

/**
 * Integrates f from a to b by adaptive Gauss-Kronrod quadrature, 7 points inside 15.
 *
 * The interval with the largest error estimate is halved until the sum of the estimates is within a
 * tolerance, or within what rounding allows (50 units in the last place of the integral of |f|). The ends
 * themselves are never evaluated. Where f has a corner, split the integral there.
 *
 * @param f - The integrand; finite inside the interval.
 * @param a - From here.
 * @param b - To here; below a, the sign of the integral turns.
 * @param options - Tolerances and cap.
 * @returns The integral and its error estimate.
 * @throws {@link NumericsError} `non-finite`, `bad-argument`, and `not-converged` unless `returnUnconverged`.
 * @example
 * ```ts
 * import { integrate } from "@leat/numerics";
 *
 * const { value, evaluations } = integrate(Math.exp, 0, 1);
 * value.toFixed(12); // => "1.718281828459"
 * evaluations; // => 15
 * ```
 * @see R. Piessens, E. de Doncker-Kapenga, C. W. Ueberhuber, D. K. Kahaner, QUADPACK, Springer 1983.
 */
export function integrate(
  f: (x: number) => number,
  a: number,
  b: number,
  options: IntegrateOptions = {},
): IntegralReport {
  const {
    absTolerance = 0,
    relTolerance = 1e-10,
    maxSubdivisions = 200,
    returnUnconverged = false,
  } = options;
  requireFinite(where, "a", a);
  requireFinite(where, "b", b);
  requireFinite(where, "b - a", b - a);
  requireTolerance(where, "absTolerance", absTolerance);
  requireTolerance(where, "relTolerance", relTolerance);
  requireCount(where, "maxSubdivisions", maxSubdivisions);
  if (a === b) return { value: 0, errorEstimate: 0, evaluations: 0, converged: true };

  // [integral, error estimate, integral of |f|] of the interval measured last, and f at its 15 points.
  const result = new Float64Array(3);
  const ordinates = new Float64Array(15);
  applyRule(f, a, b, ordinates, result);
  let value = result[0]!;
  let errorEstimate = result[1]!;
  let tolerance = toleranceFor(value, result[2]!, absTolerance, relTolerance);
  if (errorEstimate <= tolerance) {
    return { value, errorEstimate, evaluations: 15, converged: true };
  }

  const intervals = new Intervals(maxSubdivisions + 1);
  intervals.put(0, a, b, result);
  let count = 1;
  let worst = 0;
  let middle = a + 0.5 * (b - a);
  while (count <= maxSubdivisions) {
    const start = intervals.from[worst]!;
    const end = intervals.to[worst]!;
    middle = start + 0.5 * (end - start);
    if (middle === start || middle === end) break;
    applyRule(f, start, middle, ordinates, result);
    intervals.put(worst, start, middle, result);
    applyRule(f, middle, end, ordinates, result);
    intervals.put(count, middle, end, result);
    count++;

    // Summed afresh: running sums would keep the rounding of estimates that no longer count.
    value = 0;
    errorEstimate = 0;
    let magnitude = 0;
    for (let i = 0; i < count; i++) {
      value += intervals.values[i]!;
      errorEstimate += intervals.errors[i]!;
      magnitude += intervals.magnitudes[i]!;
      if (intervals.errors[i]! > intervals.errors[worst]!) worst = i;
    }
    tolerance = toleranceFor(value, magnitude, absTolerance, relTolerance);
    if (errorEstimate <= tolerance) {
      return { value, errorEstimate, evaluations: 15 * (2 * count - 1), converged: true };
    }
  }
  const report = { value, errorEstimate, evaluations: 15 * (2 * count - 1), converged: false };
  if (returnUnconverged) return report;
  throw new NumericsError(
    "not-converged",
    `${where}: the error estimate is ${errorEstimate} after ${count - 1} subdivisions, above ${tolerance}; ` +
      `it is worst near ${middle}. Split the integral there, raise maxSubdivisions or loosen a tolerance.`,
    { where, ...report, near: middle },
  );
}

/** What was measured on each interval, as columns, so that subdividing allocates nothing. */
class Intervals {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly values: Float64Array;
  readonly errors: Float64Array;
  readonly magnitudes: Float64Array;

  constructor(size: number) {
    this.from = new Float64Array(size);
    this.to = new Float64Array(size);
    this.values = new Float64Array(size);
    this.errors = new Float64Array(size);
    this.magnitudes = new Float64Array(size);
  }

  put(i: number, from: number, to: number, result: Float64Array): void {
    this.from[i] = from;
    this.to[i] = to;
    this.values[i] = result[0]!;
    this.errors[i] = result[1]!;
    this.magnitudes[i] = result[2]!;
  }
}

// The acceptable error: what was asked for, but no less than the rounding of the sum.
function toleranceFor(
  value: number,
  magnitude: number,
  absTolerance: number,
  relTolerance: number,
): number {
  requireFinite(where, "the integral of |f|", magnitude);
  return Math.max(absTolerance, relTolerance * Math.abs(value), 50 * Number.EPSILON * magnitude);
}

// The rule on one interval: puts the integral, its error estimate and the integral of |f| into `result`.
// `ordinates` is room to work in.
function applyRule(
  f: (x: number) => number,
  a: number,
  b: number,
  ordinates: Float64Array,
  result: Float64Array,
): void {
  const half = 0.5 * (b - a);
  const middle = a + half;
  const fMiddle = finiteAt(f, middle);
  let kronrod = middleKronrodWeight * fMiddle;
  let gauss = middleGaussWeight * fMiddle;
  let magnitude = middleKronrodWeight * Math.abs(fMiddle);
  let next = 0;
  for (let i = 0; i < sharedNodes.length; i++) {
    const offset = half * sharedNodes[i]!;
    const left = finiteAt(f, middle - offset);
    const right = finiteAt(f, middle + offset);
    kronrod += sharedKronrodWeights[i]! * (left + right);
    gauss += sharedGaussWeights[i]! * (left + right);
    magnitude += sharedKronrodWeights[i]! * (Math.abs(left) + Math.abs(right));
    ordinates[next++] = left;
    ordinates[next++] = right;
  }
  for (let i = 0; i < kronrodNodes.length; i++) {
    const offset = half * kronrodNodes[i]!;
    const left = finiteAt(f, middle - offset);
    const right = finiteAt(f, middle + offset);
    kronrod += kronrodWeights[i]! * (left + right);
    magnitude += kronrodWeights[i]! * (Math.abs(left) + Math.abs(right));
    ordinates[next++] = left;
    ordinates[next++] = right;
  }

  // How far f strays from its mean is the largest error there could be.
  const mean = 0.5 * kronrod;
  let straying = middleKronrodWeight * Math.abs(fMiddle - mean);
  next = 0;
  for (let i = 0; i < sharedNodes.length; i++) {
    straying +=
      sharedKronrodWeights[i]! *
      (Math.abs(ordinates[next++]! - mean) + Math.abs(ordinates[next++]! - mean));
  }
  for (let i = 0; i < kronrodNodes.length; i++) {
    straying +=
      kronrodWeights[i]! *
      (Math.abs(ordinates[next++]! - mean) + Math.abs(ordinates[next++]! - mean));
  }

  // The two rules differ by the error of the poorer one. As in QUADPACK, the 3/2 power of that difference,
  // relative to the straying, stands for the error of the better one.
  const difference = Math.abs(kronrod - gauss);
  const relative = straying > 0 ? (200 * difference) / straying : 0;
  const error = relative < 1 ? straying * relative * Math.sqrt(relative) : straying;
  result[0] = kronrod * half;
  result[1] = error * Math.abs(half);
  result[2] = magnitude * Math.abs(half);
}

// f at x, refused if it is not finite.
function finiteAt(f: (x: number) => number, x: number): number {
  const value = f(x);
  if (!Number.isFinite(value)) throw nonFiniteValue(where, "f", x, value);
  return value;
}
