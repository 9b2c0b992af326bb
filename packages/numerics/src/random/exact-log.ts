import { binaryExponent, significand } from "../binary-exponent.ts";

/**
 * The natural logarithm by additions, multiplications and divisions alone.
 *
 * Math.log may differ in its last digit from one JavaScript engine to another; these operations may not. Good
 * to two units in the last place. ln x = e ln 2 + 2 atanh((m - 1) / (m + 1)), with x = m 2^e and m near 1.
 *
 * @param x - Above zero, not subnormal.
 * @returns The logarithm.
 */
export function exactLog(x: number): number {
  let exponent = binaryExponent(x);
  let m = significand(x);
  if (m > Math.SQRT2) {
    m *= 0.5;
    exponent++;
  }
  const z = (m - 1) / (m + 1);
  const z2 = z * z;
  // Terms of the series of atanh down to z^21 / 21, which is below 4e-18 at the largest z, 0.1716.
  let series = 0;
  for (let k = 21; k >= 1; k -= 2) series = series * z2 + 1 / k;
  return exponent * Math.LN2 + 2 * z * series;
}
