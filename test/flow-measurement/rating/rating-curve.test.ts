import { existsSync, readFileSync } from "node:fs";

import { ratingCurve, type RatingCurve } from "@leat/flow-measurement";
import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  foot,
  metre,
  one,
  type Quantity,
} from "@leat/quantity";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { linearRegression, rSquared } from "simple-statistics";
import { describe, expect, it } from "vitest";

import { at, atFeet, creekFlows, creekStages, gaugingsOf, river } from "./creek.ts";

const file = new URL("../../../../shared/reference/data/rating_gaugings.csv", import.meta.url);
const creek = gaugingsOf(creekStages, creekFlows);
const told = { onNotice: (): void => {} };

/** C of Q = C·h^b, in m³/s at 1 m, and b. */
const powerOf = ({ segments: [segment] }: RatingCurve): [number, number] => [
  segment!.referenceFlow.in(cubicMetrePerSecond),
  segment!.exponent.in(one),
];

/** Expects numbers that agree to a part of themselves. */
function expectNear(got: number, expected: number, part: number): void {
  expect(Math.abs(got / expected - 1), `${got} for ${expected}`).toBeLessThanOrEqual(part);
}

const inMetres = (q: Quantity<"volume flow">): number => q.in(cubicMetrePerSecond);
const inFeet = (q: Quantity<"volume flow">): number => q.in(cubicFootPerSecond);

if (!existsSync(file))
  console.log("skipped: rating_gaugings.csv is not in ../shared/reference/data");

describe("the gaugings of the course", () => {
  it.skipIf(!existsSync(file))("are those that are typed here", () => {
    const rows = readFileSync(file, "utf8").trim().split(/\r?\n/u).slice(1);
    expect(rows.map((row) => Number(row.split(",")[2]))).toEqual(creekStages);
    expect(rows.map((row) => Number(row.split(",")[1]))).toEqual(creekFlows);
  });
});

