import { table } from "@leat/formula";
import { linearCurve } from "@leat/numerics";
import { each, metre, metrePerSecond, percent } from "@leat/quantity";

import { iso748 } from "./sources.ts";

// Standard uncertainties (k = 1), as the edition of 2007 gives them; that of 1997 prints twice as much, at 95 %.

/** Uncertainty of a discharge from the number of verticals alone: what lies between them was not seen. */
export const verticalsUncertainty = /* @__PURE__ */ table(() => ({
  id: "verticals-uncertainty",
  key: "row",
  units: { verticals: each, uncertainty: percent },
  source: iso748.at("annex E, uncertainty by the number of verticals", "secondary"),
  rows: [
    { row: "5", verticals: 5, uncertainty: 7.5 },
    { row: "10", verticals: 10, uncertainty: 4.5 },
    { row: "15", verticals: 15, uncertainty: 3 },
    { row: "20", verticals: 20, uncertainty: 2.5 },
    { row: "25", verticals: 25, uncertainty: 2 },
    { row: "30", verticals: 30, uncertainty: 1.5 },
    { row: "35", verticals: 35, uncertainty: 1 },
    { row: "40", verticals: 40, uncertainty: 1 },
    { row: "45", verticals: 45, uncertainty: 1 },
  ],
}));

/**
 * Uncertainty of the mean velocity of one vertical from the number of points that it is read at.
 *
 * The standard has no row for three points, nor for the surface: three are put on the line between two and five.
 */
export const pointsUncertainty = /* @__PURE__ */ table(() => ({
  id: "points-uncertainty",
  key: "points",
  units: { uncertainty: percent },
  source: iso748.at("annex E, uncertainty by the number of points in the vertical", "secondary"),
  rows: [
    { points: "1", uncertainty: 7.5 },
    { points: "2", uncertainty: 3.5 },
    { points: "5", uncertainty: 2.5 },
    { points: "distribution", uncertainty: 0.5 },
  ],
}));

/**
 * Uncertainty of one reading of velocity from the time that the meter was held there: the current swells and slackens.
 *
 * `upper` is at 0.2, 0.4 or 0.6 of the depth, `lower` at 0.8 or 0.9; the number is minutes.
 */
export const exposureUncertainty = /* @__PURE__ */ table(() => ({
  id: "exposure-uncertainty",
  key: "row",
  units: {
    velocity: metrePerSecond,
    upperHalf: percent,
    upper1: percent,
    upper2: percent,
    upper3: percent,
    lowerHalf: percent,
    lower1: percent,
    lower2: percent,
    lower3: percent,
  },
  source: iso748.at("annex E, uncertainty by the time of exposure", "memory"),
  // oxfmt-ignore
  rows: [
    { row: "0.05", velocity: 0.05, upperHalf: 25, upper1: 20, upper2: 15, upper3: 10, lowerHalf: 40, lower1: 30, lower2: 25, lower3: 20 },
    { row: "0.1", velocity: 0.1, upperHalf: 14, upper1: 11, upper2: 8, upper3: 7, lowerHalf: 17, lower1: 14, lower2: 10, lower3: 8 },
    { row: "0.2", velocity: 0.2, upperHalf: 8, upper1: 6, upper2: 5, upper3: 4, lowerHalf: 9, lower1: 7, lower2: 5, lower3: 4 },
    { row: "0.3", velocity: 0.3, upperHalf: 5, upper1: 4, upper2: 3, upper3: 3, lowerHalf: 5, lower1: 4, lower2: 3, lower3: 3 },
    { row: "0.4", velocity: 0.4, upperHalf: 4, upper1: 3, upper2: 3, upper3: 3, lowerHalf: 4, lower1: 3, lower2: 3, lower3: 3 },
    { row: "0.5", velocity: 0.5, upperHalf: 4, upper1: 3, upper2: 3, upper3: 2, lowerHalf: 4, lower1: 3, lower2: 3, lower3: 2 },
    { row: "1", velocity: 1, upperHalf: 4, upper1: 3, upper2: 3, upper3: 2, lowerHalf: 4, lower1: 3, lower2: 3, lower3: 2 },
    { row: "over 1", upperHalf: 4, upper1: 3, upper2: 3, upper3: 2, lowerHalf: 4, lower1: 3, lower2: 3, lower3: 2 },
  ],
}));

/** Uncertainty of one reading of velocity from the rating of a rotating meter: its own, or that of its make. */
export const meterUncertainty = /* @__PURE__ */ table(() => ({
  id: "meter-uncertainty",
  key: "row",
  units: { velocity: metrePerSecond, individual: percent, group: percent },
  source: iso748.at("annex E, uncertainty of the current-meter rating", "memory"),
  rows: [
    { row: "0.03", velocity: 0.03, individual: 10, group: 10 },
    { row: "0.1", velocity: 0.1, individual: 2.5, group: 5 },
    { row: "0.15", velocity: 0.15, individual: 1.25, group: 2.5 },
    { row: "0.25", velocity: 0.25, individual: 1, group: 2 },
    { row: "0.5", velocity: 0.5, individual: 0.5, group: 1.5 },
    { row: "over 0.5", individual: 0.5, group: 1 },
  ],
}));

