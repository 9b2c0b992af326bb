import {
  cipollettiDischarge,
  kindsvaterCarterDischarge,
  levelThatLeaves,
  notchThatLeaves,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { OutOfValidityError } from "@leat/formula";
import { degree, litrePerSecond, metre, millimetre, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

// An invented stream.
const place = {
  head: metre.of(0.09).plusMinus(millimetre.of(5), "lowest level"),
  crestHeight: metre.of(0.4),
  approachWidth: metre.of(2),
};

describe("notchThatLeaves", () => {
  it("gives a width that passes the flow at the lowest level, and one that does so for sure", () => {
    const must = litrePerSecond.of(10);
    const { value, sure, convergence } = notchThatLeaves(
      kindsvaterCarterDischarge,
      "notchWidth",
      place,
      must,
    );
    const at = (notchWidth: typeof value, head = place.head): number =>
      kindsvaterCarterDischarge({ ...place, head, notchWidth }).in(litrePerSecond);
    expect(at(value)).toBeCloseTo(10, 9);
    // The level 5 mm lower and the equation 1.5 % too high, as root of the sum of squares: what `sure` stands for.
    const low = 1 - at(value, metre.of(0.085)) / at(value);
    expect(at(sure)).toBeCloseTo(10 * (1 + Math.hypot(low, 0.015)), 1);
    expect(Math.abs(convergence.residual)).toBeLessThan(1e-15);
  });

  it("gives the angle of a V, wider for more water", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (flow) => {
        const angle = (q: number): number =>
          notchThatLeaves(vNotchDischarge, "angle", place, litrePerSecond.of(q)).value.in(degree);
        expect(angle(flow * 1.05)).toBeGreaterThan(angle(flow));
      }),
    );
  });

  it("does not hand out a notch that its formula does not know", () => {
    expect(() =>
      notchThatLeaves(cipollettiDischarge, "notchWidth", place, litrePerSecond.of(1)),
    ).toThrow(OutOfValidityError);
  });
});

describe("levelThatLeaves", () => {
  it("gives the level at which an existing notch leaves the flow", () => {
    const notch = { angle: degree.of(90), crestHeight: metre.of(0.5), approachWidth: metre.of(2) };
    const { value, sure } = levelThatLeaves(vNotchDischarge, notch, litrePerSecond.of(10));
    expect(vNotchDischarge({ ...notch, head: value }).in(litrePerSecond)).toBeCloseTo(10, 9);
    // 1 % of the flow is 0.4 % of the head, of head and correction together.
    expect(sure.in(metre) / value.in(metre) - 1).toBeCloseTo(0.004, 4);
  });

  it("is the same twice where nothing is uncertain", () => {
    const notch = { angle: degree.of(90), crestHeight: metre.of(0.5), approachWidth: metre.of(2) };
    const { value, sure } = levelThatLeaves(vNotchDischarge, notch, litrePerSecond.of(10), {
      equationUncertainty: one.of(0),
    });
    expect(sure.in(metre)).toBe(value.in(metre));
  });
});
