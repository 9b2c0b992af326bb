import type { Notice } from "@leat/formula";
import { tiltedWireScreen, tiltedWireSlot } from "@leat/intake";
import {
  coherentUnit,
  degree,
  foot,
  litrePerSecond,
  metre,
  metrePerSecondSquared,
  millimetre,
  one,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = coherentUnit("coefficient");
const slot = {
  slot: millimetre.of(1),
  wire: millimetre.of(1.5),
  wireTilt: degree.of(5),
  width: metre.of(0.6),
  specificEnergy: metre.of(0.4),
  froude: one.of(3.5),
  slotCoefficient: coefficient.of(0.6),
};
const screen = {
  flow: litrePerSecond.of(40),
  width: metre.of(0.6),
  fall: metre.of(0.25),
  incline: degree.of(45),
  screenLength: metre.of(0.3),
  slot: millimetre.of(1),
  wire: millimetre.of(1.5),
  wireTilt: degree.of(5),
  slotCoefficient: coefficient.of(0.6),
};

describe("tiltedWireSlot", () => {
  it("takes more with tilt and with energy, and less as it is sheared faster", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.double({ min: 1.5, max: 20, noNaN: true }),
        (tilt, froude) => {
          const at = (more: Partial<typeof slot>): number =>
            tiltedWireSlot({
              ...slot,
              wireTilt: degree.of(tilt),
              froude: one.of(froude),
              ...more,
            })["~si"];
          expect(at({ wireTilt: degree.of(tilt + 1) })).toBeGreaterThan(at({}));
          expect(at({ specificEnergy: metre.of(1.6) }) / at({})).toBeCloseTo(2, 9);
          expect(at({ froude: one.of(froude + 1) })).toBeLessThan(at({}));
        },
      ),
    );
  });

  it("scales as a Froude model does", () => {
    const small = tiltedWireSlot(slot)["~si"];
    const large = tiltedWireSlot({
      ...slot,
      slot: millimetre.of(4),
      wire: millimetre.of(6),
      width: metre.of(2.4),
      specificEnergy: metre.of(1.6),
    })["~si"];
    expect(large / small).toBeCloseTo(4 ** 2.5, 9);
  });

  it("says what lies outside", () => {
    expect(() => tiltedWireSlot({ ...slot, froude: one.of(0.5) })).toThrow(
      "tilted-wire-slot: Froude number = 0.5 is below 1",
    );
    expect(() => tiltedWireSlot({ ...slot, wireTilt: degree.of(20) })).toThrow(
      "tilted-wire-slot: wireTilt = 20° is above 10°",
    );
  });
});

describe("tiltedWireScreen", () => {
  it("takes what it does not let over, and no more than there is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        (litres, blocked) => {
          const { taken, passedOver, wettedLength } = tiltedWireScreen({
            ...screen,
            flow: litrePerSecond.of(litres),
            blockedShare: one.of(blocked),
          });
          expect(taken["~si"] + passedOver["~si"]).toBeCloseTo(litres / 1000, 12);
          expect(taken["~si"]).toBeGreaterThan(0);
          expect(wettedLength["~si"]).toBeLessThanOrEqual(0.3);
          if (passedOver["~si"] > 1e-12) expect(wettedLength["~si"]).toBe(0.3);
        },
      ),
    );
  });

  it("takes less as more of it is blocked, and more as it is longer", () => {
    const at = (
      more: Partial<typeof screen> & { blockedShare?: ReturnType<typeof one.of> },
    ): number => tiltedWireScreen({ ...screen, ...more }).taken["~si"];
    for (const b of [0, 0.25, 0.5, 0.75])
      expect(at({ blockedShare: one.of(b + 0.2) })).toBeLessThan(at({ blockedShare: one.of(b) }));
    expect(at({ screenLength: metre.of(0.35) })).toBeGreaterThan(at({}));
    expect(at({ blockedShare: one.of(1) })).toBe(0);
  });

  it("needs a length that grows with the flow", () => {
    const wetted = (litres: number): number =>
      tiltedWireScreen({ ...screen, flow: litrePerSecond.of(litres) }).wettedLength["~si"];
    let last = 0;
    for (const litres of [2, 5, 10, 20, 30]) {
      expect(wetted(litres)).toBeGreaterThan(last);
      last = wetted(litres);
    }
  });

  it("is the same in feet as in metres", () => {
    const feet = tiltedWireScreen({
      ...screen,
      width: foot.of(0.6 / 0.3048),
      fall: foot.of(0.25 / 0.3048),
    });
    expect(feet.taken["~si"] / tiltedWireScreen(screen).taken["~si"]).toBeCloseTo(1, 9);
  });

  it("says that the water comes to it too slow, and gives up on it", () => {
    const deep = { ...screen, flow: litrePerSecond.of(400) };
    expect(() => tiltedWireScreen(deep)).toThrow(
      "tilted-wire-screen: energy at the upper edge over that of critical flow, cubed = 0.6895 is below 3.375",
    );
    const told: Notice[] = [];
    expect(() => tiltedWireScreen(deep, { onNotice: (notice) => told.push(notice) })).toThrow(
      "cannot pass 0.6666666666666667 m² a second over the screen. Give it more fall before the screen, or a wider one.",
    );
    expect(told.map(({ path }) => path)).toEqual([["fall"]]);
    expect(() => tiltedWireScreen({ ...screen, incline: degree.of(89) })).toThrow(
      "tilted-wire-screen: incline = 89° is above 85°",
    );
  });

  it("takes less where gravity is weaker", () => {
    const moon = {
      ...screen,
      flow: litrePerSecond.of(10),
      gravity: metrePerSecondSquared.of(1.62),
    };
    const earth = { ...screen, flow: litrePerSecond.of(10) };
    expect(tiltedWireScreen(moon).wettedLength["~si"]).toBeGreaterThan(
      tiltedWireScreen(earth).wettedLength["~si"],
    );
  });
});
