import {
  barRackLoss,
  barShapes,
  perforatedPlateLoss,
  roundWireFactors,
  screenArea,
  wireClothLoss,
} from "@leat/intake";
import {
  coherentUnit,
  cubicFootPerSecond,
  degree,
  footPerSecond,
  inch,
  metrePerSecond,
  millimetre,
  one,
  percent,
  squareFoot,
  squareMetre,
  squareMillimetrePerSecond,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const share = fc.double({ min: 0, max: 0.9, noNaN: true });
const rack = {
  velocity: metrePerSecond.of(0.5),
  barThickness: millimetre.of(8),
  barGap: millimetre.of(20),
  barAngle: degree.of(70),
  shapeFactor: barShapes.get("rectangular", "factor"),
};
const plate = { velocity: metrePerSecond.of(0.3), openShare: percent.of(40) };
const cloth = {
  ...plate,
  gap: millimetre.of(2),
  kinematicViscosity: squareMillimetrePerSecond.of(1.31),
};

describe("screenArea", () => {
  const screen = {
    flow: cubicFootPerSecond.of(1),
    approachVelocity: footPerSecond.of(0.33),
    openShare: percent.of(40),
  };

  it("keeps the water before what is left of the screen as slow as asked", () => {
    fc.assert(
      fc.property(share, share, (blocked, frames) => {
        const { area } = screenArea({
          ...screen,
          blockedShare: one.of(blocked),
          frameShare: one.of(frames),
        });
        const left = area["~si"] * (1 - blocked) * (1 - frames);
        expect(screen.flow["~si"] / left).toBeCloseTo(screen.approachVelocity["~si"], 12);
      }),
    );
  });

  it("is the same in feet and in metres, and nothing for no flow", () => {
    const { area } = screenArea(screen);
    const metric = screenArea({ ...screen, approachVelocity: metrePerSecond.of(0.100584) });
    expect(metric.area.in(squareMetre) / area.in(squareMetre)).toBeCloseTo(1, 12);
    expect(screenArea({ ...screen, flow: cubicFootPerSecond.of(0) }).area.in(squareFoot)).toBe(0);
  });

  it("refuses a screen that is all blocked, and what is no share", () => {
    expect(() => screenArea({ ...screen, blockedShare: one.of(1) })).toThrow(
      "screen-area: area is not a number for these inputs",
    );
    expect(() => screenArea({ ...screen, openShare: one.of(1.2) })).toThrow(
      "screen-area: openShare = 1.2 is not between 0 and 1",
    );
    expect(() => screenArea({ ...screen, flow: metrePerSecond.of(1) as never })).toThrow(
      "flow = 1 m/s (velocity) is refused",
    );
  });
});

describe("losses of screens", () => {
  it("are none at no flow or no bar, and rise with velocity and with what is blocked", () => {
    expect(barRackLoss({ ...rack, velocity: metrePerSecond.of(0) })["~si"]).toBe(0);
    expect(barRackLoss({ ...rack, barThickness: millimetre.of(0) })["~si"]).toBe(0);
    expect(perforatedPlateLoss({ ...plate, velocity: metrePerSecond.of(0) })["~si"]).toBe(0);
    const losses = [
      (b: number) => barRackLoss({ ...rack, blockedShare: one.of(b) }),
      (b: number) => perforatedPlateLoss({ ...plate, blockedShare: one.of(b) }),
      (b: number) => wireClothLoss({ ...cloth, blockedShare: one.of(b) }),
    ];
    fc.assert(
      fc.property(share, (b) => {
        for (const loss of losses) {
          expect(loss(b + 0.01)["~si"]).toBeGreaterThan(loss(b)["~si"]);
          expect(loss(b).kind).toBe("head loss");
        }
      }),
    );
  });

  it("go with the square of the velocity, at bars and plate", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 2, noNaN: true }), (v) => {
        const at = (velocity: number): number[] => [
          barRackLoss({ ...rack, velocity: metrePerSecond.of(velocity) })["~si"],
          perforatedPlateLoss({ ...plate, velocity: metrePerSecond.of(velocity) })["~si"],
        ];
        const [bars, holes] = at(v);
        const [fastBars, fastHoles] = at(2 * v);
        expect(fastBars! / bars!).toBeCloseTo(4, 9);
        expect(fastHoles! / holes!).toBeCloseTo(4, 9);
      }),
    );
  });

  it("are four times as great half blocked at a rack, and the same for one in inches", () => {
    const clean = barRackLoss(rack)["~si"];
    expect(barRackLoss({ ...rack, blockedShare: percent.of(50) })["~si"] / clean).toBeCloseTo(4, 9);
    const inches = { barThickness: inch.of(8 / 25.4), barGap: inch.of(20 / 25.4) };
    expect(barRackLoss({ ...rack, ...inches })["~si"] / clean).toBeCloseTo(1, 12);
  });

  it("fall as more of the screen is open", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.78, noNaN: true }), (p) => {
        const [a, b] = [{ openShare: one.of(p) }, { openShare: one.of(p + 0.01) }];
        expect(perforatedPlateLoss({ ...plate, ...b })["~si"]).toBeLessThan(
          perforatedPlateLoss({ ...plate, ...a })["~si"],
        );
        expect(wireClothLoss({ ...cloth, ...b })["~si"]).toBeLessThan(
          wireClothLoss({ ...cloth, ...a })["~si"],
        );
      }),
    );
  });

  it("say where they were not compared or tabulated", () => {
    expect(() => barRackLoss({ ...rack, barAngle: degree.of(100) })).toThrow(
      "bar-rack-loss: barAngle = 100° is above 90°",
    );
    expect(() => perforatedPlateLoss({ ...plate, openShare: percent.of(5) })).toThrow(
      "perforated-plate-loss: openShare = 5 % is below 0.1, the range Blevins gives",
    );
    expect(() => wireClothLoss({ ...cloth, velocity: metrePerSecond.of(0.01) })).toThrow(
      "wire-cloth-loss: Reynolds number of the gap = 15.27 is below 20",
    );
    expect(() => wireClothLoss({ ...cloth, openShare: percent.of(90) })).toThrow(
      "wire-cloth-loss: openShare = 90 % is above 0.8",
    );
    // Below the table its first slope goes on, so that an accepted notice meets no jump.
    let told = 0;
    const slow = wireClothLoss(
      { ...cloth, velocity: metrePerSecond.of(0.01) },
      { onNotice: () => (told += 1) },
    );
    expect(told).toBe(1);
    expect(slow["~si"]).toBeGreaterThan(0);
  });
});

describe("tables of screens", () => {
  it("hold the shape factors that Kirschmer's equation is printed with", () => {
    const factor = (shape: Parameters<typeof barShapes.row>[0]): number =>
      barShapes.get(shape, "factor")["~si"];
    expect(barShapes.keys().map(factor)).toEqual([2.42, 1.83, 1.67, 1.79, 0.76]);
    // The blunter a bar, the more it loses: rounding one edge takes off some of it, both edges more.
    expect(factor("rectangular")).toBeGreaterThan(factor("rectangular, upstream edge half round"));
    expect(factor("streamlined")).toBeLessThan(factor("round"));
  });

  it("fall with the Reynolds number of the gap", () => {
    const { rows } = roundWireFactors.definition;
    for (const [i, row] of rows.entries()) {
      expect(row.at).toBe(String(row.reynolds));
      if (i > 0) {
        expect(row.reynolds).toBeGreaterThan(rows[i - 1]!.reynolds);
        expect(row.factor).toBeLessThan(rows[i - 1]!.factor);
      }
    }
    expect(roundWireFactors.get("400", "factor")).toEqual(coherentUnit("coefficient").of(0.52));
  });
});
