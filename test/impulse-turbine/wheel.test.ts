import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { pitchCircleSpeedOf, wheelDiameter, wheelSpeed } from "@leat/impulse-turbine";
import { foot, inch, metre, one, revolutionPerMinute, rimSpeed, unit } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const velocityCoefficient = unit("coefficient", "1", 1).of(0.97);
const speedRatio = one.of(0.46);
const wheel = {
  head: metre.of(30).as("net head"),
  pitchDiameter: metre.of(0.1),
  speedRatio,
  velocityCoefficient,
};
const some = fc.double({ min: 0.05, max: 300, noNaN: true });

describe("wheelSpeed and wheelDiameter", () => {
  it("undo each other", () => {
    fc.assert(
      fc.property(some, some, (head, diameter) => {
        const given = { head: metre.of(head).as("net head"), speedRatio, velocityCoefficient };
        const angularVelocity = wheelSpeed({ ...given, pitchDiameter: metre.of(diameter) });
        expect(wheelDiameter({ ...given, angularVelocity })["~si"] / diameter).toBeCloseTo(1, 12);
      }),
    );
  });

  it("make the rim go at the stated share of the jet", () => {
    const rim = rimSpeed(wheelSpeed(wheel), metre.of(0.05));
    expect(rim["~si"]).toBeCloseTo(0.46 * 0.97 * Math.sqrt(2 * 9.80665 * 30), 12);
    expect(pitchCircleSpeedOf(30, 9.80665, 0.46, 0.97)).toBeCloseTo(rim["~si"], 12);
  });

  it("go with the root of the head and against the diameter", () => {
    expect(wheelSpeed({ ...wheel, head: metre.of(120).as("net head") })["~si"]).toBeCloseTo(
      2 * wheelSpeed(wheel)["~si"],
      10,
    );
    expect(wheelSpeed({ ...wheel, pitchDiameter: metre.of(0.2) })["~si"]).toBeCloseTo(
      wheelSpeed(wheel)["~si"] / 2,
      10,
    );
  });

  it("are the same in US units", () => {
    const us = wheelSpeed({
      ...wheel,
      head: foot.of(30 / 0.3048).as("net head"),
      pitchDiameter: inch.of(0.1 / 0.0254),
    });
    expect(us.in(revolutionPerMinute)).toBeCloseTo(wheelSpeed(wheel).in(revolutionPerMinute), 9);
  });

  it("refuse a rim that outruns the jet, a gross head, and a wheel without a size or a speed", () => {
    const angularVelocity = revolutionPerMinute.of(1500);
    const { pitchDiameter: _, ...given } = wheel;
    expect(() => wheelSpeed({ ...wheel, speedRatio: one.of(1.1) })).toThrow(OutOfValidityError);
    expect(() => wheelSpeed({ ...wheel, speedRatio: one.of(1.1) })).toThrow(
      "wheel-speed: speedRatio = 1.1 is above 1, the range physics gives",
    );
    expect(() => wheelDiameter({ ...given, angularVelocity, speedRatio: one.of(1.1) })).toThrow(
      "wheel-diameter: speedRatio = 1.1 is above 1, the range physics gives",
    );
    expect(() => wheelSpeed({ ...wheel, pitchDiameter: metre.of(0) })).toThrow(NonPhysicalError);
    expect(() => wheelDiameter({ ...given, angularVelocity: revolutionPerMinute.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() => wheelSpeed({ ...wheel, head: metre.of(30).as("gross head") as never })).toThrow(
      "head = 30 m (gross head) is refused",
    );
  });
});
