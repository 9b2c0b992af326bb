import {
  francisApproachDischarge,
  francisContractedDischarge,
  francisSuppressedDischarge,
} from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import { cubicMetrePerSecond, each, foot, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const onNotice = (): void => undefined;
const heads = fc.double({ min: 0.062, max: 0.3, noNaN: true });

describe("francisApproachDischarge", () => {
  const flow = (h: number, ends: number, P = 0.4, B = 1.5): number =>
    francisApproachDischarge(
      {
        head: metre.of(h),
        notchWidth: metre.of(1),
        contractions: each.of(ends),
        crestHeight: metre.of(P),
        approachWidth: metre.of(B),
      },
      { onNotice },
    ).in(cubicMetrePerSecond);

  it("adds to the flow without approach velocity, the more the nearer the bed", () => {
    fc.assert(
      fc.property(heads, fc.double({ min: 0.2, max: 1, noNaN: true }), (h, P) => {
        expect(flow(h, 2, P)).toBeGreaterThan(flow(h, 2, P * 1.1));
        expect(flow(h, 2, P)).toBeGreaterThan(flow(h, 2, 1000));
      }),
    );
  });

  it("is the other Francis formulas in still water", () => {
    fc.assert(
      fc.property(heads, (h) => {
        const notch = { head: metre.of(h), notchWidth: metre.of(1), crestHeight: metre.of(1e6) };
        expect(
          flow(h, 0, 1e6, 1) / francisSuppressedDischarge(notch).in(cubicMetrePerSecond),
        ).toBeCloseTo(1, 9);
        const contracted = francisContractedDischarge({
          ...notch,
          contractions: each.of(2),
          approachWidth: metre.of(3),
        });
        expect(flow(h, 2, 1e6, 3) / contracted.in(cubicMetrePerSecond)).toBeCloseTo(1, 9);
      }),
    );
  });

  it("loses flow with each contracted end", () => {
    fc.assert(
      fc.property(heads, (h) => {
        expect(flow(h, 1)).toBeLessThan(flow(h, 0));
        expect(flow(h, 2)).toBeLessThan(flow(h, 1));
      }),
    );
  });

  it("shows the velocity of approach in its calculation", () => {
    const { V } = francisApproachDischarge.definition.steps as Record<
      string,
      { of: (letters: never) => number }
    >;
    const letters = {
      ...francisApproachDischarge.constants,
      h: 0.2,
      b: 1,
      n: 0,
      P: 0.3,
      B: 1,
      g: 9.80665,
    };
    expect(V!.of(letters as never) * 0.5).toBeCloseTo(francisApproachDischarge.body(letters), 14);
  });

  it.each([
    [{ contractions: each.of(3) }, "contractions = 3 each is above 2 each, the range physics"],
    [
      { contractions: each.of(1.5) },
      "contractions away from a whole number = 0.5 is above 0, the range physics gives",
    ],
    [{ head: foot.of(0.1) }, "head = 0.1 ft is below 0.2 ft, the range USBR gives"],
    [{ head: metre.of(0.4) }, "head/notchWidth = 0.4 is above 0.3333, the range Francis gives"],
    [
      { approachWidth: metre.of(0.9) },
      "notchWidth/approachWidth = 1.111 is above 1, the range physics gives",
    ],
    [
      { contractions: each.of(0) },
      "width of the channel over that of a weir without end contractions = 1.5 is above 1.001",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const notch = {
      head: metre.of(0.2),
      notchWidth: metre.of(1),
      contractions: each.of(2),
      crestHeight: metre.of(0.4),
      approachWidth: metre.of(1.5),
      ...change,
    };
    expect(() => francisApproachDischarge(notch)).toThrow(`francis-approach-discharge: ${message}`);
  });

  it("refuses a channel that no flow fits", () => {
    expect(() => flow(0.3, 0, 0.01, 0.1)).toThrow(NonPhysicalError);
    expect(() => flow(0.3, 0, 0.01, 0.1)).toThrow(
      "francis-approach-discharge: approachWidth = 0.1 m is too narrow: the water would have to arrive faster than it can leave over the notch. Check the widths and their units.",
    );
  });
});
