import {
  type Gauging,
  ratingCurve,
  ratingDischarge,
  type RatingSegment,
} from "@leat/flow-measurement";
import { NonPhysicalError, type Notice, OutOfValidityError } from "@leat/formula";
import { studentQuantile } from "@leat/numerics";
import {
  cubicMetrePerSecond,
  litrePerSecond,
  metre,
  millimetre,
  one,
  type Point,
  point,
  type Quantity,
} from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { at, creekFlows, creekStages, gaugingsOf, river } from "./creek.ts";

const creek = gaugingsOf(creekStages, creekFlows);
const curve = ratingCurve({ gaugings: creek, fit: "logarithms", zero: at(0) });
const told = { onNotice: (): void => {} };
const inMetres = (q: Quantity<"volume flow">): number => q.in(cubicMetrePerSecond);
const relative = (q: Quantity<"volume flow">): number =>
  inMetres(q.standardUncertainty()) / inMetres(q);

/** What a call throws. */
function thrown(call: () => unknown): Error {
  try {
    call();
  } catch (error) {
    return error as Error;
  }
  throw new Error("nothing was thrown");
}

/** Stages and flows scattered about a rating whose zero, exponent and scatter are given. */
const scattered = fc
  .record({
    zero: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    exponent: fc.double({ min: 1.3, max: 3, noNaN: true }),
    off: fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 5, maxLength: 12 }),
    deep: fc.double({ min: 0.4, max: 2, noNaN: true }),
  })
  .map(({ zero, exponent, off, deep }) => {
    const depths = off.map((_, i) => 0.05 + (deep * i) / off.length);
    return {
      zero,
      exponent,
      h: depths.map((d) => zero + d),
      q: depths.map((d, i) => 3 * d ** exponent * Math.exp(off[i]!)),
    };
  });

