import {
  saltFactors,
  saltRecovery,
  saltSlugDischarge,
  standardSaltFactor,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  cubicMetrePerSecond,
  gram,
  kilogram,
  litre,
  litrePerSecond,
  microsiemensPerCentimetre,
  microsiemensSecondPerCentimetre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
  minute,
  one,
  percent,
  pound,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const factor = milligramPerLitrePerMicrosiemensPerCentimetre;
const q = (mass: number, cf: number, sum: number): number =>
  saltSlugDischarge({
    mass: kilogram.of(mass),
    calibrationFactor: factor.of(cf),
    conductivityTime: microsiemensSecondPerCentimetre.of(sum),
  }).in(litrePerSecond);
const masses = fc.double({ min: 0.01, max: 100, noNaN: true });
const factors = fc.double({ min: 0.465, max: 0.9, noNaN: true });
const sums = fc.double({ min: 100, max: 1e5, noNaN: true });

describe("saltSlugDischarge", () => {
  it("goes with the mass, and against factor and sum", () => {
    fc.assert(
      fc.property(masses, factors, sums, (mass, cf, sum) => {
        const flow = q(mass, cf, sum);
        expect(q(2 * mass, cf, sum) / flow).toBeCloseTo(2, 12);
        expect(q(mass, cf, 2 * sum) / flow).toBeCloseTo(0.5, 12);
        expect(q(mass, 1.05 * cf, sum) / flow).toBeCloseTo(1 / 1.05, 12);
      }),
    );
  });

  it("is the same in pounds and in microsiemens minutes", () => {
    const inPounds = saltSlugDischarge({
      mass: pound.of(1),
      calibrationFactor: factor.of(0.5),
      conductivityTime: microsiemensPerCentimetre.of(50).times(minute.of(2)),
    });
    expect(inPounds.in(litrePerSecond)).toBeCloseTo(q(0.45359237, 0.5, 6000), 9);
  });

  it("takes 0.486 within 2.9 % where no calibration was made, and says so", () => {
    const told: Assumption[] = [];
    const flow = saltSlugDischarge(
      { mass: kilogram.of(1), conductivityTime: microsiemensSecondPerCentimetre.of(2000) },
      { onAssumed: (assumption) => told.push(assumption) },
    );
    expect(told.map(({ input, value }) => [input, value])).toEqual([
      ["calibrationFactor", "0.486 (mg/L)/(µS/cm)"],
    ]);
    // Twice the standard deviation is 2.9 % (the paper's Table 8).
    const relative = flow.standardUncertainty().dividedBy(flow).in(percent);
    expect(2 * relative).toBeCloseTo(2.9, 6);
    expect([...flow.sources().keys()]).toEqual(["salt factor without calibration"]);
  });

  it("holds the table of the paper", () => {
    expect(standardSaltFactor().in(factor)).toBe(0.486);
    expect(saltFactors.get("none", "backgroundUpTo").in(microsiemensPerCentimetre)).toBe(500);
    // A careful calibration: 2 × 0.001604 of 0.486.
    const careful = saltFactors.get("careful", "twoDeviations").in(percent);
    expect(Math.abs(careful - (100 * 2 * 0.001604) / 0.486)).toBeLessThan(0.05);
    expect(() => saltFactors.get("careful", "factor")).toThrow(
      "salt-factors: the source gives no factor for careful.",
    );
  });

  it("adds relative uncertainties in squares", () => {
    const flow = saltSlugDischarge({
      mass: kilogram.of(2).plusMinus(gram.of(60), "scale"),
      calibrationFactor: factor.of(0.5).plusMinus(factor.of(0.02), "calibration"),
      conductivityTime: microsiemensSecondPerCentimetre.of(4000),
    });
    const relative = flow.standardUncertainty().dividedBy(flow).in(one) * 1.959964;
    expect(relative).toBeCloseTo(0.05, 5);
  });

  it("tells of a factor that no salt has, either way", () => {
    const slug = {
      mass: kilogram.of(1),
      conductivityTime: microsiemensSecondPerCentimetre.of(2000),
    };
    const using = (cf: number) => () =>
      saltSlugDischarge({ ...slug, calibrationFactor: factor.of(cf) });
    expect(using(0.45)).toThrow(OutOfValidityError);
    expect(using(0.45)).toThrow(
      "salt-slug-discharge: calibrationFactor = 0.45 (mg/L)/(µS/cm) is below 0.46 (mg/L)/(µS/cm)",
    );
    expect(using(0.45)).toThrow("the range CRC Handbook gives");
    expect(using(1.2)).toThrow("is above 1 (mg/L)/(µS/cm)");
    // 58.443 g/mol over (50.08 + 76.31) S·cm²/mol: what salt water has at infinite dilution.
    expect(58.443 / (50.08 + 76.31)).toBeGreaterThan(0.46);
    expect(58.443 / (50.08 + 76.31)).toBeLessThan(0.486);
  });

  it("refuses nothing thrown in, nothing seen, and other kinds", () => {
    const sum = microsiemensSecondPerCentimetre.of(2000);
    expect(() => saltSlugDischarge({ mass: kilogram.of(0), conductivityTime: sum })).toThrow(
      NonPhysicalError,
    );
    expect(() =>
      saltSlugDischarge({
        mass: kilogram.of(1),
        conductivityTime: microsiemensSecondPerCentimetre.of(-1),
      }),
    ).toThrow("conductivityTime = -1 µS·s/cm is not above zero");
    expect(() => saltSlugDischarge({ mass: litre.of(1) as never, conductivityTime: sum })).toThrow(
      QuantityError,
    );
  });
});

describe("saltRecovery", () => {
  it("is all of the salt at the flow that the slug gives, and in proportion to any other", () => {
    fc.assert(
      fc.property(
        masses,
        factors,
        sums,
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (m, cf, sum, by) => {
          const slug = {
            mass: kilogram.of(m),
            calibrationFactor: factor.of(cf),
            conductivityTime: microsiemensSecondPerCentimetre.of(sum),
          };
          const flow = saltSlugDischarge(slug).times(by);
          expect(saltRecovery({ ...slug, flow }).in(one)).toBeCloseTo(by, 12);
        },
      ),
    );
  });

  it("has no uncertainty from what cancels", () => {
    const slug = {
      mass: kilogram.of(1).plusMinus(gram.of(20), "scale"),
      calibrationFactor: standardSaltFactor(),
      conductivityTime: microsiemensSecondPerCentimetre.of(2000),
    };
    const share = saltRecovery({ ...slug, flow: saltSlugDischarge(slug) });
    expect(share.standardUncertainty().in(percent)).toBeLessThan(1e-3);
    expect(() => saltRecovery({ ...slug, flow: cubicMetrePerSecond.of(-1) })).toThrow(
      "flow = -1 m³/s is below zero",
    );
  });
});
