import {
  exposureUncertainty,
  type GaugedVertical,
  meterUncertainty,
  pointsUncertainty,
  type PointVelocities,
  velocityArea,
  type VelocityAreaInput,
  verticalsByWidth,
  verticalsUncertainty,
} from "@leat/flow-measurement";
import { type Notice, NonPhysicalError } from "@leat/formula";
import {
  cubicMetrePerSecond,
  metre,
  metrePerSecond,
  minute,
  one,
  type Quantity,
  second,
  squareMetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const at06 = (v: number): PointVelocities => ({ atSixTenths: metrePerSecond.of(v) });
const row = (b: number, d: number, velocity: PointVelocities): GaugedVertical => ({
  distance: metre.of(b),
  depth: metre.of(d),
  velocity,
});
/** The made-up section of five verticals that a mid-section sum gives 0.3903 m³/s for. */
const depths = [0.22, 0.41, 0.52, 0.47, 0.25];
const velocities = [0.18, 0.42, 0.55, 0.49, 0.21];
const five = (change: Partial<VelocityAreaInput> = {}): VelocityAreaInput => ({
  name: "ford",
  edges: [{ distance: metre.of(0) }, { distance: metre.of(3) }],
  verticals: depths.map((d, i) => row((i + 1) / 2, d, at06(velocities[i]!))),
  ...change,
});
const heard = (input: VelocityAreaInput) => {
  const notices: Notice[] = [];
  const result = velocityArea(input, { onNotice: (notice) => notices.push(notice) });
  return { result, notices, codes: notices.map(({ code }) => code.replace("velocity-area/", "")) };
};
/** Contribution of each source, over the flow. */
const parts = (flow: Quantity<"volume flow">): Record<string, number> =>
  Object.fromEntries(
    Array.from(flow.sources(), ([id, c]) => [
      id,
      c.in(cubicMetrePerSecond) / flow.in(cubicMetrePerSecond),
    ]),
  );
const relative = (flow: Quantity<"volume flow">): number =>
  flow.standardUncertainty().in(cubicMetrePerSecond) / flow.in(cubicMetrePerSecond);

describe("velocityArea", () => {
  it("gives flow, area, mean velocity, width and shares of the made-up section", () => {
    const { flow, area, meanVelocity, width, sections } = velocityArea(five());
    expect(flow.in(cubicMetrePerSecond)).toBeCloseTo(0.3903, 12);
    expect(area.in(squareMetre)).toBeCloseTo(0.935, 12);
    expect(meanVelocity.in(metrePerSecond)).toBeCloseTo(0.3903 / 0.935, 12);
    expect(width.in(metre)).toBe(3);
    expect(sections.map(({ share }) => Number(share.in(one).toFixed(4)))).toEqual([
      0, 0.0507, 0.2206, 0.3664, 0.295, 0.0673, 0,
    ]);
  });

  it("has the uncertainty of the standard, component by component", () => {
    // Worked apart with numpy, from the same tables.
    const { flow } = velocityArea(five());
    const of = parts(flow);
    expect(of["ford: number of verticals"]).toBeCloseTo(0.075, 10);
    expect(of["ford: calibration of meter, rod and tape"]).toBeCloseTo(0.01, 10);
    expect(of["ford: widths"]).toBeCloseTo(0.0026317357, 9);
    expect(of["ford: depths"]).toBeCloseTo(0.0028888434, 9);
    expect(of["ford: points in the vertical"]).toBeCloseTo(0.039476035, 9);
    expect(of["ford: readings of the meter"]).toBeCloseTo(0.0071101691, 9);
    expect(of["ford: time of exposure"]).toBeCloseTo(0.0219205977, 9);
    expect(relative(flow)).toBeCloseTo(0.0884855689, 9);
  });

  it("has less of it with two points, forty seconds and a meter with its own rating", () => {
    const verticals = depths.map((d, i) =>
      row((i + 1) / 2, d, {
        atTwoTenths: metrePerSecond.of(velocities[i]! + 0.05),
        atEightTenths: metrePerSecond.of(velocities[i]! - 0.05),
      }),
    );
    const { flow } = velocityArea(
      five({ verticals, exposure: second.of(40), rating: "individual" }),
    );
    const of = parts(flow);
    expect(of["ford: points in the vertical"]).toBeCloseTo(0.0184221497, 9);
    expect(of["ford: readings of the meter"]).toBeCloseTo(0.0020895001, 9);
    expect(of["ford: time of exposure"]).toBeCloseTo(0.0143234958, 9);
    expect(relative(flow)).toBeCloseTo(0.0793043226, 9);
  });

  /** A channel of 30 verticals, 1.5 m deep and at 0.8 m/s all over. */
  const thirty = (velocity: PointVelocities, more: Partial<VelocityAreaInput> = {}) =>
    velocityArea({
      name: "canal",
      edges: [{ distance: metre.of(0) }, { distance: metre.of(31) }],
      verticals: Array.from({ length: 30 }, (_, i) => row(i + 1, 1.5, velocity)),
      exposure: second.of(45),
      rating: "individual",
      ...more,
    }).flow;
  const v = metrePerSecond.of(0.8);

  it("comes near to the 2.2 % that was measured for 30 verticals, two points and 45 seconds", () => {
    // R. W. Carter and I. E. Anderson, Accuracy of current meter measurements, 1963 (from memory, to be confirmed).
    const flow = thirty({ atTwoTenths: v, atEightTenths: v });
    expect(relative(flow)).toBeCloseTo(0.0197061750514, 9);
    expect(Math.abs(relative(flow) - 0.022)).toBeLessThan(0.003);
    const three = thirty(
      { atTwoTenths: v, atSixTenths: v, atEightTenths: v },
      { exposure: second.of(90), rating: "group" },
    );
    expect(relative(three)).toBeCloseTo(0.0192666474433, 9);
  });

  it("is certain the longer the meter is held and the more verticals there are", () => {
    const at = (minutes: number) =>
      relative(velocityArea(five({ exposure: minute.of(minutes) })).flow);
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        (a, b) => {
          expect(at(Math.min(a, b))).toBeGreaterThanOrEqual(at(Math.max(a, b)) - 1e-15);
        },
      ),
    );
    // One over the root of the time below half a minute.
    const exposed = (minutes: number) =>
      parts(velocityArea(five({ exposure: minute.of(minutes) })).flow)["ford: time of exposure"]!;
    expect(exposed(0.125)).toBeCloseTo(2 * exposed(0.5), 12);
    expect(exposed(9)).toBe(exposed(3));
    expect(exposed(2.95)).toBeGreaterThan(exposed(3));
    const number = (count: number) => {
      const { flow } = velocityArea({
        name: "canal",
        edges: [{ distance: metre.of(0) }, { distance: metre.of(60) }],
        verticals: Array.from({ length: count }, (_, i) => row(i + 0.5, 0.5, at06(0.5))),
      });
      return parts(flow)["canal: number of verticals"];
    };
    expect([1, 2, 4, 5, 7, 12, 25, 50].map((n) => Number(number(n)!.toFixed(6)))).toEqual([
      0.375, 0.1875, 0.09375, 0.075, 0.063, 0.039, 0.02, 0.01,
    ]);
  });

  it("is uncertain in still water too", () => {
    const slow = (u: number) => {
      const verticals = [row(1, 0.5, at06(0.4)), row(2, 0.5, at06(u))];
      return parts(velocityArea(five({ verticals })).flow);
    };
    // 0.5 m² each: 4 % of 0.4 m/s and 25 % of 0.05 m/s; 1.7 % of 0.4 m/s and 10 % of 0.03 m/s; over 0.2 m³/s.
    for (const still of [0, 1e-9, -1e-9]) {
      expect(slow(still)["ford: time of exposure"]).toBeCloseTo(
        (0.5 * Math.hypot(0.016, 0.0125)) / 0.2,
        6,
      );
      expect(slow(still)["ford: readings of the meter"]).toBeCloseTo(
        (0.5 * Math.hypot(0.0068, 0.003)) / 0.2,
        6,
      );
    }
    // Above the last velocity of a table its last row stands: 4 % of one reading, 1 % for a group rating.
    const fast = parts(velocityArea(five({ verticals: [row(1.5, 0.5, at06(2))] })).flow);
    expect(fast["ford: time of exposure"]).toBeCloseTo(0.04, 12);
    expect(fast["ford: readings of the meter"]).toBeCloseTo(0.01, 12);
  });

  it("doubts a shallow depth three times as much", () => {
    const at = (d: number) =>
      parts(velocityArea(five({ verticals: [row(1.5, d, at06(0.5))] })).flow)["ford: depths"];
    expect(at(0.31)).toBeCloseTo(0.005, 12);
    expect(at(0.3)).toBeCloseTo(0.015, 12);
  });

  it("keeps the ± that a depth, a distance or a reading brings, in place of the standard's", () => {
    const own = (change: (vertical: GaugedVertical) => GaugedVertical) =>
      parts(velocityArea(five({ verticals: five().verticals.map(change) })).flow);
    const ofDepths = own((vertical) => ({
      ...vertical,
      depth: vertical.depth.plusMinus(metre.of(0.02), "soft bed"),
    }));
    expect(ofDepths["ford: depths"]).toBeUndefined();
    // One source for all: the widths between half-way points times the velocities.
    expect(ofDepths["soft bed"]! * 1.959964 * 0.3903).toBeCloseTo(
      0.02 * 0.5 * velocities.reduce((a, b) => a + b, 0),
      7,
    );
    const ofReadings = own((vertical) => ({
      ...vertical,
      velocity: { atSixTenths: metrePerSecond.of(0.4).plusMinus(metrePerSecond.of(0.02), "probe") },
    }));
    expect(ofReadings["ford: readings of the meter"]).toBeUndefined();
    expect(ofReadings["ford: time of exposure"]).toBeGreaterThan(0);
    expect(ofReadings["probe"]).toBeGreaterThan(0);
    const ofPlaces = parts(
      velocityArea(
        five({
          verticals: five().verticals.map((vertical) => ({
            ...vertical,
            distance: vertical.distance.plusMinus(metre.of(0.01), "tape in the wind"),
          })),
          edges: [
            { distance: metre.of(0).plusMinus(metre.of(0.05), "left edge") },
            { distance: metre.of(3).plusMinus(metre.of(0.05), "right edge") },
          ],
        }),
      ).flow,
    );
    expect(ofPlaces["ford: widths"]).toBeUndefined();
    expect(Math.abs(ofPlaces["left edge"]!)).toBeGreaterThan(0);
  });

  it("shares the error of instruments that two gaugings name alike, and nothing else", () => {
    const [a, b] = ["May", "June"].map(
      (name) => velocityArea(five({ name, instruments: "meter 7" })).flow,
    ) as [Quantity<"volume flow">, Quantity<"volume flow">];
    const shared = [...a.sources().keys()].filter((id) => b.sources().has(id));
    expect(shared).toEqual(["meter 7: calibration of meter, rod and tape"]);
  });

  it("has shares that are one together, and the uncertainty of scaled water scaled", () => {
    const streams = fc.array(
      fc.tuple(
        fc.double({ min: 0.05, max: 1.5, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
      ),
      { minLength: 1, maxLength: 25 },
    );
    fc.assert(
      fc.property(streams, (rows) => {
        const { sections } = velocityArea({
          name: "stream",
          edges: [{ distance: metre.of(0) }, { distance: metre.of(rows.length + 1) }],
          verticals: rows.map(([d, u], i) => row(i + 1, d, at06(u))),
        });
        const sum = sections.reduce((total, { share }) => total + share.in(one), 0);
        expect(sum).toBeCloseTo(1, 12);
      }),
    );
    // Twice as wide with the same depths and velocities: the same shares, the same uncertainty.
    const wide = five({
      edges: [{ distance: metre.of(0) }, { distance: metre.of(6) }],
      verticals: five().verticals.map((vertical) => ({
        ...vertical,
        distance: vertical.distance.times(2),
      })),
    });
    expect(relative(velocityArea(wide).flow)).toBeCloseTo(relative(velocityArea(five()).flow), 12);
  });

  it("takes an upright bank's velocity as a share of the next, and says so where it is assumed", () => {
    const box = (share?: Quantity<"coefficient">): VelocityAreaInput => ({
      name: "flume",
      edges: [
        { distance: metre.of(0), depth: metre.of(0.5), ...(share && { share }) },
        { distance: metre.of(2) },
      ],
      verticals: [row(1, 0.5, at06(0.6))],
    });
    const given = heard(box(one.of(0.8).as("coefficient")));
    // 0.5 m · 1 m · 0.6 m/s in the middle, 0.5 m · 0.5 m · 0.48 m/s at the bank.
    expect(given.result.flow.in(cubicMetrePerSecond)).toBeCloseTo(0.3 + 0.12, 12);
    expect(given.codes).not.toContain("wall-velocity");
    const assumed = heard(box());
    expect(assumed.result.flow.in(cubicMetrePerSecond)).toBeCloseTo(0.3 + 0.25 * 0.39, 12);
    expect(
      parts(assumed.result.flow)["flume: velocity at upright banks"]! * Math.sqrt(3) * 0.3975,
    ).toBeCloseTo(0.25 * 0.6 * 0.15, 7);
    expect(assumed.notices.find(({ code }) => code.endsWith("wall-velocity"))?.message).toBe(
      "velocity-area: edges.0.share is left out: 0.65 ± 0.15 of the next velocity is taken at the upright bank.",
    );
  });

  it("has one coefficient of the surface, which does not average out over the verticals", () => {
    const verticals = depths.map((d, i) =>
      row((i + 1) / 2, d, { atSurface: metrePerSecond.of(velocities[i]!) }),
    );
    const { result, notices } = heard(five({ verticals }));
    expect(result.flow.in(cubicMetrePerSecond)).toBeCloseTo(0.85 * 0.3903, 12);
    expect(parts(result.flow)["ford: coefficient of the surface"]! * 1.959964).toBeCloseTo(
      0.1 / 0.85,
      7,
    );
    expect(notices.find(({ code }) => code.endsWith("surface-coefficient"))?.message).toBe(
      "velocity-area: no coefficient of the surface is given: 0.85 ± 0.1 is taken. Over boulders it may be lower still.",
    );
    const rough = one.of(0.7).as("coefficient").plusMinus(one.of(0.07), "once with a meter");
    const low = heard(five({ verticals, surfaceCoefficient: rough }));
    expect(low.result.flow.in(cubicMetrePerSecond)).toBeCloseTo(0.7 * 0.3903, 12);
    expect(low.codes).not.toContain("surface-coefficient");
    expect(low.codes).toContain("below-surface-velocity/out-of-range");
  });

  it("counts a stone that stands out of the water, where nothing can be read", () => {
    const { verticals } = five();
    const dry = { distance: metre.of(1.75), depth: metre.of(0) };
    const { flow } = velocityArea(five({ verticals: verticals.toSpliced(3, 0, dry) }));
    // The neighbours lose a quarter of a metre each, half of it to either side of the stone.
    expect(flow.in(cubicMetrePerSecond)).toBeCloseTo(
      0.3903 - 0.125 * (0.52 * 0.55 + 0.47 * 0.49),
      12,
    );
  });

  it("tells of large shares, few verticals, a shallow reading and what it took", () => {
    const { notices, codes } = heard(five());
    expect(codes).toEqual([
      "exposure",
      "rating",
      "uneven-velocities",
      "large-share",
      "large-share",
      "large-share",
      "share-above-aim",
      "few-verticals",
    ]);
    const text = Object.fromEntries(notices.map(({ code, message }) => [code, message]));
    expect(notices[4]?.path).toEqual(["verticals", 2]);
    expect(notices[4]?.message).toBe(
      "velocity-area: verticals.2, at 1.5 m, carries 36.6 % of the flow, more than the 10 % that ISO 748 allows one vertical. Put another beside it.",
    );
    expect(text["velocity-area/share-above-aim"]).toBe(
      "velocity-area: 2 of 5 verticals carry more than the 5 % that the Geological Survey aims at, none of these more than 10 %.",
    );
    expect(text["velocity-area/few-verticals"]).toBe(
      "velocity-area: 5 verticals are fewer than the 7 that ISO 748 asks for in water 1 m to 3 m wide; their number alone leaves 15 % open.",
    );
    expect(text["velocity-area/exposure"]).toBe(
      "velocity-area: exposure is left out: half a minute at each point is taken. Hold the meter longer in slow water.",
    );
    expect(text["velocity-area/rating"]).toBe(
      "velocity-area: rating is left out: that of the meter's make is taken.",
    );
    expect(text["velocity-area/uneven-velocities"]).toBe(
      "velocity-area: 3 of 4 neighbouring verticals differ by more than 20 % of the slower one. More verticals between them would tell why.",
    );
    const eddy = heard(
      five({ verticals: [...five().verticals.slice(0, 4), row(2.5, 0.2, at06(-0.1))] }),
    );
    expect(eddy.notices.map(({ message }) => message)).toContainEqual(
      "velocity-area: 1 of 5 verticals run upstream and are taken off. A section without eddies is better.",
    );
    const brook = heard(
      five({
        verticals: [row(1, 0.05, at06(0.3)), row(2, 0.3, at06(0.4))],
        exposure: minute.of(1),
        rating: "individual",
      }),
    );
    const said = brook.notices.map(({ message }) => message);
    expect(said).toContainEqual(
      "velocity-area: verticals.0: six-tenths-velocity: depth = 0.05 m is below 0.3 ft (0.09144 m), the range USGS gives (Measurement and Computation of Streamflow, Water-Supply Paper 2175, six-tenths-depth method).",
    );
    expect(said).toContainEqual(
      "velocity-area: 2 verticals are fewer than the 5 at which the standard's table of uncertainty begins; it is drawn on as one over their number.",
    );
  });

  it("has a share told at an edge by the edge", () => {
    const { notices } = heard({
      name: "flume",
      edges: [
        { distance: metre.of(0), depth: metre.of(1), share: one.of(0.9).as("coefficient") },
        { distance: metre.of(1), depth: metre.of(1), share: one.of(0.9).as("coefficient") },
      ],
      verticals: [row(0.5, 1, at06(1))],
    });
    expect(
      notices.filter(({ code }) => code.endsWith("large-share")).map(({ path }) => path),
    ).toEqual([
      ["edges", 0],
      ["verticals", 0],
      ["edges", 1],
    ]);
  });

  it("refuses bad rows with the row, all of them at once", () => {
    const { verticals } = five();
    const bad = five({
      verticals: [
        verticals[0]!,
        { ...verticals[1]!, depth: metre.of(-0.4) },
        { ...verticals[2]!, distance: metre.of(0.9) },
        { distance: metre.of(2), depth: metre.of(0.47) },
      ],
    });
    expect(() => velocityArea(bad)).toThrow(NonPhysicalError);
    expect(() => velocityArea(bad)).toThrow(
      [
        "velocity-area: verticals.1.depth = -0.4 m is below zero, which no depth can be. Check the row.",
        "velocity-area: verticals.2.distance = 0.9 m is not beyond 1 m of the row before. List the rows along the tape, each place once.",
        "velocity-area: verticals.3.velocity is missing, in 0.47 m of water. Measure it, or leave the row out.",
      ].join("\n"),
    );
    try {
      velocityArea(bad);
    } catch (error) {
      expect((error as NonPhysicalError).notices.map(({ path }) => path)).toEqual([
        ["verticals", 1, "depth"],
        ["verticals", 2, "distance"],
        ["verticals", 3, "velocity"],
      ]);
    }
    const short = five({ edges: [{ distance: metre.of(0) }, { distance: metre.of(2) }] });
    expect(() => velocityArea(short)).toThrow(
      "velocity-area: edges.1.distance = 2 m is not beyond 2.5 m of the row before.",
    );
  });

  it("refuses a section without verticals, water or flow, and a meter that was never held", () => {
    expect(() => velocityArea(five({ verticals: [] }))).toThrow(
      "velocity-area: verticals are missing: give one or more between the edges.",
    );
    expect(() => velocityArea(five({ verticals: [row(1, 0, at06(0))] }))).toThrow(
      "velocity-area: verticals hold no water: every depth is 0.",
    );
    expect(() => velocityArea(five({ verticals: [row(1, 0.5, at06(-0.1))] }))).toThrow(
      "velocity-area: the flow comes out as -0.075 m³/s. Count velocities downstream as positive.",
    );
    expect(() => velocityArea(five({ exposure: second.of(0) }))).toThrow(
      "velocity-area: exposure = 0 s is not above zero.",
    );
  });
});

describe("tables of the standard", () => {
  const falling = (values: readonly number[]) =>
    values.every((value, i) => i === 0 || value <= values[i - 1]!);

  it("fall with verticals, points, time and velocity", () => {
    const { rows: counts } = verticalsUncertainty.definition;
    expect(falling(counts.map(({ uncertainty }) => uncertainty))).toBe(true);
    expect(counts.map(({ row: key, verticals }) => [key, verticals])).toEqual(
      counts.map(({ row: key }) => [key, Number(key)]),
    );
    expect(falling(pointsUncertainty.definition.rows.map((each) => each.uncertainty))).toBe(true);
    const { rows: exposed } = exposureUncertainty.definition;
    for (const part of ["upper", "lower"] as const) {
      for (const each of exposed)
        expect(
          falling([each[`${part}Half`], each[`${part}1`], each[`${part}2`], each[`${part}3`]]),
        ).toBe(true);
      for (const time of ["Half", "1", "2", "3"] as const)
        expect(falling(exposed.map((each) => each[`${part}${time}`]))).toBe(true);
    }
    // Near the bed the water swells more, never less.
    for (const each of exposed) expect(each.lowerHalf).toBeGreaterThanOrEqual(each.upperHalf);
    for (const rating of ["individual", "group"] as const)
      expect(falling(meterUncertainty.definition.rows.map((each) => each[rating]))).toBe(true);
    for (const each of meterUncertainty.definition.rows)
      expect(each.group).toBeGreaterThanOrEqual(each.individual);
  });

  it("are the halves of the 95 % figures that the edition of 1997 prints", () => {
    // From memory, to be confirmed: 15, 9, 6, 5, 4, 3, 2, 2, 2 and 15, 7, 5, 1; rounded halves of the exposure times.
    expect(verticalsUncertainty.definition.rows.map((each) => 2 * each.uncertainty)).toEqual([
      15, 9, 6, 5, 4, 3, 2, 2, 2,
    ]);
    expect(pointsUncertainty.definition.rows.map((each) => 2 * each.uncertainty)).toEqual([
      15, 7, 5, 1,
    ]);
    const printed = [50, 27, 15, 10, 8, 8, 7, 7];
    exposureUncertainty.definition.rows.forEach((each, i) =>
      expect(Math.abs(each.upperHalf - printed[i]! / 2)).toBeLessThanOrEqual(0.5),
    );
  });

  it("ask for more verticals in wider water", () => {
    const rows = verticalsByWidth.definition.rows;
    expect(rows.map(({ least }) => least)).toEqual([5, 6, 7, 13, 22]);
    expect(verticalsByWidth.get("1 m to 3 m", "width").in(metre)).toBe(3);
  });
});
