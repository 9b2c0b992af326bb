import { grubbsCriterion } from "@leat/flow-measurement";
import { describe, expect, it } from "vitest";

describe("grubbsCriterion", () => {
  it("is the printed table", () => {
    // Harvey, Analytical Chemistry, appendix 7, α = 0.05. Its row of 7 prints 2.202 for 2.020, digits swapped, and that
    // of 3 prints 1.155, rounded from 2/√3.
    const printed: readonly [number, number][] = [
      [4, 1.481],
      [5, 1.715],
      [6, 1.887],
      [8, 2.126],
      [9, 2.215],
      [10, 2.29],
      [11, 2.355],
      [12, 2.412],
      [13, 2.462],
      [14, 2.507],
      [15, 2.549],
    ];
    for (const [n, g] of printed) expect(Math.abs(grubbsCriterion(n) - g)).toBeLessThan(0.001);
    // α = 0.01 of the same table.
    expect(grubbsCriterion(6, 0.01)).toBeCloseTo(1.973, 3);
    expect(grubbsCriterion(10, 0.01)).toBeCloseTo(2.482, 3);
  });

  it("is what scipy makes of its formula", () => {
    expect(grubbsCriterion(3)).toBeCloseTo(1.1543048513, 9);
    expect(grubbsCriterion(7)).toBeCloseTo(2.0199685077, 9);
    expect(grubbsCriterion(20)).toBeCloseTo(2.7082456458, 9);
  });

  it("never reaches what so many repeats can", () => {
    for (let n = 3; n < 40; n++) expect(grubbsCriterion(n)).toBeLessThan((n - 1) / Math.sqrt(n));
  });
});