describe("least squares of the logarithms, zero given", () => {
  const curve = ratingCurve({
    gaugings: creek,
    fit: "logarithms",
    zero: at(0),
    referenceDepth: metre.of(1),
  });
  const [statistics] = curve.segments.map((each) => each.statistics);

  it("gives the 8.78 and 1.3617 of the course's data", () => {
    // Computed from the course's data for the published table: C = 8.78, exponent 1.3617.
    const [C, b] = powerOf(curve);
    expectNear(C, 8.78, 1e-3);
    expectNear(b, 1.3617, 1e-4);
  });

  it("agrees with simple-statistics", () => {
    const points = creekStages.map((h, i) => [Math.log(h), Math.log(creekFlows[i]!)]);
    const { m, b } = linearRegression(points);
    expectNear(powerOf(curve)[0], Math.exp(b), 1e-12);
    expectNear(powerOf(curve)[1], m, 1e-12);
    expectNear(
      statistics!.determination,
      rSquared(points, (x) => m * x + b),
      1e-12,
    );
  });

  // R 4.2.2: lm(log(q) ~ log(h)), vcov, summary, predict with level 0.95 and 0.8, rstudent.
  it("has the covariance and the standard error that R's lm has", () => {
    expect(statistics!.parameters).toEqual(["ln Q1", "b"]);
    expect([statistics!.gaugings, statistics!.degreesOfFreedom]).toEqual([9, 7]);
    const covariance = [
      [0.0171386871069572, 0.0147663353357672],
      [0.0147663353357672, 0.0151430359772046],
    ];
    covariance.forEach((row, i) =>
      row.forEach((each, j) => expectNear(statistics!.covariance[i]![j]!, each, 1e-11)),
    );
    expectNear(statistics!.standardErrors[1]!, Math.sqrt(0.0151430359772046), 1e-11);
    expectNear(statistics!.relativeStandardError!.in(one), 0.157025902042769, 1e-12);
    expect(statistics!.absoluteStandardError).toBeUndefined();
    expectNear(statistics!.determination, 0.945923774697114, 1e-12);
  });

  it("has the intervals of the rating and of one more gauging that R's predict has", () => {
    const rows: [number, number, number, number, number, number][] = [
      [
        0.25, 1.32949466737045, 1.11924598072395, 1.5792382559401, 0.882963153171627,
        2.00184578962028,
      ],
      [
        0.4, 2.52136723771087, 2.22521573117418, 2.85693322150263, 1.704096182433239,
        3.7305950291634,
      ],
      [
        0.6, 4.3794441348857, 3.64623853285105, 5.26008673261099, 2.894660339288953,
        6.62583124875233,
      ],
    ];
    for (const [h, fit, low, high, least, most] of rows) {
      expectNear(inMetres(curve.flowAt(at(h))), fit, 1e-11);
      const band = curve.bandAt(at(h), { of: "rating" });
      expectNear(inMetres(band.low), low, 1e-10);
      expectNear(inMetres(band.high), high, 1e-10);
      const one = curve.bandAt(at(h), { of: "gauging" });
      expectNear(inMetres(one.low), least, 1e-10);
      expectNear(inMetres(one.high), most, 1e-10);
    }
    const narrow = curve.bandAt(at(0.6), { of: "rating", confidence: 0.8 });
    expectNear(inMetres(narrow.low), 3.92467973241743, 1e-10);
    expectNear(inMetres(narrow.high), 4.88690345155145, 1e-10);
  });

  it("has the residuals and the deleted residuals of R, row by row", () => {
    const residuals = [
      0.24156027576024, 0.0508858658853359, -0.168821164167813, -0.064687326722373,
      0.0857706991528476, 0.0465571726431956, -0.2547335941625, 0.0674179137830964,
      -0.00394984217203018,
    ];
    const deleted = [
      2.20859367509233, 0.335303166202008, -1.33360626094831, -0.483542268256015, 0.559253695994554,
      0.316064452576861, -2.17486613975068, 0.436203541191145, -0.0273483726837739,
    ];
    curve.gaugings.forEach((gauging, i) => {
      expectNear(Math.log1p(gauging.departure.in(one)), residuals[i]!, 1e-9);
      expectNear(gauging.studentized!, deleted[i]!, 1e-9);
      expect(gauging.outlying).toBe(false);
    });
  });

  it("is not the line of h on Q, turned round", () => {
    // R: lm(log(h) ~ log(q)) has a slope of 0.69466554373708, which as an exponent is 1.4395.
    const turned = 1 / 0.69466554373708;
    const points = creekStages.map((h, i) => [Math.log(creekFlows[i]!), Math.log(h)]);
    expectNear(1 / linearRegression(points).m, turned, 1e-12);
    expect(turned / powerOf(curve)[1]).toBeGreaterThan(1.05);
  });
});

