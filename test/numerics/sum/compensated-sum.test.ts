import { compensatedSum, CompensatedSum } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

/** A number as a whole multiple of 2^-1074, exactly. */
function exact(x: number): bigint {
  const bits = new BigUint64Array(Float64Array.of(x).buffer)[0]!;
  const exponent = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & 0xfffffffffffffn;
  const size = exponent === 0 ? fraction : (fraction | (1n << 52n)) << BigInt(exponent - 1);
  return x < 0 ? -size : size;
}

describe("compensatedSum", () => {
  it("keeps what a plain loop drops", () => {
    // Neumaier's own case: Kahan's older method answers 0 here.
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
    expect(compensatedSum([])).toBe(0);
    const tenths = Array.from({ length: 1_000_000 }, () => 0.1);
    expect(compensatedSum(tenths)).toBe(100_000);
    expect(tenths.reduce((sum, term) => sum + term)).not.toBe(100_000);
  });

  it("agrees with the sum in whole numbers, which drop nothing", () => {
    const terms = fc.array(fc.double({ min: -1e12, max: 1e12, noNaN: true }), { maxLength: 60 });
    fc.assert(
      fc.property(terms, (values) => {
        let sum = 0n;
        let magnitude = 0n;
        for (const value of values) {
          sum += exact(value);
          magnitude += exact(Math.abs(value));
        }
        const difference = exact(compensatedSum(values)) - sum;
        const error = difference < 0n ? -difference : difference;
        // One last place of the sum, and the square of it, times the count squared, of the magnitudes.
        const allowed = ((sum < 0n ? -sum : sum) >> 52n) + ((3600n * magnitude) >> 104n) + 1n;
        expect(error <= allowed).toBe(true);
      }),
    );
  });

  it("runs", () => {
    const sum = new CompensatedSum();
    expect(sum.value).toBe(0);
    sum.add(2);
    sum.add(3);
    expect(sum.value).toBe(5);
  });

  it("refuses what is not finite, and stays as it was", () => {
    const sum = new CompensatedSum();
    sum.add(1e308);
    expect(refusalOf(() => sum.add(NaN)).message).toBe(
      "CompensatedSum: term = NaN is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => sum.add(1e308)).message).toBe(
      "CompensatedSum: sum = Infinity is not finite. Pass a finite number.",
    );
    expect(sum.value).toBe(1e308);
  });
});