describe("a flow of the rating", () => {
  it("carries the parameters as sources, to the 95 % that the band has", () => {
    for (const h of [0.25, 0.4, 0.7]) {
      const q = curve.flowAt(at(h));
      const { low, high } = curve.bandAt(at(h), { of: "rating" });
      expect(1.959963984540054 * relative(q)).toBeCloseTo(
        Math.log(inMetres(high) / inMetres(low)) / 2,
        8,
      );
      expect([...q.sources().keys()].toSorted()).toEqual([
        "rating curve: exponent",
        "rating curve: flow",
      ]);
    }
  });

  it("has the zero among them where it was found", () => {
    const found = ratingCurve({ gaugings: river, fit: "flows", name: "weir pool" });
    const h = point("staff zero", metre.of(1.6), "ford");
    const q = found.flowAt(h);
    const { low, high } = found.bandAt(h, { of: "rating" });
    expect(1.959963984540054 * inMetres(q.standardUncertainty())).toBeCloseTo(
      (inMetres(high) - inMetres(low)) / 2,
      5,
    );
    expect([...q.sources().keys()].toSorted()).toEqual([
      "weir pool: exponent",
      "weir pool: flow",
      "weir pool: stage of zero flow",
    ]);
    // What the zero takes with it is its own; what is left moves the exponent, and after that the flow alone.
    const [{ zeroFlowStage, exponent, referenceFlow }] = found.segments as [RatingSegment];
    expect([...zeroFlowStage.overOrigin().sources().keys()]).toEqual([
      "weir pool: stage of zero flow",
    ]);
    expect([...exponent.sources().keys()].toSorted()).toEqual([
      "weir pool: exponent",
      "weir pool: stage of zero flow",
    ]);
    expect(referenceFlow.sources().size).toBe(3);
  });

  it("adds the reading of the staff as a source of its own", () => {
    const h = at(0.4).plusMinus(millimetre.of(10), "staff reading");
    const q = curve.flowAt(h);
    const part = inMetres(q.sources().get("staff reading")!) / inMetres(q);
    const b = curve.segments[0]!.exponent.in(one);
    expect(part).toBeCloseTo(((b / 0.4) * 0.01) / 1.959963984540054, 7);
    expect(relative(q)).toBeGreaterThan(relative(curve.flowAt(at(0.4))));
  });

  it("is more certain at the mean depth than anywhere", () => {
    // ISO 18320 and any text on regression: the interval of the line is narrowest at the mean of x.
    const mean = curve.segments[0]!.referenceDepth.in(metre);
    expect(mean).toBeCloseTo(
      Math.exp(creekStages.reduce((sum, h) => sum + Math.log(h), 0) / 9),
      12,
    );
    const there = relative(curve.flowAt(at(mean)));
    for (const h of [0.23, 0.3, 0.5, 0.7]) {
      expect(relative(curve.flowAt(at(h)))).toBeGreaterThan(there);
    }
    // s/√n there, widened by Student's t over 1.96: 0.157025902042769/3 · 2.3646243/1.9599640.
    expect(there).toBeCloseTo(((0.157025902042769 / 3) * 2.364624251593) / 1.959963984540054, 9);
  });

  it("shares what gaugings share, and counts their own scatter once", () => {
    const meter = (q: number, row: number): Quantity<"volume flow"> =>
      cubicMetrePerSecond
        .of(q)
        .plusMinus(cubicMetrePerSecond.of(0.04 * q), "meter")
        .plusMinus(cubicMetrePerSecond.of(0.1 * q), `gauging ${row}`);
    const withMeter = ratingCurve({
      gaugings: creek.map((each, i) => ({ ...each, flow: meter(creekFlows[i]!, i) })),
      fit: "logarithms",
      zero: at(0),
    });
    const q = withMeter.flowAt(at(0.4));
    // A meter that is 4 % off in every gauging leaves every flow 4 % off.
    expect(inMetres(q.sources().get("meter")!) / inMetres(q)).toBeCloseTo(
      0.04 / 1.959963984540054,
      9,
    );
    expect([...q.sources().keys()].some((id) => id.startsWith("gauging"))).toBe(false);
  });

  it("does not feel a staff whose zero was always wrong, read again with the same fault", () => {
    const wrong = (h: Point<"staff zero">): Point<"staff zero"> =>
      h.plusMinus(millimetre.of(20), "staff set-up");
    const found = ratingCurve({
      gaugings: river.map((each) => ({ ...each, stage: wrong(each.stage) })),
      fit: "logarithms",
    });
    const q = found.flowAt(wrong(point("staff zero", metre.of(1.5), "ford")));
    const felt = q.sources().get("staff set-up");
    expect(Math.abs(felt ? inMetres(felt) / inMetres(q) : 0)).toBeLessThan(1e-7);
    // The zero moves with the staff, by as much.
    const zero = found.segments[0]!.zeroFlowStage.overOrigin().sources().get("staff set-up")!;
    expect(zero.in(millimetre)).toBeCloseTo(20 / 1.959963984540054, 6);
  });

  it("feels a zero that was levelled badly where it is shallow, hardly at the mean depth", () => {
    const level = at(0.1).plusMinus(millimetre.of(10), "levelling");
    const given = ratingCurve({ gaugings: creek, fit: "logarithms", zero: level });
    const felt = (h: number): number => {
      const q = given.flowAt(at(h), told);
      return Math.abs(inMetres(q.sources().get("levelling")!) / inMetres(q));
    };
    // By a second fit with the zero moved by one standard uncertainty.
    const u = 0.01 / 1.959963984540054;
    const moved = (h: number, by: number): number =>
      inMetres(
        ratingCurve({ gaugings: creek, fit: "logarithms", zero: at(0.1 + by) }).flowAt(at(h), told),
      );
    for (const h of [0.13, 0.23, 0.4, 0.7]) {
      const slope = Math.log(moved(h, 1e-5) / moved(h, -1e-5)) / 2e-5;
      // Linear about the fit: what the residuals add to the slope is left out, 4 % at most here.
      expect(Math.abs(felt(h) / (Math.abs(slope) * u) - 1)).toBeLessThan(0.05);
    }
    expect(felt(0.13)).toBeGreaterThan(5 * felt(0.4));
  });
});

