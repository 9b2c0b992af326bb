import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { exactLog } from "../../../packages/numerics/src/random/exact-log.ts";

describe("exactLog", () => {
  // mpmath 1.3 at 40 digits
  it.each<[number, number]>([
    [1e-300, -690.7755278982137],
    [0.5, -Math.LN2],
    [0.9, -0.10536051565782628],
    [1.3, 0.26236426446749106],
    [2, Math.LN2],
    [1e10, 23.025850929940457],
  ])("is the logarithm of %f", (x, ln) => {
    expect(Math.abs(exactLog(x) - ln)).toBeLessThanOrEqual(4.5e-16 * Math.abs(ln));
  });

  it("is within two last places of the engine's own", () => {
    fc.assert(
      fc.property(fc.double({ min: 2.3e-308, max: 0.9, noNaN: true }), (x) => {
        const engine = Math.log(x);
        expect(Math.abs(exactLog(x) - engine)).toBeLessThanOrEqual(5e-16 * Math.abs(engine));
      }),
    );
  });
});
