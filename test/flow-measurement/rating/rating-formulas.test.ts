import { ratingDischarge, ratingExponents, ratingStage } from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  foot,
  litrePerSecond,
  metre,
  millimetre,
  one,
  point,
} from "@leat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const staff = (level: number) => point("staff zero", metre.of(level), "ford");
const depth = fc.double({ min: 0.001, max: 5, noNaN: true });
const exponent = fc.double({ min: 0.5, max: 4, noNaN: true });
const zero = fc.double({ min: -2, max: 2, noNaN: true });

describe("ratingDischarge and ratingStage", () => {
  it("undo each other, rise together, and give the reference flow at the reference depth", () => {
    fc.assert(
      fc.property(depth, depth, exponent, zero, (d, more, b, h0) => {
        const rating = {
          zeroFlowStage: staff(h0),
          referenceDepth: metre.of(0.5),
          referenceFlow: litrePerSecond.of(80),
          exponent: one.of(b),
        };
        const q = ratingDischarge({ ...rating, stage: staff(h0 + d) });
        const back = ratingStage({ ...rating, flow: q });
        expect(back.in(metre)).toBeCloseTo(h0 + d, 9);
        const higher = ratingDischarge({ ...rating, stage: staff(h0 + d + more) });
        expect(higher.greaterThan(q)).toBe(true);
        const there = ratingDischarge({ ...rating, stage: staff(h0 + 0.5) });
        expect(there.in(litrePerSecond)).toBeCloseTo(80, 6);
      }),
    );
  });

  it("scale with the flow, and do not know where the staff's zero is", () => {
    fc.assert(
      fc.property(depth, exponent, zero, zero, (d, b, h0, moved) => {
        const at = (shift: number, flow: number) =>
          ratingDischarge({
            stage: staff(h0 + d + shift),
            zeroFlowStage: staff(h0 + shift),
            referenceDepth: metre.of(0.5),
            referenceFlow: litrePerSecond.of(flow),
            exponent: one.of(b),
          }).in(litrePerSecond);
        expect(at(0, 160) / at(0, 80)).toBeCloseTo(2, 12);
        expect(at(moved, 80) / at(0, 80)).toBeCloseTo(1, 9);
      }),
    );
  });

  it("are the same in feet as in metres", () => {
    const inFeet = ratingDischarge({
      stage: point("staff zero", foot.of(2.5), "ford"),
      zeroFlowStage: point("staff zero", foot.of(0.5), "ford"),
      referenceDepth: foot.of(1),
      referenceFlow: cubicFootPerSecond.of(3),
      exponent: one.of(1.7),
    });
    const inMetres = ratingDischarge({
      stage: staff(0.762),
      zeroFlowStage: staff(0.1524),
      referenceDepth: millimetre.of(304.8),
      referenceFlow: cubicMetrePerSecond.of(3 * 0.028316846592),
      exponent: one.of(1.7),
    });
    expect(inFeet.in(litrePerSecond)).toBeCloseTo(inMetres.in(litrePerSecond), 9);
  });

  it("carry the reading of the stage by the steepness of the rating, b/(h − h0)", () => {
    const q = ratingDischarge({
      stage: staff(0.35).plusMinus(millimetre.of(5), "staff reading"),
      zeroFlowStage: staff(0.15),
      referenceDepth: metre.of(0.5),
      referenceFlow: litrePerSecond.of(80),
      exponent: one.of(1.6),
    });
    const relative = q.standardUncertainty().in(litrePerSecond) / q.in(litrePerSecond);
    expect(relative).toBeCloseTo(((1.6 / 0.2) * 0.005) / 1.959964, 7);
  });

  it("refuse a stage below that of zero flow, whole exponents too", () => {
    for (const b of [1.6, 2]) {
      const call = (): unknown =>
        ratingDischarge(
          {
            stage: staff(0.1),
            zeroFlowStage: staff(0.15),
            referenceDepth: metre.of(0.5),
            referenceFlow: litrePerSecond.of(80),
            exponent: one.of(b),
          },
          { onNotice: () => {} },
        );
      expect(call).toThrow(NonPhysicalError);
      expect(call).toThrow(
        "rating-discharge: stage is below zeroFlowStage: nothing flows over the control. Check both, and that they are of one staff.",
      );
    }
  });

  it("refuse a depth where a stage is wanted", () => {
    const rating = {
      zeroFlowStage: staff(0.15),
      referenceDepth: metre.of(0.5),
      referenceFlow: litrePerSecond.of(80),
      exponent: one.of(1.6),
    };
    expect(() => ratingDischarge({ ...rating, stage: metre.of(0.3) as never })).toThrow(
      "rating-discharge: stage = 0.3 m (length) is refused: give a point over staff zero.",
    );
    expect(() => ratingStage({ ...rating, flow: litrePerSecond.of(-1) })).toThrow(
      "rating-stage: flow = -1 L/s is below zero, which no physical flow can be. Check its sign and its unit.",
    );
  });
});

describe("ratingExponents", () => {
  // Environment Canada 2012, as the CIVL 418 notebook of the Univ. of British Columbia quotes it.
  it("is the table as printed", () => {
    expect(ratingExponents.definition.rows).toEqual([
      { control: "rectangular", low: 1.3, high: 1.8 },
      { control: "parabolic", low: 1.7, high: 2.3 },
      { control: "triangular", low: 2.5, high: 3 },
    ]);
  });

  it("holds the exponents of a weir and of uniform flow in each shape", () => {
    // A ~ h^(1 + s) and R ~ h: the weir has s + 3/2, Manning's formula s + 5/3, with s = 0, 1/2, 1.
    ratingExponents.definition.rows.forEach(({ low, high }, i) => {
      const s = i / 2;
      expect(low).toBeLessThanOrEqual(s + 3 / 2);
      expect(high).toBeGreaterThanOrEqual(s + 5 / 3);
    });
    expect(ratingExponents.get("triangular", "high").in(one)).toBe(3);
  });
});