describe("beyond the gaugings", () => {
  it("is an error without onNotice and a caution with it", () => {
    const error = thrown(() => curve.flowAt(at(0.8)));
    expect(error).toBeInstanceOf(OutOfValidityError);
    expect(error.message).toBe(
      "rating curve: stage = 0.8 m over ford is above the highest gauged, 0.707 m over ford, and its flow 1.3 times the greatest gauged. Pass onNotice to accept the extrapolation.",
    );
    const notices: Notice[] = [];
    const options = { onNotice: (notice: Notice) => void notices.push(notice) };
    curve.flowAt(at(0.8), options);
    curve.flowAt(at(1.2), options);
    curve.flowAt(at(0.2), options);
    curve.flowAt(at(0.1), options);
    curve.bandAt(at(0.8), { of: "gauging", ...options });
    curve.stageAt(cubicMetrePerSecond.of(30), options);
    expect(
      notices.map(({ code, severity, path }) => `${code} ${severity} ${path.join(".")}`),
    ).toEqual([
      "rating-curve/beyond-gaugings caution stage",
      "rating-curve/far-beyond caution stage",
      "rating-curve/beyond-gaugings caution stage",
      "rating-curve/far-beyond caution stage",
      "rating-curve/beyond-gaugings caution stage",
      "rating-curve/far-beyond caution flow",
    ]);
    expect(notices[1]!.message).toBe(
      "rating curve: stage = 1.2 m over ford is above the highest gauged, 0.707 m over ford, and its flow 2.2 times the greatest gauged. A rating is not carried so far: gauge there.",
    );
    expect(notices[2]!.message).toBe(
      "rating curve: stage = 0.2 m over ford is below the lowest gauged, 0.224 m over ford, and its flow 1.0 times the least gauged.",
    );
  });

  it("is nothing at the gauged ends themselves", () => {
    expect(inMetres(curve.flowAt(curve.highest))).toBeGreaterThan(5);
    expect(inMetres(curve.flowAt(curve.lowest))).toBeGreaterThan(1);
  });

  it("ends at the stage of zero flow: nothing there, refused below it", () => {
    const levelled = ratingCurve({ gaugings: creek, fit: "logarithms", zero: at(0.1) });
    expect(inMetres(levelled.flowAt(at(0.1), told))).toBe(0);
    expect(levelled.stageAt(cubicMetrePerSecond.of(0), told).in(metre)).toBeCloseTo(0.1, 12);
    const error = thrown(() => levelled.flowAt(at(0.09), told));
    expect(error).toBeInstanceOf(NonPhysicalError);
    expect(error.message).toBe(
      "rating curve: stage = 0.09 m over ford is below that of zero flow, 0.1 m over ford. Nothing passes the control, or the staff was misread.",
    );
    expect(() => levelled.bandAt(at(0.1), { of: "rating", ...told })).toThrow(
      "rating curve: stage = 0.1 m over ford is that of zero flow, where there is no interval. Ask above it.",
    );
  });
});

