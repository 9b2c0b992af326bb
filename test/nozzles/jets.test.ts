import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  approachFactor,
  bellmouthCoefficients,
  jetDiameter,
  jetFlow,
  jetFlowWithApproach,
  jetVelocity,
  mouthpieceCoefficients,
  nozzleDiameter,
  nozzleSpread,
} from "@leat/nozzles";
import {
  cubicMetrePerSecond,
  foot,
  inch,
  metre,
  metrePerSecond,
  millimetre,
  one,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const g = 9.80665;
const heads = fc.double({ min: 0.5, max: 500, noNaN: true });
const bores = fc.double({ min: 0.003, max: 0.2, noNaN: true });
const coefficients = fc.double({ min: 0.3, max: 1, noNaN: true });
const coefficient = (c: number) => one.of(c).as("coefficient");
const head = (h: number) => metre.of(h).as("net head");

describe("jets", () => {
  it("carry back the flow that they were sized for", () => {
    fc.assert(
      fc.property(heads, bores, coefficients, (h, d, c) => {
        const flow = jetFlow({
          head: head(h),
          nozzleDiameter: metre.of(d),
          dischargeCoefficient: coefficient(c),
        });
        const back = nozzleDiameter({ flow, head: head(h), dischargeCoefficient: coefficient(c) });
        expect(back.in(metre) / d).toBeCloseTo(1, 12);
      }),
    );
  });

  it("have the area that their flow has at their velocity", () => {
    fc.assert(
      fc.property(heads, bores, coefficients, (h, q, c) => {
        const flow = cubicMetrePerSecond.of(q);
        const d = jetDiameter({ flow, head: head(h), velocityCoefficient: coefficient(c) }).in(
          metre,
        );
        const v = jetVelocity({ head: head(h), velocityCoefficient: coefficient(c) }).in(
          metrePerSecond,
        );
        expect((Math.PI / 4) * d * d * v).toBeCloseTo(q, 12);
        expect((v * v) / (2 * g)).toBeLessThanOrEqual(h * (1 + 1e-12));
      }),
    );
  });

  it("grow as the power 5/2 of the size, head and all", () => {
    fc.assert(
      fc.property(heads, bores, fc.double({ min: 0.1, max: 10, noNaN: true }), (h, d, λ) => {
        const at = (by: number): number =>
          jetFlow({
            head: head(by * h),
            nozzleDiameter: metre.of(by * d),
            dischargeCoefficient: coefficient(0.97),
          }).in(cubicMetrePerSecond);
        expect(at(λ) / at(1) / λ ** 2.5).toBeCloseTo(1, 12);
      }),
    );
  });

  it("are the same in inches and feet", () => {
    const us = jetFlow({
      head: foot.of(100).as("net head"),
      nozzleDiameter: inch.of(0.5),
      dischargeCoefficient: coefficient(0.95),
    });
    const si = jetFlow({
      head: head(30.48),
      nozzleDiameter: millimetre.of(12.7),
      dischargeCoefficient: coefficient(0.95),
    });
    expect(us.in(cubicMetrePerSecond)).toBeCloseTo(si.in(cubicMetrePerSecond), 16);
  });

  it("fed from a pipe flow as from its pressure head with the velocity head put back", () => {
    fc.assert(
      fc.property(
        heads,
        bores,
        fc.double({ min: 1.01, max: 10, noNaN: true }),
        coefficients,
        (h, d, wider, c) => {
          const nozzle = { nozzleDiameter: metre.of(d), dischargeCoefficient: coefficient(c) };
          const pipeDiameter = metre.of(d * wider);
          const flow = jetFlowWithApproach({
            ...nozzle,
            pipeDiameter,
            pressureHead: metre.of(h),
          }).in(cubicMetrePerSecond);
          const V = flow / ((Math.PI / 4) * (d * wider) ** 2);
          const whole = jetFlow({ ...nozzle, head: head(h + (V * V) / (2 * g)) }).in(
            cubicMetrePerSecond,
          );
          expect(flow / whole).toBeCloseTo(1, 11);
          const plain = jetFlow({ ...nozzle, head: head(h) }).in(cubicMetrePerSecond);
          expect(flow / plain).toBeCloseTo(approachFactor({ ...nozzle, pipeDiameter }).in(one), 10);
        },
      ),
    );
  });

  it("feel the pipe less the wider it is", () => {
    const factor = (D: number): number =>
      approachFactor({
        nozzleDiameter: metre.of(1),
        pipeDiameter: metre.of(D),
        dischargeCoefficient: coefficient(0.97),
      }).in(one);
    expect(factor(1.5)).toBeGreaterThan(factor(2));
    expect(factor(100)).toBeCloseTo(1, 8);
  });

  it("stand still without head, and refuse what is not physical", () => {
    const nozzle = { nozzleDiameter: metre.of(0.02), dischargeCoefficient: coefficient(0.97) };
    expect(jetFlow({ ...nozzle, head: head(0) }).in(cubicMetrePerSecond)).toBe(0);
    expect(() => jetFlow({ ...nozzle, head: head(-1) })).toThrow(NonPhysicalError);
    expect(() =>
      jetFlow({ ...nozzle, head: head(1), dischargeCoefficient: coefficient(1.1) }),
    ).toThrow("jet-flow: dischargeCoefficient = 1.1 is not between 0 and 1");
    expect(() =>
      nozzleDiameter({
        flow: cubicMetrePerSecond.of(1),
        head: head(0),
        dischargeCoefficient: coefficient(1),
      }),
    ).toThrow("nozzle-diameter: head = 0 m is not above zero");
  });

  it("keep net head, gross head and plain lengths apart", () => {
    const nozzle = { nozzleDiameter: metre.of(0.02), dischargeCoefficient: coefficient(0.97) };
    expect(() => jetFlow({ ...nozzle, head: metre.of(30).as("gross head") as never })).toThrow(
      QuantityError,
    );
    expect(() =>
      jetFlowWithApproach({
        ...nozzle,
        pipeDiameter: metre.of(0.05),
        pressureHead: head(30) as never,
      }),
    ).toThrow(QuantityError);
    expect(() =>
      jetVelocity({ head: head(30), velocityCoefficient: one.of(0.97) as never }),
    ).toThrow(QuantityError);
  });

  it("cannot be wider than their pipe", () => {
    const wide = {
      nozzleDiameter: metre.of(0.05),
      pipeDiameter: metre.of(0.04),
      dischargeCoefficient: coefficient(0.6),
    };
    const message = "nozzleDiameter/pipeDiameter = 1.25 is above 1, the range physics gives";
    expect(() => approachFactor(wide)).toThrow(OutOfValidityError);
    expect(() => approachFactor(wide)).toThrow(`approach-factor: ${message}`);
    expect(() => jetFlowWithApproach({ ...wide, pressureHead: metre.of(1) })).toThrow(
      `jet-flow-with-approach: ${message}`,
    );
    const full = {
      nozzleDiameter: metre.of(1),
      pipeDiameter: metre.of(1),
      dischargeCoefficient: coefficient(1),
    };
    expect(() => approachFactor(full)).toThrow(
      "approach-factor: E is not a number for these inputs",
    );
  });
});

describe("coefficients of openings", () => {
  it("multiply: velocity times contraction is discharge", () => {
    for (const { velocity, contraction, discharge } of mouthpieceCoefficients.definition.rows) {
      expect(Math.abs(velocity * contraction - discharge)).toBeLessThan(0.005);
    }
    expect(mouthpieceCoefficients.keys()).toEqual([
      "sharp-edged orifice",
      "conoidal mouthpiece",
      "cylindrical mouthpiece",
    ]);
  });

  it("of bellmouths hang together: 1/Cv² is 1 and the resistance, and the head is that of the row", () => {
    for (const { row, head: feet, velocity, resistance } of bellmouthCoefficients.definition.rows) {
      expect(Math.abs(1 / (velocity * velocity) - 1 - resistance)).toBeLessThan(0.0015);
      expect(row).toBe(`${feet} ft`);
    }
    // Weisbach worked in metres: 0.2, 0.5, 3.5, 17 and 103 m (from memory).
    const metres = bellmouthCoefficients
      .keys()
      .map((key) => bellmouthCoefficients.get(key, "head").in(metre));
    [0.2, 0.5, 3.5, 17, 103].forEach((m, i) => expect(metres[i]).toBeCloseTo(m, 2));
  });

  it("of small nozzles spread within 0.85 to 1", () => {
    for (const { low, high } of nozzleSpread.definition.rows) {
      expect(low).toBeGreaterThanOrEqual(0.85);
      expect(high).toBeGreaterThan(low);
      expect(high).toBeLessThan(1);
    }
  });

  it("are asked for by their exact name", () => {
    expect(() => mouthpieceCoefficients.get("orifice" as never, "discharge")).toThrow(
      "orifice is not in the table",
    );
    expect(mouthpieceCoefficients.get("sharp-edged orifice", "velocity").kind).toBe("coefficient");
  });
});
