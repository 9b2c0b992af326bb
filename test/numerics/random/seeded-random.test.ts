import { seededRandom } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { seedBits, splitMix64 } from "../../../packages/numerics/src/random/seed-words.ts";
import { Xoshiro128 } from "../../../packages/numerics/src/random/xoshiro128.ts";
import { refusalOf } from "../refusal-of.ts";

const take = (count: number, draw: () => number): number[] => Array.from({ length: count }, draw);

describe("known answers", () => {
  it("xoshiro128** from the state 1, 2, 3, 4", () => {
    // Published with the reference implementation's version 1.1 (test vector of the Rust crate rand_xoshiro);
    // a compilation of the public-domain C text gives the same.
    const generator = new Xoshiro128(1, 2, 3, 4);
    expect(take(10, () => generator.next())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });

  it("SplitMix64 from the seed 1234567", () => {
    // Published at Rosetta Code, Pseudo-random numbers/Splitmix64; compiled C gives the same.
    let state = 1234567n;
    const words = [0, 1, 2, 3, 4].map(() => {
      const next = splitMix64(state);
      state = next.state;
      return next.word;
    });
    expect(words).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  it("FNV-1a of texts", () => {
    // RFC 9923, test vectors for 64 bits; those of more bytes in UTF-8 from compiled C.
    expect(seedBits("")).toBe(0xcbf29ce484222325n);
    expect(seedBits("a")).toBe(0xaf63dc4c8601ec8cn);
    expect(seedBits("foobar")).toBe(0x85944171f73967e8n);
    expect(seedBits("€µ\u{1F4A7}")).toBe(0x7aaa0b47898e5ebcn);
    // The first and last code points of two, three and four bytes, and the last of one.
    expect(seedBits("\u007f\u0080\u07ff\u0800\uffff\u{10000}\u{10ffff}")).toBe(0xe3bd65376745831en);
    expect(seedBits("ré\u{1F4A7}")).toBe(0x13570fb326214fffn);
  });

  it.each<[string | number, number[]]>([
    [0, [3737715805, 2584255861, 2876756834, 3286328325, 1553311962, 1625202774]],
    [1, [1695105466, 1423115009, 634581793, 1068227753, 716759206, 4186505319]],
    [42, [1776835114, 4165204688, 17111135, 2317295270, 2792088233, 2554630222]],
    [-1, [477689756, 2493998634, 555695776, 607808419, 61340979, 301466976]],
    [9007199254740991, [1233166643, 1287031142, 661813442, 2960669951, 2601079046, 1036114921]],
    ["fern gully", [3202587733, 2653782709, 3424473631, 3300447547, 2916490167, 516020155]],
    ["ré\u{1F4A7}", [3317470164, 1529234809, 1927949066, 3844936603, 3247323298, 2190537022]],
  ])("the whole chain from the seed %s", (seed, expected) => {
    // The three reference algorithms chained as documented, in C written for this check.
    const random = seededRandom(seed);
    expect(take(6, () => random.bits32())).toEqual(expected);
  });

  it("uniform numbers from the seed 42", () => {
    // Same C program: 27 and 26 bits of two words.
    const random = seededRandom(42);
    expect(take(4, () => random.uniform())).toEqual([
      0.4137016681565887, 0.003983993377814743, 0.6500837027638867, 0.6846020186141416,
    ]);
  });

  it("normal numbers from the seed 42", () => {
    // Uniform strips from the same C program, through mpmath's inverse normal distribution function.
    const random = seededRandom(42);
    [-0.21803308181784697, -2.653422999418591, 0.3855464480888016, 0.4806068164972651].forEach(
      (value) => expect(random.normal()).toBeCloseTo(value, 14),
    );
  });
});

describe("seededRandom", () => {
  it("repeats itself from the same seed, and differs from another", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.maxSafeInteger()), (seed) => {
        const draws = take(4, () => seededRandom(seed).bits32());
        expect(new Set(draws).size).toBe(1);
        const one = seededRandom(seed);
        const other = seededRandom(`${seed}!`);
        expect(take(4, () => one.bits32())).not.toEqual(take(4, () => other.bits32()));
      }),
    );
    expect(seededRandom(7).bits32()).not.toBe(seededRandom("7").bits32());
  });

  it("fills one hundred bins evenly", () => {
    const random = seededRandom("bins");
    const bins = new Float64Array(100);
    for (let i = 0; i < 100_000; i++) bins[Math.floor(100 * random.uniform())]!++;
    const chiSquared = bins.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    // scipy 1.17.1, chi2.ppf(0.001, 99) and chi2.ppf(0.999, 99)
    expect(chiSquared).toBeGreaterThan(61.13651);
    expect(chiSquared).toBeLessThan(148.23036);
  });

  it("is normal by Kolmogorov and Smirnov, and by its moments", () => {
    const random = seededRandom("bell");
    const n = 50_000;
    const mean = 3;
    const deviation = 2;
    const draws = take(n, () => random.normal(mean, deviation)).toSorted((a, b) => a - b);
    let distance = 0;
    draws.forEach((value, i) => {
      const below = normalDistribution((value - mean) / deviation);
      distance = Math.max(distance, Math.abs(below - i / n), Math.abs(below - (i + 1) / n));
    });
    // 1.9495 / sqrt(n) is exceeded once in a thousand times (the limit distribution of Kolmogorov).
    expect(distance).toBeLessThan(1.9495 / Math.sqrt(n));
    const average = draws.reduce((sum, value) => sum + value, 0) / n;
    expect(Math.abs(average - mean)).toBeLessThan((3.29 * deviation) / Math.sqrt(n));
    const variance = draws.reduce((sum, value) => sum + (value - average) ** 2, 0) / (n - 1);
    expect(Math.abs(variance / 4 - 1)).toBeLessThan(3.29 * Math.sqrt(2 / n));
  });

  it("is rectangular by Kolmogorov and Smirnov", () => {
    const random = seededRandom("box");
    const n = 20_000;
    const draws = take(n, () => random.rectangular(-1, 4)).toSorted((a, b) => a - b);
    expect(draws[0]).toBeGreaterThanOrEqual(-1);
    expect(draws[n - 1]).toBeLessThan(4);
    let distance = 0;
    draws.forEach((value, i) => {
      distance = Math.max(
        distance,
        Math.abs((value + 1) / 5 - i / n),
        Math.abs((value + 1) / 5 - (i + 1) / n),
      );
    });
    expect(distance).toBeLessThan(1.9495 / Math.sqrt(n));
  });

  it("does not follow itself", () => {
    // Correlation of neighbours: normal with deviation 1 / sqrt(n).
    const random = seededRandom("neighbours");
    const n = 50_000;
    let last = random.uniform() - 0.5;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const next = random.uniform() - 0.5;
      sum += 12 * last * next;
      last = next;
    }
    expect(Math.abs(sum / n)).toBeLessThan(3.29 / Math.sqrt(n));
  });

  it("chooses whole numbers evenly", () => {
    const random = seededRandom(5);
    const counts = new Float64Array(10);
    for (let i = 0; i < 20_000; i++) counts[random.below(10)]!++;
    const chiSquared = counts.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
    expect(chiSquared).toBeLessThan(27.877165); // scipy 1.17.1, chi2.ppf(0.999, 9)
    expect(random.below(1)).toBe(0);
  });

  it("shuffles into every order alike", () => {
    const random = seededRandom("orders");
    const counts = new Map<string, number>();
    for (let i = 0; i < 24_000; i++) {
      const order = random.shuffled(["a", "b", "c", "d"]).join("");
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(24);
    let chiSquared = 0;
    for (const count of counts.values()) chiSquared += (count - 1000) ** 2 / 1000;
    expect(chiSquared).toBeLessThan(49.728233); // scipy 1.17.1, chi2.ppf(0.999, 23)
  });

  it("shuffles without losing or changing anything", () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), fc.integer(), (items, seed) => {
        const before = [...items];
        const shuffled = seededRandom(seed).shuffled(items);
        expect(items).toEqual(before);
        expect(shuffled.toSorted((a, b) => a - b)).toEqual(before.toSorted((a, b) => a - b));
      }),
    );
  });

  it("takes lone surrogates as seeds", () => {
    expect(seedBits("\ud800")).not.toBe(seedBits("\ud801"));
  });

  it("refuses what makes no sense", () => {
    const random = seededRandom(1);
    expect(refusalOf(() => seededRandom(0.5)).message).toBe(
      "seededRandom: seed = 0.5 is not a whole number that is exact. Pass a safe integer or a text.",
    );
    expect(refusalOf(() => seededRandom(2 ** 53)).code).toBe("bad-argument");
    expect(refusalOf(() => random.below(0)).message).toBe(
      "below: n = 0 is not a whole number from 1 to 2^32. Pass how many to choose from.",
    );
    expect(refusalOf(() => random.below(2 ** 32 + 1)).code).toBe("bad-argument");
    expect(refusalOf(() => random.below(1.5)).code).toBe("bad-argument");
    expect(refusalOf(() => random.rectangular(1, 0)).code).toBe("bad-argument");
    expect(refusalOf(() => random.rectangular(NaN, 0)).code).toBe("non-finite");
    expect(refusalOf(() => random.rectangular(0, Infinity)).code).toBe("non-finite");
    expect(refusalOf(() => random.normal(NaN)).code).toBe("non-finite");
    expect(refusalOf(() => random.normal(0, -1)).code).toBe("bad-argument");
    expect(random.normal(3, 0)).toBe(3);
    expect(random.rectangular(2, 2)).toBe(2);
  });
});

/** The standard normal distribution function, by its series: independent of the quantile under test. */
function normalDistribution(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 1; k < 400 && Math.abs(term) > 1e-18; k++) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}