describe("properties of a rating", () => {
  it("flows scaled scale the reference flow and nothing else", () => {
    fc.assert(
      fc.property(scattered, fc.constantFrom("logarithms", "flows"), (made, fit) => {
        const zero = at(made.zero);
        const [a] = ratingCurve({ gaugings: gaugingsOf(made.h, made.q), fit, zero }).segments;
        const [b] = ratingCurve({
          gaugings: gaugingsOf(
            made.h,
            made.q.map((q) => 7 * q),
          ),
          fit,
          zero,
        }).segments;
        expect(inMetres(b!.referenceFlow) / inMetres(a!.referenceFlow)).toBeCloseTo(7, 6);
        expect(b!.exponent.in(one)).toBeCloseTo(a!.exponent.in(one), 7);
        expect(b!.referenceDepth.in(metre)).toBe(a!.referenceDepth.in(metre));
        expect(b!.statistics.determination).toBeCloseTo(a!.statistics.determination, 7);
      }),
      { numRuns: 40 },
    );
  });

  it("another zero of the staff moves the stage of zero flow and nothing else", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (moved) => {
        const shifted = (by: number) =>
          ratingCurve({
            gaugings: river.map(({ stage, flow }) => ({ stage: stage.plus(metre.of(by)), flow })),
            fit: "logarithms",
          }).segments[0]!;
        const [a, b] = [shifted(0), shifted(moved)];
        expect(b.zeroFlowStage.in(metre) - moved).toBeCloseTo(a.zeroFlowStage.in(metre), 6);
        expect(b.exponent.in(one)).toBeCloseTo(a.exponent.in(one), 5);
        expect(b.referenceDepth.in(metre)).toBeCloseTo(a.referenceDepth.in(metre), 6);
        expect(b.zeroInterval!.low!.in(metre) - moved).toBeCloseTo(
          a.zeroInterval!.low!.in(metre),
          6,
        );
      }),
      { numRuns: 25 },
    );
  });

  it("rises with the stage, and stage and flow undo each other", () => {
    fc.assert(
      fc.property(scattered, fc.double({ min: 0.02, max: 3, noNaN: true }), (made, depth) => {
        const rated = ratingCurve({
          gaugings: gaugingsOf(made.h, made.q),
          fit: "logarithms",
          zero: at(made.zero),
        });
        const h = at(made.zero + depth);
        const q = rated.flowAt(h, told);
        expect(rated.stageAt(q, told).in(metre)).toBeCloseTo(h.in(metre), 9);
        expect(rated.flowAt(at(made.zero + depth + 0.01), told).greaterThan(q)).toBe(true);
        const { low, high } = rated.bandAt(h, { of: "rating", ...told });
        const wide = rated.bandAt(h, { of: "gauging", ...told });
        const ends = [wide.low, low, q, high, wide.high].map(inMetres);
        ends.slice(1).forEach((end, i) => expect(ends[i]!).toBeLessThanOrEqual(end * (1 + 1e-12)));
      }),
      { numRuns: 60 },
    );
  });

  it("one more gauging on the line never widens the rating", () => {
    fc.assert(
      fc.property(scattered, fc.double({ min: 0.05, max: 1, noNaN: true }), (made, depth) => {
        const gaugings = gaugingsOf(made.h, made.q);
        const zero = at(made.zero);
        const before = ratingCurve({ gaugings, fit: "logarithms", zero });
        const stage = at(made.zero + depth);
        const flow = cubicMetrePerSecond.of(inMetres(before.flowAt(stage, told)));
        const after = ratingCurve({
          gaugings: [...gaugings, { stage, flow }],
          fit: "logarithms",
          zero,
        });
        const mean = at(made.zero + before.segments[0]!.referenceDepth.in(metre));
        const width = (rating: typeof before): number => {
          const { low, high } = rating.bandAt(mean, { of: "rating", ...told });
          return inMetres(high) / inMetres(low);
        };
        expect(width(after)).toBeLessThanOrEqual(width(before) * (1 + 1e-9));
        expect(inMetres(after.flowAt(mean, told))).toBeCloseTo(
          inMetres(before.flowAt(mean, told)),
          9,
        );
      }),
      { numRuns: 60 },
    );
  });

  it("finds again the zero and the exponent that gaugings without scatter were made with", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.3, max: 0.15, noNaN: true }),
        fc.double({ min: 1.4, max: 3, noNaN: true }),
        fc.constantFrom("logarithms", "flows"),
        (h0, b, fit) => {
          const h = [0.2, 0.25, 0.33, 0.48, 0.71, 0.95];
          const made = ratingCurve({
            gaugings: gaugingsOf(
              h,
              h.map((each) => 2 * (each - h0) ** b),
            ),
            fit,
          });
          const [segment] = made.segments;
          expect(segment!.zeroFlowStage.in(metre)).toBeCloseTo(h0, 5);
          expect(segment!.exponent.in(one)).toBeCloseTo(b, 4);
          expect(made.gaugings.map(({ outlying }) => outlying)).not.toContain(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("holds its true line within the 95 % of the rating about 95 times in 100", () => {
    // A simulation: 400 ratings of 8 gaugings with a normal scatter of 10 %; 0.95 ± 4 standard errors of the count.
    let state = 1;
    const uniform = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const h = [0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.75, 0.9];
    let held = 0;
    for (let run = 0; run < 400; run++) {
      const q = h.map((each) => 3 * (each - 0.1) ** 1.7 * Math.exp(0.1 * normal()));
      const rated = ratingCurve({ gaugings: gaugingsOf(h, q), fit: "logarithms", zero: at(0.1) });
      const { low, high } = rated.bandAt(at(0.25), { of: "rating" });
      const truth = 3 * 0.15 ** 1.7;
      if (inMetres(low) < truth && truth < inMetres(high)) held += 1;
    }
    expect(Math.abs(held / 400 - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / 400));
  });
});

