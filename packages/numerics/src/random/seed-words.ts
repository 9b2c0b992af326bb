import { NumericsError } from "../numerics-error.ts";

/**
 * 64 bits from a seed: FNV-1a of a text's UTF-8 bytes, or a whole number as it is (negative ones in two's complement).
 *
 * @param seed - A text, or a safe integer.
 * @returns An unsigned 64-bit integer.
 * @see G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, T. Hansen, The FNV Non-Cryptographic Hash Algorithm, RFC 9923.
 */
export function seedBits(seed: string | number): bigint {
  if (typeof seed === "number") {
    if (!Number.isSafeInteger(seed)) {
      throw new NumericsError(
        "bad-argument",
        `seededRandom: seed = ${seed} is not a whole number that is exact. Pass a safe integer or a text.`,
        { where: "seededRandom", seed },
      );
    }
    return BigInt.asUintN(64, BigInt(seed));
  }
  let hash = 0xcbf29ce484222325n;
  for (const character of seed) {
    for (const byte of utf8(character.codePointAt(0)!)) {
      hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
    }
  }
  return hash;
}

/**
 * The next word of SplitMix64, and its state after that.
 *
 * @param state - Unsigned 64-bit integer.
 * @returns The word and the next state, both unsigned 64-bit integers.
 * @see G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014; constants of S. Vigna's splitmix64.c.
 */
export function splitMix64(state: bigint): { readonly word: bigint; readonly state: bigint } {
  const next = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
  let z = BigInt.asUintN(64, (next ^ (next >> 30n)) * 0xbf58476d1ce4e5b9n);
  z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn);
  return { word: z ^ (z >> 31n), state: next };
}

// The UTF-8 bytes of a code point; a lone surrogate gives three bytes, like any other code point below 2^16.
function utf8(point: number): number[] {
  if (point < 0x80) return [point];
  if (point < 0x800) return [0xc0 | (point >> 6), 0x80 | (point & 0x3f)];
  if (point < 0x10000) {
    return [0xe0 | (point >> 12), 0x80 | ((point >> 6) & 0x3f), 0x80 | (point & 0x3f)];
  }
  return [
    0xf0 | (point >> 18),
    0x80 | ((point >> 12) & 0x3f),
    0x80 | ((point >> 6) & 0x3f),
    0x80 | (point & 0x3f),
  ];
}
