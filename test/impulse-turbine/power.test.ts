import { NonPhysicalError } from "@leat/formula";
import {
  hydraulicPower,
  hydraulicPowerOf,
  jetPower,
  jetPowerOf,
  shaftPower,
  shaftPowerOf,
} from "@leat/impulse-turbine";
import {
  foot,
  gallonPerMinute,
  kilogramPerCubicMetre,
  litrePerSecond,
  metre,
  metrePerSecond,
  percent,
  unit,
  watt,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const density = kilogramPerCubicMetre.of(999.7);
const size = fc.double({ min: 0.1, max: 500, noNaN: true });
const efficiency = (n: number): ReturnType<ReturnType<typeof unit<"efficiency">>["of"]> =>
  unit("efficiency", "1", 1).of(n);

describe("hydraulicPower", () => {
  it("takes a head of any sort, and a loss, so that an account closes", () => {
    fc.assert(
      fc.property(size, size, (flow, height) => {
        const of = (head: Parameters<typeof hydraulicPower>[0]["head"]): number =>
          hydraulicPower({ density, flow: litrePerSecond.of(flow), head })["~si"];
        const gross = metre.of(height).as("gross head");
        const loss = metre.of(height / 5).as("head loss");
        const net = gross.minus(loss);
        expect(of(net) + of(loss)).toBeCloseTo(of(gross), 6);
        expect(of(metre.of(height))).toBe(of(gross));
      }),
    );
  });

  it("is the same in US units, has the kind of water's power, and no flow has none", () => {
    const us = hydraulicPower({ density, flow: gallonPerMinute.of(400), head: foot.of(110) });
    const si = hydraulicPower({
      density,
      flow: litrePerSecond.of(25.23607856),
      head: metre.of(33.528),
    });
    expect(us["~si"] / si["~si"]).toBeCloseTo(1, 10);
    expect(us.kind).toBe("hydraulic power");
    expect(hydraulicPower({ density, flow: litrePerSecond.of(0), head: metre.of(30) })["~si"]).toBe(
      0,
    );
    expect(hydraulicPowerOf(1000, 9.80665, 0.01, 30)).toBeCloseTo(2941.995, 9);
  });

  it("refuses what is not physical, and a length of pipe for a head", () => {
    const flow = litrePerSecond.of(10);
    expect(() => hydraulicPower({ density, flow, head: metre.of(-1) })).toThrow(NonPhysicalError);
    expect(() =>
      hydraulicPower({ density, flow, head: metre.of(30).as("pipe length") as never }),
    ).toThrow("head = 30 m (pipe length) is refused");
    expect(() =>
      hydraulicPower({ density: kilogramPerCubicMetre.of(0), flow, head: metre.of(1) }),
    ).toThrow(NonPhysicalError);
  });
});

describe("jetPower", () => {
  it("is what the head offered, times the square of the velocity coefficient", () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.9, max: 1, noNaN: true }), (flow, height, cv) => {
        const q = litrePerSecond.of(flow);
        const velocity = metrePerSecond.of(cv * Math.sqrt(2 * 9.80665 * height));
        const jet = jetPower({ density, flow: q, velocity })["~si"];
        const water = hydraulicPower({ density, flow: q, head: metre.of(height) })["~si"];
        expect(jet / water / (cv * cv)).toBeCloseTo(1, 12);
      }),
    );
    expect(jetPowerOf(1000, 0.01, 20)).toBe(2000);
  });

  it("refuses what is not physical", () => {
    expect(() =>
      jetPower({ density, flow: litrePerSecond.of(-1), velocity: metrePerSecond.of(20) }),
    ).toThrow(NonPhysicalError);
  });
});

describe("shaftPower", () => {
  it("is a share of the power that reaches the wheel", () => {
    const power = watt.of(2000).as("hydraulic power");
    expect(shaftPower({ hydraulicPower: power, efficiency: efficiency(0.7) })["~si"]).toBeCloseTo(
      1400,
      9,
    );
    expect(shaftPower({ hydraulicPower: power, efficiency: efficiency(0.7) }).kind).toBe(
      "shaft power",
    );
    expect(shaftPower({ hydraulicPower: power, efficiency: efficiency(0) })["~si"]).toBe(0);
    expect(shaftPower({ hydraulicPower: power, efficiency: efficiency(1) })["~si"]).toBe(2000);
    expect(shaftPowerOf(100, 0.5)).toBe(50);
  });

  it("refuses more than all of it, a ratio that is no efficiency, and power of another sort", () => {
    const power = watt.of(2000).as("hydraulic power");
    expect(() => shaftPower({ hydraulicPower: power, efficiency: efficiency(1.01) })).toThrow(
      "shaft-power: efficiency = 1.01 is not between 0 and 1",
    );
    expect(() =>
      shaftPower({ hydraulicPower: power, efficiency: percent.of(70) as never }),
    ).toThrow("efficiency = 70 % (ratio) is refused");
    expect(() =>
      shaftPower({
        hydraulicPower: watt.of(2000).as("electric power") as never,
        efficiency: efficiency(0.7),
      }),
    ).toThrow("hydraulicPower = 2000 W (electric power) is refused");
  });
});