describe("a record of stages", () => {
  it("is row by row what the rating gives, gaps kept, rows beyond counted and flagged", () => {
    const levels = [0.3, null, 0.5, 0.9, -0.1, 0.2];
    const notices: Notice[] = [];
    const flows = curve.flows(Column.of(metre, levels), {
      onNotice: (notice) => notices.push(notice),
    });
    expect([...flows.quality]).toEqual([
      0,
      Quality.gap,
      0,
      Quality.outOfRange,
      Quality.gap | Quality.outOfRange,
      Quality.outOfRange,
    ]);
    for (const row of [0, 2, 3, 5]) {
      expect(flows.at(row)!.in(cubicMetrePerSecond)).toBe(
        inMetres(curve.flowAt(at(levels[row]!), told)),
      );
    }
    expect(notices.map(({ message }) => message)).toEqual([
      "rating curve: 1 of 6 stages are below that of zero flow, the first being row 4 with -0.1 m. They are gaps in the flows: nothing passed the control, or the staff was misread.",
      "rating curve: stage = in 2 of 6 rows, at worst 0.9 m over ford is above the highest gauged, 0.707 m over ford, and its flow 1.5 times the greatest gauged.",
    ]);
    expect(notices.map(({ code }) => code)).toEqual([
      "rating-curve/no-flow",
      "rating-curve/beyond-gaugings",
    ]);
  });

  it("is refused beyond the gaugings and below zero where nobody asked to be told", () => {
    expect(thrown(() => curve.flows(Column.of(metre, [0.3, 0.9])))).toBeInstanceOf(
      OutOfValidityError,
    );
    expect(thrown(() => curve.flows(Column.of(metre, [0.3, -0.9])))).toBeInstanceOf(
      NonPhysicalError,
    );
    expect(() => curve.flows(Column.of(litrePerSecond, [1]) as never)).toThrow(
      "rating curve: stages are a column of volume flow: give lengths.",
    );
  });

  it("has the uncertainty of its median flow: parameters, the staff, the noise of the logger", () => {
    const stages = Column.of(metre, [0.25, 0.4, 0.6], {
      uncertainty: {
        offset: [["logger zero", 0.004]],
        scale: [["logger gain", 0.01]],
        noise: [["waves", 0.002]],
      },
    });
    const flows = curve.flows(stages);
    const single = curve.flowAt(at(0.4));
    const scale = new Map(flows.uncertainty!.scale);
    for (const [id, c] of single.sources()) {
      expect(scale.get(id)).toBeCloseTo(inMetres(c) / inMetres(single), 12);
    }
    const b = curve.segments[0]!.exponent.in(one);
    expect(scale.get("logger zero")).toBeCloseTo((b / 0.4) * 0.004, 12);
    expect(scale.get("logger gain")).toBeCloseTo(b * 0.01, 12);
    expect(new Map(flows.uncertainty!.noise).get("waves")).toBeCloseTo(
      (b / 0.4) * 0.002 * inMetres(single),
      12,
    );
    expect(curve.flows(Column.of(metre, [null])).uncertainty).toBeUndefined();
  });

  it("uses the segment of each row", () => {
    const joined = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      zero: at(0.88),
      segments: { breaks: [{ at: at(1.4) }], joined: "continuous" },
    });
    const flows = joined.flows(Column.of(metre, [1.2, 1.4, 1.8]));
    for (const [row, h] of [1.2, 1.4, 1.8].entries()) {
      expect(flows.at(row)!.in(cubicMetrePerSecond)).toBeCloseTo(
        inMetres(joined.flowAt(at(h))),
        12,
      );
    }
  });
});