describe("least squares of the flows, zero given", () => {
  const curve = ratingCurve({
    gaugings: creek,
    fit: "flows",
    zero: at(0),
    referenceDepth: metre.of(1),
  });
  const [statistics] = curve.segments.map((each) => each.statistics);

  it("gives what R's nls gives", () => {
    // R 4.2.2: nls(q ~ C*h^b).
    expectNear(powerOf(curve)[0], 8.4354309550797, 1e-6);
    expectNear(powerOf(curve)[1], 1.29777519987436, 1e-6);
    expectNear(statistics!.absoluteStandardError!.in(cubicMetrePerSecond), 0.269321325354384, 1e-9);
    expect(statistics!.relativeStandardError).toBeUndefined();
    // Its covariance is of C and b; that of ln C is C times smaller.
    const C = 8.4354309550797;
    expectNear(statistics!.covariance[0]![0]!, 0.2618121182444912 / (C * C), 1e-6);
    expectNear(statistics!.covariance[0]![1]!, 0.0419031368893536 / C, 1e-6);
    expectNear(statistics!.covariance[1]![1]!, 0.00858546106678063, 1e-6);
  });

  it("agrees with ml-levenberg-marquardt, with a fine step of differences", () => {
    // With the step of differences that it takes by default, 0.1, it ends at 8.427 and 1.296 instead.
    const { parameterValues } = levenbergMarquardt(
      { x: [...creekStages], y: [...creekFlows] },
      ([C, b]) =>
        (h) =>
          C! * h ** b!,
      { initialValues: [8, 1.4], maxIterations: 500, errorTolerance: 0, gradientDifference: 1e-7 },
    );
    expectNear(powerOf(curve)[0], parameterValues[0]!, 1e-5);
    expectNear(powerOf(curve)[1], parameterValues[1]!, 1e-5);
    expectNear(powerOf(curve)[0], 8.428, 1e-3);
    expectNear(powerOf(curve)[1], 1.2965, 1e-3);
  });

  it("has the intervals of R's nls by the delta method, in ft³/s of a river", () => {
    // R 4.2.2: nls(q ~ exp(a)*(h - 2.9)^b) on the river; qt(0.975, 7) times the root of gᵀ vcov g, and of that + s².
    const other = ratingCurve({ gaugings: river, fit: "flows", zero: atFeet(2.9) });
    const rows: [number, number, number, number, number, number][] = [
      [4, 507.848258375, 471.487207923, 544.209308828, 376.900227745, 638.796289006],
      [6, 2454.64365878, 2387.71929286, 2521.5680247, 2312.15109234, 2597.13622521],
    ];
    for (const [h, fit, low, high, least, most] of rows) {
      expectNear(inFeet(other.flowAt(atFeet(h))), fit, 1e-6);
      const band = other.bandAt(atFeet(h), { of: "rating" });
      expectNear(inFeet(band.low), low, 1e-6);
      expectNear(inFeet(band.high), high, 1e-6);
      const one = other.bandAt(atFeet(h), { of: "gauging" });
      expectNear(inFeet(one.low), least, 1e-6);
      expectNear(inFeet(one.high), most, 1e-6);
    }
  });
});

