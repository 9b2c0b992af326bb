import {
  cipollettiDischarge,
  francisContractedDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { cubicMetrePerSecond, degree, each, foot, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const channel = { crestHeight: metre.of(1), approachWidth: metre.of(4) };

describe("cipollettiDischarge", () => {
  it("is a contracted weir and the two halves of a V that lean by one in four, within 2.5 %", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.07, max: 0.33, noNaN: true }), (h) => {
        const head = metre.of(h);
        const notch = { ...channel, head, notchWidth: metre.of(1) };
        const middle = francisContractedDischarge({ ...notch, contractions: each.of(2) });
        const ends = vNotchDischarge(
          { ...channel, head, angle: degree.of((2 * Math.atan(1 / 4) * 180) / Math.PI) },
          { onNotice: () => undefined },
        );
        const both = middle.in(cubicMetrePerSecond) + ends.in(cubicMetrePerSecond);
        expect(
          Math.abs(both / cipollettiDischarge(notch).in(cubicMetrePerSecond) - 1),
        ).toBeLessThan(0.025);
      }),
    );
  });

  it.each([
    [{ head: foot.of(0.1) }, "head = 0.1 ft is below 0.2 ft, the range USBR gives"],
    [{ notchWidth: metre.of(0.5) }, "head/notchWidth = 0.4 is above 0.3333, the range USBR gives"],
    [
      { crestHeight: metre.of(0.3) },
      "head/crestHeight = 0.6667 is above 0.5, the range USBR gives",
    ],
    [
      { approachWidth: metre.of(1.8) },
      "clear width beside each end of the water in the notch over head = 1.75 is below 2, the range USBR gives",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const notch = { ...channel, head: metre.of(0.2), notchWidth: metre.of(1), ...change };
    expect(() => cipollettiDischarge(notch)).toThrow(`cipolletti-discharge: ${message}`);
  });
});