describe("the exponent", () => {
  it("is noted where the shape of the control would give another", () => {
    const noted = (control?: "rectangular" | "triangular"): string[] =>
      ratingCurve({ gaugings: creek, fit: "logarithms", zero: at(0), control })
        .notices.filter(({ code }) => code === "rating-curve/exponent")
        .map(({ message }) => message);
    expect(noted()).toEqual([]);
    expect(noted("rectangular")).toEqual([]);
    expect(noted("triangular")).toEqual([
      "rating curve: exponent = 1.36 is below the 2.5 to 3 that a triangular control has (Environment Canada, Hydrometric Manual, Data Computations: the stage-discharge relation, 2012, typical exponents by shape of the control (read in a second text)). Look at the stage of zero flow first: a zero put too high does that.",
    ]);
    const deep = ratingCurve({ gaugings: creek, fit: "logarithms", zero: at(-1) }).notices;
    expect(deep[0]!.message).toContain("is above the 1.3 to 3 that controls have");
    expect(deep[0]!.message).toContain("a zero put too low does that.");
  });
});

describe("bad input", () => {
  const make =
    (gaugings: readonly Gauging[], more: object = {}): (() => unknown) =>
    () =>
      ratingCurve({ gaugings, fit: "logarithms", zero: at(0), ...more });
  const changed = (row: number, other: Partial<Gauging>): Gauging[] =>
    river.map((each, i) => (i === row ? { ...each, ...other } : each));

  it.each<[string, () => unknown, string, readonly (string | number)[] | undefined]>([
    [
      "two gaugings",
      make(creek.slice(0, 2)),
      "rating curve: 2 gaugings give a line through them and say nothing of how far it is off. Measure three or more.",
      ["gaugings"],
    ],
    [
      "three gaugings for three parameters",
      make(creek.slice(0, 3), { zero: undefined }),
      "rating curve: 3 gaugings cannot find 3 parameters and how far they are off. Measure 4 or more, or give zero.",
      ["gaugings"],
    ],
    [
      "no flow",
      make(changed(2, { flow: litrePerSecond.of(0) })),
      "rating curve: gauging 3 (1955-11-17): flow = 0 L/s is not above zero. Leave it out and give its stage as zero: the stage of zero flow.",
      ["gaugings", 2, "flow"],
    ],
    [
      "a negative flow",
      make(changed(2, { flow: litrePerSecond.of(-3) })),
      "rating curve: gauging 3 (1955-11-17): flow = -3 L/s is not above zero. Correct the row.",
      ["gaugings", 2, "flow"],
    ],
    [
      "a stage below that of zero flow",
      make(changed(4, { stage: at(0.9) }), { zero: at(1) }),
      "rating curve: gauging 5 (1956-01-11): stage = 0.9 m over ford is not above the stage of zero flow, 1 m over ford, yet 152 ft³/s was measured. Correct the row or the zero.",
      ["gaugings", 4, "stage"],
    ],
    [
      "one stage",
      make(creek.map((each) => ({ ...each, stage: at(0.3) }))),
      "rating curve: all gaugings are at one stage, 0.3 m over ford. Measure at low and at high water.",
      ["gaugings"],
    ],
    [
      "another staff",
      make(changed(1, { stage: point("staff zero", metre.of(1), "bridge") })),
      "rating curve: gauging 2 (1955-10-10): stage = 1 m over bridge is not on ford, where the gaugings were made.",
      undefined,
    ],
    [
      "an unnamed staff",
      make(changed(0, { stage: point("staff zero", metre.of(1)) })),
      'rating curve: gauging 1 (1955-09-29): stage = 1 m over staff zero names no staff. Give point("staff zero", …, "name of the staff"), so that no other staff is read for it.',
      undefined,
    ],
    [
      "a depth for a stage",
      make(changed(1, { stage: metre.of(1) as never })),
      "rating curve: gauging 2 (1955-10-10): stage = 1 m is refused: give a point over staff zero.",
      undefined,
    ],
    [
      "a length for a flow",
      make(changed(1, { flow: metre.of(1) as never })),
      "rating curve: gauging 2 (1955-10-10): flow = 1 m is refused: give a volume flow.",
      undefined,
    ],
    [
      "flows that fall as the stage rises",
      make(gaugingsOf([0.2, 0.3, 0.4, 0.5], [3, 2.1, 1.4, 1])),
      "rating curve: the exponent comes to -1.20: by these gaugings the flow does not rise with the stage. Look for stages and flows that were exchanged.",
      ["gaugings"],
    ],
    [
      "a flow that is an exponential of the stage",
      make(
        gaugingsOf(
          [0.2, 0.3, 0.4, 0.5, 0.6],
          [0.2, 0.3, 0.4, 0.5, 0.6].map((h) => Math.exp(3 * h)),
        ),
        { zero: undefined },
      ),
      "rating curve: the gaugings do not tell the stage of zero flow: the further down it is put the better the gaugings fit, as where the flow is an exponential of the stage. Level it at the control and give it as zero.",
      ["zero"],
    ],
    [
      "a lowest gauging that stands alone",
      make(gaugingsOf([0.2, 0.3, 0.4, 0.5, 0.6], [0.01, 1, 1.1, 1.2, 1.3]), { zero: undefined }),
      "rating curve: the gaugings do not tell the stage of zero flow: the best place for it is the lowest gauged stage itself. Level it at the control and give it as zero.",
      ["zero"],
    ],
    [
      "flows that fall, the zero to be found",
      make(gaugingsOf([0.2, 0.3, 0.4, 0.5], [3, 2.9, 2.5, 1.2]), { zero: undefined }),
      // R 4.2.2: lm(log(q) ~ log(h + 0.1)), at a zero as far below the lowest stage as the highest is above it.
      "rating curve: the exponent comes to -1.18: by these gaugings the flow does not rise with the stage. Look for stages and flows that were exchanged.",
      ["gaugings"],
    ],
    [
      "flows without a pattern",
      make(gaugingsOf([0.2, 0.3, 0.4, 0.5, 0.6], [9.4, 1.5, 4.5, 0.33, 52]), {
        fit: "flows",
        zero: undefined,
      }),
      "rating curve: the gaugings do not tell the stage of zero flow: the squares of the residuals have no clear least. Level it at the control and give it as zero.",
      ["zero"],
    ],
    [
      "one flow that is everything",
      make(gaugingsOf([0.488, 0.585, 0.648, 0.767], [2.53e-6, 8.2573, 3.494e-7, 2.206e-6]), {
        fit: "flows",
      }),
      "rating curve: no least squares of the flows were found. Fit the logarithms instead.",
      ["fit"],
    ],
    [
      "a segment whose only gauging is at the break",
      make(creek, { segments: { breaks: [{ at: at(0.224) }], joined: "continuous" } }),
      "rating curve: the stages are too few or too much alike to tell its segments apart. Measure at other stages, or leave a break out.",
      ["gaugings"],
    ],
    [
      "a zero that is found above the break",
      make(
        gaugingsOf(
          [0.1, 0.2, 0.3, 0.35, 0.5, 0.6, 0.7, 0.8, 0.9],
          [
            ...[0.1, 0.2, 0.3, 0.35].map((h) => (h + 0.1) ** 1.6),
            ...[0.5, 0.6, 0.7, 0.8, 0.9].map((h) => 9 * (h - 0.45) ** 1.5),
          ],
        ),
        { zero: undefined, segments: { breaks: [{ at: at(0.4) }], joined: "apart" } },
      ),
      "rating curve: break 1: the stage of zero flow that fits the gaugings above it best, 0.450 m, is not below 0.4 m over ford. Give its zero, or join the segments.",
      ["segments", "breaks", 0, "at"],
    ],
    [
      "breaks that do not rise",
      make(creek, {
        segments: { breaks: [{ at: at(0.4) }, { at: at(0.4) }], joined: "continuous" },
      }),
      "rating curve: break 2: 0.4 m over ford is not above the break before it. Give breaks from the lowest up.",
      ["segments", "breaks", 1, "at"],
    ],
    [
      "a break below its zero",
      make(creek, {
        segments: { breaks: [{ at: at(0.4), zero: at(0.5) }], joined: "continuous" },
      }),
      "rating curve: break 1: 0.4 m over ford is not above the stage of zero flow of the segment that begins there, 0.5 m over ford. Correct one of them.",
      ["segments", "breaks", 0, "at"],
    ],
    [
      "a segment without gaugings",
      make(creek, { segments: { breaks: [{ at: at(0.8) }], joined: "continuous" } }),
      "rating curve: no gauging lies in segment 2. Move the break, or measure there.",
      ["segments", "breaks", 0],
    ],
    [
      "a segment with too few of its own",
      make(creek, { segments: { breaks: [{ at: at(0.6) }], joined: "apart" } }),
      "rating curve, segment 2: 2 gaugings cannot find 2 parameters and how far they are off. Measure 3 or more.",
      ["gaugings"],
    ],
    [
      "a reference depth of nothing",
      make(creek, { referenceDepth: metre.of(0) }),
      "rating curve: referenceDepth = 0 m is not above zero. Give a depth over the stage of zero flow.",
      ["referenceDepth"],
    ],
  ])("%s is refused with its row", (_, call, message, path) => {
    const error = thrown(call);
    expect(error.message).toBe(message);
    if (path) {
      expect(error).toBeInstanceOf(NonPhysicalError);
      expect((error as NonPhysicalError).notices[0]!.path).toEqual(path);
    }
  });

  it("a gauging twice is told of, and counted twice", () => {
    const notices: Notice[] = [];
    const twice = ratingCurve(
      { gaugings: [...river, river[3]!], fit: "logarithms", zero: at(0.88) },
      { onNotice: (notice) => notices.push(notice) },
    );
    expect(twice.gaugings).toHaveLength(10);
    expect(twice.notices).toEqual(notices);
    expect(notices[0]).toMatchObject({
      code: "rating-curve/repeated",
      severity: "caution",
      path: ["gaugings", 9],
      message:
        "rating curve: gauging 10 (1955-12-18) is gauging 4 (1955-12-18) over again, 193 ft³/s at 3.64 ft over ford. Both are counted; leave one out if it was measured once.",
    });
  });

  it("a stage on another staff and a flow of another kind are refused when it is read", () => {
    expect(() => curve.flowAt(point("staff zero", metre.of(0.4), "bridge"))).toThrow(
      "rating curve: stage = 0.4 m over bridge is not on ford, where the gaugings were made.",
    );
    expect(() => curve.stageAt(metre.of(1) as never)).toThrow(
      "rating curve: flow = 1 m is refused: give a volume flow.",
    );
    expect(() => curve.stageAt(cubicMetrePerSecond.of(-1), told)).toThrow(NonPhysicalError);
  });
});