describe("a stage of zero flow that is found", () => {
  it("is that of R's nls on the river, with its covariance, and its interval by the profile", () => {
    // R 4.2.2: nls(log(q) ~ a + b*log(h - z)); the interval where the profile of the squares is 1 + t²/6 times its least.
    const curve = ratingCurve({ gaugings: river, fit: "logarithms", referenceDepth: foot.of(1) });
    const [segment] = curve.segments;
    expect(segment!.statistics.parameters).toEqual(["ln Q1", "b", "h0"]);
    expectNear(segment!.zeroFlowStage.in(foot), 2.9067420058, 1e-7);
    expectNear(segment!.exponent.in(one), 1.58762855178, 1e-7);
    expectNear(Math.log(inFeet(segment!.referenceFlow)), 6.00574792397, 1e-7);
    expectNear(segment!.statistics.relativeStandardError!.in(one), 0.179704434853, 1e-8);
    expectNear(segment!.statistics.determination, 0.987246722317, 1e-9);
    const feet = 0.3048;
    const covariance = [
      [0.206228917509, -0.1239747503052, 0.1077317890609 * feet],
      [-0.1239747503052, 0.0789081652682, -0.0650200877016 * feet],
      [0.1077317890609 * feet, -0.0650200877016 * feet, 0.0575331033194 * feet * feet],
    ];
    covariance.forEach((row, i) =>
      row.forEach((each, j) => expectNear(segment!.statistics.covariance[i]![j]!, each, 1e-5)),
    );
    expectNear(segment!.zeroInterval!.low!.in(foot), 1.999861923, 1e-6);
    expectNear(segment!.zeroInterval!.high!.in(foot), 3.26005609565, 1e-6);
    expect(curve.notices.map(({ code, path }) => [code, path])).toEqual([
      ["rating-curve/outlying", ["gaugings", 1]],
    ]);
    expect(curve.notices[0]!.message).toBe(
      "rating curve: gauging 2 (1955-10-10): 202 ft³/s is 27 % above the rating, outside the 95 % that the other gaugings set. One in twenty is so by chance; it is kept, look at it.",
    );
    expect(curve.gaugings.map(({ outlying }) => outlying).indexOf(true)).toBe(1);
  });

  it("widens the intervals: those of R by the delta method over all three parameters", () => {
    const curve = ratingCurve({ gaugings: river, fit: "logarithms" });
    const rows: [number, number, number, number, number, number][] = [
      [4, 467.455621017, 365.899621587, 597.198643367, 282.580329892, 773.283680799],
      [6, 2437.03549991, 1991.88657677, 2981.66677616, 1502.31642524, 3953.32296715],
      [8, 5379.10105792, 3942.68836117, 7338.83217256, 3139.71446758, 9215.7196108],
    ];
    const given = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      zero: curve.segments[0]!.zeroFlowStage,
    });
    for (const [h, fit, low, high, least, most] of rows) {
      expectNear(inFeet(curve.flowAt(atFeet(h))), fit, 1e-7);
      const band = curve.bandAt(atFeet(h), { of: "rating" });
      expectNear(inFeet(band.low), low, 1e-6);
      expectNear(inFeet(band.high), high, 1e-6);
      const one = curve.bandAt(atFeet(h), { of: "gauging" });
      expectNear(inFeet(one.low), least, 1e-6);
      expectNear(inFeet(one.high), most, 1e-6);
      expect(given.bandAt(atFeet(h), { of: "rating" }).low.greaterThan(band.low)).toBe(true);
    }
  });

  it("is found for flows as well: R's nls on the creek", () => {
    const curve = ratingCurve({ gaugings: creek, fit: "flows", referenceDepth: metre.of(1) });
    const [segment] = curve.segments;
    expectNear(segment!.zeroFlowStage.in(metre), 0.124334948, 1e-5);
    expectNear(segment!.exponent.in(one), 0.8971938, 1e-5);
    expectNear(Math.log(segment!.referenceFlow.in(cubicMetrePerSecond)), 2.148148955, 1e-6);
    expectNear(segment!.statistics.covariance[2]![2]!, 0.00710233009, 1e-4);
  });

  it("is told of as undecided where the squares hardly rise below it", () => {
    // R's nls: z = 0.03567 with a standard error of 0.236: the creek's nine gaugings do not know.
    const curve = ratingCurve({ gaugings: creek, fit: "logarithms" });
    expectNear(curve.segments[0]!.zeroFlowStage.in(metre), 0.0356699113636996, 1e-4);
    expectNear(
      curve.segments[0]!.statistics.standardErrors[2]!,
      Math.sqrt(0.0557312331675109),
      1e-4,
    );
    expect(curve.segments[0]!.zeroInterval!.low).toBeUndefined();
    expect(curve.notices.map(({ code, severity }) => [code, severity])).toEqual([
      ["rating-curve/zero-undecided", "caution"],
      ["rating-curve/exponent", "note"],
    ]);
    expect(curve.notices[0]!.message).toBe(
      "rating curve: the stage of zero flow that fits best is 0.036 m over ford, but by these gaugings it may as well be any stage below. Level it at the control and give it as zero.",
    );
  });
});

