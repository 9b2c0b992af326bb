import { NumericsError } from "../numerics-error.ts";
import { nonFiniteValue, requireFinite, requireInterval } from "../requirement.ts";
import {
  cappedRoot,
  closedBracket,
  halfWidthTolerance,
  requireRootOptions,
  requireSignChange,
  rootReport,
} from "./root-report.ts";
import type { RootOptions, RootReport } from "./root-report.ts";

const where = "newtonInBracket";

/** {@link RootOptions} and a first guess. */
export interface NewtonOptions extends RootOptions {
  /** Where to start, inside the bracket. Default: its middle. */
  readonly start?: number;
}

/**
 * Finds a root of f by Newton's steps, kept inside a bracket where f changes sign.
 *
 * A step that leaves the bracket, or that does not halve the one before, is replaced by a bisection; so the
 * worst case is slow and never lost. Once a step is within the tolerance, the next one goes that far beyond
 * the root, so that the bracket closes on it from both sides.
 *
 * df is only ever called with the x that f was called with last: where both share work, f may keep it for df.
 *
 * @param f - The function; finite on the whole interval.
 * @param df - Its derivative; finite wherever f is called. Zero is allowed and leads to a bisection.
 * @param lo - The lower end.
 * @param hi - The upper end, above `lo`.
 * @param options - Start, tolerances and cap.
 * @returns The root, its residual and its bracket.
 * @throws {@link NumericsError} `no-sign-change`, `non-finite`, `pole`, `bad-argument`, and `not-converged` unless `returnUnconverged`.
 * @example
 * ```ts
 * import { newtonInBracket } from "@leat/numerics";
 *
 * const { root, iterations } = newtonInBracket((x) => x * x - 2, (x) => 2 * x, 0, 2, { start: 1.5 });
 * root.toFixed(12); // => "1.414213562373"
 * iterations < 10; // => true
 * ```
 */
export function newtonInBracket(
  f: (x: number) => number,
  df: (x: number) => number,
  lo: number,
  hi: number,
  options: NewtonOptions = {},
): RootReport {
  requireInterval(where, lo, hi);
  const {
    start = lo + 0.5 * (hi - lo),
    xTolerance = 0,
    fTolerance = 0,
    maxIterations = 200,
    returnUnconverged = false,
  } = options;
  requireRootOptions(where, xTolerance, fTolerance, maxIterations);
  requireFinite(where, "start", start);
  if (start < lo || start > hi) {
    throw new NumericsError(
      "bad-argument",
      `${where}: start = ${start} is outside [${lo}, ${hi}]. Start inside the bracket.`,
      { where, start, lo, hi },
    );
  }
  const fFirst = f(lo);
  if (!Number.isFinite(fFirst)) throw nonFiniteValue(where, "f", lo, fFirst);
  const fLast = f(hi);
  if (!Number.isFinite(fLast)) throw nonFiniteValue(where, "f", hi, fLast);
  if (Math.abs(fFirst) <= fTolerance || Math.abs(fLast) <= fTolerance) {
    return rootReport(lo, fFirst, hi, fLast, 0, true);
  }
  requireSignChange(where, lo, fFirst, hi, fLast);

  let a = lo;
  let fa = fFirst;
  let b = hi;
  let fb = fLast;
  let x = start;
  let lastMove = hi - lo;
  for (let iteration = 1; iteration <= maxIterations; iteration++) {
    const fx = f(x);
    if (!Number.isFinite(fx)) throw nonFiniteValue(where, "f", x, fx);
    if (fx > 0 === fa > 0) {
      a = x;
      fa = fx;
    } else {
      b = x;
      fb = fx;
    }
    if (Math.abs(fx) <= fTolerance) return rootReport(a, fa, b, fb, iteration, true);
    const tolerance = halfWidthTolerance(x, xTolerance, hi - lo);
    if (b - a <= 2 * tolerance) {
      return closedBracket(where, rootReport(a, fa, b, fb, iteration, true), fFirst, fLast);
    }

    const slope = df(x);
    if (!Number.isFinite(slope)) throw nonFiniteValue(where, "df", x, slope);
    let move = -fx / slope;
    if (Math.abs(move) < tolerance) move = move < 0 ? -tolerance : tolerance;
    let next = x + move;
    // Written so that a slope of zero, whose move is infinite, also bisects.
    if (!(next > a && next < b && Math.abs(move) <= 0.5 * lastMove)) {
      next = a + 0.5 * (b - a);
      move = next - x;
    }
    lastMove = Math.abs(move);
    x = next;
  }
  return cappedRoot(where, rootReport(a, fa, b, fb, maxIterations, false), returnUnconverged);
}
