import {
  cipollettiDischarge,
  francisContractedDischarge,
  headFor,
  inputFor,
  kindsvaterCarterDischarge,
  rehbockDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import {
  commonPractice,
  formula,
  input,
  NonPhysicalError,
  OutOfValidityError,
  output,
} from "@leat/formula";
import {
  cubicMetrePerSecond,
  degree,
  each,
  litrePerSecond,
  metre,
  metrePerSecond,
  millimetre,
  one,
  type Quantity,
  QuantityError,
  radian,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

import { flowOver, weirs } from "./weirs.ts";

const exact = { equationUncertainty: one.of(0) };
const weir = { notchWidth: metre.of(1), crestHeight: metre.of(0.4) };

describe("headFor", () => {
  it.each(weirs.map((each) => [each.formula.id, each] as const))(
    "finds the head that %s was called with",
    (_, each) => {
      fc.assert(
        fc.property(
          fc.double({ min: each.heads[0] * 1.001, max: each.heads[1] * 0.999, noNaN: true }),
          (h) => {
            const flow = cubicMetrePerSecond.of(flowOver(each, h));
            const { value, convergence } = headFor(
              each.formula as typeof rehbockDischarge,
              each.args as typeof weir,
              flow,
              exact,
            );
            expect(Math.abs(value.in(metre) / h - 1)).toBeLessThan(1e-9);
            expect(Math.abs(convergence.residual)).toBeLessThan(1e-12);
            expect(convergence.iterations).toBeLessThan(30);
            const [low, high] = convergence.bracket!;
            expect(low).toBeLessThanOrEqual(value.in(metre) * (1 + 1e-12));
            expect(high).toBeGreaterThanOrEqual(value.in(metre) * (1 - 1e-12));
          },
        ),
        { numRuns: 40 },
      );
    },
  );

  it("has the uncertainty of the flow over the slope of the flow", () => {
    const flow = litrePerSecond.of(100).plusMinus(litrePerSecond.of(2), "what the wheel needs");
    const { value } = headFor(rehbockDischarge, weir, flow, exact);
    const at = (h: number): number =>
      rehbockDischarge({ ...weir, head: metre.of(h) }).in(litrePerSecond);
    const h = value.in(metre);
    const slope = (at(h * 1.0001) - at(h * 0.9999)) / (h * 0.0002);
    expect(value.standardUncertainty().in(metre)).toBeCloseTo(2 / 1.959963984540054 / slope, 9);
  });

  it("counts the notch and the equation, each as its own source", () => {
    const notchWidth = metre.of(1).plusMinus(millimetre.of(5), "width");
    const { value } = headFor(rehbockDischarge, { ...weir, notchWidth }, litrePerSecond.of(100));
    const { value: h } = headFor(rehbockDischarge, weir, litrePerSecond.of(100), exact);
    const sources = value.sources();
    expect([...sources.keys()].toSorted()).toEqual(["equation rehbock-discharge", "width"]);
    // A wider notch needs less head, a third of a third less; the same for a coefficient.
    const relative = (id: string): number => sources.get(id)!.in(metre) / h.in(metre);
    expect(relative("width")).toBeCloseTo((-0.005 / 1.959963984540054) * 0.652, 4);
    expect(relative("equation rehbock-discharge")).toBeCloseTo(
      (-0.015 / 1.959963984540054) * 0.652,
      4,
    );
  });

  it("knows what flow and notch share: the flow of a notch needs the head of that notch, whatever its width", () => {
    const notch = { ...weir, notchWidth: metre.of(1).plusMinus(millimetre.of(20), "width") };
    const flow = rehbockDischarge({ ...notch, head: metre.of(0.2) });
    const { value } = headFor(rehbockDischarge, notch, flow, exact);
    expect(value.standardUncertainty().in(metre)).toBeLessThan(1e-9);
  });

  it("checks the limits at the head that it finds", () => {
    expect(() => headFor(rehbockDischarge, weir, cubicMetrePerSecond.of(2))).toThrow(
      OutOfValidityError,
    );
    const told: string[] = [];
    const { value } = headFor(rehbockDischarge, weir, cubicMetrePerSecond.of(2), {
      onNotice: ({ message }) => told.push(message),
    });
    expect(value.in(metre)).toBeGreaterThan(0.75);
    expect(told).toHaveLength(2);
  });

  it("takes the rising side of a form that turns back", () => {
    const notch = {
      notchWidth: metre.of(0.5),
      contractions: each.of(2),
      crestHeight: metre.of(2),
      approachWidth: metre.of(3),
    };
    const flow = francisContractedDischarge({ ...notch, head: metre.of(0.15) });
    expect(headFor(francisContractedDischarge, notch, flow).value.in(metre)).toBeCloseTo(0.15, 12);
  });

  it("refuses a flow that no head gives", () => {
    const notch = { angle: degree.of(90), crestHeight: metre.of(1), approachWidth: metre.of(2) };
    const find = (flow: Quantity<"volume flow">): unknown => headFor(vNotchDischarge, notch, flow);
    expect(() => find(litrePerSecond.of(0))).toThrow(
      "v-notch-discharge: flow = 0 L/s is not above zero. Check the flow, its unit and the inputs besides head.",
    );
    expect(() => find(litrePerSecond.of(0.00001))).toThrow(
      "v-notch-discharge: no head gives a flow of 0.00001 L/s: from 0.000001 m to 10000 m the formula stays above it. Check the flow",
    );
    const narrow = { ...weir, contractions: each.of(2), approachWidth: metre.of(3) };
    const most = (): unknown =>
      headFor(francisContractedDischarge, narrow, cubicMetrePerSecond.of(100));
    expect(most).toThrow(NonPhysicalError);
    expect(most).toThrow("the formula stays below it");
  });

  it("asks what a call asks of the other inputs", () => {
    const loose = headFor as unknown as (...given: unknown[]) => unknown;
    expect(() =>
      loose(rehbockDischarge, { notchWidth: metre.of(1) }, litrePerSecond.of(9)),
    ).toThrow("rehbock-discharge: crestHeight is missing");
    expect(() =>
      loose(rehbockDischarge, { ...weir, crestHeight: metre.of(-1) }, litrePerSecond.of(9)),
    ).toThrow(NonPhysicalError);
    expect(() =>
      loose(rehbockDischarge, { ...weir, head: metre.of(1) }, litrePerSecond.of(9)),
    ).toThrow("rehbock-discharge: head is what is sought: leave it out.");
    expect(() => loose(rehbockDischarge, weir, metre.of(9))).toThrow(QuantityError);
  });

  it("tells of what it assumes", () => {
    const told: string[] = [];
    headFor(rehbockDischarge, weir, litrePerSecond.of(100), {
      onAssumed: ({ input: name }) => told.push(name),
    });
    expect(told).toEqual(["gravity"]);
  });
});

describe("inputFor", () => {
  it("finds the width of a notch", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.15, max: 1.5, noNaN: true }), (b) => {
        const place = {
          head: metre.of(0.12),
          crestHeight: metre.of(0.5),
          approachWidth: metre.of(2),
        };
        const flow = kindsvaterCarterDischarge({ ...place, notchWidth: metre.of(b) });
        const found = inputFor(kindsvaterCarterDischarge, "notchWidth", place, flow, exact);
        expect(Math.abs(found.value.in(metre) / b - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("finds the angle of a V", () => {
    fc.assert(
      fc.property(fc.double({ min: 25.01, max: 99.9, noNaN: true }), (θ) => {
        const place = {
          head: metre.of(0.12),
          crestHeight: metre.of(0.5),
          approachWidth: metre.of(2),
        };
        const flow = vNotchDischarge({ ...place, angle: degree.of(θ) });
        const { value } = inputFor(vNotchDischarge, "angle", place, flow, exact);
        expect(value.kind).toBe("angle");
        expect(Math.abs(value.in(degree) / θ - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("is on a limit that it meets to the last digits", () => {
    const place = {
      head: metre.of(0.12),
      crestHeight: metre.of(0.5),
      approachWidth: metre.of(2),
    };
    const flow = kindsvaterCarterDischarge({ ...place, notchWidth: metre.of(0.15) });
    const find = (q: typeof flow): unknown =>
      inputFor(kindsvaterCarterDischarge, "notchWidth", place, q, exact);
    const { value } = inputFor(kindsvaterCarterDischarge, "notchWidth", place, flow, exact);
    expect(() => kindsvaterCarterDischarge({ ...place, notchWidth: value })).not.toThrow();
    expect(() => find(flow.times(1 - 1e-9))).toThrow("notchWidth = 0.14999999");
  });

  it("gives an angle its uncertainty, in radians", () => {
    const place = { head: metre.of(0.12), crestHeight: metre.of(0.5), approachWidth: metre.of(2) };
    const flow = litrePerSecond.of(5).plusMinus(litrePerSecond.of(0.1), "law");
    const { value } = inputFor(vNotchDischarge, "angle", place, flow, exact);
    // tan(θ/2) changes by 2 % where θ changes by 2 %·sin θ; the coefficient takes a little back.
    const u = 0.02 / 1.959963984540054;
    expect(value.standardUncertainty().in(radian) / (u * Math.sin(value.in(radian)))).toBeCloseTo(
      1,
      1,
    );
  });

  it("finds what the flow falls with, too: the height of a crest", () => {
    const place = { head: metre.of(0.2), notchWidth: metre.of(1) };
    const flow = rehbockDischarge({ ...place, crestHeight: metre.of(0.35) });
    const { value } = inputFor(rehbockDischarge, "crestHeight", place, flow, exact);
    expect(value.in(metre)).toBeCloseTo(0.35, 8);
  });

  it("takes a formula of the caller's own, if it is told how good that is", () => {
    const slot = formula(() => ({
      id: "own-slot",
      equation: "Q = v · b · h",
      inputs: {
        head: input("length", "h"),
        width: input("length", "b"),
        velocity: input("velocity", "v"),
      },
      output: output("volume flow", "Q"),
      source: commonPractice.at("planted", "practice"),
      body: ({ h, b, v }) => v * b * h,
    }));
    const args = { width: metre.of(2), velocity: metrePerSecond.of(0.5) };
    const { value } = headFor(slot, args, cubicMetrePerSecond.of(1), exact);
    expect(value.in(metre)).toBeCloseTo(1, 12);
    expect(() => headFor(slot, args, cubicMetrePerSecond.of(1))).toThrow(
      "own-slot: nothing is known of the equation's own uncertainty. Give equationUncertainty, a share of the flow at 95 %.",
    );
  });

  it("refuses to seek what is no number", () => {
    const loose = inputFor as unknown as (...given: unknown[]) => unknown;
    expect(() => loose(cipollettiDischarge, "shape", {}, litrePerSecond.of(1))).toThrow(
      "cipolletti-discharge: shape cannot be sought: it is no number among the inputs.",
    );
  });
});
