import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  logPearsonQuantile,
  nonZeroProbability,
  pearsonFrequencyFactor,
  pearsonFrequencyFactorOf,
  recurrenceInterval,
  wilsonHilfertyFactor,
} from "@leat/hydrology";
import { normalQuantile } from "@leat/numerics";
import { gallonPerMinute, litrePerSecond, metre, one, percent, year } from "@leat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const probability = fc.double({ min: 0.002, max: 0.998, noNaN: true });
const skews = fc.double({ min: -3, max: 3, noNaN: true });

// The table of K of the U.S. Water Resources Council (Bulletin 17B, app. 3, after Harter, Technometrics 11 (1969) 177),
// reprinted to three decimals in Soetopo, p. 105: by exceedance in per cent.
const exceeded = [99, 95, 90, 80, 50, 20, 10, 4, 2, 1, 0.5, 0.1];
const printed: readonly (readonly [skew: number, factors: readonly number[]])[] = [
  [-3, [-4.051, -2.003, -1.18, -0.42, 0.396, 0.636, 0.66, 0.666, 0.666, 0.667, 0.667, 0.667]],
  [-2, [-3.605, -1.996, -1.303, -0.609, 0.307, 0.777, 0.895, 0.959, 0.98, 0.99, 0.995, 0.999]],
  [-1, [-3.023, -1.877, -1.34, -0.758, 0.164, 0.852, 1.128, 1.366, 1.492, 1.588, 1.664, 1.786]],
  [-0.5, [-2.686, -1.774, -1.323, -0.808, 0.083, 0.857, 1.216, 1.567, 1.777, 1.955, 2.108, 2.399]],
  [-0.2, [-2.472, -1.7, -1.301, -0.83, 0.033, 0.85, 1.258, 1.68, 1.945, 2.178, 2.388, 2.808]],
  [0, [-2.326, -1.645, -1.282, -0.842, 0, 0.842, 1.282, 1.751, 2.054, 2.326, 2.576, 3.09]],
  [0.3, [-2.104, -1.555, -1.245, -0.853, -0.05, 0.824, 1.309, 1.849, 2.211, 2.544, 2.856, 3.521]],
  [0.6, [-1.88, -1.458, -1.2, -0.857, -0.099, 0.8, 1.329, 1.939, 2.359, 2.755, 3.132, 3.956]],
  [1, [-1.588, -1.317, -1.128, -0.852, -0.164, 0.758, 1.34, 2.043, 2.542, 3.023, 3.489, 4.531]],
  [2, [-0.99, -0.949, -0.895, -0.777, -0.307, 0.609, 1.303, 2.219, 2.912, 3.605, 4.298, 5.908]],
  [3, [-0.667, -0.665, -0.66, -0.636, -0.396, 0.42, 1.18, 2.278, 3.152, 4.051, 4.97, 7.152]],
];

describe("pearsonFrequencyFactor", () => {
  it.each(printed)("is the printed table at a skew of %s", (skew, factors) => {
    const got = exceeded.map((share) =>
      pearsonFrequencyFactor({ probability: percent.of(100 - share), skew: one.of(skew) }).in(one),
    );
    got.forEach((factor, at) => expect(Math.abs(factor - factors[at]!)).toBeLessThan(0.00051));
  });

  it("mirrors a skew of the other sign, and rises with the probability", () => {
    fc.assert(
      fc.property(probability, skews, (p, skew) => {
        const factor = pearsonFrequencyFactorOf(p, skew);
        expect(pearsonFrequencyFactorOf(1 - p, -skew)).toBeCloseTo(-factor, 8);
        expect(pearsonFrequencyFactorOf(p + 0.001, skew)).toBeGreaterThan(factor);
      }),
    );
  });

  it("is normal without skew, and exponential at a skew of 2", () => {
    fc.assert(
      fc.property(probability, (p) => {
        expect(pearsonFrequencyFactorOf(p, 0)).toBe(normalQuantile(p));
        expect(pearsonFrequencyFactorOf(p, 2)).toBeCloseTo(-Math.log(1 - p) - 1, 9);
      }),
    );
  });

  it("does not jump where the expansion for small skews takes over", () => {
    for (const p of [0.002, 0.1, 0.5, 0.9, 0.998]) {
      for (const sign of [1, -1]) {
        const inside = pearsonFrequencyFactorOf(p, sign * (1e-3 - 1e-12));
        expect(pearsonFrequencyFactorOf(p, sign * (1e-3 + 1e-12))).toBeCloseTo(inside, 9);
      }
    }
  });

  it("refuses both ends, other kinds, and skews beyond the tables", () => {
    const ask = (p: number, skew: number) =>
      pearsonFrequencyFactor({ probability: one.of(p), skew: one.of(skew) });
    expect(() => ask(0, 1)).toThrow(NonPhysicalError);
    expect(() => ask(1, 1)).toThrow(
      "pearson-frequency-factor: probability = 1 has no finite quantile. Give a probability above 0 and below 1.",
    );
    expect(() => ask(0.5, 9.5)).toThrow(OutOfValidityError);
    expect(() => ask(0.5, -9.5)).toThrow("skew = -9.5 is below -9, the range Bulletin 17B gives");
    expect(() =>
      pearsonFrequencyFactor({ probability: metre.of(1) as never, skew: one.of(1) }),
    ).toThrow("probability = 1 m (length) is refused");
  });
});

