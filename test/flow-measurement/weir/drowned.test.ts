import { fullWidthDrownedFactor, rehbockDischarge, villemonteFactor } from "@leat/flow-measurement";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { litrePerSecond, metre, millimetre, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const shares = fc.double({ min: 0.02, max: 0.89, noNaN: true });
const levels = (share: number): { head: typeof head; tailwaterHead: typeof head } => ({
  head,
  tailwaterHead: head.times(share),
});
const head = metre.of(0.25);

describe.each([
  ["rectangular", (share: number) => villemonteFactor({ ...levels(share), shape: "rectangular" })],
  ["V-notch", (share: number) => villemonteFactor({ ...levels(share), shape: "V-notch" })],
  ["Cipolletti", (share: number) => villemonteFactor({ ...levels(share), shape: "Cipolletti" })],
  ["full width", (share: number) => fullWidthDrownedFactor(levels(share))],
] as const)("the factor of drowned flow, %s", (name, factor) => {
  it("leaves less of the flow the higher the tail water stands", () => {
    fc.assert(
      fc.property(shares, (share) => {
        expect(factor(share).in(one)).toBeLessThan(1);
        expect(factor(share * 1.01).in(one)).toBeLessThan(factor(share).in(one));
      }),
    );
  });

  it("leaves all of it with the tail water at the crest", () => {
    expect(factor(0).in(one)).toBeCloseTo(1, name === "full width" ? 3 : 15);
  });

  it("says where it is no longer known, and refuses what cannot be", () => {
    expect(() => factor(0.95)).toThrow(OutOfValidityError);
    expect(() => factor(0.95)).toThrow(
      "tailwaterHead/head = 0.95 is above 0.9, the range common practice",
    );
    expect(() => factor(1.2)).toThrow(OutOfValidityError);
  });
});

describe("the factors of drowned flow", () => {
  it("have no value with the tail water above the upstream level", () => {
    const onNotice = (): void => undefined;
    expect(() => villemonteFactor({ ...levels(1.2), shape: "V-notch" }, { onNotice })).toThrow(
      NonPhysicalError,
    );
    expect(() => fullWidthDrownedFactor(levels(0.99), { onNotice })).toThrow(
      "full-width-drowned-factor: f is not a number for these inputs.",
    );
  });

  it("hurt a V less than a slot, at the same levels", () => {
    fc.assert(
      fc.property(shares, (share) => {
        const slot = villemonteFactor({ ...levels(share), shape: "rectangular" }).in(one);
        expect(villemonteFactor({ ...levels(share), shape: "V-notch" }).in(one)).toBeGreaterThan(
          slot,
        );
        expect(villemonteFactor({ ...levels(share), shape: "Cipolletti" }).in(one)).toBe(slot);
      }),
    );
  });

  it("are as far apart as their pages say", () => {
    const apart = (share: number): number =>
      fullWidthDrownedFactor(levels(share)).in(one) /
      villemonteFactor({ ...levels(share), shape: "rectangular" }).in(one);
    expect(apart(0.5)).toBeCloseTo(1.044, 3);
    expect(apart(0.8)).toBeCloseTo(1.133, 3);
  });

  it("carry the uncertainty of the head that the flow has too, as one source", () => {
    const read = head.plusMinus(millimetre.of(2), "staff");
    const weir = { head: read, notchWidth: metre.of(1), crestHeight: metre.of(0.5) };
    const free = rehbockDischarge(weir);
    const factor = fullWidthDrownedFactor({ head: read, tailwaterHead: metre.of(0.15) });
    const drowned = free.times(factor);
    const both = drowned.sources().get("staff")!.in(litrePerSecond);
    const apart =
      free.sources().get("staff")!.in(litrePerSecond) * factor.in(one) +
      factor.sources().get("staff")!.in(one) * free.in(litrePerSecond);
    expect(both).toBeCloseTo(apart, 12);
    expect(drowned.sources().size).toBe(1);
  });
});
