import {
  allowedClosingError,
  closingErrors,
  levelling,
  type LevellingInput,
  levelSpreads,
  type Setup,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError, type Notice } from "@leat/formula";
import {
  foot,
  kilometre,
  metre,
  millimetre,
  one,
  percent,
  point,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

type Pair = readonly [back: number, fore: number];
const inFeet = (pairs: readonly Pair[]): Setup[] =>
  pairs.map(([back, fore]) => ({ back: foot.of(back), fore: foot.of(fore) }));
const inMetres = (pairs: readonly Pair[]): Setup[] =>
  pairs.map(([back, fore]) => ({ back: metre.of(back), fore: metre.of(fore) }));
const line = (setups: readonly Setup[], more: Partial<LevellingInput> = {}): LevellingInput => ({
  setups,
  instrument: "automatic level",
  ...more,
});
const noticesOf = (input: LevellingInput): Notice[] => [...levelling(input).notices];
const said = (input: LevellingInput, code: string): string =>
  noticesOf(input).find((notice) => notice.code === `levelling/${code}`)?.message ?? "";
const refusal = (input: LevellingInput): NonPhysicalError => {
  try {
    levelling(input);
  } catch (error) {
    return error as NonPhysicalError;
  }
  throw new Error("it was not refused");
};
const rises = (input: LevellingInput, from: number): string[] =>
  levelling({ ...input, from: point("site datum", foot.of(from), "BM") }).marks.map(({ level }) =>
    level!.in(foot).toFixed(2),
  );

const pair = fc.tuple(
  fc.double({ min: 0, max: 4, noNaN: true }),
  fc.double({ min: 0, max: 4, noNaN: true }),
);
const pairs = fc.array(pair, { minLength: 1, maxLength: 12 });
const turnedBack = (run: readonly Pair[]): Pair[] =>
  run.toReversed().map(([back, fore]) => [fore, back]);

// Printed levels of exercises in which nothing is known of the sights.
describe("levelling, against printed notes", () => {
  it("books the levels of a differential levelling section (exercise, BM A 100.00 ft to BM B 94.95 ft)", () => {
    const notes = inFeet([
      [3.1, 9.82],
      [6.44, 6.96],
      [8.76, 3.27],
      [7.12, 10.42],
    ]);
    expect(rises(line(notes), 100)).toEqual(["93.28", "92.76", "98.25", "94.95"]);
    expect(levelling(line(notes)).head.in(foot)).toBeCloseTo(5.05, 10);
  });

  it("books those of a training page (BM-A 100.000 to BM-B 95.870, sums 15.510 and 19.640)", () => {
    const notes = inFeet([
      [4.32, 6.42],
      [5.18, 4.85],
      [3.07, 5.16],
      [2.94, 3.21],
    ]);
    expect(rises(line(notes), 100)).toEqual(["97.90", "98.23", "96.14", "95.87"]);
    expect(levelling(line(notes)).rise.in(foot)).toBeCloseTo(15.51 - 19.64, 10);
  });

  it("shares the misclosure of a loop (exercise: BM Tree 814.08 ft by BM X and back, sums 24.80 and 24.72)", () => {
    const input = line(
      inFeet([
        [6.78, 7.76],
        [5.04, 5.05],
      ]),
      {
        returning: inFeet([
          [5.63, 2.64],
          [7.35, 9.27],
        ]),
        closing: foot.of(0.1),
      },
    );
    const { closure } = levelling(input);
    expect(closure?.misclosure.in(foot)).toBeCloseTo(0.08, 10);
    // By hand: 814.08 − 0.98 − 0.01 − half of 0.08.
    expect(rises(input, 814.08)).toEqual(["813.08", "813.05"]);
  });

  it("shares it by the lengths of the sights (exercise: BM1 350.000 m to BM2 348.040 m over 80, 160, 240 and 320 m)", () => {
    const lengths = [80, 160, 240, 320];
    const setups = inMetres([
      [2.345, 2.654],
      [3.015, 3.678],
      [2.126, 3.897],
      [3.785, 2.982],
    ]).map((setup, i) => ({ ...setup, distance: metre.of(lengths[i]!) }));
    // The height that is known between the bench marks stands for a way back without length.
    const known = { back: metre.of(1.96), fore: metre.of(0), distance: metre.of(1e-9) };
    const { closure, marks } = levelling(
      line(setups, {
        returning: [known],
        closing: allowedClosingError({
          rate: closingErrors.get("ordinary", "rate"),
          levelled: metre.of(800),
        }),
        from: point("site datum", metre.of(350), "BM1"),
        rodError: one.of(0),
      }),
    );
    expect(closure?.misclosure.in(millimetre)).toBeCloseTo(20, 9);
    expect(closure?.closes).toBe(true);
    // By hand: 0.002, 0.006, 0.012 and 0.020 m taken off.
    expect(marks.map(({ level }) => level!.in(metre).toFixed(3))).toEqual([
      "349.689",
      "349.022",
      "347.245",
      "348.040",
    ]);
  });

  it("takes off a collimation error (course notes: −0.0000266 over 152 ft, so that 5.540 ft should be 5.544 ft)", () => {
    const setup = {
      back: foot.of(5.54),
      fore: foot.of(1),
      backDistance: foot.of(152),
      foreDistance: foot.of(1e-6),
    };
    const { rise } = levelling(line([setup], { collimation: one.of(-0.0000266) }));
    expect((rise.in(foot) + 1).toFixed(3)).toBe("5.544");
  });

  it("takes off curvature and refraction of unequal sights (0.0675 m at one kilometre, 0.0169 m at half)", () => {
    const sights = (back: number, fore: number) =>
      levelling(
        line(
          [
            {
              back: metre.of(2),
              fore: metre.of(1),
              backDistance: kilometre.of(back),
              foreDistance: kilometre.of(fore),
            },
          ],
          { collimation: one.of(0) },
        ),
      ).rise.in(metre);
    expect(sights(1, 0.5)).toBeCloseTo(1 - 0.0675 + 0.0169, 4);
    expect(sights(1, 1)).toBeCloseTo(1, 12);
  });
});

describe("levelling", () => {
  it("closes to nothing over a path and back, and finds its height from either end", () => {
    fc.assert(
      fc.property(pairs, (run) => {
        const { closure, rise } = levelling(
          line(inMetres(run), { returning: inMetres(turnedBack(run)) }),
        );
        expect(closure?.misclosure.in(metre)).toBeCloseTo(0, 12);
        expect(closure?.closes).toBe(true);
        const up = levelling(line(inMetres(turnedBack(run))));
        expect(up.rise.in(metre)).toBeCloseTo(-rise.in(metre), 12);
        expect(up.head.in(metre)).toBeCloseTo(Math.abs(rise.in(metre)), 12);
      }),
    );
  });

  it("does not mind the order of its set-ups, nor how high the instrument stands", () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0, max: 1, noNaN: true }), (run, higher) => {
        const { head } = levelling(line(inMetres(run)));
        expect(levelling(line(inMetres(run.toReversed()))).head.in(metre)).toBeCloseTo(
          head.in(metre),
          12,
        );
        const lifted = run.map(([back, fore]): Pair => [back + higher, fore + higher]);
        expect(levelling(line(inMetres(lifted))).head.in(metre)).toBeCloseTo(head.in(metre), 12);
      }),
    );
  });

  it("answers alike in feet and in metres", () => {
    fc.assert(
      fc.property(pairs, (run) => {
        const inFt = run.map(([back, fore]): Pair => [back / 0.3048, fore / 0.3048]);
        const metric = levelling(line(inMetres(run), { returning: inMetres(turnedBack(run)) }));
        const us = levelling(line(inFeet(inFt), { returning: inFeet(turnedBack(inFt)) }));
        expect(us.head.in(metre)).toBeCloseTo(metric.head.in(metre), 10);
        expect(us.head.standardUncertainty().in(metre)).toBeCloseTo(
          metric.head.standardUncertainty().in(metre),
          10,
        );
      }),
    );
  });

  it("gives a gross head, with the scatter of its set-ups and an error of the rod", () => {
    const four = inMetres([
      [0.5, 3.5],
      [0.4, 3.4],
      [0.3, 3.3],
      [0.2, 3.2],
    ]);
    const { head } = levelling(line(four, { instrument: "hand level", name: "run 1" }));
    expect(head.kind).toBe("gross head");
    expect(head.in(metre)).toBeCloseTo(12, 12);
    const sources = head.sources();
    expect([...sources.keys()]).toEqual(["run 1.readings", "run 1.rod"]);
    // Four set-ups of 20 mm each; 0.1 % of 12 m as a rectangle.
    expect(Math.abs(sources.get("run 1.readings")!.in(millimetre))).toBeCloseTo(40, 9);
    expect(Math.abs(sources.get("run 1.rod")!.in(millimetre))).toBeCloseTo(12 / Math.sqrt(3), 9);
    // There and back it is the mean of two runs.
    const twice = levelling(
      line(four, {
        instrument: "hand level",
        returning: inMetres([
          [3.2, 0.2],
          [3.3, 0.3],
          [3.4, 0.4],
          [3.5, 0.5],
        ]),
      }),
    );
    const readings = twice.head.sources().get("levelling.readings")!;
    expect(Math.abs(readings.in(millimetre))).toBeCloseTo(40 / Math.SQRT2, 9);
  });

  it("spreads each mark by the set-ups and the rod that led to it", () => {
    const { marks } = levelling(
      line(
        inMetres([
          [0, 2],
          [0, 2],
          [0, 2],
        ]),
      ),
    );
    const first = marks[0]!.rise.sources();
    expect(Math.abs(first.get("levelling.readings.1")!.in(millimetre))).toBeCloseTo(2, 9);
    expect(Math.abs(first.get("levelling.rod")!.in(millimetre))).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(marks.map(({ at, rise }) => `${at} ${rise.in(metre)}`)).toEqual([
      "mark 1 -2",
      "mark 2 -4",
      "mark 3 -6",
    ]);
  });

  it("takes a spread, a rod and an instrument that are stated instead of those of practice", () => {
    const assumed: Assumption[] = [];
    const onAssumed = (each: Assumption) => assumed.push(each);
    const single = inMetres([[0, 1]]);
    const { head } = levelling(
      line(single, { setupSpread: millimetre.of(19.6), rodError: percent.of(0.5) }),
      { onAssumed },
    );
    const sources = head.sources();
    expect(Math.abs(sources.get("levelling.readings")!.in(millimetre))).toBeCloseTo(10, 2);
    expect(Math.abs(sources.get("levelling.rod")!.in(millimetre))).toBeCloseTo(5 / Math.sqrt(3), 9);
    expect(assumed).toEqual([]);
    const sighted = [{ ...single[0]!, backDistance: metre.of(20), foreDistance: metre.of(30) }];
    levelling(line(sighted), { onAssumed });
    expect(assumed.map(({ input, value }) => `${input}: ${value}`)).toEqual([
      "setupSpread: 2 mm standard",
      "collimation: within 0.1 mm/m",
      "rodError: 0.1 %",
    ]);
  });

  it("counts an untested instrument by how much longer one sight is, all set-ups the same way", () => {
    const sighted = (back: number, fore: number) => ({
      back: metre.of(0.5),
      fore: metre.of(2.5),
      backDistance: metre.of(back),
      foreDistance: metre.of(fore),
    });
    const collimation = (setups: Setup[]) =>
      Math.abs(
        levelling(line(setups)).head.sources().get("levelling.collimation")?.in(millimetre) ?? 0,
      );
    expect(collimation([sighted(10, 10), sighted(20, 20)])).toBe(0);
    expect(collimation([sighted(10, 15)])).toBeCloseTo((5 * 0.1) / Math.sqrt(3), 9);
    expect(collimation([sighted(10, 15), sighted(10, 15)])).toBeCloseTo(1 / Math.sqrt(3), 9);
    expect(collimation([sighted(10, 15), sighted(15, 10)])).toBeCloseTo(0, 12);
  });

  it("keeps what readings share: a rod that is short is short in all of them", () => {
    const short = one.of(1).within(percent.of(1), "rod");
    const reading = (n: number): Quantity<"length"> => metre.of(n).times(short);
    const { head } = levelling(
      line(
        [
          { back: reading(0.5), fore: reading(3.5) },
          { back: reading(0.5), fore: reading(3.5) },
        ],
        { rodError: one.of(0) },
      ),
    );
    expect(Math.abs(head.sources().get("rod")!.in(metre))).toBeCloseTo(0.06 / Math.sqrt(3), 9);
  });

  it("is right about what it closes within", () => {
    // 4 set-ups of a builder's level, 3 mm each; 25 mm over the root of 0.64 km.
    const run = inMetres([
      [1, 3],
      [1, 3],
    ]);
    const back = inMetres([
      [3, 1],
      [3, 1],
    ]);
    const far = [...run, ...back].map((setup) => ({ ...setup, distance: metre.of(160) }));
    const allowed = (more: Partial<LevellingInput>) =>
      levelling(
        line(run, { returning: back, instrument: "builder's level", ...more }),
      ).closure!.allowed.in(millimetre);
    expect(allowed({})).toBeCloseTo(1.959964 * 6, 5);
    expect(allowed({ closing: millimetre.of(7) })).toBeCloseTo(7, 12);
    expect(allowed({ closing: "ordinary", length: metre.of(640) })).toBeCloseTo(20, 9);
    expect(
      allowed({ closing: "ordinary", setups: far.slice(0, 2), returning: far.slice(2) }),
    ).toBeCloseTo(20, 9);
    expect(
      levelling(line(far.slice(0, 2), { returning: far.slice(2) })).length?.in(metre),
    ).toBeCloseTo(640, 9);
    const apart = [...run, ...back].map((setup) => ({
      ...setup,
      backDistance: metre.of(70),
      foreDistance: metre.of(90),
    }));
    expect(
      levelling(line(apart.slice(0, 2), { returning: apart.slice(2) })).length?.in(metre),
    ).toBeCloseTo(640, 9);
  });

  it("says when it does not close, and reaches what either way says", () => {
    const run = inFeet([
      [1, 11],
      [1, 11],
    ]);
    const off = (feet: number) =>
      line(run, {
        returning: inFeet([
          [11, 1],
          [11 + feet, 1],
        ]),
      });
    expect(noticesOf(off(0.02)).map(({ code }) => code)).toEqual(["levelling/sights-unknown"]);
    const { closure, head } = levelling(off(0.5));
    expect(closure?.closes).toBe(false);
    expect(head.in(foot)).toBeCloseTo(20.25, 9);
    expect(Math.abs(head.sources().get("levelling.misclosure")!.in(foot))).toBeCloseTo(
      0.25 / Math.sqrt(3),
      9,
    );
    expect(said(off(0.5), "does-not-close")).toBe(
      "levelling: out and back are 0.5 ft apart, more than the 0.0257 ft allowed (what 4 set-ups of this automatic level scatter, at 95 %). Run it again before leaving the site.",
    );
    expect(
      said({ ...off(0.5), closing: "accurate", length: kilometre.of(0.25) }, "does-not-close"),
    ).toContain("more than the 0.0197 ft allowed (accurate levelling over 0.25 km)");
    expect(said({ ...off(0.5), closing: foot.of(0.1) }, "does-not-close")).toContain(
      "more than the 0.1 ft allowed (as given)",
    );
  });

  it("hints at a whole foot misread, and at readings that are exchanged", () => {
    const run = inFeet([
      [1, 11],
      [1.25, 8],
    ]);
    const foots = line(run, {
      returning: inFeet([
        [8, 1.25],
        [12.01, 1],
      ]),
    });
    expect(said(foots, "does-not-close")).toContain(
      "That is 1 ft, as near as this run can tell: look for one misread.",
    );
    const turned = line(run, {
      returning: inFeet([
        [1.25, 8],
        [11, 1],
      ]),
    });
    expect(said(turned, "does-not-close")).toContain(
      "That is twice the difference of setups.1: see whether its back and fore are exchanged. That is twice the difference of returning.0: see whether its back and fore are exchanged.",
    );
    // A run that scatters by half a foot cannot tell a foot from chance.
    const rough = { ...foots, closing: foot.of(0.5) };
    expect(said(rough, "does-not-close")).not.toContain("1 ft, as near");
  });

  it("warns of a run that nothing checks, and of sights that are not known", () => {
    const told: string[] = [];
    levelling(line(inMetres([[1, 2]])), { onNotice: ({ code }) => told.push(code) });
    expect(told).toEqual(["levelling/not-closed", "levelling/sights-unknown"]);
    expect(said(line(inMetres([[1, 2]])), "not-closed")).toBe(
      "levelling: run once, with nothing to check it. Run it back to the first mark, by another way if there is one: a whole foot misread would not show.",
    );
    expect(said(line(inMetres([[1, 2]]), { instrument: "hand level" }), "sights-unknown")).toBe(
      "levelling: sights behind and ahead are not given for every set-up, and are taken as equally long. Pace them: an untested hand level may put 2 mm into the fall for each metre that one is longer.",
    );
  });

  it("refuses a set-up without a fore sight, and says which", () => {
    const setups = [{ back: metre.of(1), fore: metre.of(2) }, { back: metre.of(1) } as Setup];
    expect(() => levelling(line(setups))).toThrow(NonPhysicalError);
    expect(refusal(line(setups)).message).toBe(
      "levelling: setups.1.fore is missing. Give the rod reading on the mark ahead, a length.",
    );
    expect(refusal(line(setups)).notices[0]?.path).toEqual(["setups", 1, "fore"]);
    const returning = [{ fore: metre.of(1) } as Setup];
    expect(refusal(line(inMetres([[1, 2]]), { returning })).message).toBe(
      "levelling: returning.0.back is missing. Give the rod reading on the mark behind, a length.",
    );
  });

  it("refuses readings that no rod has, all of them at once", () => {
    const input = line(
      inFeet([
        [-0.1, 5],
        [2, 14],
      ]),
      { rodLength: foot.of(13) },
    );
    expect(refusal(input).notices.map(({ message }) => message)).toEqual([
      "levelling: setups.0.back = -0.1 ft is below the foot of the rod. Check its sign.",
      "levelling: setups.1.fore = 14 ft is beyond the end of a rod of 13 ft. Check the reading and its unit: feet and inches, or feet and tenths?",
    ]);
  });

  it("refuses sights that are none, or half known", () => {
    const setup = { back: metre.of(1), fore: metre.of(2) };
    const sight = (more: Partial<Setup>) => refusal(line([{ ...setup, ...more }])).message;
    expect(sight({ distance: metre.of(0) })).toBe(
      "levelling: setups.0.distance = 0 m is not a length above zero. Leave it out where it was not measured.",
    );
    expect(sight({ foreDistance: metre.of(20) })).toBe(
      "levelling: setups.0.foreDistance stands alone. Give the other sight too, or distance for both together.",
    );
    expect(
      sight({ backDistance: metre.of(20), foreDistance: metre.of(20), distance: metre.of(40) }),
    ).toBe(
      "levelling: setups.0.distance stands beside the two sights that it is made of. Give one or the other.",
    );
    expect(refusal(line([setup], { closing: "ordinary" })).message).toBe(
      "levelling: setups.0 has no length of sights, by which ordinary levelling is allowed to close. Give distance, or the length of the whole way, or what is allowed.",
    );
  });

  it("refuses no set-ups at all, and an instrument that it does not know", () => {
    expect(refusal(line([])).message).toBe("levelling: setups is empty. Give one set-up or more.");
    expect(refusal(line(inMetres([[1, 2]]), { returning: [] })).message).toBe(
      "levelling: returning is empty. Leave it out where nothing was levelled back.",
    );
    expect(() =>
      levelling(line(inMetres([[1, 2]]), { instrument: "theodolite" as never })),
    ).toThrow(QuantityError);
  });
});

describe("tables of levelling", () => {
  it("have ranges in their order, and a hand level as the worst", () => {
    for (const instrument of levelSpreads.keys()) {
      const { low, typical, high } = levelSpreads.row(instrument);
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
    }
    const typical = levelSpreads.keys().map((key) => levelSpreads.row(key).typical);
    expect(typical).toEqual(typical.toSorted((a, b) => a - b));
  });

  it("close within what books in feet print, 4 % less: 0.4, 0.1, 0.05 and 0.02 ft per root of a mile", () => {
    const feet = { rough: 0.4, ordinary: 0.1, accurate: 0.05 };
    for (const [grade, rate] of Object.entries(feet)) {
      const metric = closingErrors
        .get(grade as keyof typeof feet, "rate")
        .in(closingErrors.definition.units.rate);
      const fromFeet = (rate * 304.8) / Math.sqrt(1.609344);
      expect(Math.abs(fromFeet / metric - 1)).toBeLessThan(0.041);
    }
    // Precise levelling is 4.8 by the book in feet and 6 by the metric one.
    expect(closingErrors.row("precise").rate).toBe(6);
  });
});
