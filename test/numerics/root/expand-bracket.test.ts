import { bracketedRoot, expandBracket } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

const fenced = (x: number): number => {
  if (x < 0 || x > 100) throw new RangeError(`called at ${x}`);
  return Math.sqrt(x) - 9;
};
// |f| is smaller below, but the limit is reached there, so the upper end has to move.
const turned = (x: number): number => (x < 0 ? NaN : x < 50 ? 1 + x : -1);
const rising = (x: number): number => x + 10;

describe("expandBracket", () => {
  it("reaches a root on either side", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (root) => {
        const f = (x: number): number => x - root;
        const { lo, hi, fLo, fHi, converged } = expandBracket(f, 0, 1);
        expect(converged).toBe(true);
        expect(fLo).toBe(f(lo));
        expect(fHi).toBe(f(hi));
        expect(fLo * fHi).toBeLessThanOrEqual(0);
        expect(bracketedRoot(f, lo, hi).root).toBeCloseTo(root, 6);
      }),
    );
  });

  it("doubles the width towards the smaller |f|", () => {
    expect(expandBracket((x) => x - 10, 0, 1)).toEqual({
      lo: 0,
      hi: 16,
      fLo: -10,
      fHi: 6,
      expansions: 4,
      converged: true,
    });
    expect(expandBracket((x) => x + 10, 0, 1)).toMatchObject({ lo: -15, hi: 1, expansions: 4 });
    expect(expandBracket((x) => x - 10, 0, 1, { factor: 3 })).toMatchObject({ hi: 27 });
  });

  it("returns an interval that needs no widening, a zero at an end included", () => {
    expect(expandBracket((x) => x, -1, 2)).toMatchObject({ lo: -1, hi: 2, expansions: 0 });
    expect(expandBracket((x) => x, 0, 1)).toMatchObject({ lo: 0, expansions: 0 });
    expect(expandBracket((x) => -x, -1, 0)).toMatchObject({ hi: 0, expansions: 0 });
  });

  it("never calls fenced outside its limits", () => {
    expect(expandBracket(fenced, 1, 2, { least: 0, most: 100 })).toMatchObject({ hi: 100 });
    expect(expandBracket(turned, 0, 1, { least: 0 })).toMatchObject({ lo: 0, hi: 64 });
    const mirrored = (x: number): number => turned(-x);
    expect(expandBracket(mirrored, -1, 0, { most: 0 })).toMatchObject({ lo: -64, hi: 0 });
  });

  it("gives up at its cap and at its limits", () => {
    const error = refusalOf(() => expandBracket((x) => x * x + 1, 0, 1, { maxExpansions: 3 }));
    expect(error.code).toBe("no-sign-change");
    // By hand: [0, 1], [-1, 1], [-1, 3], [-5, 3].
    expect(error.message).toBe(
      "expandBracket: f has one sign from f(-5) = 26 to f(3) = 10. " +
        "Start elsewhere, raise maxExpansions or move a limit.",
    );
    const limits = { least: -1, most: 2 };
    const boxed = refusalOf(() => expandBracket((x) => x * x + 1, 0, 1, limits));
    expect(boxed.details).toMatchObject({ lo: -1, hi: 2 });
    // Doubling from 1e300 leaves the numbers before it leaves the cap.
    expect(refusalOf(() => expandBracket(() => 1, 0, 1e300)).code).toBe("no-sign-change");
  });

  it("refuses what makes no sense", () => {
    expect(refusalOf(() => expandBracket(rising, 0, 1, { factor: 1 })).message).toBe(
      "expandBracket: factor = 1 does not widen. Pass a finite number above 1.",
    );
    expect(refusalOf(() => expandBracket(rising, 0, 1, { least: 0.5 })).message).toBe(
      "expandBracket: [0, 1] is not within least = 0.5 and most = Infinity. Start inside the limits.",
    );
    expect(refusalOf(() => expandBracket(rising, 0, 1, { most: NaN })).code).toBe("bad-argument");
    expect(refusalOf(() => expandBracket(rising, 1, 0)).code).toBe("bad-argument");
    expect(refusalOf(() => expandBracket(rising, 0, 1, { maxExpansions: -1 })).code).toBe(
      "bad-argument",
    );
    expect(refusalOf(() => expandBracket(() => NaN, 0, 1)).code).toBe("non-finite");
    const upper = refusalOf(() => expandBracket((x) => (x === 1 ? NaN : 1), 0, 1));
    expect(upper.details).toMatchObject({ x: 1 });
    expect(refusalOf(() => expandBracket((x) => Math.sqrt(x) + 1, 0, 1)).details).toMatchObject({
      x: -1,
    });
  });
});