describe("wilsonHilfertyFactor", () => {
  it("is close to the exact factor at small skews, and the normal quantile at none", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (p, skew) => {
          const given = { probability: one.of(p), skew: one.of(skew) };
          const [near, exact] = [wilsonHilfertyFactor(given), pearsonFrequencyFactor(given)];
          expect(Math.abs(near.in(one) - exact.in(one))).toBeLessThan(0.02);
        },
      ),
    );
    const none = { probability: percent.of(90), skew: one.of(0) };
    expect(wilsonHilfertyFactor(none).in(one)).toBeCloseTo(normalQuantile(0.9), 12);
    expect(() => wilsonHilfertyFactor({ ...none, probability: one.of(0) })).toThrow(
      "wilson-hilferty-factor: probability = 0 has no finite quantile",
    );
  });
});

describe("logPearsonQuantile", () => {
  it("scales with the flows, is their geometric mean without spread, and knows no unit", () => {
    fc.assert(
      fc.property(probability, skews, (p, skew) => {
        const of = (litres: number, logDeviation: number): number =>
          logPearsonQuantile({
            geometricMean: litrePerSecond.of(litres),
            logDeviation: one.of(logDeviation),
            skew: one.of(skew),
            probability: one.of(p),
          }).in(litrePerSecond);
        expect(of(12, 0)).toBe(12);
        expect(of(40, 0.2)).toBeCloseTo(2 * of(20, 0.2), 9);
        const gallons = logPearsonQuantile({
          geometricMean: gallonPerMinute.of(20),
          logDeviation: one.of(0.2),
          skew: one.of(skew),
          probability: one.of(p),
        });
        expect(gallons.in(gallonPerMinute)).toBeCloseTo(of(20, 0.2), 9);
      }),
    );
  });

  it("carries the uncertainty of the flows as it is, in proportion", () => {
    const flow = logPearsonQuantile({
      geometricMean: litrePerSecond.of(20).plusMinus(litrePerSecond.of(1.96), "rating"),
      logDeviation: one.of(0.2),
      skew: one.of(-0.3),
      probability: percent.of(10),
    });
    const u = flow.standardUncertainty().in(litrePerSecond);
    expect(u / flow.in(litrePerSecond)).toBeCloseTo(0.05, 4);
  });

  it("refuses a probability that is an end", () => {
    const given = {
      geometricMean: litrePerSecond.of(1),
      logDeviation: one.of(0.1),
      skew: one.of(0),
    };
    expect(() => logPearsonQuantile({ ...given, probability: one.of(1) })).toThrow(
      "log-pearson-quantile: probability = 1 has no finite quantile",
    );
  });
});

describe("recurrence and dry years", () => {
  it("are each other's arithmetic", () => {
    fc.assert(
      fc.property(probability, fc.double({ min: 0, max: 0.99, noNaN: true }), (p, part) => {
        expect(recurrenceInterval({ probability: one.of(p) }).in(year)).toBeCloseTo(1 / p, 9);
        const zeroShare = p * part;
        const others = nonZeroProbability({
          probability: one.of(p),
          zeroShare: one.of(zeroShare),
        }).in(one);
        expect(others).toBeGreaterThanOrEqual(0);
        expect(others).toBeLessThanOrEqual(p);
        expect(zeroShare + (1 - zeroShare) * others).toBeCloseTo(p, 12);
      }),
    );
  });

  it("refuse what never happens, and more dry years than were asked for", () => {
    expect(() => recurrenceInterval({ probability: one.of(0) })).toThrow(
      "recurrence-interval: probability = 0 never happens. Give a probability above zero.",
    );
    const given = { probability: percent.of(10), zeroShare: percent.of(10) };
    expect(() => nonZeroProbability(given)).toThrow(
      "non-zero-probability: zeroShare = 0.1 is not below probability = 0.1: so many years run dry that the flow is zero. Take zero.",
    );
  });
});
