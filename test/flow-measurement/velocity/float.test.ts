import {
  floatCoefficient,
  floatCoefficientsByBed,
  floatCoefficientsByDepth,
  floatCoefficientsOfVolunteers,
  floatDischarge,
  floatGauging,
  type FloatGaugingInput,
  soundedArea,
} from "@leat/flow-measurement";
import { type Notice, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  cubicMetrePerSecond,
  foot,
  litrePerSecond,
  metre,
  metrePerSecond,
  one,
  type Quantity,
  QuantityError,
  second,
  squareMetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = (c: number) => one.of(c).as("coefficient");
const depths = (...all: number[]) => all.map((d) => ({ depth: metre.of(d) }));

describe("floatCoefficient", () => {
  it("rises with the depth, and stays between the ends of its table", () => {
    const at = (d: number) => floatCoefficient({ averageDepth: foot.of(d) }).in(one);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (a, b) => {
          expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)) + 1e-15);
          expect(at(a)).toBeGreaterThanOrEqual(0.66);
          expect(at(a)).toBeLessThanOrEqual(0.8);
        },
      ),
    );
  });

  it("is told to begin at a foot", () => {
    const shallow = { averageDepth: foot.of(0.5) };
    expect(() => floatCoefficient(shallow)).toThrow(OutOfValidityError);
    expect(() => floatCoefficient(shallow)).toThrow(
      "float-coefficient: averageDepth = 0.5 ft is below 1 ft, the range USBR gives",
    );
    expect(() => floatCoefficient({ averageDepth: metre.of(0) })).toThrow(NonPhysicalError);
  });

  it("has a table of which every row is named by its depth", () => {
    for (const { row, depth } of floatCoefficientsByDepth.definition.rows)
      expect(row).toBe(`${depth} ft`);
  });

  it("lies inside the ranges of beds, as what volunteers take does", () => {
    const rows = floatCoefficientsByBed.definition.rows;
    for (const { low, typical, high } of rows) {
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
    }
    // Rougher beds have less, in every column.
    for (const column of ["low", "typical", "high"] as const)
      expect(rows.map((row) => row[column])).toEqual(
        rows.map((row) => row[column]).toSorted((a, b) => b - a),
      );
    const within = (bed: (typeof rows)[number]["bed"], c: number) => {
      const { low, high } = floatCoefficientsByBed.row(bed);
      expect(c).toBeGreaterThanOrEqual(low);
      expect(c).toBeLessThanOrEqual(high);
    };
    within("cobbles", floatCoefficientsOfVolunteers.row("rocky").coefficient);
    within("mud, sand or fine gravel", floatCoefficientsOfVolunteers.row("muddy").coefficient);
    within("mud, sand or fine gravel", floatCoefficientsByDepth.row("1 ft").coefficient);
    within("cobbles", floatCoefficientsByDepth.row("1 ft").coefficient);
  });
});

describe("soundedArea", () => {
  it("is half of width times depth for one sounding, and nears both for many alike", () => {
    const area = (n: number) =>
      soundedArea({ width: metre.of(4), depths: depths(...Array<number>(n).fill(0.5)) }).in(
        squareMetre,
      );
    expect(area(1)).toBeCloseTo(1, 12);
    expect(area(99)).toBeCloseTo(1.98, 12);
  });

  it("does not change from the other bank, and doubles with width or with depths", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { minLength: 1, maxLength: 9 }),
        fc.double({ min: 0.1, max: 9, noNaN: true }),
        (all, w) => {
          const area = (width: number, ds: readonly number[]) =>
            soundedArea({ width: metre.of(width), depths: depths(...ds) }).in(squareMetre);
          expect(area(w, all.toReversed())).toBeCloseTo(area(w, all), 12);
          expect(area(2 * w, all)).toBeCloseTo(2 * area(w, all), 12);
          expect(
            area(
              w,
              all.map((d) => 2 * d),
            ),
          ).toBeCloseTo(2 * area(w, all), 12);
        },
      ),
    );
  });
});

describe("floatDischarge", () => {
  const run = (t: number) => ({ time: second.of(t) });
  const given = {
    reachLength: metre.of(10),
    runs: [run(20), run(22), run(25)],
    sections: [{ area: squareMetre.of(0.3) }, { area: squareMetre.of(0.4) }],
    floatCoefficient: coefficient(0.7),
  };

  it("is coefficient, area and velocity multiplied, in whatever order the floats ran", () => {
    const { flow, surfaceVelocity, meanArea } = floatDischarge(given);
    expect(flow.in(cubicMetrePerSecond)).toBeCloseTo(
      0.7 * meanArea.in(squareMetre) * surfaceVelocity.in(metrePerSecond),
      14,
    );
    const back = floatDischarge({ ...given, runs: given.runs.toReversed() });
    expect(back.flow.in(cubicMetrePerSecond)).toBeCloseTo(flow.in(cubicMetrePerSecond), 14);
  });

  it("asks for three floats and two sections, and refuses none", () => {
    const few = { ...given, runs: [run(20)], sections: given.sections.slice(1) };
    expect(() => floatDischarge(few)).toThrow(
      /float-discharge: number of runs = 1 is below 3, .*\n.*number of sections = 1 is below 2, /u,
    );
    const onNotice = (): void => undefined;
    expect(() => floatDischarge({ ...given, runs: [] }, { onNotice })).toThrow(
      "float-discharge: runs = none. Give one or more.",
    );
    expect(() => floatDischarge({ ...given, sections: [] }, { onNotice })).toThrow(
      "float-discharge: sections = none. Give one or more.",
    );
    expect(() => floatDischarge({ ...given, runs: [run(20), run(0), run(20)] })).toThrow(
      "float-discharge: runs.1.time = 0 s is not above zero",
    );
  });
});