describe("segments that are joined", () => {
  const breaks = [{ at: atFeet(4.5) }];

  it("are one regression with a hinge: R's lm, one zero", () => {
    // R 4.2.2: lm(log(q) ~ log(pmin(h, 4.5) - 2.9) + ifelse(h > 4.5, log((h - 2.9)/1.6), 0)).
    const curve = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      zero: atFeet(2.9),
      segments: { breaks, joined: "continuous" },
      referenceDepth: foot.of(1),
    });
    const [lower, upper] = curve.segments;
    expectNear(lower!.exponent.in(one), 1.64405457519, 1e-10);
    expectNear(upper!.exponent.in(one), 1.54602231282, 1e-10);
    expectNear(Math.log(inFeet(lower!.referenceFlow)), 6.00577527383, 1e-11);
    expect(lower!.statistics).toBe(upper!.statistics);
    expect(lower!.statistics.parameters).toEqual(["ln Q1", "b", "b 2"]);
    expectNear(lower!.statistics.covariance[1]![2]!, -0.02177323078399, 1e-9);
    expectNear(lower!.statistics.relativeStandardError!.in(one), 0.178408397454, 1e-10);
    expectNear(lower!.statistics.determination, 0.987430013529, 1e-10);
    const rows: [number, number, number, number][] = [
      [4, 474.599082597, 384.092538827, 586.432347501],
      [4.5, 878.738091015, 633.501008797, 1218.90987051],
      [6, 2443.101706169, 2008.510336301, 2971.727771976],
    ];
    for (const [h, fit, low, high] of rows) {
      expectNear(inFeet(curve.flowAt(atFeet(h))), fit, 1e-10);
      const band = curve.bandAt(atFeet(h), { of: "rating" });
      expectNear(inFeet(band.low), low, 1e-9);
      expectNear(inFeet(band.high), high, 1e-9);
    }
    const one1 = curve.bandAt(atFeet(6), { of: "gauging" });
    expectNear(inFeet(one1.low), 1514.051131733, 1e-9);
    // Without a step, and each with its place.
    expect([lower!.from, lower!.to?.in(foot), upper!.from?.in(foot), upper!.to]).toEqual([
      undefined,
      4.5,
      4.5,
      undefined,
    ]);
    expectNear(inFeet(upper!.referenceFlow), 878.738091015, 1e-10);
    expectNear(upper!.referenceDepth.in(foot), 1.6, 1e-12);
  });

  it("may have zeros of their own", () => {
    // R 4.2.2: the same with log(pmin(h, 4.5) - 3.0) and log((h - 2.5)/2).
    const curve = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      zero: atFeet(3),
      segments: { breaks: [{ at: atFeet(4.5), zero: atFeet(2.5) }], joined: "continuous" },
    });
    expectNear(curve.segments[0]!.exponent.in(one), 1.50141315656, 1e-10);
    expectNear(curve.segments[1]!.exponent.in(one), 1.74198257137, 1e-10);
    const rows: [number, number, number, number][] = [
      [4, 491.822001322, 395.855074717, 611.054136813],
      [6, 2396.41335273, 1958.167438066, 2932.740502934],
    ];
    for (const [h, fit, low, high] of rows) {
      expectNear(inFeet(curve.flowAt(atFeet(h))), fit, 1e-10);
      const band = curve.bandAt(atFeet(h), { of: "rating" });
      expectNear(inFeet(band.low), low, 1e-9);
      expectNear(inFeet(band.high), high, 1e-9);
    }
  });

  it("may share a zero that is found", () => {
    // scipy 1.17 least_squares over all four parameters, the best of thirty starts: a = 1.59109764 at 1 ft, exponents
    // 4.55164198 and 2.25346968, zero 1.29623715 ft, sum of squares 0.16957241.
    const curve = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      segments: { breaks, joined: "continuous" },
      referenceDepth: foot.of(1),
    });
    const [lower, upper] = curve.segments;
    expectNear(lower!.zeroFlowStage.in(foot), 1.29623715, 1e-4);
    expect(upper!.zeroFlowStage.in(foot)).toBe(lower!.zeroFlowStage.in(foot));
    expectNear(lower!.exponent.in(one), 4.55164198, 1e-4);
    expectNear(upper!.exponent.in(one), 2.25346968, 1e-4);
    const { relativeStandardError, degreesOfFreedom } = lower!.statistics;
    expect(degreesOfFreedom).toBe(5);
    expectNear(relativeStandardError!.in(one) ** 2 * 5, 0.1695724127268988, 1e-8);
    // Two segments, one zero, one notice of it.
    expect(curve.notices.map(({ code }) => code)).toEqual([
      "rating-curve/zero-undecided",
      "rating-curve/exponent",
    ]);
  });

  it("meet as two printed pieces of a rating do", () => {
    // USGS NWIS base rating 19.0 of 12334510, Rock Creek near Clinton, retrieved 2020-02-13: logarithmic between
    // (4.24 ft, 41.26), (6.05 ft, 1021.69) and (8.95 ft, 6506.63 ft³/s), offsets 3.40 and, above 6.05 ft, 3.60 ft.
    // Gaugings made to lie on it, each twice and 1 % to either side, give it back.
    const points: [number, number][] = [
      [4.24, 41.26],
      [6.05, 1021.69],
      [8.95, 6506.63],
    ];
    const curve = ratingCurve({
      gaugings: points.flatMap(([h, q]) =>
        [1.01, 1 / 1.01].map((off) => ({
          stage: atFeet(h),
          flow: cubicFootPerSecond.of(q * off),
        })),
      ),
      fit: "logarithms",
      zero: atFeet(3.4),
      segments: { breaks: [{ at: atFeet(6.05), zero: atFeet(3.6) }], joined: "continuous" },
    });
    for (const [h, q] of points) expectNear(inFeet(curve.flowAt(atFeet(h))), q, 1e-9);
    expectNear(
      curve.segments[0]!.exponent.in(one),
      Math.log(1021.69 / 41.26) / Math.log(2.65 / 0.84),
      1e-9,
    );
    expectNear(
      curve.segments[1]!.exponent.in(one),
      Math.log(6506.63 / 1021.69) / Math.log(5.35 / 2.45),
      1e-9,
    );
  });
});

