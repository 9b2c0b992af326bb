import { NumericsError } from "../numerics-error.ts";

const cap = 1_000_000;

/**
 * The continued fraction b₀ + a₁/(b₁ + a₂/(b₂ + ...)), by Lentz's method as Thompson and Barnett changed it.
 *
 * @param where - The public function that asks.
 * @param b0 - The part before the first fraction; not zero.
 * @param a - The n-th numerator, n from 1.
 * @param b - The n-th denominator.
 * @returns Its value.
 * @see I. J. Thompson and A. R. Barnett, Coulomb and Bessel functions of complex arguments and order, Journal of
 * Computational Physics 64 (1986) 490-509.
 */
export function continuedFraction(
  where: string,
  b0: number,
  a: (n: number) => number,
  b: (n: number) => number,
): number {
  let value = b0;
  let c = b0;
  let d = 0;
  for (let n = 1; n <= cap; n++) {
    d = 1 / (b(n) + a(n) * d);
    c = b(n) + a(n) / c;
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) <= 2 * Number.EPSILON) return value;
  }
  throw notSummed(where, cap);
}

/**
 * The error for a sum or a fraction that still changes at its cap.
 *
 * @param where - The public function that asks.
 * @param terms - How many terms were taken.
 * @returns The error, to be thrown.
 */
export function notSummed(where: string, terms: number): NumericsError {
  return new NumericsError(
    "not-converged",
    `${where}: the distribution is not summed after ${terms} terms. ` +
      "Use degrees of freedom or a shape nearer to 1.",
    { where, terms },
  );
}
