import { gammaQuantile, normalQuantile } from "@leat/numerics";

/**
 * Standard deviations that the Pearson III quantile lies from the mean, for loops on plain numbers: the body of
 * {@link pearsonFrequencyFactor}.
 *
 * @param p - Probability of not being exceeded, above 0 and below 1.
 * @param skew - Skew, of either sign.
 * @returns The frequency factor.
 */
export function pearsonFrequencyFactorOf(p: number, skew: number): number {
  // guard: either side of it the two forms agree to nine digits
  if (Math.abs(skew) < 1e-3) {
    // The gamma distribution has a shape beyond four million here: two terms of its expansion about the normal one
    // (Cornish and Fisher) leave out less than a part in ten thousand million.
    const z = normalQuantile(p);
    const g = skew / 6;
    return z + (z * z - 1) * g + ((z * z * z - 7 * z) / 4) * g * g;
  }
  const shape = 4 / (skew * skew);
  // A negative skew is the mirror image of a positive one.
  const y = gammaQuantile(skew > 0 ? p : 1 - p, shape);
  return (2 / skew) * (y / shape - 1);
}
