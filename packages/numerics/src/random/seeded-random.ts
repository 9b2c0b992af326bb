import { NumericsError } from "../numerics-error.ts";
import { requireFinite, requireTolerance } from "../requirement.ts";
import { normalQuantile } from "./normal-quantile.ts";
import { seedBits, splitMix64 } from "./seed-words.ts";
import { Xoshiro128 } from "./xoshiro128.ts";

/** A sequence of random numbers, made by {@link seededRandom}; each call takes the next. */
export class SeededRandom {
  readonly #generator: Xoshiro128;

  /**
   * @param seed - See {@link seededRandom}.
   */
  constructor(seed: string | number) {
    const first = splitMix64(seedBits(seed));
    const second = splitMix64(first.state);
    // Different states of SplitMix64 give different words, so the two are never both zero.
    this.#generator = new Xoshiro128(
      Number(BigInt.asUintN(32, first.word)),
      Number(first.word >> 32n),
      Number(BigInt.asUintN(32, second.word)),
      Number(second.word >> 32n),
    );
  }

  /**
   * The next 32 bits of the generator.
   *
   * @returns A whole number from 0 to 2^32 - 1.
   */
  bits32(): number {
    return this.#generator.next();
  }

  /**
   * A number from 0, included, to 1, excluded, in steps of 2^-53; takes 64 bits, of which 27 and then 26 are used.
   *
   * @returns The number.
   */
  uniform(): number {
    const high = this.#generator.next() >>> 5;
    const low = this.#generator.next() >>> 6;
    return (high * 2 ** 26 + low) * 2 ** -53;
  }

  /**
   * A number with the rectangular distribution, as of a rounding: every value between the ends equally likely.
   *
   * @param lo - The lower end.
   * @param hi - The upper end, not below `lo`; where rounding allows, excluded.
   * @returns The number.
   * @throws {@link NumericsError} `bad-argument`, `non-finite`.
   */
  rectangular(lo: number, hi: number): number {
    requireFinite("rectangular", "lo", lo);
    requireFinite("rectangular", "hi", hi);
    requireTolerance("rectangular", "hi - lo", hi - lo);
    return lo + (hi - lo) * this.uniform();
  }

  /**
   * A number with the normal distribution: the quantile of a uniform number, so one draw from 64 bits, up to 8.2
   * standard deviations out.
   *
   * @param mean - Default 0.
   * @param standardDeviation - Default 1; 0 or more.
   * @returns The number.
   * @throws {@link NumericsError} `bad-argument`, `non-finite`.
   */
  normal(mean: number = 0, standardDeviation: number = 1): number {
    requireFinite("normal", "mean", mean);
    requireTolerance("normal", "standardDeviation", standardDeviation);
    // In the middle of one of 2^52 strips, so never 0 and never 1.
    const high = this.#generator.next() >>> 6;
    const low = this.#generator.next() >>> 6;
    return mean + standardDeviation * normalQuantile((high * 2 ** 26 + low + 0.5) * 2 ** -52);
  }

  /**
   * A whole number from 0 to n - 1. Some are likelier than others by up to n 2^-53, one part in two million at the most.
   *
   * @param n - How many; 1 to 2^32.
   * @returns The number.
   * @throws {@link NumericsError} `bad-argument`.
   */
  below(n: number): number {
    if (!(Number.isInteger(n) && n >= 1 && n <= 2 ** 32)) {
      throw new NumericsError(
        "bad-argument",
        `below: n = ${n} is not a whole number from 1 to 2^32. Pass how many to choose from.`,
        { where: "below", n },
      );
    }
    return Math.floor(this.uniform() * n);
  }

  /**
   * The items in random order; every order is equally likely, as far as 128 bits of state reach.
   *
   * @param items - Left as they are.
   * @returns A new array.
   * @see R. Durstenfeld, Algorithm 235: Random permutation, Comm. ACM 7 (1964) 420.
   */
  shuffled<T>(items: readonly T[]): T[] {
    const result = [...items];
    for (let last = result.length - 1; last > 0; last--) {
      const chosen = this.below(last + 1);
      const held = result[last]!;
      result[last] = result[chosen]!;
      result[chosen] = held;
    }
    return result;
  }
}

/**
 * Random numbers from a seed: the same sequence on every machine and in every JavaScript engine.
 *
 * A seed becomes 64 bits (a text by FNV-1a of its UTF-8, a whole number as it is); two words of SplitMix64 from
 * there, each low half first, are the state of xoshiro128**. Not for secrets: the sequence can be guessed from a
 * few of its numbers.
 *
 * @param seed - A text, or a whole number that is exact. 7 and "7" are different seeds.
 * @returns The sequence, at its beginning.
 * @throws {@link NumericsError} `bad-argument`: a number that is not a safe integer.
 * @example
 * ```ts
 * import { seededRandom } from "@leat/numerics";
 *
 * const random = seededRandom(42);
 * random.bits32(); // => 1776835114
 * random.uniform() < 1; // => true
 * seededRandom("a").normal() === seededRandom("a").normal(); // => true
 * ```
 * @see D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47
 * (2021) article 36.
 */
export function seededRandom(seed: string | number): SeededRandom {
  return new SeededRandom(seed);
}
