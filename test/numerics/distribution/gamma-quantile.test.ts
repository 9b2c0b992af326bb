import { gammaQuantile } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

// mpmath 1.3 at 40 digits: the root of its regularised incomplete gamma function.
const exact: [number, number, number][] = [
  [1e-200, 2, 1.414213562373095e-100],
  [1e-10, 0.3, 3.2364402266035517e-34],
  [0.01, 0.05, 5.844632057286532e-41],
  [0.5, 0.5, 0.22746821155978638],
  [0.05, 3.7, 1.1949276214840273],
  [0.3, 20.25, 17.671210211522404],
  [0.95, 0.1, 0.58043510532313444],
  [0.975, 10000, 10196.941824999883],
  [0.999, 100, 133.77026391137859],
  [0.9999999999, 5, 34.083808975952068],
  [1e-5, 10000, 9579.2272921651679],
];

describe("gammaQuantile", () => {
  it.each(exact)("agrees with mpmath at p = %f, shape %f", (p, shape, x) => {
    expect(Math.abs(gammaQuantile(p, shape) / x - 1)).toBeLessThanOrEqual(1e-11);
  });

  it("is the exponential distribution at shape 1, and rises with p and with the shape", () => {
    const inside = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
    fc.assert(
      fc.property(inside, fc.double({ min: 0.2, max: 1e5, noNaN: true }), (p, shape) => {
        const exponential = -Math.log1p(-p);
        expect(Math.abs(gammaQuantile(p, 1) / exponential - 1)).toBeLessThanOrEqual(1e-10);
        const x = gammaQuantile(p, shape);
        expect(x).toBeGreaterThan(0);
        expect(gammaQuantile(p * 0.999, shape)).toBeLessThan(x);
        expect(gammaQuantile(p, shape * 1.001)).toBeGreaterThan(x);
      }),
    );
  });

  it("refuses what has no answer", () => {
    expect(refusalOf(() => gammaQuantile(0, 1)).code).toBe("bad-argument");
    expect(refusalOf(() => gammaQuantile(0.5, 0)).message).toBe(
      "gammaQuantile: shape = 0 is not above zero. Pass a positive, finite number.",
    );
    expect(refusalOf(() => gammaQuantile(0.5, 0.0005)).message).toBe(
      "gammaQuantile: at p = 0.5 and so small a shape, 0.0005, the quantile is below 1e-304. Ask for a larger p.",
    );
  });

  it("says so where the distribution cannot be summed", () => {
    const error = refusalOf(() => gammaQuantile(0.5, 1e16));
    expect(error.code).toBe("not-converged");
    expect(error.message).toBe(
      "gammaQuantile: the distribution is not summed after 1000000 terms. Use degrees of freedom or a shape nearer to 1.",
    );
  });
});