describe("floatGauging", () => {
  const creek = (change: Partial<FloatGaugingInput> = {}): FloatGaugingInput => ({
    name: "floats",
    reachLength: metre.of(10),
    times: [21, 23, 22, 24, 22].map((t) => second.of(t)),
    sections: [
      { width: metre.of(1.5), depths: [0.15, 0.3, 0.2].map((d) => metre.of(d)) },
      { width: metre.of(1.7), depths: [0.1, 0.25, 0.25].map((d) => metre.of(d)) },
    ],
    coefficient: { bed: "cobbles" },
    ...change,
  });
  const heard = (input: FloatGaugingInput) => {
    const notices: Notice[] = [];
    const result = floatGauging(input, { onNotice: (notice) => notices.push(notice) });
    return { result, notices, codes: notices.map(({ code }) => code.replace(/.*\//u, "")) };
  };
  const parts = (flow: Quantity<"volume flow">): Record<string, number> =>
    Object.fromEntries(
      Array.from(flow.sources(), ([id, c]) => [
        id,
        c.in(cubicMetrePerSecond) / flow.in(cubicMetrePerSecond),
      ]),
    );

  it("has the flow and the uncertainty that numpy and scipy make of the same", () => {
    const { result, codes } = heard(creek());
    expect(result.flow.in(litrePerSecond)).toBeCloseTo(78.08985919, 7);
    const of = parts(result.flow);
    expect(of["floats: float coefficient"]).toBeCloseTo(0.0824786099, 8);
    expect(of["floats: cross-sections"]).toBeCloseTo(0.0130229384, 9);
    expect(of["floats: scatter of the runs"]).toBeCloseTo(0.0319400461, 8);
    expect(result.flow.standardUncertainty().in(litrePerSecond) * 1.96).toBeCloseTo(13.683, 3);
    expect(codes).toEqual([]);
    expect(result.coefficient.in(one)).toBe(0.7);
    expect(result.area.in(squareMetre)).toBeCloseTo((0.24375 + 0.255) / 2, 12);
    expect(result.area.standardUncertainty().in(squareMetre)).toBeCloseTo(
      0.01125 / 2 / Math.sqrt(3),
      12,
    );
    expect(result.surfaceVelocity.in(metrePerSecond)).toBeCloseTo(0.4473461, 6);
  });

  it("has an own source for the hand at each float", () => {
    const { flow } = floatGauging(creek({ timingError: second.of(0.5) }));
    const timings = Object.entries(parts(flow)).filter(([id]) => id.includes("timing of float"));
    expect(timings.length).toBe(5);
    // A twenty-first of a fifth of half a second's 2.4 %, and so on: 0.5 s of 95 % over 1.96.
    const [, first] = timings[0]!;
    expect(Math.abs(first)).toBeCloseTo((0.5 / 1.959964 / 21) * (10 / 21 / 5 / 0.4473461), 7);
  });

  it("takes the coefficient that is given, with its ± or with one that it tells of", () => {
    const measured = coefficient(0.62).plusMinus(one.of(0.07), "once with a meter");
    const own = heard(creek({ coefficient: measured }));
    expect(own.result.coefficient.in(one)).toBe(0.62);
    expect(Object.keys(parts(own.result.flow))).toContain("once with a meter");
    expect(own.codes).toEqual([]);
    const bare = heard(creek({ coefficient: coefficient(0.62) }));
    expect(bare.notices.map(({ message }) => message)).toEqual([
      "float-gauging: coefficient = 0.62 has no ± of its own: anywhere within 0.1 of it is taken.",
    ]);
    expect(parts(bare.result.flow)["floats: float coefficient"]).toBeCloseTo(
      0.1 / Math.sqrt(3) / 0.62,
      8,
    );
    const deep = heard(creek({ coefficient: { averageDepth: foot.of(2.5) } }));
    expect(deep.result.coefficient.in(one)).toBeCloseTo(0.69, 12);
    expect(deep.codes).toEqual(["coefficient-spread"]);
    const shallow = heard(creek({ coefficient: { averageDepth: metre.of(0.2) } }));
    expect(shallow.codes).toEqual(["out-of-range", "coefficient-spread"]);
    expect(() => floatGauging(creek({ coefficient: { bed: "gravel" as never } }))).toThrow(
      QuantityError,
    );
  });

  it("tells of a float that was caught, of short runs, of an uneven reach, and counts all of them", () => {
    const times = [21, 22, 21.5, 22.5, 60].map((t) => second.of(t));
    const { notices, codes, result } = heard(
      creek({
        times,
        sections: [{ area: squareMetre.of(0.1) }, { area: squareMetre.of(0.3) }],
      }),
    );
    expect(codes).toEqual(["stands-out", "apart", "uneven-reach"]);
    expect(notices[0]?.path).toEqual(["times", 4]);
    expect(notices[0]?.message).toBe(
      "float-gauging: times.4, 0.167 m/s, stands out of 5 floats: it lies 1.78 standard deviations from their mean of 0.401 m/s, and 1.72 is as far as one in twenty good sets would. It is counted all the same. Was it caught, or in another thread of the stream? Run it again.",
    );
    expect(notices[1]?.message).toBe(
      "float-gauging: times.4, 0.167 m/s, lies 58 % from the mean of 5 floats, 0.401 m/s. It is counted all the same. Was it caught, or in another thread of the stream? Run it again.",
    );
    expect(notices[2]?.message).toBe(
      "float-gauging: sections reach 50 % to either side of the middle of their range. Find a reach that is more even, or sound more of it.",
    );
    const velocities = times.map((t) => 10 / t.in(second));
    expect(result.surfaceVelocity.in(metrePerSecond)).toBeCloseTo(
      velocities.reduce((a, b) => a + b) / 5,
      12,
    );
    const quick = heard(
      creek({ reachLength: metre.of(5), times: [11, 11.5, 21].map((t) => second.of(t)) }),
    );
    expect(quick.notices.find(({ code }) => code.endsWith("short-run"))?.message).toBe(
      "float-gauging: 2 of 3 floats took less than 20 s. Take a longer reach where there is one.",
    );
  });

  it("says what one float or one section cannot show, and what no float can", () => {
    const alone = heard(
      creek({ times: [second.of(22)], sections: [{ area: squareMetre.of(0.25) }] }),
    );
    expect(alone.codes).toEqual(["out-of-range", "out-of-range", "alone", "alone"]);
    expect(alone.notices.slice(2).map(({ message }) => message)).toEqual([
      "float-gauging: one float shows no scatter: ± 20 % is taken for it.",
      "float-gauging: one cross-section shows no scatter: ± 20 % is taken for it.",
    ]);
    const of = parts(alone.result.flow);
    expect(of["floats: scatter of the runs"]).toBeCloseTo(0.2 / 1.959964, 7);
    expect(of["floats: cross-sections"]).toBeCloseTo(0.2 / Math.sqrt(3), 9);
    const bold = heard(
      creek({
        times: [22, 22, 22].map((t) => second.of(t)),
        sections: [{ area: squareMetre.of(0.25) }, { area: squareMetre.of(0.25) }],
        coefficient: coefficient(0.7).plusMinus(one.of(0.02), "guess"),
      }),
    );
    expect(bold.notices.map(({ message }) => message)).toEqual([
      "float-gauging: the flow comes out within 3 %, less than the 10 % that the Geological Survey gives floats at their best. Is the ± of the coefficient real?",
    ]);
    // Still water has nothing to be better than.
    expect(floatGauging(creek({ coefficient: coefficient(0) })).flow.in(litrePerSecond)).toBe(0);
  });

  it("scales with the reach and with the areas", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (k) => {
        const q = floatGauging(creek()).flow;
        const long = floatGauging(creek({ reachLength: metre.of(10 * k) })).flow;
        expect(long.in(litrePerSecond)).toBeCloseTo(k * q.in(litrePerSecond), 9);
        expect(long.standardUncertainty().in(litrePerSecond) / long.in(litrePerSecond)).toBeCloseTo(
          q.standardUncertainty().in(litrePerSecond) / q.in(litrePerSecond),
          7,
        );
      }),
    );
  });

  it("refuses a section that was not sounded, a depth below zero, no float", () => {
    const width = metre.of(2);
    expect(() => floatGauging(creek({ sections: [{ width, depths: [] }] }))).toThrow(
      "float-gauging: sections.0.depths = none. Sound the section at one or more places between its edges.",
    );
    expect(() =>
      floatGauging(creek({ sections: [{ width, depths: [metre.of(0.1), metre.of(-0.1)] }] })),
    ).toThrow(
      "float-gauging: sections.0.depths.1 = -0.1 m is below zero, which no depth can be. Check the row.",
    );
    expect(() => floatGauging(creek({ times: [] }))).toThrow("float-discharge: runs = none.");
    expect(() => floatGauging(creek({ times: [second.of(20), second.of(-1)] }))).toThrow(
      "float-discharge: runs.1.time = -1 s is not above zero",
    );
  });
});
