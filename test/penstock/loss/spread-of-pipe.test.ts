import {
  frictionHeadOf,
  reachHeadLoss,
  reachLossOf,
  spreadOfFittings,
  spreadOfPipe,
  velocityHeadsOf,
} from "@leat/penstock";
import { ownPipe, pipesOf, readPipe } from "@leat/pipe-sizes";
import {
  coherentUnit,
  litrePerSecond,
  metre,
  millimetre,
  squareMillimetrePerSecond,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const k = coherentUnit("coefficient");

describe("spreadOfPipe", () => {
  it("takes the bore over the average wall, out to that over the least, and the wall between its tables", () => {
    for (const pipe of pipesOf({ series: "PE IPS", dr: 11 })) {
      const { insideDiameter, roughness } = spreadOfPipe(pipe, "top");
      const play = pipe.insideDiameter.minimumWall["~si"] - pipe.insideDiameter.average["~si"];
      expect(insideDiameter["~si"]).toBe(pipe.insideDiameter.average["~si"]);
      expect(insideDiameter.standardUncertainty()["~si"]).toBeCloseTo(play / Math.sqrt(3), 12);
      expect([...insideDiameter.sources().keys()]).toEqual(["top.bore"]);
      // PE: 0.0015 to 0.007 mm.
      expect(roughness.standardUncertainty()["~si"]).toBeCloseTo(2.75e-6 / Math.sqrt(3), 12);
      expect([...roughness.sources().keys()]).toEqual(["top.roughness"]);
    }
  });

  it("keeps a pipe of one's own as it was measured", () => {
    const pipe = ownPipe({
      outsideDiameter: millimetre.of(110).plusMinus(millimetre.of(1), "calliper"),
      wall: millimetre.of(7),
      roughness: millimetre.of(0.02),
    });
    const { insideDiameter, roughness } = spreadOfPipe(pipe, "top");
    expect([...insideDiameter.sources().keys()]).toEqual(["calliper"]);
    expect(roughness.standardUncertainty()["~si"]).toBe(0);
  });

  it("gives loss and its spread: some 6 % from the bore of thin pipe", () => {
    const { friction } = reachHeadLoss({
      ...spreadOfPipe(readPipe("4 in PE DR 11"), "top"),
      flow: litrePerSecond.of(15),
      length: metre.of(200).as("pipe length").plusMinus(metre.of(4).as("pipe length"), "tape"),
      kinematicViscosity: squareMillimetrePerSecond.of(1.31),
    });
    expect([...friction.sources().keys()].toSorted()).toEqual([
      "tape",
      "top.bore",
      "top.roughness",
    ]);
    const share = (id: string): number =>
      Math.abs(friction.sources().get(id)!["~si"] / friction["~si"]);
    expect(share("tape")).toBeCloseTo(0.02 / 1.959963984540054, 5);
    expect(share("top.bore")).toBeGreaterThan(0.03);
    expect(share("top.bore")).toBeLessThan(0.045);
  });
});

describe("spreadOfFittings", () => {
  it("takes 30 % either way unless there is a spread, and nothing of nothing", () => {
    const told: string[] = [];
    const options = {
      onAssumed: ({ input, value }: { input: string; value: string }) =>
        told.push(`${input}: ${value}`),
    };
    const taken = spreadOfFittings(k.of(2), "top", options);
    expect(taken.standardUncertainty()["~si"]).toBeCloseTo(0.6 / Math.sqrt(3), 12);
    expect(spreadOfFittings(k.of(-2), "top").standardUncertainty()["~si"]).toBeCloseTo(
      0.6 / Math.sqrt(3),
      12,
    );
    const own = k.of(2).plusMinus(k.of(0.1), "maker");
    expect(spreadOfFittings(own, "top", options)).toBe(own);
    expect(spreadOfFittings(k.of(0), "top", options).standardUncertainty()["~si"]).toBe(0);
    expect(told).toEqual(["top.fittings: anywhere within 30 %"]);
  });
});

describe("reachLossOf", () => {
  it("is wall and fittings together, nothing at no flow, and twice as much in twice the reach", () => {
    expect(reachLossOf(0, 0.1, 3e-6, 200, 4, 1.31e-6, 9.80665)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.05, noNaN: true }), (flow) => {
        const loss = reachLossOf(flow, 0.1, 3e-6, 200, 4, 1.31e-6, 9.80665);
        const velocity = flow / (Math.PI * 0.0025);
        expect(loss).toBeCloseTo(
          frictionHeadOf(flow, 0.1, 3e-6, 200, 1.31e-6, 9.80665) +
            velocityHeadsOf(4, velocity, 9.80665),
          12,
        );
        expect(reachLossOf(flow, 0.1, 3e-6, 400, 8, 1.31e-6, 9.80665) / loss).toBeCloseTo(2, 10);
        expect(reachLossOf(flow * 1.01, 0.1, 3e-6, 200, 4, 1.31e-6, 9.80665)).toBeGreaterThan(loss);
        expect(reachLossOf(flow, 0.101, 3e-6, 200, 4, 1.31e-6, 9.80665)).toBeLessThan(loss);
      }),
    );
  });
});
