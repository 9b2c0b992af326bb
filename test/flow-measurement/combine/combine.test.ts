import { type Combination, combine, type Measurement } from "@leat/flow-measurement";
import { type Notice, NonPhysicalError } from "@leat/formula";
import {
  litrePerSecond,
  metre,
  ohm,
  one,
  type Quantity,
  QuantityError,
  type Unit,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const k = 1.959963984540054;
/** A measurement with standard uncertainties by source. */
function measured<K extends string>(
  unit: Unit<K>,
  name: string,
  x: number,
  sources: Readonly<Record<string, number>>,
): Measurement<K> {
  let value = unit.of(x);
  for (const [id, u] of Object.entries(sources)) value = value.plusMinus(unit.of(k * u), id);
  return { name, value };
}
const flow = (name: string, x: number, sources: Readonly<Record<string, number>>) =>
  measured(litrePerSecond, name, x, sources);
function heard<K extends string>(
  all: readonly Measurement<K>[],
): { result: Combination<K>; notices: Notice[] } {
  const notices: Notice[] = [];
  return { result: combine(all, { onNotice: (notice) => notices.push(notice) }), notices };
}
const u = (q: Quantity<"volume flow">): number => q.standardUncertainty().in(litrePerSecond);

describe("combine", () => {
  it("gives the weighted mean of a textbook's three resistances", () => {
    // J. R. Taylor, An Introduction to Error Analysis, ch. 7: 11 ± 1, 12 ± 1, 10 ± 3 Ω give 11.42 ± 0.69 Ω (from memory).
    const three = [
      measured(ohm, "first", 11, { a: 1 }),
      measured(ohm, "second", 12, { b: 1 }),
      measured(ohm, "third", 10, { c: 3 }),
    ];
    const { result, notices } = heard(three);
    expect(result.consistent).toBe(true);
    expect(result.value?.in(ohm)).toBeCloseTo(11.42, 2);
    expect(result.value?.standardUncertainty().in(ohm)).toBeCloseTo(0.69, 2);
    expect(result.weights.map((w) => Number(w.toFixed(6)))).toEqual([0.473684, 0.473684, 0.052632]);
    expect(result.widened.standardUncertainty().in(ohm)).toBeCloseTo(0.68825, 5);
    expect(notices).toEqual([]);
  });

  it("finds the masses of the charged kaon in disagreement, and widens them as their review does", () => {
    // G. D'Agostini, table 1 (arXiv:2003.10386); Particle Data Group: 493.677 ± 0.013, scaled by 2.4, without the value
    // whose error is above 3·√N times that of the mean.
    const masses: readonly [string, number, number][] = [
      ["1973", 493.691, 0.04],
      ["1975", 493.657, 0.02],
      ["1979", 493.67, 0.029],
      ["1988", 493.636, 0.011],
      ["1991", 493.696, 0.007],
    ];
    const { result, notices } = heard(
      masses.map(([name, x, s]) => measured(one, name, x, { [name]: s })),
    );
    expect(result.consistent).toBe(false);
    expect(result.value).toBeUndefined();
    expect(result.widened.in(one)).toBeCloseTo(493.677, 3);
    expect(result.birgeRatio).toBeCloseTo(2.4, 1);
    expect(result.widened.standardUncertainty().in(one)).toBeCloseTo(0.013, 3);
    // And as scipy has it.
    expect(result.chiSquare).toBeCloseTo(22.4406596, 5);
    expect(result.widened.standardUncertainty().in(one)).toBeCloseTo(0.01304122734, 9);
    expect(result.pairs[0]).toMatchObject({ first: "1988", second: "1991" });
    expect(result.pairs[0]?.normalised).toBeCloseTo(0.06 / Math.hypot(0.011, 0.007), 9);
    expect(notices.map(({ code }) => code)).toEqual(["combine/disagree"]);
  });

  it("weights measurements that share sources as a constrained least-variance search of scipy does", () => {
    const { result } = heard([
      flow("weir", 12, { a: 0.3, cal: 0.2 }),
      flow("bucket", 12.6, { b: 0.5 }),
      flow("salt", 11.7, { c: 0.4, cal: 0.25 }),
      flow("meter", 12.3, { d: 0.2, probe: 0.35 }),
    ]);
    const expected = [0.33121142, 0.20295099, 0.1536053, 0.3122323];
    result.weights.forEach((w, i) => expect(w).toBeCloseTo(expected[i]!, 6));
    expect(result.value?.in(litrePerSecond)).toBeCloseTo(12.169358692, 6);
    expect(u(result.value!)).toBeCloseTo(0.225250412876, 8);
    expect(result.chiSquare).toBeCloseTo(1.87130239565, 6);
    // The calibration that two of them share is in the value under its own name.
    expect(result.value!.sources().get("cal")?.in(litrePerSecond)).toBeCloseTo(
      0.2 * expected[0]! + 0.25 * expected[2]!,
      7,
    );
  });

  it("gives no weight to what is bound to something better, where least squares would give less than none", () => {
    const { result, notices } = heard([
      flow("good", 10, { a: 0.1, s: 0.1 }),
      flow("bound", 10.5, { a2: 0.12, s: 1 }),
      flow("free", 10.2, { b: 0.5 }),
    ]);
    expect(result.weights[0]).toBeCloseTo(0.92592593, 7);
    expect(result.weights[1]).toBe(0);
    expect(result.weights[2]).toBeCloseTo(0.07407407, 7);
    expect(u(result.value!)).toBeCloseTo(0.136082763, 8);
    expect(notices.map(({ message }) => message)).toEqual([
      "combine: bound is given no weight: what it shares with the others leaves nothing that it could better.",
    ]);
  });

  it("takes back a weight that it gave too soon", () => {
    // Alone the third is best; with both others it is worth less than nothing. Weights as scipy finds them.
    const { weights, widened } = combine([
      flow("first", 10, { a: 1, p: 0.2, q: 2, r: 1 }),
      flow("second", 10, { b: 1, q: 0.5, r: 2 }),
      flow("third", 10, { c: 0.2, p: 0.2, q: 1, r: 2 }),
    ]);
    [0.4253308, 0.5746692, 0].forEach((w, i) => expect(weights[i]).toBeCloseTo(w, 6));
    expect(u(widened)).toBeCloseTo(2.071956967, 7);
  });

  it("keeps the mean of a well-known puzzle among its members", () => {
    // R. W. Peelle: 1.5 and 1.0, 10 % each and 20 % in common; least squares gives 0.88 ± 0.22, below both.
    const { result } = heard([
      measured(one, "one", 1.5, { a: 0.15, common: 0.3 }),
      measured(one, "two", 1, { b: 0.1, common: 0.2 }),
    ]);
    expect(result.weights).toEqual([0, 1]);
    expect(result.widened.in(one)).toBe(1);
    expect(result.chiSquare).toBeCloseTo(5.88235, 4);
    expect(result.consistent).toBe(false);
    expect(result.pairs[0]?.normalised).toBeCloseTo(2.42535625, 7);
  });

  it("does not average out what all have in common", () => {
    const all = ["a", "b", "c", "d"].map((name) => flow(name, 10, { [name]: 0.4, gauge: 0.3 }));
    const { value } = combine(all);
    expect(u(value!)).toBeCloseTo(Math.hypot(0.4 / 2, 0.3), 9);
    // Weights are those of what is left without it.
    const two = combine([flow("a", 10, { a: 0.4, gauge: 2 }), flow("b", 10, { b: 0.8, gauge: 2 })]);
    expect(two.weights[0]).toBeCloseTo(0.8, 6);
  });

  it("says of a disagreement which two, how far, and what may be done knowingly", () => {
    const { result, notices } = heard([
      flow("weir", 12, { a: 0.3 }),
      flow("bucket", 10, { b: 0.2 }),
      flow("salt", 10.2, { c: 0.5 }),
    ]);
    expect(notices.length).toBe(1);
    expect(notices[0]?.severity).toBe("caution");
    expect(notices[0]?.message).toBe(
      "combine: 3 measurements disagree: weir, 12 L/s, and bucket, 10 L/s, are 17 % apart, 5.55 times the standard uncertainty of their difference. χ² is 31.4 and 5.99 would be let pass. There is no value: look for what is wrong with one of them, or take `widened`, 3.96 times as uncertain, knowingly.",
    );
    const extra = result.widened.sources().get("disagreement of weir, bucket, salt");
    expect(extra?.in(litrePerSecond)).toBeGreaterThan(0);
    // Bound fast to each other and yet apart: their difference has no uncertainty at all.
    const bound = heard([flow("first", 10, { s: 1 }), flow("second", 11, { s: 1 })]);
    expect(bound.result.pairs[0]?.normalised).toBe(Number.POSITIVE_INFINITY);
    expect(bound.notices[0]?.message).toContain(
      "are 9.1 % apart, infinitely many times the standard uncertainty of their difference",
    );
  });

  it("says of two that are apart among many that agree", () => {
    const others = Array.from({ length: 8 }, (_, i) => flow(`m${i}`, 10, { [`m${i}`]: 1 }));
    const { result, notices } = heard([
      flow("high", 11.5, { high: 1 }),
      flow("low", 8.5, { low: 1 }),
      ...others,
    ]);
    expect(result.consistent).toBe(true);
    expect(notices.map(({ message }) => message)).toEqual([
      "combine: high, 11.5 L/s, and low, 8.5 L/s, are 26 % apart, 2.12 times the standard uncertainty of their difference. All together still agree.",
    ]);
  });

  it("says a value that no one wrote in its coherent unit", () => {
    const half = flow("half", 24, { a: 0.1 }).value.times(0.5);
    const { notices } = heard([{ name: "half", value: half }, flow("whole", 24, { b: 0.1 })]);
    expect(notices[0]?.message).toContain("half, 0.012 m³/s, and whole, 24 L/s,");
  });

  it("of one is that one", () => {
    const only = flow("weir", 12, { a: 0.3, s: 0.1 });
    const { result, notices } = heard([only]);
    expect(result.weights).toEqual([1]);
    expect(result.value?.in(litrePerSecond)).toBeCloseTo(12, 12);
    expect(u(result.value!)).toBeCloseTo(u(only.value), 12);
    expect(result.birgeRatio).toBeUndefined();
    expect(result.pairs).toEqual([]);
    expect(notices).toEqual([]);
  });

  it("is for any kind, and for one at a time", () => {
    const heads = combine([
      { name: "level", value: metre.of(31).as("gross head").plusMinus(metre.of(0.4), "level") },
      { name: "gauge", value: metre.of(31.3).as("gross head").plusMinus(metre.of(0.6), "gauge") },
    ]);
    expect(heads.value?.kind).toBe("gross head");
    expect(() =>
      combine<string>([
        flow("weir", 12, { a: 1 }),
        measured(metre, "level", 12, { b: 1 }),
      ] as never),
    ).toThrow(QuantityError);
  });

  it("refuses one without an uncertainty, two of a name, and none", () => {
    const bare = { name: "guess", value: litrePerSecond.of(11) };
    expect(() => combine([flow("weir", 12, { a: 1 }), bare])).toThrow(NonPhysicalError);
    expect(() => combine([flow("weir", 12, { a: 1 }), bare])).toThrow(
      "combine: 1 (guess) = 11 L/s has no uncertainty, and would outweigh all others. Give it one: plusMinus(half of its 95 % interval, what is uncertain).",
    );
    expect(() => combine([flow("weir", 12, { a: 1 }), flow("weir", 12, { b: 1 })])).toThrow(
      "combine: 1 (weir) has the name of another. Give each its own.",
    );
    expect(() => combine([])).toThrow("combine: measurements = none. Give one or more.");
  });

  describe("whatever is measured", () => {
    const source = fc.constantFrom("gauge", "tape", "vessel");
    const members = fc
      .array(
        fc.record({
          x: fc.double({ min: 5, max: 15, noNaN: true }),
          own: fc.double({ min: 0.05, max: 3, noNaN: true }),
          shared: fc.dictionary(source, fc.double({ min: 0.01, max: 3, noNaN: true })),
        }),
        { minLength: 1, maxLength: 7 },
      )
      .map((all) =>
        all.map(({ x, own, shared }, i) => flow(`m${i}`, x, { ...shared, [`own ${i}`]: own })),
      );
    const meanOf = (
      result: Combination<"volume flow">,
      all: readonly Measurement<"volume flow">[],
    ) => all.reduce((sum, { value }, i) => sum + value.in(litrePerSecond) * result.weights[i]!, 0);
    const spreadOf = (
      result: Combination<"volume flow">,
      all: readonly Measurement<"volume flow">[],
    ) =>
      u(
        all
          .map(({ value }, i) => value.times(result.weights[i]!))
          .reduce((sum, part) => sum.plus(part)),
      );

    it("has weights that are one together and none below zero, and a mean among its members", () => {
      fc.assert(
        fc.property(members, (all) => {
          const result = combine(all);
          expect(result.weights.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
          for (const w of result.weights) expect(w).toBeGreaterThanOrEqual(0);
          const xs = all.map(({ value }) => value.in(litrePerSecond));
          expect(meanOf(result, all)).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-9);
          expect(meanOf(result, all)).toBeLessThanOrEqual(Math.max(...xs) + 1e-9);
        }),
      );
    });

    it("has a mean that no other weights would make less uncertain", () => {
      fc.assert(
        fc.property(members, fc.nat(), fc.nat(), (all, a, b) => {
          const result = combine(all);
          const best = spreadOf(result, all);
          // Any part of one weight given to another makes it worse.
          const [i, j] = [a % all.length, b % all.length];
          const moved = result.weights[i]! * 0.1;
          const weights = result.weights.map(
            (w, n) => w - (n === i ? moved : 0) + (n === j ? moved : 0),
          );
          expect(spreadOf({ ...result, weights }, all)).toBeGreaterThanOrEqual(best * (1 - 1e-7));
        }),
      );
    });

    it("does not change with the order", () => {
      fc.assert(
        fc.property(members, (all) => {
          const [there, back] = [combine(all), combine(all.toReversed())];
          back.weights.toReversed().forEach((w, i) => expect(w).toBeCloseTo(there.weights[i]!, 6));
          expect(back.consistent).toBe(there.consistent);
          if (there.birgeRatio !== undefined)
            expect(back.birgeRatio).toBeCloseTo(there.birgeRatio, 5);
        }),
      );
    });

    it("is never less certain for one more measurement", () => {
      fc.assert(
        fc.property(members, fc.double({ min: 0.05, max: 5, noNaN: true }), (all, own) => {
          const before = spreadOf(combine(all), all);
          const more = [...all, flow("more", 10, { more: own, gauge: 0.5 })];
          expect(spreadOf(combine(more), more)).toBeLessThanOrEqual(before * (1 + 1e-7));
        }),
      );
    });

    it("of equal members is that member, better where they share nothing and not where they share all", () => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 8 }),
          fc.double({ min: 0.05, max: 3, noNaN: true }),
          (n, s) => {
            const apart = Array.from({ length: n }, (_, i) => flow(`m${i}`, 10, { [`m${i}`]: s }));
            const same = Array.from({ length: n }, (_, i) => flow(`m${i}`, 10, { vessel: s }));
            const [a, b] = [combine(apart), combine(same)];
            expect(a.value?.in(litrePerSecond)).toBeCloseTo(10, 10);
            expect(b.value?.in(litrePerSecond)).toBeCloseTo(10, 10);
            expect(u(a.value!)).toBeCloseTo(s / Math.sqrt(n), 7);
            expect(u(b.value!)).toBeCloseTo(s, 7);
            for (const w of b.weights) expect(w).toBeCloseTo(1 / n, 6);
          },
        ),
      );
    });

    it("scales with its unit", () => {
      fc.assert(
        fc.property(members, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (all, factor) => {
          const times = all.map(({ name, value }) => ({ name, value: value.times(factor) }));
          const [a, b] = [combine(all), combine(times)];
          b.weights.forEach((w, i) => expect(w).toBeCloseTo(a.weights[i]!, 6));
          expect(b.widened.in(litrePerSecond) / factor).toBeCloseTo(
            a.widened.in(litrePerSecond),
            5,
          );
        }),
      );
    });

    it("is widened by the Birge ratio, never narrowed", () => {
      fc.assert(
        fc.property(members, (all) => {
          const result = combine(all);
          const plain = spreadOf(result, all);
          const ratio = Math.max(1, result.birgeRatio ?? 1);
          expect(u(result.widened) / plain).toBeCloseTo(ratio, 6);
        }),
      );
    });
  });
});
