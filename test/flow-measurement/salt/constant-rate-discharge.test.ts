import { saltConstantRateDischarge } from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import {
  gallonPerMinute,
  gramPerLitre,
  kilogram,
  litrePerSecond,
  milligramPerLitre,
  poundPerCubicFoot,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const feed = {
  injectionRate: litrePerSecond.of(0.02),
  injectedConcentration: gramPerLitre.of(150),
  plateauConcentration: milligramPerLitre.of(60),
  backgroundConcentration: milligramPerLitre.of(4),
};

describe("saltConstantRateDischarge", () => {
  it("balances the mass, feed included", () => {
    const some = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        some,
        some,
        some,
        fc.double({ min: 1, max: 1e4, noNaN: true }),
        (q, c1, c0, by) => {
          fc.pre(c1 > c0 * 1.01);
          const flow = q * by;
          const plateau = (q * c1 + flow * c0) / (q + flow);
          fc.pre(plateau > c0 * (1 + 1e-6));
          const got = saltConstantRateDischarge({
            injectionRate: litrePerSecond.of(q),
            injectedConcentration: gramPerLitre.of(c1),
            plateauConcentration: gramPerLitre.of(plateau),
            backgroundConcentration: gramPerLitre.of(c0),
          });
          expect(got.in(litrePerSecond) / flow).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it("asks only for parts of the fed solution", () => {
    const by = (n: number): number =>
      saltConstantRateDischarge({
        ...feed,
        injectedConcentration: feed.injectedConcentration.times(n),
        plateauConcentration: feed.plateauConcentration.times(n),
        backgroundConcentration: feed.backgroundConcentration.times(n),
      }).in(litrePerSecond);
    expect(by(1e-3)).toBeCloseTo(by(1), 9);
  });

  it("is the same in gallons and pounds", () => {
    const us = saltConstantRateDischarge({
      injectionRate: gallonPerMinute.of(0.02 / 0.0630901964),
      injectedConcentration: poundPerCubicFoot.of(150 / 16.01846337396014),
      plateauConcentration: milligramPerLitre.of(60),
      backgroundConcentration: milligramPerLitre.of(4),
    });
    expect(us.in(litrePerSecond)).toBeCloseTo(
      saltConstantRateDischarge(feed).in(litrePerSecond),
      6,
    );
  });

  it("refuses a plateau that is out of order, and other kinds", () => {
    const low = { ...feed, plateauConcentration: milligramPerLitre.of(4) };
    expect(() => saltConstantRateDischarge(low)).toThrow(NonPhysicalError);
    expect(() => saltConstantRateDischarge(low)).toThrow(
      "salt-constant-rate-discharge: plateauConcentration = 0.004 kg/m³ is not above the background, 0.004 kg/m³: no stream does that.",
    );
    expect(() =>
      saltConstantRateDischarge({ ...feed, injectedConcentration: milligramPerLitre.of(50) }),
    ).toThrow(
      "plateauConcentration = 0.06 kg/m³ is not below the solution that is fed in, 0.05 kg/m³",
    );
    expect(() =>
      saltConstantRateDischarge({ ...feed, injectionRate: kilogram.of(1) as never }),
    ).toThrow(QuantityError);
  });
});