/** How many verticals to take, by the width of the water. */
export const verticalsByWidth = /* @__PURE__ */ table(() => ({
  id: "verticals-by-width",
  key: "row",
  units: { width: metre, least: each, most: each },
  source: iso748.at("number of verticals by the width of the channel", "memory"),
  rows: [
    { row: "up to 0.5 m", width: 0.5, least: 5, most: 6 },
    { row: "0.5 m to 1 m", width: 1, least: 6, most: 7 },
    { row: "1 m to 3 m", width: 3, least: 7, most: 12 },
    { row: "3 m to 5 m", width: 5, least: 13, most: 16 },
    { row: "above 5 m", least: 22 },
  ],
}));

/** Fewest verticals for a width in metres. */
export function leastVerticals(width: number): { readonly least: number; readonly row: string } {
  const { rows } = verticalsByWidth.definition;
  return rows.find((row) => !("width" in row) || width <= row.width) as (typeof rows)[number];
}

/**
 * Relative standard uncertainty from the number of verticals.
 *
 * Straight lines between the rows. Below five, which the standard does not know, it goes as one over the number from
 * the first row on; above forty-five the last row stands, which more verticals would only better.
 */
export function uncertaintyOfVerticals(verticals: number): number {
  const { rows } = verticalsUncertainty.definition;
  const first = rows[0] as { verticals: number; uncertainty: number };
  const last = rows.at(-1) as { verticals: number; uncertainty: number };
  if (verticals < first.verticals) return ((first.uncertainty / 100) * first.verticals) / verticals;
  if (verticals >= last.verticals) return last.uncertainty / 100;
  return (
    linearCurve(
      rows.map((row) => row.verticals),
      rows.map((row) => row.uncertainty),
    ).at(verticals) / 100
  );
}

/** Relative standard uncertainty of the mean velocity of a vertical, by the number of points; the surface counts as 1. */
export function uncertaintyOfPoints(points: 1 | 2 | 3): number {
  const of = (key: "1" | "2" | "5"): number => pointsUncertainty.row(key).uncertainty / 100;
  if (points === 3) return of("2") + (of("5") - of("2")) / 3;
  return of(points === 1 ? "1" : "2");
}

/**
 * Standard uncertainty of a reading in m/s, from the time that the meter was held there.
 *
 * Straight lines between rows and columns. Below 0.05 m/s the uncertainty in m/s is that of 0.05 m/s, so that still
 * water is not certain; below half a minute it goes as one over the root of the time; above three minutes the last column stands.
 */
export function uncertaintyOfExposure(
  velocity: number,
  minutes: number,
  part: "upper" | "lower",
): number {
  const { rows } = exposureUncertainty.definition;
  const columns = [`${part}Half`, `${part}1`, `${part}2`, `${part}3`] as const;
  const relative = columns.map((column) => rowOver(rows, (row) => row[column])(velocity));
  const times = [0.5, 1, 2, 3];
  const [shortest, longest] = [0.5, 3];
  return minutes < shortest
    ? (relative[0] as number) * Math.sqrt(shortest / minutes)
    : minutes >= longest
      ? (relative.at(-1) as number)
      : linearCurve(times, relative).at(minutes);
}

/** Standard uncertainty of a reading in m/s, from the rating of the meter. Below 0.03 m/s that of 0.03 m/s stands. */
export function uncertaintyOfMeter(velocity: number, rating: "individual" | "group"): number {
  return rowOver(meterUncertainty.definition.rows, (row) => row[rating])(velocity);
}

/** Uncertainty in m/s over the velocity, from rows in per cent of which the last has no velocity: above them all. */
function rowOver<R extends { readonly velocity?: number }>(
  rows: readonly R[],
  percentOf: (row: R) => number,
): (velocity: number) => number {
  return (velocity) => {
    const speed = Math.abs(velocity);
    const within = rows.filter((row) => row.velocity !== undefined);
    const [slowest, fastest] = [within[0] as R, within.at(-1) as R].map(
      (row) => row.velocity as number,
    ) as [number, number];
    if (speed < slowest) return (percentOf(within[0] as R) / 100) * slowest;
    if (speed > fastest) return (percentOf(rows.at(-1) as R) / 100) * speed;
    const curve = linearCurve(
      within.map((row) => row.velocity as number),
      within.map(percentOf),
    );
    return (curve.at(speed) / 100) * speed;
  };
}
