import { OutOfValidityError } from "@leat/formula";
import {
  cunnanePosition,
  gringortenPosition,
  hazenPosition,
  type PlottingPosition,
  weibullPosition,
} from "@leat/hydrology";
import { each, metre, one } from "@leat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const formulas: readonly PlottingPosition[] = [
  weibullPosition,
  cunnanePosition,
  gringortenPosition,
  hazenPosition,
];

describe.each(formulas.map((formula) => [formula.id, formula] as const))("%s", (id, formula) => {
  const at = (rank: number, size: number): number =>
    formula({ rank: each.of(rank), size: each.of(size) }).in(one);

  it("rises with the rank, lies inside 0 to 1, and is the same counted from the other end", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40_000 }), fc.nat(), (size, pick) => {
        const rank = 1 + (pick % (size - 1));
        const share = at(rank, size);
        expect(share).toBeGreaterThan(0);
        expect(at(rank + 1, size)).toBeGreaterThan(share);
        expect(at(size, size)).toBeLessThan(1);
        expect(at(size + 1 - rank, size)).toBeCloseTo(1 - share, 12);
      }),
    );
  });

  it("refuses ranks that are none", () => {
    expect(() => at(21, 20)).toThrow(OutOfValidityError);
    expect(() => at(21, 20)).toThrow(`${id}: rank/size = 1.05 is above 1`);
    expect(() => at(0, 20)).toThrow(`${id}: rank = 0 each is not above zero`);
    expect(() => at(0.5, 20)).toThrow(`${id}: rank = 0.5 each is below 1 each`);
    expect(() => formula({ rank: metre.of(1) as never, size: each.of(2) })).toThrow("rank = 1 m");
  });
});

it("positions differ most at the ends: Weibull is the furthest in, Hazen the furthest out", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 1000 }), (size) => {
      const first = formulas.map((formula) =>
        formula({ rank: each.of(1), size: each.of(size) }).in(one),
      );
      expect(first.toSorted((a, b) => b - a)).toEqual(first);
    }),
  );
});
