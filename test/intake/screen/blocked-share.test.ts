import { barRackLoss, barShapes, blockedShareThatStarves, perforatedPlateLoss } from "@leat/intake";
import { degree, metre, metrePerSecond, millimetre, one, percent } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const rack = {
  velocity: metrePerSecond.of(0.2),
  barThickness: millimetre.of(8),
  barGap: millimetre.of(20),
  barAngle: degree.of(70),
  shapeFactor: barShapes.get("rectangular", "factor"),
};
const available = (mm: number) => millimetre.of(mm).as("head loss");

describe("blockedShareThatStarves", () => {
  it("is the share at which the loss is what there is", () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 500, noNaN: true }), (mm) => {
        const plate = { velocity: metrePerSecond.of(0.05), openShare: percent.of(40) };
        const { share, convergence } = blockedShareThatStarves({
          loss: (blockedShare) => perforatedPlateLoss({ ...plate, blockedShare }),
          available: available(mm),
        });
        const loss = perforatedPlateLoss({ ...plate, blockedShare: share });
        expect(loss.in(millimetre) / mm).toBeCloseTo(1, 9);
        expect(convergence!.iterations).toBeLessThan(100);
      }),
    );
  });

  it("is known in closed form for bars: 1 less the root of clean over available", () => {
    const clean = barRackLoss(rack).in(millimetre);
    const { share } = blockedShareThatStarves({
      loss: (blockedShare) => barRackLoss({ ...rack, blockedShare }),
      available: available(60),
    });
    expect(share.in(one)).toBeCloseTo(1 - Math.sqrt(clean / 60), 9);
  });

  it("stops where the clean screen already loses too much", () => {
    const { share, convergence, notices } = blockedShareThatStarves({
      loss: (blockedShare) =>
        barRackLoss({ ...rack, velocity: metrePerSecond.of(2), blockedShare }),
      available: available(20),
    });
    expect(share.in(one)).toBe(0);
    expect(convergence).toBeUndefined();
    expect(notices.map(({ code, severity }) => [code, severity])).toEqual([
      ["screen/starves-clean", "stop"],
    ]);
    expect(notices[0]!.message).toMatch(
      /^blocked-share: the clean screen loses 0\.13\d+ m, and 20 mm may be lost\. Make the screen larger or set the mouth of the pipe deeper\.$/u,
    );
  });

  it("refuses a head that is none, and a loss that is none", () => {
    const loss = (): never => metre.of(0.01) as never;
    expect(() => blockedShareThatStarves({ loss, available: available(20) })).toThrow(
      "blocked-share: loss = 0.01 m (length) is refused: give a head loss",
    );
    expect(() => blockedShareThatStarves({ loss, available: available(0) })).toThrow(
      "blocked-share: available = 0 mm is not above zero",
    );
    const flat = (): ReturnType<typeof available> => available(1);
    expect(() => blockedShareThatStarves({ loss: flat, available: available(20) })).toThrow(
      "have the same sign, so no root is bracketed",
    );
  });
});
