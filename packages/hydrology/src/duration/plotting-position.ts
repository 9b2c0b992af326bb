import type { weibullPosition } from "./weibull-position.ts";

/**
 * A formula for the share that a ranked value stands for: {@link weibullPosition}, {@link gringortenPosition},
 * {@link cunnanePosition}, {@link hazenPosition}, or one of the caller's own with the same inputs, rising with the rank.
 */
export type PlottingPosition = typeof weibullPosition;

/**
 * The shares of all ranks.
 *
 * @param position - The formula.
 * @param n - How many values there are.
 * @returns The share of rank 1 first.
 */
export function sharesOf(position: PlottingPosition, n: number): Float64Array {
  const { body, constants } = position;
  const shares = new Float64Array(n);
  for (let m = 1; m <= n; m++) shares[m - 1] = body({ m, n, ...constants });
  return shares;
}

/**
 * A value at a share, on straight lines between the shares of the ranks.
 *
 * @param shares - Rising.
 * @param values - As many.
 * @param share - The share.
 * @returns The value; nothing where the share lies outside: lines are not drawn on.
 */
export function valueAtShare(
  shares: ArrayLike<number>,
  values: ArrayLike<number>,
  share: number,
): number | undefined {
  const last = shares.length - 1;
  if (!(share >= (shares[0] as number) && share <= (shares[last] as number))) return undefined;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if ((shares[middle] as number) <= share) low = middle;
    else high = middle;
  }
  const [a, b] = [values[low] as number, values[high] as number];
  const [from, to] = [shares[low] as number, shares[high] as number];
  return a === b ? a : a + ((share - from) / (to - from)) * (b - a);
}
