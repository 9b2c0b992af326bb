import { compareProbes, saltSlug } from "@leat/flow-measurement";
import { NonPhysicalError, type Notice } from "@leat/formula";
import {
  gram,
  litrePerSecond,
  milligramPerLitrePerMicrosiemensPerCentimetre,
  percent,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

import { madeInput } from "./slugs.ts";

const probe = (name: string, flow: number) => ({
  name,
  flowAtProbe: litrePerSecond.of(flow),
});
const u = (flow: { in(unit: typeof litrePerSecond): number }): number => flow.in(litrePerSecond);

describe("compareProbes", () => {
  it("takes the mean, whichever comes first", () => {
    const flows = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(flows, flows, (a, b) => {
        const there = compareProbes([probe("left", a), probe("right", b)]);
        const back = compareProbes([probe("right", b), probe("left", a)]);
        expect(there.flow.in(litrePerSecond)).toBeCloseTo((a + b) / 2, 9);
        expect(there.difference.in(percent)).toBeCloseTo(-back.difference.in(percent), 9);
        expect(there.judged).toBe(back.judged);
        // Half of the difference, but never less than what two banks that differ by 5 % leave.
        const mean = (a + b) / 2;
        expect(u(there.flow.standardUncertainty())).toBeCloseTo(
          Math.max(Math.abs(a - b) / 2, 0.025 * mean),
          6,
        );
      }),
    );
  });

  it.each([
    [100, 104, "mixed", []],
    [100, 108, "doubtful", ["mixing-doubtful"]],
    // The same slug seen from two banks has differed by 14 %.
    [93, 107, "not mixed", ["not-mixed"]],
  ] as const)("judges %d and %d L/s %s", (a, b, judged, codes) => {
    const told: Notice[] = [];
    const pair = compareProbes([probe("left", a), probe("right", b)], {
      onNotice: (notice) => told.push(notice),
    });
    expect(pair.judged).toBe(judged);
    expect(told.map(({ code }) => code)).toEqual(codes);
    expect(pair.notices).toEqual(told);
  });

  it("says by how much, and what to do", () => {
    const said = (a: number, b: number): string | undefined =>
      compareProbes([probe("left", a), probe("right", b)]).notices[0]?.message;
    expect(said(93, 107)).toBe(
      "compare-probes: left and right differ by 14.0 %: the salt is not mixed. Throw it in further up, or in a narrower, rougher place.",
    );
    expect(said(96, 104)).toContain("differ by 8.0 %: the salt is hardly mixed");
  });

  it("counts mass and calibration once, and leaves them out of the difference", () => {
    const factor = milligramPerLitrePerMicrosiemensPerCentimetre;
    const mass = gram.of(200).plusMinus(gram.of(10), "scale");
    const at = (name: string, flow: number) => {
      const input = madeInput({ flow, resolution: 0.1 });
      return saltSlug({
        ...input,
        name,
        mass,
        calibration: {
          ...input.calibration!,
          factor: factor.of(0.486).plusMinus(factor.of(0.01), "salt calibration"),
        },
      });
    };
    const { flow, difference } = compareProbes([at("left", 78), at("right", 82)]);
    const sources = flow.sources();
    expect((196 * u(sources.get("scale")!)) / 80).toBeCloseTo(5, 1);
    expect([...sources.keys()].filter((id) => id.endsWith("mixing"))).toEqual([
      "left and right: mixing",
    ]);
    expect(difference.in(percent)).toBeCloseTo(5, 0);
    // 5 % of mass and 2 % of factor would be 2.7 % of one flow; in the difference they cancel.
    expect(difference.standardUncertainty().in(percent)).toBeLessThan(0.3);
  });

  it("refuses two probes by one name", () => {
    const twice = () => compareProbes([probe("left", 80), probe("left", 81)]);
    expect(twice).toThrow(NonPhysicalError);
    expect(twice).toThrow(
      "compare-probes: both probes are called left, and their own uncertainties would be taken for one. Give each its name.",
    );
  });
});
