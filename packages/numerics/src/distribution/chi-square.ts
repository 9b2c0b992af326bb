import { NumericsError } from "../numerics-error.ts";
import { requireFinite, requirePositive, requireProbability } from "../requirement.ts";
import { gammaPoint } from "./gamma-quantile.ts";
import { gammaTails } from "./incomplete-gamma.ts";

/**
 * The quantile of the chi-square distribution: the value below which a fraction p of it lies.
 *
 * To ten digits or more. Tables print the upper tail as often as the lower: this is the lower, so that 0.95 and 1
 * degree of freedom give 3.841.
 *
 * @param p - Probability below, above 0 and below 1.
 * @param degreesOfFreedom - Above zero, whole or not.
 * @returns The quantile, above zero.
 * @throws {@link NumericsError} `bad-argument`: p is not between 0 and 1, the degrees are not above zero, or the
 * quantile would be too small to be held; `not-converged` at far above a hundred million degrees.
 * @example
 * ```ts
 * import { chiSquareQuantile } from "@leat/numerics";
 *
 * chiSquareQuantile(0.95, 10).toFixed(3); // => "18.307"
 * ```
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  const where = "chiSquareQuantile";
  requireProbability(where, p);
  requirePositive(where, "degreesOfFreedom", degreesOfFreedom);
  return 2 * gammaPoint(where, p, degreesOfFreedom / 2);
}

/**
 * The probability that a chi-square variable is no more than x: the lower tail.
 *
 * @param x - 0 or more.
 * @param degreesOfFreedom - Above zero, whole or not.
 * @returns From 0 to 1.
 * @throws {@link NumericsError} `non-finite`, `bad-argument`: x is negative or the degrees are not above zero;
 * `not-converged` at far above a hundred million degrees.
 * @example
 * ```ts
 * import { chiSquareProbability } from "@leat/numerics";
 *
 * chiSquareProbability(18.307, 10).toFixed(4); // => "0.9500"
 * ```
 */
export function chiSquareProbability(x: number, degreesOfFreedom: number): number {
  const where = "chiSquareProbability";
  requireFinite(where, "x", x);
  requirePositive(where, "degreesOfFreedom", degreesOfFreedom);
  if (x < 0) {
    throw new NumericsError(
      "bad-argument",
      `${where}: x = ${x} is negative. A sum of squares is 0 or more.`,
      { where, x },
    );
  }
  return x === 0 ? 0 : gammaTails(where, degreesOfFreedom / 2, x / 2).lower;
}
