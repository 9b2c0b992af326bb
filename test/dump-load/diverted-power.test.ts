import { divertedPower } from "@leat/dump-load";
import { NonPhysicalError } from "@leat/formula";
import { kilowatt, one, QuantityError, volt, watt } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const watts = fc.double({ min: 0, max: 20_000, noNaN: true });

describe("divertedPower", () => {
  it("is the same whichever source gives it, and never less than what can come with a margin of one or more", () => {
    fc.assert(
      fc.property(watts, watts, fc.double({ min: 1, max: 3, noNaN: true }), (a, b, k) => {
        const margin = one.of(k);
        const p = divertedPower({ machinePower: watt.of(a), otherPower: watt.of(b), margin }).in(
          watt,
        );
        expect(
          divertedPower({ machinePower: watt.of(b), otherPower: watt.of(a), margin }).in(watt),
        ).toBe(p);
        expect(p).toBeGreaterThanOrEqual(a + b);
      }),
    );
  });

  it("says what it takes for granted, and whose margin it is", () => {
    const assumed: string[] = [];
    divertedPower(
      { machinePower: kilowatt.of(1.2) },
      {
        onAssumed: ({ input, value, because }) =>
          assumed.push(`${input} = ${value}: ${because?.source.by}, ${because?.standing}`),
      },
    );
    expect(assumed).toEqual(["otherPower = 0 W: physics, read", "margin = 1.5: NFPA 70, memory"]);
  });

  it("refuses a power below zero, no margin, and a wrong kind", () => {
    expect(() => divertedPower({ machinePower: watt.of(-1) })).toThrow(NonPhysicalError);
    expect(() => divertedPower({ machinePower: watt.of(1), margin: one.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() => divertedPower({ machinePower: watt.of(1), otherPower: watt.of(-1) })).toThrow(
      NonPhysicalError,
    );
    expect(() => divertedPower({ machinePower: volt.of(1) as never })).toThrow(QuantityError);
  });
});
