import { NumericsError } from "../numerics-error.ts";
import { requireCount, requireTolerance } from "../requirement.ts";

/** How closely a root is wanted, and how long the search may take. */
export interface RootOptions {
  /**
   * The bracket may stop shrinking at this width, in the unit of x. Default 0.
   * Four units in the last place of x are always added, since less cannot be had.
   */
  readonly xTolerance?: number;
  /** A point where |f| is no more than this, in the unit of f, is a root. Default 0: only an exact zero. */
  readonly fTolerance?: number;
  /** The cap on iterations. Default 200, which plain bisection would not exhaust. */
  readonly maxIterations?: number;
  /** Return the report with `converged: false` at the cap, instead of throwing. Default false. */
  readonly returnUnconverged?: boolean;
}

/** A root and how well it is known. */
export interface RootReport {
  /** The end of the last bracket where |f| is smaller. */
  readonly root: number;
  /** f at the root, with its sign. Look at it where f may jump: a step across zero is bracketed like a root. */
  readonly residual: number;
  /** Passes through the loop. */
  readonly iterations: number;
  /** The last bracket, in ascending order. Its ends straddle zero, unless an end is already within `fTolerance`. */
  readonly bracket: readonly [number, number];
  /** Whether a tolerance was met; false only if asked for by `returnUnconverged`. */
  readonly converged: boolean;
}

/**
 * Refuses root options that make no sense.
 *
 * @param where - The public function that asks.
 * @param xTolerance - See {@link RootOptions}.
 * @param fTolerance - See {@link RootOptions}.
 * @param maxIterations - See {@link RootOptions}.
 */
export function requireRootOptions(
  where: string,
  xTolerance: number,
  fTolerance: number,
  maxIterations: number,
): void {
  requireTolerance(where, "xTolerance", xTolerance);
  requireTolerance(where, "fTolerance", fTolerance);
  requireCount(where, "maxIterations", maxIterations);
}

/**
 * Half the width at which a bracket around x has converged.
 *
 * Two units in the last place of x are the least that can be asked. The last term, a millionth of a
 * millionth of a millionth of the first bracket or less, ends the search for a root at zero, where such
 * units vanish; being a fraction of the bracket it carries no unit of its own.
 *
 * @param x - The best point so far.
 * @param xTolerance - See {@link RootOptions}.
 * @param firstWidth - Width of the bracket that was passed in.
 * @returns The half width, in the unit of x.
 */
export function halfWidthTolerance(x: number, xTolerance: number, firstWidth: number): number {
  return 0.5 * xTolerance + 2 * Number.EPSILON * Math.abs(x) + 2 ** -100 * firstWidth;
}

/**
 * Reports the better of two bracket ends.
 *
 * @param x1 - One end.
 * @param f1 - f there.
 * @param x2 - The other end.
 * @param f2 - f there.
 * @param iterations - Passes through the loop.
 * @param converged - Whether a tolerance was met.
 * @returns The report.
 */
export function rootReport(
  x1: number,
  f1: number,
  x2: number,
  f2: number,
  iterations: number,
  converged: boolean,
): RootReport {
  const first = Math.abs(f1) <= Math.abs(f2);
  return {
    root: first ? x1 : x2,
    residual: first ? f1 : f2,
    iterations,
    bracket: x1 <= x2 ? [x1, x2] : [x2, x1],
    converged,
  };
}

/**
 * Refuses a bracket that does not straddle zero.
 *
 * @param where - The public function that asks.
 * @param lo - The lower end.
 * @param fLo - f there.
 * @param hi - The upper end.
 * @param fHi - f there.
 */
export function requireSignChange(
  where: string,
  lo: number,
  fLo: number,
  hi: number,
  fHi: number,
): void {
  if (fLo > 0 === fHi > 0) {
    throw new NumericsError(
      "no-sign-change",
      `${where}: f(${lo}) = ${fLo} and f(${hi}) = ${fHi} have the same sign, so no root is bracketed. ` +
        "Change the interval, or widen it with expandBracket.",
      { where, lo, fLo, hi, fHi },
    );
  }
}

/**
 * Lets a converged report through, unless the bracket closed on a pole.
 *
 * A continuous f is smaller at the end of the search than it was at both ends of the first bracket; at a
 * pole it is larger.
 *
 * @param where - The public function that asks.
 * @param report - The report.
 * @param fLo - f at the lower end of the first bracket.
 * @param fHi - f at its upper end.
 * @returns The report.
 */
export function closedBracket(
  where: string,
  report: RootReport,
  fLo: number,
  fHi: number,
): RootReport {
  if (Math.abs(report.residual) > Math.max(Math.abs(fLo), Math.abs(fHi))) {
    throw new NumericsError(
      "pole",
      `${where}: f changes sign at ${report.root} by way of ${report.residual}, a pole and not a root. ` +
        "Choose an interval without it.",
      { where, ...report },
    );
  }
  return report;
}

/**
 * What happens at the cap: an error that carries the report, or the report if that was asked for.
 *
 * @param where - The public function that asks.
 * @param report - The report, with `converged: false`.
 * @param returnUnconverged - See {@link RootOptions}.
 * @returns The report.
 */
export function cappedRoot(
  where: string,
  report: RootReport,
  returnUnconverged: boolean,
): RootReport {
  if (returnUnconverged) return report;
  const [lo, hi] = report.bracket;
  throw new NumericsError(
    "not-converged",
    `${where}: no root within the tolerances after ${report.iterations} iterations; ` +
      `it lies in [${lo}, ${hi}]. Raise maxIterations or loosen a tolerance.`,
    { where, ...report },
  );
}
