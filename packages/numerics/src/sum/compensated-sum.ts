import { requireFinite } from "../requirement.ts";

/**
 * A running sum that keeps what rounding would drop, so that accounts of many small terms still close.
 *
 * The error is a unit or two in the last place of the sum, plus a term in the square of the unit that grows with the
 * count and the sum of magnitudes; a plain loop's grows with the count in the unit itself.
 *
 * @example
 * ```ts
 * import { CompensatedSum } from "@leat/numerics";
 *
 * const sum = new CompensatedSum();
 * for (const term of [1, 1e100, 1, -1e100]) sum.add(term);
 * sum.value; // => 2
 * ```
 * @see A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974) 39-51.
 */
export class CompensatedSum {
  #sum = 0;
  #lost = 0;

  /**
   * Adds one term.
   *
   * @param term - A finite number.
   * @throws {@link NumericsError} `non-finite`: the term, or a sum that overflows; the sum then stays as it was.
   */
  add(term: number): void {
    requireFinite("CompensatedSum", "term", term);
    const sum = this.#sum + term;
    requireFinite("CompensatedSum", "sum", sum);
    // The larger of the two kept its digits; what is missing is the smaller one's.
    this.#lost +=
      Math.abs(this.#sum) >= Math.abs(term) ? this.#sum - sum + term : term - sum + this.#sum;
    this.#sum = sum;
  }

  /**
   * The sum so far; 0 before the first term.
   *
   * @returns The sum.
   */
  get value(): number {
    return this.#sum + this.#lost;
  }
}

/**
 * The sum of numbers, with compensation.
 *
 * @param terms - Finite numbers; none give 0.
 * @returns The sum.
 * @throws {@link NumericsError} `non-finite`.
 * @example
 * ```ts
 * import { compensatedSum } from "@leat/numerics";
 *
 * compensatedSum([0.1, 0.2, 0.3]); // => 0.6
 * ```
 */
export function compensatedSum(terms: ArrayLike<number>): number {
  const sum = new CompensatedSum();
  for (let i = 0; i < terms.length; i++) sum.add(terms[i]!);
  return sum.value;
}
