import type { Notice } from "@leat/formula";
import { froudeSubmergence, gordonSubmergence, mouthSubmergence } from "@leat/intake";
import {
  cubicMetrePerSecond,
  foot,
  gallonPerMinute,
  inch,
  litrePerSecond,
  metre,
  metrePerSecondSquared,
  millimetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const quiet = { onNotice: (): void => {} };
const small = {
  flow: litrePerSecond.of(12),
  mouthDiameter: millimetre.of(150),
  approach: "lateral",
} as const;

describe("submergence", () => {
  it("rises with the flow, and falls as the mouth is larger", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), (litres) => {
        const at = (flow: number, d: number): number[] => {
          const mouth = { flow: litrePerSecond.of(flow), mouthDiameter: millimetre.of(d) };
          return [
            gordonSubmergence({ ...mouth, approach: "symmetrical" }, quiet)["~si"],
            froudeSubmergence(mouth)["~si"] - d / 1000,
          ];
        };
        const [here, more, wider] = [at(litres, 150), at(litres * 1.1, 150), at(litres, 170)];
        for (const i of [0, 1]) {
          expect(more[i]).toBeGreaterThan(here[i]!);
          expect(wider[i]).toBeLessThan(here[i]!);
        }
      }),
    );
  });

  it("is a third deeper for a lateral approach, and none at all without flow", () => {
    const at = (approach: "lateral" | "symmetrical"): number =>
      gordonSubmergence({ ...small, approach }, quiet)["~si"];
    expect(at("lateral") / at("symmetrical")).toBeCloseTo(4 / 3, 12);
    expect(gordonSubmergence({ ...small, flow: litrePerSecond.of(0) }, quiet)["~si"]).toBe(0);
  });

  it("is the same in inches and gallons as in metres", () => {
    const us = froudeSubmergence({ flow: gallonPerMinute.of(1000), mouthDiameter: inch.of(16) });
    const metric = froudeSubmergence({
      flow: litrePerSecond.of(63.0901964),
      mouthDiameter: metre.of(0.4064),
    });
    expect(us["~si"] / metric["~si"]).toBeCloseTo(1, 9);
  });

  it("says that Gordon looked at no small pipes", () => {
    expect(() => gordonSubmergence({ ...small })).toThrow(
      "gordon-submergence: mouthDiameter = 150 mm is below 1 m, the range Gordon gives (Vortices at Intakes, intakes that were looked at).",
    );
    expect(() => gordonSubmergence({ ...small, approach: "oblique" as never }, quiet)).toThrow(
      'approach = "oblique" is refused: give one of symmetrical, lateral',
    );
  });
});

describe("mouthSubmergence", () => {
  it("takes the deeper, whichever it is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 8, noNaN: true }),
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        (diameter, velocity) => {
          const flow = cubicMetrePerSecond.of((velocity * Math.PI * diameter ** 2) / 4);
          const { needed, gordon, froude, governing } = mouthSubmergence({
            flow,
            mouthDiameter: metre.of(diameter),
            approach: "lateral",
          });
          expect(needed["~si"]).toBe(Math.max(gordon["~si"], froude["~si"]));
          expect(needed).toBe(governing === "gordon" ? gordon : froude);
        },
      ),
    );
    // 0.72·V·√D stands for a slope of 2.27 on V·√(D/g): the standard's own is 2.3, with a diameter on top.
    expect(mouthSubmergence(small).governing).toBe("froude");
    const elsewhere = { ...small, gravity: metrePerSecondSquared.of(40) };
    expect(mouthSubmergence({ ...elsewhere, flow: litrePerSecond.of(200) }).governing).toBe(
      "gordon",
    );
  });

  it("says that the mouth is too shallow, by whom, and what to do", () => {
    const told: Notice[] = [];
    const { spare, notices } = mouthSubmergence(
      { ...small, depthOverMouth: millimetre.of(250) },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(spare!.in(millimetre)).toBeCloseTo(-93.2, 0);
    expect(told).toEqual(notices);
    expect(notices.map(({ code, severity }) => [code, severity])).toEqual([
      ["submergence/too-shallow", "caution"],
      ["gordon-submergence/out-of-range", "note"],
    ]);
    expect(notices[0]!.message).toBe(
      "mouth-submergence: 250 mm of water over the mouth is less than the 343 mm that ANSI/HI 9.8 asks against vortices. Set the mouth deeper, give it a larger bell, or draw less.",
    );
  });

  it("is silent where the mouth is deep, and large", () => {
    const deep = mouthSubmergence({
      flow: cubicMetrePerSecond.of(2),
      mouthDiameter: foot.of(5),
      approach: "symmetrical",
      depthOverMouth: metre.of(5),
    });
    expect(deep.notices).toEqual([]);
    expect(deep.spare!["~si"]).toBeGreaterThan(0);
    expect(mouthSubmergence(small).spare).toBeUndefined();
  });

  it("refuses a depth below zero or of another kind", () => {
    expect(() => mouthSubmergence({ ...small, depthOverMouth: millimetre.of(-1) })).toThrow(
      "mouth-submergence: depthOverMouth = -1 mm is below zero",
    );
    expect(() =>
      mouthSubmergence({ ...small, depthOverMouth: litrePerSecond.of(1) as never }),
    ).toThrow("mouth-submergence: depthOverMouth = 1 L/s (volume flow) is refused");
  });
});
