/**
 * The generator xoshiro128**, version 1.1: 32 bits at a time, period 2^128 - 1.
 *
 * @see D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47
 * (2021) article 36; their xoshiro128starstar.c is in the public domain.
 */
export class Xoshiro128 {
  #s0: number;
  #s1: number;
  #s2: number;
  #s3: number;

  /**
   * @param s0 - First word of the state; not all four may be zero.
   * @param s1 - Second word.
   * @param s2 - Third word.
   * @param s3 - Fourth word.
   */
  constructor(s0: number, s1: number, s2: number, s3: number) {
    this.#s0 = s0 | 0;
    this.#s1 = s1 | 0;
    this.#s2 = s2 | 0;
    this.#s3 = s3 | 0;
  }

  /**
   * The next 32 bits.
   *
   * @returns A whole number from 0 to 2^32 - 1.
   */
  next(): number {
    const product = Math.imul(this.#s1, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9);
    const shifted = this.#s1 << 9;
    this.#s2 ^= this.#s0;
    this.#s3 ^= this.#s1;
    this.#s1 ^= this.#s2;
    this.#s0 ^= this.#s3;
    this.#s2 ^= shifted;
    this.#s3 = (this.#s3 << 11) | (this.#s3 >>> 21);
    return result >>> 0;
  }
}
