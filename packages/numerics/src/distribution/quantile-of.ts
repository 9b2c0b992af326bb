import { expandBracket } from "../root/expand-bracket.ts";
import { newtonInBracket } from "../root/newton-in-bracket.ts";

/** One side of a distribution at x, and its change for a rise of ln x by 1. */
export interface Side {
  /** Probability of that side. */
  readonly side: number;
  /** Change of it with ln x. */
  readonly slope: number;
}

/**
 * The x above zero at which one side of a distribution is so large.
 *
 * Solved as ln(side) over ln(x): far out the one is nearly a straight line of the other, and both keep their digits.
 *
 * @param sideAt - The side at x.
 * @param target - Its probability.
 * @param guess - Of ln x.
 * @param limits - Between which ln x must lie.
 * @returns x.
 */
export function quantileOf(
  sideAt: (x: number) => Side,
  target: number,
  guess: number,
  limits: readonly [number, number],
): number {
  const [least, most] = limits;
  const wanted = Math.log(target);
  let slope = 0;
  const f = (logX: number): number => {
    const at = sideAt(Math.exp(logX));
    // A side that is too small to be held is less than any that is asked for.
    slope = at.side > 0 ? at.slope / at.side : 0;
    return (at.side > 0 ? Math.log(at.side) : -1e4) - wanted;
  };
  const start = Math.min(Math.max(guess, least + 1), most - 1);
  const { lo, hi } = expandBracket(f, start - 0.1, start + 0.1, { least, most });
  const { root } = newtonInBracket(f, () => slope, lo, hi, {
    start: Math.min(Math.max(start, lo), hi),
    xTolerance: 1e-14,
  });
  return Math.exp(root);
}
