import { continuedFraction } from "./continued-fraction.ts";
import type { Tails } from "./incomplete-gamma.ts";
import { deviance, stirlingRemainder } from "./stirling.ts";

/**
 * The beta distribution: I_x(a, b) and what is left of 1.
 *
 * @param where - The public function that asks.
 * @param a - Above zero.
 * @param b - Above zero.
 * @param x - Above 0 and below 1.
 * @param y - 1 − x, to its own digits.
 * @returns Both tails; `rise` is x y times the density, for a rise of ln(x / y) by 1.
 * @see NIST Digital Library of Mathematical Functions, 8.17.22.
 */
export function betaTails(where: string, a: number, b: number, x: number, y: number): Tails {
  const n = a + b;
  // x^a y^b / B(a, b)
  const rise =
    Math.sqrt((a * b) / (2 * Math.PI * n)) *
    Math.exp(
      -a * deviance(n * x, a) -
        b * deviance(n * y, b) +
        stirlingRemainder(n) -
        stirlingRemainder(a) -
        stirlingRemainder(b),
    );
  if (x * (n + 2) <= a + 1) {
    const lower = rise / (a * fraction(where, a, b, x));
    return { lower, upper: 1 - lower, rise };
  }
  const upper = rise / (b * fraction(where, b, a, y));
  return { lower: 1 - upper, upper, rise };
}

function fraction(where: string, a: number, b: number, x: number): number {
  return continuedFraction(
    where,
    1,
    (k) => {
      const m = Math.floor(k / 2);
      return k % 2 === 0
        ? (m * (b - m) * x) / ((a + k - 1) * (a + k))
        : (-(a + m) * (a + b + m) * x) / ((a + k - 1) * (a + k));
    },
    () => 1,
  );
}
