import type { Notice } from "@leat/formula";
import { divideFlow, sillOverNotch } from "@leat/intake";
import {
  cubicMetrePerSecond,
  litrePerSecond,
  metre,
  millimetre,
  type Quantity,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const flow = (si: number): Quantity<"volume flow"> => cubicMetrePerSecond.of(si);
/** A right-angled notch and a broad sill, in round numbers: callers bring formulas of their own. */
const notchFlow = (head: Quantity<"length">): Quantity<"volume flow"> =>
  flow(1.38 * head["~si"] ** 2.5);
const intakeFlow = (head: Quantity<"length">): Quantity<"volume flow"> =>
  flow(0.9 * head["~si"] ** 1.5);
const heads = [millimetre.of(60), millimetre.of(380)] as const;

describe("sillOverNotch", () => {
  it("is where the notch passes the residual flow: known in closed form for this one", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 100, noNaN: true }), (litres) => {
        const { sill, residualLevel, leftAtSill, convergence } = sillOverNotch({
          notchFlow,
          residualFlow: litrePerSecond.of(litres),
          heads,
        });
        expect(sill["~si"]).toBeCloseTo((litres / 1380) ** 0.4, 10);
        expect(sill["~si"]).toBe(residualLevel["~si"]);
        expect(leftAtSill.in(litrePerSecond)).toBeCloseTo(litres, 9);
        expect(convergence.iterations).toBeLessThan(60);
      }),
    );
  });

  it("adds a margin, with which more stays", () => {
    const { sill, residualLevel, leftAtSill } = sillOverNotch({
      notchFlow,
      residualFlow: litrePerSecond.of(10),
      heads,
      margin: millimetre.of(10),
    });
    expect(sill.minus(residualLevel).in(millimetre)).toBeCloseTo(10, 9);
    expect(leftAtSill.in(litrePerSecond)).toBeGreaterThan(10);
  });

  it("refuses a notch that cannot do it, and what is no flow", () => {
    const at = (litres: number): unknown =>
      sillOverNotch({ notchFlow, residualFlow: litrePerSecond.of(litres), heads });
    expect(() => at(200)).toThrow(
      /^sill-over-notch: the notch passes only 0\.1228\d* m³\/s at 380 mm, less than the 200 L\/s that must stay\. Make it wider or deeper\.$/u,
    );
    expect(() => at(0.5)).toThrow(
      /^sill-over-notch: the notch already passes 0\.00121\d* m³\/s at 60 mm, more than the 0\.5 L\/s that must stay\. Make it narrower, or give a formula that holds lower\.$/u,
    );
    expect(() => at(0)).toThrow("sill-over-notch: residualFlow = 0 L/s is not above zero");
    const wrong = (): never => metre.of(1) as never;
    expect(() =>
      sillOverNotch({ notchFlow: wrong, residualFlow: litrePerSecond.of(10), heads }),
    ).toThrow("sill-over-notch: notchFlow = 1 m (length) is refused: give a volume flow");
  });
});

describe("divideFlow", () => {
  const crest = millimetre.of(380);
  const residualFlow = litrePerSecond.of(10);
  const { sill } = sillOverNotch({ notchFlow, residualFlow, heads });

  it("leaves and takes what the stream brings, the residual flow first", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 150, noNaN: true }), (litres) => {
        const { left, taken, level, notices } = divideFlow({
          notchFlow,
          intakeFlow,
          sill,
          streamFlow: litrePerSecond.of(litres),
          residualFlow,
          crest,
        });
        expect(left.in(litrePerSecond) + taken.in(litrePerSecond)).toBeCloseTo(litres, 8);
        expect(left.in(litrePerSecond)).toBeGreaterThanOrEqual(Math.min(litres, 10) * (1 - 1e-9));
        if (litres < 10) expect(taken["~si"]).toBe(0);
        expect(level["~si"]).toBeLessThan(0.38);
        expect(notices).toEqual([]);
      }),
    );
  });

  it("leaves more as the stream rises", () => {
    let [left, taken] = [0, 0];
    for (const litres of [5, 15, 40, 80, 140]) {
      const divided = divideFlow({
        notchFlow,
        intakeFlow,
        sill,
        streamFlow: litrePerSecond.of(litres),
        residualFlow,
        crest,
      });
      expect(divided.left["~si"]).toBeGreaterThan(left);
      expect(divided.taken["~si"]).toBeGreaterThanOrEqual(taken);
      [left, taken] = [divided.left["~si"], divided.taken["~si"]];
    }
  });

  it("stops where the intake's sill is too low, as low as it may be", () => {
    for (const low of [millimetre.of(60), millimetre.of(-50)]) {
      const told: Notice[] = [];
      const { left, notices } = divideFlow(
        {
          notchFlow,
          intakeFlow,
          sill: low,
          streamFlow: litrePerSecond.of(12),
          residualFlow,
          crest,
        },
        { onNotice: (notice) => told.push(notice) },
      );
      expect(left.in(litrePerSecond)).toBeLessThan(10);
      expect(told).toEqual(notices);
      expect(notices[0]!.severity).toBe("stop");
      expect(notices[0]!.message).toMatch(
        /^divide-flow: with 12 L\/s in the stream the notch leaves [\d.]+ L\/s where 10 L\/s must stay\. Raise the sill of the intake: sillOverNotch says how high\.$/u,
      );
    }
  });

  it("refuses a stream that goes over the crest", () => {
    expect(() =>
      divideFlow({
        notchFlow,
        intakeFlow,
        sill,
        streamFlow: litrePerSecond.of(900),
        residualFlow,
        crest,
      }),
    ).toThrow(
      "divide-flow: at the crest, 380 mm over the notch's sill, notch and intake together pass less than 900 L/s. The rest goes over the crest: reckon with it, or give a higher crest.",
    );
  });
});
