/**
 * What Stirling's formula leaves of the logarithm of Γ(x + 1): ln Γ(x + 1) − ln(√(2πx) (x/e)^x).
 *
 * Gamma functions are divided by each other in every distribution here; written with this small remainder the
 * large parts cancel on paper instead of in the last digits.
 *
 * @param x - Above zero.
 * @returns The remainder, about 1 / (12 x).
 * @see M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 6.1.41; C. Loader, Fast and accurate
 * computation of binomial probabilities, 2000, for the use that is made of it.
 */
export function stirlingRemainder(x: number): number {
  // Below 16 the series does not reach the last digit; the recurrence of Γ carries it up.
  let climbed = 0;
  let z = x;
  for (; z < 16; z++) climbed += (z + 0.5) * Math.log1p(1 / z) - 1;
  const z2 = z * z;
  return (
    climbed + (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / z2) / z2) / z2) / z2) / z
  );
}

/**
 * t − 1 − ln t at t = x / mean: how far x is from the mean, as it stands in the exponent of a density.
 *
 * @param x - Above zero.
 * @param mean - Above zero.
 * @returns Zero at the mean, above zero elsewhere.
 */
export function deviance(x: number, mean: number): number {
  const u = (x - mean) / mean;
  return Math.abs(u) < 0.5 ? u - Math.log1p(u) : u - Math.log(x / mean);
}