describe("segments that stand apart", () => {
  const curve = ratingCurve({
    gaugings: river,
    fit: "logarithms",
    zero: atFeet(2.9),
    segments: { breaks: [{ at: atFeet(4.5) }], joined: "apart" },
    referenceDepth: foot.of(1),
  });

  it("are two regressions: R's lm on each part", () => {
    const [lower, upper] = curve.segments;
    expectNear(Math.log(inFeet(lower!.referenceFlow)), 5.75624721013, 1e-10);
    expectNear(lower!.exponent.in(one), 1.05896341821, 1e-10);
    expectNear(Math.log(inFeet(upper!.referenceFlow)), 6.08963408599, 1e-10);
    expectNear(upper!.exponent.in(one), 1.51876576466, 1e-10);
    expect([lower, upper].map((each) => each!.statistics.gaugings)).toEqual([4, 5]);
    const low = curve.bandAt(atFeet(4), { of: "rating" });
    expectNear(inFeet(low.low), 27.6461266099, 1e-9);
    expectNear(inFeet(low.high), 4424.3062971, 1e-9);
    const high = curve.bandAt(atFeet(6), { of: "rating" });
    expectNear(inFeet(high.low), 2345.75617299, 1e-9);
    expectNear(inFeet(high.high), 2580.0773736, 1e-9);
  });

  it("count a gauging at the break to the lower of the two", () => {
    const { segments } = ratingCurve({
      gaugings: river,
      fit: "logarithms",
      zero: atFeet(2.9),
      segments: { breaks: [{ at: atFeet(4.87) }], joined: "apart" },
    });
    expect(segments.map(({ statistics: { gaugings } }) => gaugings)).toEqual([5, 4]);
  });

  it("say how far they step where they meet, and of a flow in the step that no stage has it", () => {
    // By hand: 441.18·1.6^1.51877 over 316.16·1.6^1.05896.
    const step =
      (Math.exp(6.08963408599 - 5.75624721013) * 1.6 ** (1.51876576466 - 1.05896341821) - 1) * 100;
    expect(step).toBeCloseTo(73, 0);
    expect(curve.notices.map(({ code, severity }) => [code, severity])).toEqual([
      ["rating-curve/exponent", "note"],
      ["rating-curve/step", "note"],
    ]);
    expect(curve.notices[1]!.message).toBe(
      "rating curve: at break 1, 4.5 ft over ford, the flow steps by 73 %. Join the segments, or move the break.",
    );
    expect(() => curve.stageAt(cubicFootPerSecond.of(700))).toThrow(
      "rating curve: flow = 700 ft³/s passes at 0 stages, as the segments do not meet. Join them, or read the flow of a stage.",
    );
    expect(curve.stageAt(cubicFootPerSecond.of(2000), told).in(foot)).toBeGreaterThan(4.5);
  });
});
