import {
  hoseLevelling,
  plankLevelling,
  type SteppingInput,
  stepSpreads,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError } from "@leat/formula";
import { foot, inch, metre, millimetre, percent, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const drops = (numbers: readonly number[]) => numbers.map((n) => ({ drop: metre.of(n) }));
const falls = fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), {
  minLength: 1,
  maxLength: 15,
});
const both = [
  ["plankLevelling", plankLevelling],
  ["hoseLevelling", hoseLevelling],
] as const;

describe.each(both)("%s", (_, take) => {
  it("adds its steps, in any order, in feet as in metres", () => {
    fc.assert(
      fc.property(falls, (steps) => {
        let sum = 0;
        for (const step of steps) sum += step;
        const { head } = take({ steps: drops(steps) });
        expect(head.kind).toBe("gross head");
        expect(head.in(metre)).toBeCloseTo(sum, 10);
        expect(take({ steps: drops(steps.toReversed()) }).head.in(metre)).toBeCloseTo(sum, 10);
        const inFeet = steps.map((n) => ({ drop: foot.of(n / 0.3048) }));
        expect(take({ steps: inFeet }).head.in(metre)).toBeCloseTo(sum, 10);
      }),
    );
  });

  it("agrees with itself when it is done twice", () => {
    fc.assert(
      fc.property(falls, (steps) => {
        const { closure, head } = take({ steps: drops(steps), again: drops(steps) });
        expect(closure?.misclosure.in(metre)).toBeCloseTo(0, 12);
        expect(closure?.closes).toBe(true);
        expect(head.in(metre)).toBeCloseTo(take({ steps: drops(steps) }).head.in(metre), 12);
      }),
    );
  });

  it("weighs two runs by their numbers of steps: the fewer, the surer", () => {
    // 3 steps say 6 m, 1 step says 6.004 m: three quarters of the way from the first to the second.
    const { head } = take({ steps: drops([2, 2, 2]), again: drops([6.004]) });
    expect(head.in(metre)).toBeCloseTo(6.003, 12);
  });
});

describe("steps of a plank", () => {
  it("scatter by chance, and a bubble that is off is off in each of them", () => {
    const { head, marks } = plankLevelling({ steps: drops([1, 1, 1, 1]), name: "bank" });
    const sources = head.sources();
    expect([...sources.keys()]).toEqual(["bank.bubble", "bank.readings"]);
    expect(Math.abs(sources.get("bank.readings")!.in(millimetre))).toBeCloseTo(10, 9);
    expect(Math.abs(sources.get("bank.bubble")!.in(millimetre))).toBeCloseTo(4, 9);
    expect(marks.map(({ at, drop }) => `${at} ${drop.in(metre)}`)).toEqual([
      "step 1 1",
      "step 2 2",
      "step 3 3",
      "step 4 4",
    ]);
    // A second run with the same level does not take the bubble's error away.
    const twice = plankLevelling({ steps: drops([2, 2]), again: drops([2, 2]) }).head.sources();
    expect(Math.abs(twice.get("plank-levelling.bubble")!.in(millimetre))).toBeCloseTo(2, 9);
    expect(Math.abs(twice.get("plank-levelling.readings")!.in(millimetre))).toBeCloseTo(5, 9);
  });
});

describe("steps of a hose", () => {
  it("scatter by chance alone, by what is stated or by practice", () => {
    const assumed: Assumption[] = [];
    const onAssumed = (each: Assumption) => assumed.push(each);
    const { head } = hoseLevelling({ steps: drops([4, 4, 4, 4]) }, { onAssumed });
    expect(head.standardUncertainty().in(millimetre)).toBeCloseTo(8, 9);
    expect(assumed.map(({ formula, input, value }) => `${formula} ${input} ${value}`)).toEqual([
      "hose-levelling stepSpread 4 mm standard",
    ]);
    const stated = hoseLevelling({ steps: drops([4]), stepSpread: inch.of(1) }, { onAssumed });
    expect(stated.head.standardUncertainty().in(inch)).toBeCloseTo(1 / 1.959964, 6);
    expect(assumed).toHaveLength(1);
  });

  it("keeps what its steps share", () => {
    const rule = one.of(1).within(percent.of(1), "rule");
    const { head } = hoseLevelling({
      steps: [1, 2].map((n) => ({ drop: metre.of(n).times(rule) })),
    });
    expect(Math.abs(head.sources().get("rule")!.in(metre))).toBeCloseTo(0.03 / Math.sqrt(3), 9);
  });

  it("points at air where two runs differ", () => {
    const input: SteppingInput = { steps: drops([4, 4]), again: drops([4, 3.8]) };
    const [notice] = hoseLevelling(input).notices;
    expect(notice?.code).toBe("hose-levelling/does-not-close");
    expect(notice?.message).toBe(
      "hose-levelling: out and back are 0.2 m apart, more than the 0.0157 m allowed (what 4 steps of a water-filled hose scatter, at 95 %). Run it again before leaving the site. Look for air in the hose: a bubble takes its own height off a step.",
    );
    expect(plankLevelling(input).notices[0]?.message).not.toContain("air");
    expect(hoseLevelling({ ...input, closing: metre.of(0.25) }).closure?.closes).toBe(true);
    const wide = hoseLevelling(input).head.sources().get("hose-levelling.misclosure")!;
    expect(Math.abs(wide.in(metre))).toBeCloseTo(0.1 / Math.sqrt(3), 9);
  });

  it("hints at a step with the wrong sign, and warns of a single run", () => {
    const [notice] = hoseLevelling({ steps: drops([4, 4, 1]), again: drops([4, 4, -1]) }).notices;
    expect(notice?.message).toContain("That is twice the difference of");
    expect(notice?.message).toContain("again.2: see whether its sign is wrong.");
    const told: string[] = [];
    hoseLevelling({ steps: drops([4]) }, { onNotice: ({ code }) => told.push(code) });
    expect(told).toEqual(["hose-levelling/not-closed"]);
  });

  it("refuses no steps, steps without a height, and steps that go uphill", () => {
    const bad = (input: SteppingInput) => () => hoseLevelling(input);
    expect(bad({ steps: [] })).toThrow(NonPhysicalError);
    expect(bad({ steps: [] })).toThrow(
      "hose-levelling: steps is empty. Give one step or more, or leave a second run out.",
    );
    expect(bad({ steps: [{ drop: metre.of(1) }, {} as never] })).toThrow(
      "hose-levelling: steps.1.drop is missing. Give how much lower the next mark is, a length.",
    );
    expect(bad({ steps: drops([1]), again: [] })).toThrow("again is empty");
    expect(bad({ steps: drops([1, -2]) })).toThrow(
      "hose-levelling: the steps do not add up to a fall. Take them from the upper mark to the lower one, drops above zero.",
    );
  });
});

describe("step spreads", () => {
  it("have ranges in their order", () => {
    for (const means of stepSpreads.keys()) {
      const { low, typical, high, shared } = stepSpreads.row(means);
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
      expect(shared).toBeLessThan(typical);
    }
  });
});
