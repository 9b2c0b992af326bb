import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { jetFlow, jetFlowWithApproach, jetsFlowFromGauge } from "@leat/nozzles";
import {
  bar,
  cubicMetrePerSecond,
  kilogramPerCubicMetre,
  litrePerSecond,
  metre,
  millimetre,
  one,
  pascal,
  point,
  poundPerSquareInch,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = (c: number) => one.of(c).as("coefficient");
const gauge = (pa: number) => point("local atmosphere", pascal.of(pa), "manifold");
const jets = (...bores: number[]) => bores.map((d) => ({ nozzleDiameter: metre.of(d) }));
const ρ = 999.7;
const g = 9.80665;
const onNotice = (): void => undefined;

const heads = fc.double({ min: 1, max: 200, noNaN: true });
const coefficients = fc.double({ min: 0.5, max: 1, noNaN: true });
const bores = fc.array(fc.double({ min: 0.005, max: 0.03, noNaN: true }), {
  minLength: 1,
  maxLength: 6,
});

describe("jetsFlowFromGauge", () => {
  it("with one nozzle is the flow of a jet with its approach", () => {
    fc.assert(
      fc.property(
        heads,
        fc.double({ min: 0.005, max: 0.07, noNaN: true }),
        coefficients,
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        (h, d, c, z) => {
          const single = jetFlowWithApproach({
            pressureHead: metre.of(h),
            nozzleDiameter: metre.of(d),
            pipeDiameter: metre.of(0.1),
            dischargeCoefficient: coefficient(c),
          });
          const all = jetsFlowFromGauge({
            gauge: gauge((h - z) * ρ * g),
            gaugeAboveJet: metre.of(z),
            jets: jets(d),
            pipeDiameter: metre.of(0.1),
            dischargeCoefficient: coefficient(c),
          });
          expect(all.in(cubicMetrePerSecond) / single.in(cubicMetrePerSecond)).toBeCloseTo(1, 11);
        },
      ),
    );
  });

  it("closes the energy account: pressure and velocity head of the pipe drive the jets", () => {
    fc.assert(
      fc.property(heads, bores, coefficients, (h, ds, c) => {
        const D = 0.12;
        const q = jetsFlowFromGauge({
          gauge: gauge(h * ρ * g),
          gaugeAboveJet: metre.of(0),
          jets: jets(...ds),
          pipeDiameter: metre.of(D),
          dischargeCoefficient: coefficient(c),
        }).in(cubicMetrePerSecond);
        const v = q / ((Math.PI / 4) * D * D);
        const sum = ds.reduce(
          (total, d) =>
            total +
            jetFlow({
              head: metre.of(h + (v * v) / (2 * g)).as("net head"),
              nozzleDiameter: metre.of(d),
              dischargeCoefficient: coefficient(c),
            }).in(cubicMetrePerSecond),
          0,
        );
        expect(q / sum).toBeCloseTo(1, 11);
      }),
    );
  });

  it("grows with another nozzle, with the pressure, and with a narrower pipe", () => {
    const at = (pa: number, ds: readonly number[], D: number) =>
      jetsFlowFromGauge(
        {
          gauge: gauge(pa),
          gaugeAboveJet: metre.of(0),
          jets: jets(...ds),
          pipeDiameter: metre.of(D),
          dischargeCoefficient: coefficient(0.95),
        },
        { onNotice },
      ).in(litrePerSecond);
    fc.assert(
      fc.property(fc.double({ min: 1e4, max: 1e6, noNaN: true }), bores, (pa, ds) => {
        const q = at(pa, ds, 0.1);
        expect(at(pa, [...ds, 0.01], 0.1)).toBeGreaterThan(q);
        expect(at(4 * pa, ds, 0.1) / q).toBeCloseTo(2, 10);
        expect(at(pa, ds, 0.09)).toBeGreaterThan(q);
        expect(at(pa, ds.toReversed(), 0.1)).toBeCloseTo(q, 10);
      }),
    );
    expect(at(2e5, [], 0.1)).toBe(0);
  });

  it("has one coefficient for all, whose ± does not average out", () => {
    const c = coefficient(0.95).plusMinus(one.of(0.03), "cut cones");
    const q = jetsFlowFromGauge({
      gauge: gauge(3e5),
      gaugeAboveJet: metre.of(0),
      jets: jets(0.012, 0.012, 0.012, 0.012),
      pipeDiameter: metre.of(0.5),
      dischargeCoefficient: c,
    });
    const share = q.standardUncertainty().in(litrePerSecond) / q.in(litrePerSecond);
    expect(share * 1.959964).toBeCloseTo(0.03 / 0.95, 4);
  });

  it("is told where the openings are nearly as wide as the pipe, and refuses what cannot run", () => {
    const close = {
      gauge: point("local atmosphere", bar.of(1), "manifold"),
      gaugeAboveJet: metre.of(0.1),
      jets: [{ nozzleDiameter: millimetre.of(45) }],
      pipeDiameter: millimetre.of(50),
      dischargeCoefficient: coefficient(0.95),
    };
    expect(() => jetsFlowFromGauge(close)).toThrow(OutOfValidityError);
    expect(() => jetsFlowFromGauge(close)).toThrow(
      "jets-flow-from-gauge: diameter of one opening as large as all, over the pipe's = 0.9 is above 0.8, the range ISO 5167 gives",
    );
    const wide = { ...close, jets: [...close.jets, ...close.jets] };
    expect(() => jetsFlowFromGauge(wide, { onNotice })).toThrow(NonPhysicalError);
    expect(() => jetsFlowFromGauge(wide, { onNotice })).toThrow(
      "jets-flow-from-gauge: jets are together as wide as the pipe: no pressure would be left to drive them. Check bores and pipe.",
    );
    const low = { ...close, jets: jets(0.01), gaugeAboveJet: metre.of(-11) };
    expect(() => jetsFlowFromGauge(low)).toThrow(
      "jets-flow-from-gauge: gauge, brought down to the jets, is below the pressure of the air: nothing runs out. Check its reading and its height.",
    );
    expect(() => jetsFlowFromGauge({ ...close, jets: jets(0.01, 0) })).toThrow(
      "jets-flow-from-gauge: jets.1.nozzleDiameter = 0 m is not above zero",
    );
    expect(() =>
      jetsFlowFromGauge({ ...close, jets: jets(0.01), gauge: poundPerSquareInch.of(14) as never }),
    ).toThrow(QuantityError);
    expect(() =>
      jetsFlowFromGauge({ ...close, jets: jets(0.01), density: kilogramPerCubicMetre.of(0) }),
    ).toThrow("density = 0 kg/m³ is not above zero");
  });
});
