import type { Notice } from "@leat/formula";

import { refused } from "../refusal.ts";
import { type CleanReadings } from "./readings.ts";
import { shown } from "./slug-notices.ts";
import type { SumPlan } from "./slug-sum.ts";
import { levelShare, meanIn, type Rows, type SlugWindow } from "./slug-window.ts";

/** A part of a record, in the seconds of its own clock, both ends included. */
export interface TimeSpan {
  /** First second. */
  readonly from: number;
  /** Last second. */
  readonly to: number;
}

/** What a caller may say of where the cloud and its background lie. */
export interface SlugGiven {
  /** What is summed; found by itself where it is left out. */
  readonly window?: TimeSpan | undefined;
  /**
   * Where the background is read. With `after` it is a line from one to the other, without it a constant. Found by itself where
   * it is left out.
   */
  readonly background?:
    | { readonly before: TimeSpan; readonly after?: TimeSpan | undefined }
    | undefined;
}

/** Where the sum and the background are taken, and what is to be told of them. */
export interface SlugPlan extends SumPlan {
  /** Row at which the cloud arrives. */
  readonly arrival: number;
  /** Row at which the background is back. */
  readonly end: number;
  /** Sum that the record ends too early for, S·s/m. */
  readonly missing: number;
  /** What is to be told. */
  readonly notices: readonly Notice[];
}

/**
 * What was found, with what was given in its place.
 *
 * @param name - The name that notices begin with.
 * @param clean - Readings without faults.
 * @param found - What was found, if anything was.
 * @param given - Window and background that are given.
 * @returns Where to sum.
 * @throws NonPhysicalError a part of the record without readings; no background.
 */
export function planSlug(
  name: string,
  clean: CleanReadings,
  found: SlugWindow | undefined,
  { window, background }: SlugGiven,
): SlugPlan {
  const rowsOf = (what: string, span: TimeSpan): Rows => {
    const rows = rowsWithin(clean, span);
    if (rows && rows[1] - rows[0] >= 1) return rows;
    throw refused(
      what.split("."),
      `${name}: ${what}, ${span.from} s to ${span.to} s, holds fewer than two good readings; the record has ${clean.time[clean.first]} s to ${clean.time[clean.last]} s.`,
      { code: "no-readings" },
    );
  };
  const summedRows = window ? rowsOf("window", window) : (found as SlugWindow).summed;
  const notices: Notice[] = [];
  let before: Rows | undefined;
  let after: Rows | undefined;
  let missing = found?.missing ?? 0;
  if (background) {
    before = rowsOf("background.before", background.before);
    after = background.after && rowsOf("background.after", background.after);
  } else if (window) {
    before = atLeastThree(clean.first, summedRows[0] - 1);
    after = found?.falling ? undefined : atLeastThree(summedRows[1] + 1, clean.last);
  } else {
    ({ before, after } = found as SlugWindow);
  }
  // Who ends the sum before the record does, or says where the background is back, has seen to the tail.
  if (background?.after || (window && summedRows[1] < clean.last - 2)) missing = 0;
  if (!before && !after) {
    throw refused(
      ["background"],
      `${name}: the record has no background before the cloud nor after it. Give background, or log from before the throw until it is back.`,
      { code: "no-background" },
    );
  }
  if (found?.cutInFront && !window) {
    notices.push({
      code: "front-missing",
      severity: "stop",
      path: ["conductivity", clean.first],
      message: `${name}: the record begins within the cloud, and nothing tells how much of it is missing. The flow is too great. Log from before the throw.`,
    });
  }
  if (!before) {
    notices.push({
      code: "no-background-before",
      severity: "caution",
      path: ["background", "before"],
      message: `${name}: the record has no background before the cloud; that after it stands in. Switch the logger on before the throw.`,
    });
  }
  if (!background && found && !found.falling && Math.abs(found.left) > levelShare * found.rise) {
    notices.push({
      code: "background-drift",
      severity: "note",
      path: ["conductivity"],
      message: `${name}: the background ends ${shown(Math.abs(found.left))} ${found.left > 0 ? "above" : "below"} where it began, ${((100 * Math.abs(found.left)) / found.rise).toFixed(1)} % of the peak. A line between the two is taken off.`,
      actual: shown(found.left),
      limit: `${100 * levelShare} % of the peak`,
    });
  }
  const slope =
    before && after
      ? (meanIn(clean.values, ...after) - meanIn(clean.values, ...before)) /
        (meanIn(clean.time, ...after) - meanIn(clean.time, ...before))
      : 0;
  for (const [where, rows] of [
    ["before", before],
    ["after", after],
  ] as const) {
    if (!rows || !found || rows[1] - rows[0] < 5) continue;
    const middle = (rows[0] + rows[1] + 1) >> 1;
    const halves = (numbers: Float64Array): number =>
      meanIn(numbers, middle, rows[1]) - meanIn(numbers, rows[0], middle - 1);
    // A steady drift is taken off already.
    const change = halves(clean.values) - slope * halves(clean.time);
    const scatter = 2 * clean.noise * Math.sqrt(4 / (rows[1] - rows[0] + 1));
    if (Math.abs(change) <= Math.max(3 * scatter, 2 * levelShare * found.rise)) continue;
    notices.push({
      code: "background-unsteady",
      severity: "caution",
      path: ["background", where],
      message: `${name}: the background ${where} the cloud changes by ${shown(Math.abs(change))} from its first half to its second. Look at the chart: it may hold a part of the cloud.`,
      actual: shown(change),
      limit: `${200 * levelShare} % of the peak`,
    });
  }
  const [from, to] = summedRows;
  return {
    summed: summedRows,
    before,
    after,
    arrival: Math.min(Math.max(found?.arrival ?? from, from), to),
    end: Math.min(Math.max(found?.end ?? to, from), to),
    missing,
    notices,
  };
}

function atLeastThree(from: number, to: number): Rows | undefined {
  return to - from >= 2 ? [from, to] : undefined;
}

/**
 * Good rows within a span.
 *
 * @param clean - Readings.
 * @param span - Seconds, both ends included.
 * @returns First and last row, or nothing.
 */
export function rowsWithin({ time, first, last }: CleanReadings, span: TimeSpan): Rows | undefined {
  let from = first;
  while (from <= last && (time[from] as number) < span.from) from += 1;
  let to = last;
  while (to >= from && (time[to] as number) > span.to) to -= 1;
  return to >= from ? [from, to] : undefined;
}
