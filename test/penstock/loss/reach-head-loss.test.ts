import { NonPhysicalError, type Notice, OutOfValidityError } from "@leat/formula";
import {
  fittingCoefficients,
  frictionHeadOf,
  pipeVelocity,
  reachHeadLoss,
  reynoldsNumber,
  velocityHeadsOf,
} from "@leat/penstock";
import {
  each,
  foot,
  gallonPerMinute,
  inch,
  litrePerSecond,
  metre,
  millimetre,
  squareMillimetrePerSecond,
  unit,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = unit("coefficient", "1", 1);
const reach = {
  flow: litrePerSecond.of(15),
  insideDiameter: millimetre.of(100),
  roughness: millimetre.of(0.003),
  length: metre.of(200).as("pipe length"),
  kinematicViscosity: squareMillimetrePerSecond.of(1.31),
};
const turbulent = fc.double({ min: 2, max: 100, noNaN: true });

describe("reachHeadLoss", () => {
  it("gives velocity and Reynolds number as their own formulas do", () => {
    const { velocity, reynolds } = reachHeadLoss(reach);
    const { flow, insideDiameter, kinematicViscosity } = reach;
    expect(velocity["~si"]).toBe(pipeVelocity({ flow, insideDiameter })["~si"]);
    expect(reynolds["~si"]).toBe(
      reynoldsNumber({ velocity, insideDiameter, kinematicViscosity })["~si"],
    );
  });

  it("grows with flow, length and roughness, and falls with the bore", () => {
    fc.assert(
      fc.property(turbulent, (flow) => {
        const at = (changed: Partial<typeof reach>): number =>
          reachHeadLoss({ ...reach, flow: litrePerSecond.of(flow), ...changed }).friction["~si"];
        expect(at({ flow: litrePerSecond.of(flow * 1.01) })).toBeGreaterThan(at({}));
        expect(at({ length: metre.of(400).as("pipe length") })).toBeCloseTo(2 * at({}), 9);
        expect(at({ roughness: millimetre.of(0.1) })).toBeGreaterThan(at({}));
        expect(at({ insideDiameter: millimetre.of(101) })).toBeLessThan(at({}));
      }),
    );
  });

  it("goes with the flow itself while laminar, and nearly with its square on a rough wall", () => {
    const slow = (litres: number): number =>
      reachHeadLoss({
        ...reach,
        flow: litrePerSecond.of(litres),
        insideDiameter: millimetre.of(300),
      }).friction["~si"];
    expect(slow(0.2) / slow(0.1)).toBeCloseTo(2, 12);
    const rough = (litres: number): number =>
      reachHeadLoss({ ...reach, flow: litrePerSecond.of(litres), roughness: millimetre.of(4) })
        .friction["~si"];
    expect(rough(80) / rough(40)).toBeCloseTo(4, 2);
  });

  it("adds fittings as velocity heads, as many as there are", () => {
    const { fittings, velocity, friction } = reachHeadLoss({
      ...reach,
      fittings: [
        { coefficient: fittingCoefficients.get("square entrance", "coefficient") },
        { coefficient: coefficient.of(0.4), count: each.of(3) },
      ],
    });
    expect(fittings["~si"]).toBeCloseTo((1.7 * velocity["~si"] ** 2) / (2 * 9.80665), 12);
    expect(fittings.kind).toBe("head loss");
    expect(friction["~si"]).toBe(reachHeadLoss(reach).friction["~si"]);
    expect(reachHeadLoss(reach).fittings["~si"]).toBe(0);
  });

  it("is the same in US units and in metric", () => {
    const us = reachHeadLoss({
      ...reach,
      flow: gallonPerMinute.of(400),
      insideDiameter: inch.of(3.633),
      length: foot.of(900).as("pipe length"),
    });
    const metric = reachHeadLoss({
      ...reach,
      flow: litrePerSecond.of(25.23607856),
      insideDiameter: millimetre.of(92.2782),
      length: metre.of(274.32).as("pipe length"),
    });
    expect(us.friction["~si"] / metric.friction["~si"]).toBeCloseTo(1, 9);
  });

  it("has a plain body for loops that agrees to the last digit, and is zero at no flow", () => {
    fc.assert(
      fc.property(turbulent, (litres) => {
        const flow = litrePerSecond.of(litres);
        const plain = frictionHeadOf(flow["~si"], 0.1, 3e-6, 200, 1.31e-6, 9.80665);
        expect(plain).toBeCloseTo(reachHeadLoss({ ...reach, flow }).friction["~si"], 12);
      }),
    );
    expect(frictionHeadOf(0, 0.1, 3e-6, 200, 1.31e-6, 9.80665)).toBe(0);
    expect(frictionHeadOf(1e-9, 0.1, 3e-6, 200, 1.31e-6, 9.80665)).toBeLessThan(2e-8);
    expect(velocityHeadsOf(1, 4.429, 9.80665)).toBeCloseTo(1, 3);
  });

  it("says that flow is in transition", () => {
    const flow = litrePerSecond.of(0.3);
    const call = (): unknown => reachHeadLoss({ ...reach, flow });
    expect(call).toThrow(OutOfValidityError);
    expect(call).toThrow(
      "reach-head-loss: flow is in transition between laminar (Re ≤ 2000) and turbulent (Re ≥ 4000), where no law holds: |Re − 3000| = 84.18 is below 1000",
    );
    const told: Notice[] = [];
    reachHeadLoss({ ...reach, flow }, { onNotice: (notice) => told.push(notice) });
    expect(told.map(({ code, path }) => [code, path])).toEqual([
      ["reach-head-loss/out-of-range", ["flow"]],
    ]);
  });

  it("refuses walls off the chart, flow off the chart and what is not physical", () => {
    expect(() => reachHeadLoss({ ...reach, roughness: millimetre.of(6) })).toThrow(
      "reach-head-loss: roughness/insideDiameter = 0.06 is above 0.05, the range Moody gives",
    );
    expect(() => reachHeadLoss({ ...reach, flow: litrePerSecond.of(2e7) })).toThrow(
      "reach-head-loss: Reynolds number = 194400000000 is above 100000000, the range Moody gives",
    );
    expect(() => reachHeadLoss({ ...reach, flow: litrePerSecond.of(0) })).toThrow(NonPhysicalError);
    expect(() =>
      reachHeadLoss({ ...reach, fittings: [{ coefficient: coefficient.of(-1) }] }),
    ).toThrow("fittings.0.coefficient = -1 is below zero");
    expect(() => reachHeadLoss({ ...reach, length: metre.of(200) as never })).toThrow(
      "length = 200 m (length) is refused",
    );
    expect(() =>
      reachHeadLoss({ ...reach, length: metre.of(200).as("gross head") as never }),
    ).toThrow("length = 200 m (gross head) is refused");
  });
});
