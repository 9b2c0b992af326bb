import { bracketedRoot, NumericsError } from "@leat/numerics";

import {
  fitPowerLaw,
  type PowerFit,
  type RatingFit,
  weightOf,
  zeroSlope,
} from "./fit-power-law.ts";
import type { PowerLaw } from "./power-law.ts";

/** Where the stage of zero flow was looked for, and what was found. */
export interface ZeroSearch {
  /** The fit at the stage that makes the squares least. */
  readonly best: PowerFit;
  /** The deepest stage at which the squares are still within the bound; absent where none is deep enough. */
  readonly low: number | undefined;
  /** The highest; absent where it is the lowest gauged stage itself. */
  readonly high: number | undefined;
}

/** Why no stage of zero flow was found. */
export type ZeroFailure = "no-lower-end" | "at-lowest-stage" | "no-minimum";

/** Steps of the search for each tenfold distance below the lowest gauged stage. */
const steps = 20;

/** The search begins at 10^-4 of the gauged range below the lowest gauged stage and ends at 10^2 of it. */
const [nearest, farthest] = [-4 * steps, 2 * steps];

/**
 * Finds the stage of zero flow that leaves the least squares.
 *
 * For each stage tried the other parameters are fitted, which leaves a function of one variable; it is searched on a
 * grid of distances below the lowest gauged stage and its least point is refined where its derivative is zero. Far
 * below, a power law turns into an exponential one: where the squares still fall there, the data hold no zero.
 *
 * @param lawAt - The segments at a trial stage of zero flow.
 * @param shares - Which segments have that zero.
 * @param h - Stages.
 * @param q - Flows.
 * @param fit - What is made least.
 * @param bound - How far the squares may rise over their least within the interval: a factor.
 * @returns What was found, or why nothing was.
 */
export function findZero(
  lawAt: (zero: number) => PowerLaw,
  shares: readonly boolean[],
  h: Float64Array,
  q: Float64Array,
  fit: RatingFit,
  bound: number,
): ZeroSearch | ZeroFailure {
  try {
    return search(lawAt, shares, h, q, fit, bound);
  } catch (error) {
    // A derivative that jumps or is nowhere to be had: the squares are no smooth function there.
    if (error instanceof NumericsError) return "no-minimum";
    throw error;
  }
}

function search(
  lawAt: (zero: number) => PowerLaw,
  shares: readonly boolean[],
  h: Float64Array,
  q: Float64Array,
  fit: RatingFit,
  bound: number,
): ZeroSearch | ZeroFailure {
  const lowest = Math.min(...h);
  const range = Math.max(...h) - lowest;
  const zeroAt = (step: number): number => lowest - range * 10 ** (step / steps);
  const fitAt = (step: number): PowerFit | undefined => tried(lawAt(zeroAt(step)), h, q, fit);
  const squaresAt = (step: number): number => fitAt(step)?.squares ?? Infinity;
  // By the theorem of the envelope the fitted parameters do not count in the derivative.
  const slopeAt = (step: number): number => {
    const at = fitAt(step);
    if (!at) return NaN;
    let sum = 0;
    for (let i = 0; i < h.length; i++) {
      sum += at.residuals[i]! * weightOf(at, fit, i) * zeroSlope(at.theta, at.rows[i]!, shares);
    }
    // Twice the distance that the zero moves down for a step comes with it, and has no sign of its own.
    return sum;
  };

  let least = nearest;
  const grid = new Map<number, number>();
  for (let step = nearest; step <= farthest; step++) {
    const squares = squaresAt(step);
    grid.set(step, squares);
    if (squares < grid.get(least)!) least = step;
  }
  if (least === farthest) return "no-lower-end";
  if (least === nearest) return "at-lowest-stage";

  const slope = slopeAt(least);
  const [a, b] = slope > 0 ? [least - 1, least] : [least, least + 1];
  if (slope !== 0 && !(slopeAt(a) < 0 && slopeAt(b) > 0)) return "no-minimum";
  const where = slope === 0 ? least : bracketedRoot(slopeAt, a, b).root;
  const best = fitAt(where);
  if (!best) return "no-minimum";

  const excess = (step: number): number => squaresAt(step) - best.squares * bound;
  const crossing = (towards: 1 | -1): number | undefined => {
    let inside = where;
    let step = towards === 1 ? Math.ceil(where) : Math.floor(where);
    for (; step >= nearest && step <= farthest; step += towards) {
      if (grid.get(step)! > best.squares * bound) {
        // An infinite excess has no place between: the end is put where the search failed.
        if (!Number.isFinite(grid.get(step)!)) return zeroAt(step);
        if (step === inside) return zeroAt(step);
        const root = bracketedRoot(excess, Math.min(inside, step), Math.max(inside, step)).root;
        return zeroAt(root);
      }
      inside = step;
    }
    return undefined;
  };
  return { best, low: crossing(1), high: crossing(-1) };
}

// A trial at which the columns are dependent to the last digits is no better than one that is not fitted.
function tried(
  law: PowerLaw,
  h: Float64Array,
  q: Float64Array,
  fit: RatingFit,
): PowerFit | undefined {
  try {
    return fitPowerLaw(law, h, q, fit);
  } catch (error) {
    if (error instanceof NumericsError && error.code === "singular") return undefined;
    throw error;
  }
}
