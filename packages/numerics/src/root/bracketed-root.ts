import { nonFiniteValue, requireInterval } from "../requirement.ts";
import {
  cappedRoot,
  closedBracket,
  halfWidthTolerance,
  requireRootOptions,
  requireSignChange,
  rootReport,
} from "./root-report.ts";
import type { RootOptions, RootReport } from "./root-report.ts";

const where = "bracketedRoot";

/**
 * Finds a root of f between two points where f has opposite signs.
 *
 * Chandrupatla's method: inverse quadratic interpolation where the last three points allow it, bisection
 * elsewhere. f is called once per iteration and twice before. f must be continuous: a jump across zero is
 * closed in on like a root, and only `residual` tells them apart.
 *
 * @param f - The function; finite on the whole interval.
 * @param lo - The lower end.
 * @param hi - The upper end, above `lo`.
 * @param options - Tolerances and cap.
 * @returns The root, its residual and its bracket.
 * @throws {@link NumericsError} `no-sign-change`, `non-finite`, `pole`, `bad-argument`, and `not-converged` unless `returnUnconverged`.
 * @example
 * ```ts
 * import { bracketedRoot } from "@leat/numerics";
 *
 * const { root, converged } = bracketedRoot((x) => x * x - 2, 0, 2);
 * root.toFixed(12); // => "1.414213562373"
 * converged; // => true
 * ```
 * @see T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
 * function without using derivatives, Advances in Engineering Software 28 (1997) 145-149.
 */
export function bracketedRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  options: RootOptions = {},
): RootReport {
  const {
    xTolerance = 0,
    fTolerance = 0,
    maxIterations = 200,
    returnUnconverged = false,
  } = options;
  requireInterval(where, lo, hi);
  requireRootOptions(where, xTolerance, fTolerance, maxIterations);
  const fLo = f(lo);
  if (!Number.isFinite(fLo)) throw nonFiniteValue(where, "f", lo, fLo);
  const fHi = f(hi);
  if (!Number.isFinite(fHi)) throw nonFiniteValue(where, "f", hi, fHi);
  if (Math.abs(fLo) <= fTolerance || Math.abs(fHi) <= fTolerance) {
    return rootReport(lo, fLo, hi, fHi, 0, true);
  }
  requireSignChange(where, lo, fLo, hi, fHi);

  // x1 is the newest point, x2 the other end of the bracket, x3 the point that was dropped.
  let x1 = hi;
  let f1 = fHi;
  let x2 = lo;
  let f2 = fLo;
  let x3 = 0;
  let f3 = 0;
  let fraction = 0.5;
  for (let iteration = 1; iteration <= maxIterations; iteration++) {
    const x = x1 + fraction * (x2 - x1);
    const fx = f(x);
    if (!Number.isFinite(fx)) throw nonFiniteValue(where, "f", x, fx);
    if (fx > 0 === f1 > 0) {
      x3 = x1;
      f3 = f1;
    } else {
      x3 = x2;
      f3 = f2;
      x2 = x1;
      f2 = f1;
    }
    x1 = x;
    f1 = fx;

    if (Math.abs(f1) <= fTolerance) return rootReport(x1, f1, x2, f2, iteration, true);
    const best = Math.abs(f1) < Math.abs(f2) ? x1 : x2;
    const least = halfWidthTolerance(best, xTolerance, hi - lo) / Math.abs(x2 - x1);
    if (least >= 0.5) {
      return closedBracket(where, rootReport(x1, f1, x2, f2, iteration, true), fLo, fHi);
    }

    // Interpolation is trusted where the parabola through the three points is monotone between the ends.
    const xi = (x1 - x2) / (x3 - x2);
    const phi = (f1 - f2) / (f3 - f2);
    fraction = 0.5;
    if (1 - Math.sqrt(1 - xi) < phi && phi < Math.sqrt(xi)) {
      const interpolated =
        (f1 / (f2 - f1)) * (f3 / (f2 - f3)) +
        ((x3 - x1) / (x2 - x1)) * (f1 / (f3 - f1)) * (f2 / (f3 - f2));
      // At least one tolerance away from either end, so that the bracket closes from both sides.
      // An overflow above leaves the comparisons false, and with them the bisection.
      if (interpolated < least) fraction = least;
      else if (interpolated > 1 - least) fraction = 1 - least;
      else if (interpolated >= least) fraction = interpolated;
    }
  }
  return cappedRoot(where, rootReport(x1, f1, x2, f2, maxIterations, false), returnUnconverged);
}