describe("three gaugings", () => {
  it("make a rating with one degree of freedom, whose t is 12.706", () => {
    // NIST/SEMATECH e-Handbook, table of t: 1 degree, 0.975.
    const three = ratingCurve({ gaugings: creek.slice(3, 6), fit: "logarithms", zero: at(0) });
    const { statistics, referenceDepth, referenceFlow } = three.segments[0]!;
    expect(statistics.degreesOfFreedom).toBe(1);
    const s = statistics.relativeStandardError!.in(one);
    const { high } = three.bandAt(at(referenceDepth.in(metre)), { of: "rating" });
    expect(inMetres(high)).toBeCloseTo(
      inMetres(referenceFlow) * Math.exp((12.706 * s) / Math.sqrt(3)),
      3,
    );
    expect(studentQuantile(0.975, 1)).toBeCloseTo(12.706, 3);
    // One left out leaves no scatter to judge it by.
    expect(three.gaugings.map(({ studentized }) => studentized)).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

it("a segment's parameters are the inputs of the formula", () => {
  const { zeroFlowStage, referenceDepth, referenceFlow, exponent } = curve.segments[0]!;
  const q = ratingDischarge({
    stage: at(0.4),
    zeroFlowStage,
    referenceDepth,
    referenceFlow,
    exponent,
  });
  expect(inMetres(q)).toBe(inMetres(curve.flowAt(at(0.4))));
});
