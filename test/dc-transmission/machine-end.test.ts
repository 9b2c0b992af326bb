import { dropShare, loopLoss, machineEnd, sendingCurrent } from "@leat/dc-transmission";
import { NonPhysicalError } from "@leat/formula";
import { ampere, ohm, percent, QuantityError, volt, watt } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const site = fc.record({
  P: fc.double({ min: 0.1, max: 20_000, noNaN: true }),
  V: fc.double({ min: 10, max: 500, noNaN: true }),
  R: fc.double({ min: 0, max: 20, noNaN: true }),
});
const ends = ({ P, V, R }: { P: number; V: number; R: number }) =>
  machineEnd({ power: watt.of(P), busVoltage: volt.of(V), loopResistance: ohm.of(R) });

describe("machineEnd", () => {
  it("closes: what the machine gives is what the bus takes and what the loop loses", () => {
    fc.assert(
      fc.property(site, (s) => {
        const { current, voltage, loss } = ends(s);
        const I = current.in(ampere);
        expect((s.V * I + loss.in(watt)) / s.P).toBeCloseTo(1, 12);
        expect((voltage.in(volt) * I) / s.P).toBeCloseTo(1, 12);
        expect(voltage.in(volt)).toBeCloseTo(s.V + s.R * I, 9);
        expect(loss.in(watt)).toBe(loopLoss({ current, resistance: ohm.of(s.R) }).in(watt));
      }),
    );
  });

  it("has one current, which falls as the loop grows and never ends", () => {
    fc.assert(
      fc.property(site, (s) => {
        const I = ends(s).current.in(ampere);
        expect(
          sendingCurrent({
            power: watt.of(s.P),
            busVoltage: volt.of(s.V),
            loopResistance: ohm.of(s.R),
          }).in(ampere),
        ).toBe(I);
        expect(I).toBeLessThanOrEqual(s.P / s.V);
        expect(ends({ ...s, R: s.R + 0.1 }).current.in(ampere)).toBeLessThan(I);
      }),
    );
    expect(ends({ P: 1000, V: 48, R: 1e9 }).current.in(ampere)).toBeGreaterThan(0);
  });

  it("keeps its digits where the loop is short: I = P/V − R·P²/V³ to the first order", () => {
    const [P, V] = [1000, 50];
    for (const R of [1e-6, 1e-9, 1e-12]) {
      const { current } = ends({ P, V, R });
      // The second-order term, 2·R²·P³/V⁵, is below 1e-11 of the first here.
      expect(P / V - current.in(ampere)).toBeCloseTo((R * P * P) / V ** 3, 10);
      expect(current.in(ampere) * (V + R * current.in(ampere))).toBeCloseTo(P, 9);
    }
    expect(ends({ P, V, R: 0 }).current.in(ampere)).toBe(20);
  });

  it("loses the share of its power that it drops of its voltage", () => {
    fc.assert(
      fc.property(site, (s) => {
        const { voltage, loss } = ends(s);
        const share = dropShare({
          drop: voltage.minus(volt.of(s.V)).abs(),
          sourceVoltage: voltage,
        });
        expect(share.in(percent)).toBeCloseTo((100 * loss.in(watt)) / s.P, 8);
      }),
    );
  });

  it("refuses no bus, power below zero, and volts for watts", () => {
    const site = { power: watt.of(1), busVoltage: volt.of(48), loopResistance: ohm.of(1) };
    expect(() => machineEnd({ ...site, busVoltage: volt.of(0) })).toThrow(NonPhysicalError);
    expect(() => sendingCurrent({ ...site, power: watt.of(-1) })).toThrow(NonPhysicalError);
    expect(() => sendingCurrent({ ...site, loopResistance: ohm.of(-1) })).toThrow(NonPhysicalError);
    expect(() => machineEnd({ ...site, power: volt.of(1) as never })).toThrow(QuantityError);
  });
});
