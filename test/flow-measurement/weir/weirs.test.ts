import { weirEquationUncertainty } from "@leat/flow-measurement";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  cubicMetrePerSecond,
  foot,
  metre,
  percent,
  type Quantity,
  QuantityError,
  second,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

import { flowOver, weirs } from "./weirs.ts";

const silent = (): void => undefined;

describe.each(weirs.map((weir) => [weir.formula.id, weir] as const))("%s", (_, weir) => {
  const heads = fc.double({ min: weir.heads[0], max: weir.heads[1], noNaN: true });

  it("rises with the head", () => {
    fc.assert(
      fc.property(heads, (h) => {
        expect(flowOver(weir, h * 1.001, silent)).toBeGreaterThan(flowOver(weir, h));
      }),
    );
  });

  it("keeps its range, and says so at either end", () => {
    const [low, high] = weir.heads;
    expect(flowOver(weir, low)).toBeLessThan(flowOver(weir, high));
    expect(() => flowOver(weir, low / 3)).toThrow(OutOfValidityError);
    expect(() => flowOver(weir, high * 3)).toThrow(OutOfValidityError);
  });

  it("has no flow at no head, unless it has a head correction", () => {
    const flow = flowOver(weir, 0, silent);
    if (weir.corrected) expect(flow).toBeGreaterThan(0);
    else expect(flow).toBe(0);
    if (!weir.corrected) expect(flowOver(weir, 1e-6, silent)).toBeLessThan(1e-8);
  });

  it("is the same in feet as in metres", () => {
    fc.assert(
      fc.property(heads, (h) => {
        const inFeet = Object.fromEntries(
          Object.entries(weir.args).map(([name, q]) => [
            name,
            q.kind === "length" ? foot.of(q.in(metre) / 0.3048) : q,
          ]),
        );
        const flow = weir.formula({ ...inFeet, head: foot.of(h / 0.3048) } as never, {
          onNotice: silent,
        }) as Quantity<"volume flow">;
        expect(flow.in(cubicMetrePerSecond) / flowOver(weir, h)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("grows as the power 5/2 of the size, but for corrections of a millimetre", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (λ) => {
        const large = Object.fromEntries(
          Object.entries(weir.args).map(([name, q]) => [
            name,
            q.kind === "length" ? q.times(λ) : q,
          ]),
        );
        const h = weir.heads[1] * 0.9;
        const flow = weir.formula({ ...large, head: metre.of(λ * h) } as never, {
          onNotice: silent,
        }) as Quantity<"volume flow">;
        const ratio = flow.in(cubicMetrePerSecond) / (λ ** 2.5 * flowOver(weir, h));
        expect(Math.abs(ratio - 1)).toBeLessThan(weir.corrected ? 0.01 : 1e-12);
      }),
    );
  });

  it("refuses what is not physical or of another kind, whatever the caller accepts", () => {
    expect(() => flowOver(weir, -0.1, silent)).toThrow(NonPhysicalError);
    expect(() => weir.formula({ ...weir.args, head: second.of(1) } as never)).toThrow(
      QuantityError,
    );
  });

  it("has an uncertainty of its own, with a source", () => {
    const { relative, source } = weirEquationUncertainty[weir.formula.id]!;
    expect(relative.in(percent)).toBeGreaterThanOrEqual(1);
    expect(relative.in(percent)).toBeLessThanOrEqual(5);
    expect(source.place).not.toBe("");
  });
});

describe("weirEquationUncertainty", () => {
  it("knows every weir and nothing else", () => {
    expect(Object.keys(weirEquationUncertainty).toSorted()).toEqual(
      weirs.map(({ formula }) => formula.id).toSorted(),
    );
  });

  it("holds the one figure that was read in its source: 5 % for Cipolletti", () => {
    const { relative, source } = weirEquationUncertainty["cipolletti-discharge"]!;
    expect([relative.in(percent), source.standing]).toEqual([5, "read"]);
  });
});
