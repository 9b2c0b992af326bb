import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { colebrook, colebrookFactorOf, swameeJain } from "@leat/penstock";
import { metre, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const logReynolds = fc.double({ min: Math.log10(4000), max: 8, noNaN: true });
const relative = fc.oneof(fc.constant(0), fc.double({ min: 1e-7, max: 0.05, noNaN: true }));

describe("colebrook", () => {
  it("solves its equation to the last digits within three steps, over the whole chart", () => {
    fc.assert(
      fc.property(logReynolds, relative, (log, r) => {
        const { frictionFactor, convergence } = colebrook({
          reynolds: one.of(10 ** log),
          relativeRoughness: one.of(r),
        });
        const root = Math.sqrt(frictionFactor["~si"]);
        const left = 1 / root;
        expect(Math.abs(left + 2 * Math.log10(r / 3.7 + 2.51 / (10 ** log * root)))).toBeLessThan(
          1e-12 * left,
        );
        expect(Math.abs(convergence.residual)).toBeLessThan(1e-13 * left);
        expect(convergence.iterations).toBeLessThanOrEqual(3);
      }),
    );
  });

  it("falls with the Reynolds number and rises with roughness", () => {
    fc.assert(
      fc.property(logReynolds, relative, (log, r) => {
        const here = colebrookFactorOf(10 ** log, r);
        expect(colebrookFactorOf(1.1 * 10 ** log, r)).toBeLessThan(here);
        expect(colebrookFactorOf(10 ** log, r + 1e-4)).toBeGreaterThan(here);
      }),
    );
  });

  it("tends to the law of the fully rough pipe", () => {
    const rough = (-2 * Math.log10(0.01 / 3.7)) ** -2;
    expect(colebrookFactorOf(1e12, 0.01) / rough).toBeCloseTo(1, 6);
    expect(colebrookFactorOf(Number.POSITIVE_INFINITY, 0.01)).toBeCloseTo(rough, 14);
  });

  it("lies within 3 % of Swamee and Jain, and within 1.2 % where their fit is best", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log10(5000), max: 8, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.01, noNaN: true }),
        (log, r) => {
          const both = { reynolds: one.of(10 ** log), relativeRoughness: one.of(r) };
          const quotient = swameeJain(both)["~si"] / colebrook(both).frictionFactor["~si"];
          expect(Math.abs(quotient - 1)).toBeLessThan(log > 4.5 ? 0.015 : 0.03);
        },
      ),
    );
  });

  it("refuses flow that is not turbulent and walls that are off the chart, both at once", () => {
    const call = (): unknown =>
      colebrook({ reynolds: one.of(3999), relativeRoughness: one.of(0.06) });
    expect(call).toThrow(OutOfValidityError);
    expect(call).toThrow(
      "colebrook: Reynolds number = 3999 is below 4000, the range US EPA gives (EPANET 2.2 User Manual, ch. 12, turbulent above 4000). Pass onNotice to accept the extrapolation.",
    );
    expect(call).toThrow("colebrook: relativeRoughness = 0.06 is above 0.05");
  });

  it("refuses what is not physical, and a root that is not there", () => {
    expect(() => colebrook({ reynolds: one.of(0), relativeRoughness: one.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() => colebrook({ reynolds: one.of(1e5), relativeRoughness: one.of(-1e-3) })).toThrow(
      NonPhysicalError,
    );
    expect(() =>
      colebrook({ reynolds: metre.of(1e5) as never, relativeRoughness: one.of(0) }),
    ).toThrow("reynolds = 100000 m (length) is refused");
    expect(() => colebrookFactorOf(Number.NaN, 0.001)).toThrow(
      "colebrook: no friction factor was found for a Reynolds number of NaN and a relative roughness of 0.001. Check both.",
    );
    expect(() => colebrookFactorOf(1e6, 40)).toThrow("no friction factor was found");
  });
});
