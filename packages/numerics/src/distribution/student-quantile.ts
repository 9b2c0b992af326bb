import { NumericsError } from "../numerics-error.ts";
import { normalQuantile } from "../random/normal-quantile.ts";
import { requirePositive, requireProbability } from "../requirement.ts";
import { betaTails } from "./incomplete-beta.ts";
import type { Side } from "./quantile-of.ts";
import { quantileOf } from "./quantile-of.ts";

const where = "studentQuantile";

/**
 * The quantile of Student's distribution: the t below which a fraction p of it lies.
 *
 * To ten digits or more. For an interval with 95 % between its ends ask for p = 0.975.
 *
 * @param p - Probability below, above 0 and below 1.
 * @param degreesOfFreedom - Above zero, whole or not.
 * @returns t, in standard errors.
 * @throws {@link NumericsError} `bad-argument`: p is not between 0 and 1, the degrees are not above zero, or t would
 * be too large, above 1e149.
 * @see M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.1 and, from a million degrees on, 26.7.5.
 * @example
 * ```ts
 * import { studentQuantile } from "@leat/numerics";
 *
 * studentQuantile(0.975, 7).toFixed(3); // => "2.365"
 * ```
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  requireProbability(where, p);
  requirePositive(where, "degreesOfFreedom", degreesOfFreedom);
  const tail = Math.min(p, 1 - p);
  const centre = Math.abs(p - 0.5);
  if (centre === 0) return 0;
  // The smaller of the two sides is solved for, as it has the digits.
  const outside = tail < 0.25;
  if (degreesOfFreedom >= 1e6) return nearlyNormal(normalQuantile(p), degreesOfFreedom);
  const largest = 345;
  const reached = half(degreesOfFreedom, Math.exp(largest), outside).side;
  if (outside ? reached > tail : reached < centre) {
    throw new NumericsError(
      "bad-argument",
      `${where}: at p = ${p} and so few degrees of freedom, ${degreesOfFreedom}, t is above 1e149. ` +
        "Ask for a p nearer the middle.",
      { where, p, degreesOfFreedom },
    );
  }
  const size = quantileOf(
    (t) => half(degreesOfFreedom, t, outside),
    outside ? tail : centre,
    Math.log(Math.abs(normalQuantile(p))),
    [-largest, largest],
  );
  return p < 0.5 ? -size : size;
}

// From a million degrees on this is good to the last digits, and the continued fraction is not.
function nearlyNormal(z: number, degreesOfFreedom: number): number {
  const z2 = z * z;
  const first = (z2 + 1) / 4;
  const second = ((5 * z2 + 16) * z2 + 3) / 96;
  const third = (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
  const n = degreesOfFreedom;
  return z * (1 + (first + (second + third / n) / n) / n);
}

// The probability between 0 and t, or that beyond t.
function half(degreesOfFreedom: number, t: number, outside: boolean): Side {
  const square = (t * t) / degreesOfFreedom;
  const x = 1 / (1 + 1 / square);
  const y = 1 / (1 + square);
  const { lower, upper, rise } = betaTails(where, 0.5, degreesOfFreedom / 2, x, y);
  // ln(x / y) is 2 ln t and a constant; half of I is on either side of zero.
  return outside ? { side: upper / 2, slope: -rise } : { side: lower / 2, slope: rise };
}
