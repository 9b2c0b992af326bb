import { continuedFraction, notSummed } from "./continued-fraction.ts";
import { deviance, stirlingRemainder } from "./stirling.ts";

/** Both sides of a distribution at a point, each to its own digits, and the density. */
export interface Tails {
  /** The probability below. */
  readonly lower: number;
  /** The probability above. */
  readonly upper: number;
  /** How much the probability below rises for a rise of the point by the whole of itself: x times the density. */
  readonly rise: number;
}

const cap = 1_000_000;

/**
 * The gamma distribution of unit scale: P(a, x) and Q(a, x).
 *
 * @param where - The public function that asks.
 * @param shape - a, above zero.
 * @param x - Above zero.
 * @returns Both tails.
 * @see M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 6.5.29 (series, below the middle) and
 * 6.5.31 (continued fraction, above it; in its even part, NIST DLMF 8.9.2).
 */
export function gammaTails(where: string, shape: number, x: number): Tails {
  // x^a e^-x / Γ(a + 1)
  const front =
    Math.exp(-shape * deviance(x, shape) - stirlingRemainder(shape)) /
    Math.sqrt(2 * Math.PI * shape);
  const rise = shape * front;
  if (x < shape + 1) {
    let term = 1;
    let sum = 1;
    for (let n = 1; term > Number.EPSILON * 0.1 * sum; n++) {
      if (n > cap) throw notSummed(where, cap);
      term *= x / (shape + n);
      sum += term;
    }
    const lower = front * sum;
    return { lower, upper: 1 - lower, rise };
  }
  const fraction = continuedFraction(
    where,
    x + 1 - shape,
    (n) => -n * (n - shape),
    (n) => x + 2 * n + 1 - shape,
  );
  const upper = rise / fraction;
  return { lower: 1 - upper, upper, rise };
}
