import { continuousRating, dropShare, recommendedDrops } from "@leat/dc-transmission";
import { NonPhysicalError } from "@leat/formula";
import { ampere, one, percent, QuantityError, volt } from "@leat/quantity";
import { describe, expect, it } from "vitest";

describe("dropShare", () => {
  it("is nothing of nothing and all of all", () => {
    expect(dropShare({ drop: volt.of(0), sourceVoltage: volt.of(48) }).in(percent)).toBe(0);
    expect(dropShare({ drop: volt.of(48), sourceVoltage: volt.of(48) }).in(percent)).toBe(100);
  });

  it("refuses no voltage, a drop below zero, and a wrong kind", () => {
    expect(() => dropShare({ drop: volt.of(1), sourceVoltage: volt.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() => dropShare({ drop: volt.of(-1), sourceVoltage: volt.of(48) })).toThrow(
      NonPhysicalError,
    );
    expect(() => dropShare({ drop: ampere.of(1) as never, sourceVoltage: volt.of(48) })).toThrow(
      QuantityError,
    );
  });

  it("stands beside the drops that the American code advises: 3 % and 5 %", () => {
    const { branch, feederAndBranch } = recommendedDrops();
    expect([branch.share.in(percent), feederAndBranch.share.in(percent)]).toEqual([3, 5]);
    expect(branch.source.standing).toBe("secondary");
    // 4.356 V of 120 V is above the first and below the second.
    const share = dropShare({ drop: volt.of(4.356), sourceVoltage: volt.of(120) });
    expect(share.greaterThan(branch.share) && share.lessThan(feederAndBranch.share)).toBe(true);
  });
});

describe("continuousRating", () => {
  it("takes a quarter more where no factor is given, and says so", () => {
    const assumed: string[] = [];
    const rating = continuousRating(
      { current: ampere.of(16) },
      { onAssumed: ({ input, value }) => assumed.push(`${input} = ${value}`) },
    );
    expect(rating.in(ampere)).toBe(20);
    expect(assumed).toEqual(["factor = 1.25"]);
  });

  it("goes with the current, and refuses one below zero", () => {
    expect(continuousRating({ current: ampere.of(0) }).in(ampere)).toBe(0);
    expect(continuousRating({ current: ampere.of(10), factor: one.of(2) }).in(ampere)).toBe(20);
    expect(() => continuousRating({ current: ampere.of(-1) })).toThrow(NonPhysicalError);
    expect(() => continuousRating({ current: ampere.of(1), factor: one.of(0) })).toThrow(
      NonPhysicalError,
    );
    expect(() => continuousRating({ current: volt.of(1) as never })).toThrow(QuantityError);
  });
});
