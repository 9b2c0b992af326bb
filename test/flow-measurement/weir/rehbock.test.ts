import { kindsvaterCarterDischarge, rehbockDischarge } from "@leat/flow-measurement";
import { OutOfValidityError } from "@leat/formula";
import { cubicMetrePerSecond, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("rehbockDischarge", () => {
  it("and Kindsvater–Carter give a weir across the channel the same flow within 1.6 %, Rehbock the more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.5, noNaN: true }),
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (h, P) => {
          const weir = { head: metre.of(h), notchWidth: metre.of(1), crestHeight: metre.of(P) };
          const rehbock = rehbockDischarge(weir).in(cubicMetrePerSecond);
          const other = kindsvaterCarterDischarge({ ...weir, approachWidth: metre.of(1) }).in(
            cubicMetrePerSecond,
          );
          expect(rehbock / other).toBeGreaterThan(1);
          expect(rehbock / other).toBeLessThan(1.016);
        },
      ),
    );
  });

  it.each([
    [{ head: metre.of(0.02) }, "head = 0.02 m is below 0.03 m, the range ISO 1438 gives"],
    [
      { head: metre.of(0.8), crestHeight: metre.of(1) },
      "head = 0.8 m is above 0.75 m, the range ISO 1438 gives",
    ],
    [{ crestHeight: metre.of(0.15) }, "head/crestHeight = 1.333 is above 1, the range ISO 1438"],
    [{ notchWidth: metre.of(0.2) }, "notchWidth = 0.2 m is below 0.3 m, the range ISO 1438 gives"],
    [
      { head: metre.of(0.05), crestHeight: metre.of(0.09) },
      "crestHeight = 0.09 m is below 0.1 m, the range ISO 1438 gives",
    ],
  ])("tells whose limit is exceeded: %#", (change, message) => {
    const weir = {
      head: metre.of(0.2),
      notchWidth: metre.of(1),
      crestHeight: metre.of(0.5),
      ...change,
    };
    expect(() => rehbockDischarge(weir)).toThrow(OutOfValidityError);
    expect(() => rehbockDischarge(weir)).toThrow(`rehbock-discharge: ${message}`);
  });
});
