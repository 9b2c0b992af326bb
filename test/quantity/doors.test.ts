import {
  coherentUnit,
  columnOfPressure,
  foot,
  joule,
  kilogramPerCubicMetre,
  metre,
  metrePerSecond,
  metrePerSecondSquared,
  millimetre,
  newton,
  newtonMetre,
  pascal,
  poundForce,
  poundForceFoot,
  poundPerSquareInch,
  pressureOfColumn,
  revolutionPerMinute,
  rimSpeed,
  torque,
  watt,
} from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";

describe("torque", () => {
  it("is a force at an arm", () => {
    const t = torque(newton.of(100), metre.of(0.25));
    expect(t).toMatchObject({ kind: "torque" });
    expect(t.in(newtonMetre)).toBe(25);
    expect(torque(poundForce.of(10), foot.of(2)).in(poundForceFoot)).toBeCloseTo(20, 12);
  });

  it("times a speed of rotation is a power, with its 2π: P = 2π·n·T/60", () => {
    const p = torque(newton.of(100), metre.of(0.25)).times(revolutionPerMinute.of(600));
    expect(p).toMatchObject({ kind: "power" });
    expect(p.in(watt)).toBeCloseTo((2 * Math.PI * 600 * 25) / 60, 9);
    // P/hp = T/(lbf·ft) · n/rpm / 5252: common practice, no source.
    expect(
      poundForceFoot.of(5252).times(revolutionPerMinute.of(1)).in(watt) / 745.6999,
    ).toBeCloseTo(1, 4);
  });

  it("is no energy", () => {
    expect(thrown(() => newtonMetre.of(3).plus(untyped(joule.of(3))))).toBe(
      "kind: cannot add 3 J (energy) to 3 N·m (torque)",
    );
  });
});

describe("the speed of a rim", () => {
  it("is π·D·n", () => {
    const v = rimSpeed(revolutionPerMinute.of(600), millimetre.of(100));
    expect(v).toMatchObject({ kind: "velocity" });
    expect(v.in(metrePerSecond)).toBeCloseTo(Math.PI * 0.2 * 10, 12);
  });
});

describe("columns of water", () => {
  const density = kilogramPerCubicMetre.of(1000);
  const gravity = metrePerSecondSquared.of(9.80665);
  it("hold pressures up", () => {
    // 1 ft of water (conventional) = 2989.067 Pa; 1 psi is 2.3067 ft of it (NIST SP 811, B.8).
    expect(pressureOfColumn(foot.of(1), density, gravity).in(pascal)).toBeCloseTo(2989.067, 3);
    expect(columnOfPressure(poundPerSquareInch.of(1), density, gravity).in(foot)).toBeCloseTo(
      6894.757 / 2989.067,
      5,
    );
    expect(
      columnOfPressure(pressureOfColumn(metre.of(33.5), density, gravity), density, gravity).in(
        metre,
      ),
    ).toBeCloseTo(33.5, 12);
  });

  it("name what they give", () => {
    expect(pressureOfColumn(metre.of(1), density, gravity)).toMatchObject({ kind: "pressure" });
    expect(columnOfPressure(pascal.of(1), density, gravity)).toMatchObject({ kind: "length" });
  });
});

describe("messages", () => {
  it.each([
    ["kind: a torque needs a force, not 3 m", () => torque(untyped(metre.of(3)), metre.of(1))],
    ["kind: a torque needs a length, not 5", () => torque(newton.of(3), untyped(5))],
    [
      "kind: a velocity needs a angular velocity, not 3 m/s",
      () => rimSpeed(untyped(metrePerSecond.of(3)), metre.of(1)),
    ],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });

  it("let no frequency pass for a speed of rotation", () => {
    expect(thrown(() => rimSpeed(untyped(coherentUnit("frequency").of(10)), metre.of(1)))).toBe(
      "kind: a velocity needs a angular velocity, not 10 Hz",
    );
  });
});

describe("uncertainty", () => {
  it("passes through a door", () => {
    const arm = metre.of(0.25).plusMinus(metre.of(0.0196), "arm");
    expect(torque(newton.of(100), arm).standardUncertainty().in(newtonMetre)).toBeCloseTo(1, 4);
    expect(rimSpeed(revolutionPerMinute.of(600), arm).sources().has("arm")).toBe(true);
  });
});
