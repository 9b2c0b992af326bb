import type { Gauging } from "@leat/flow-measurement";
import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  foot,
  metre,
  type Point,
  point,
} from "@leat/quantity";

/** A stage on the staff of the tests, in metres. */
export const at = (level: number): Point<"staff zero"> =>
  point("staff zero", metre.of(level), "ford");

/** A stage on the same staff, in feet. */
export const atFeet = (level: number): Point<"staff zero"> =>
  point("staff zero", foot.of(level), "ford");

/** Gaugings in metres and cubic metres a second. */
export const gaugingsOf = (h: readonly number[], q: readonly number[]): Gauging[] =>
  h.map((level, i) => ({ stage: at(level), flow: cubicMetrePerSecond.of(q[i]!) }));

/** Stages and flows of nine gaugings of a creek, m and m³/s: CIVL 418 Engineering Hydrology, Univ. of British Columbia, notebook 2. */
export const creekStages: readonly number[] = [
  0.236, 0.267, 0.224, 0.707, 0.468, 0.589, 0.296, 0.3, 0.632,
];
export const creekFlows: readonly number[] = [
  1.565, 1.53, 0.967, 5.133, 3.402, 4.474, 1.297, 1.823, 4.682,
];

/**
 * The first nine gaugings of USGS 01541200, West Branch Susquehanna River near Curwensville, 1955-09-29 to
 * 1956-04-23, as the National Water Information System gave them on 2019-03-04, in a copy: ft and ft³/s, public domain.
 */
export const river: readonly Gauging[] = (
  [
    [3.66, 299, "1955-09-29"],
    [3.46, 202, "1955-10-10"],
    [6.77, 3490, "1955-11-17"],
    [3.64, 193, "1955-12-18"],
    [3.52, 152, "1956-01-11"],
    [4.87, 1280, "1956-02-15"],
    [8.94, 6750, "1956-03-08"],
    [5.05, 1410, "1956-03-27"],
    [5.08, 1380, "1956-04-23"],
  ] as const
).map(([stage, flow, on]) => ({ stage: atFeet(stage), flow: cubicFootPerSecond.of(flow), on }));
