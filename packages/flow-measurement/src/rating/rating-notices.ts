import { cite, type Notice } from "@leat/formula";
import type { Point } from "@leat/quantity";

import { gaugingName } from "./gauging.ts";
import type { SegmentParameters } from "./rated-segments.ts";
import type { RatedGauging, RatingCurveInput, RatingSegment } from "./rating-curve.ts";
import { ratingDischarge } from "./rating-discharge.ts";
import { ratingExponents } from "./rating-exponents.ts";
import { iso18320, nveRatingRegression } from "./sources.ts";

/**
 * A notice where the gaugings do not bound the stage of zero flow that was found.
 *
 * @param name - Name of the rating.
 * @param segments - Its segments.
 * @returns The notices, one a zero.
 */
export function zeroNotices(name: string, segments: readonly RatingSegment[]): Notice[] {
  const told = new Set<RatingSegment["statistics"]>();
  return segments.flatMap(({ zeroFlowStage, zeroInterval, statistics }): Notice[] => {
    if (!zeroInterval || (zeroInterval.low && zeroInterval.high) || told.has(statistics)) return [];
    told.add(statistics);
    const end = zeroInterval.low
      ? "it may as well be the lowest gauged stage"
      : "it may as well be any stage below";
    return [
      {
        code: "rating-curve/zero-undecided",
        severity: "caution",
        path: ["zero"],
        message: `${name}: the stage of zero flow that fits best is ${shownStage(zeroFlowStage["~si"])} over ${String(zeroFlowStage.instance)}, but by these gaugings ${end}. Level it at the control and give it as zero.`,
        actual: zeroFlowStage.toString(),
        source: nveRatingRegression.at("abstract: criteria that the gaugings should meet"),
      },
    ];
  });
}

/** To the millimetre, which no zero is known better than. */
function shownStage(h: number): string {
  return `${h.toFixed(3)} m`;
}

/**
 * A note where an exponent is not one that the shape of the control would give.
 *
 * @param name - Name of the rating.
 * @param segments - Its segments.
 * @param control - Shape of the control; absent for any.
 * @returns The notices.
 */
export function exponentNotices(
  name: string,
  segments: readonly RatingSegment[],
  control: RatingCurveInput["control"],
): Notice[] {
  const { rows, source } = ratingExponents.definition;
  const those = control ? [ratingExponents.row(control)] : rows;
  const low = Math.min(...those.map((row) => row.low));
  const high = Math.max(...those.map((row) => row.high));
  return segments.flatMap(({ exponent }, j): Notice[] => {
    const b = exponent["~si"];
    // The source prints one decimal: 1.298 is its 1.3.
    const printed = Math.round(10 * b) / 10;
    if (printed >= low && printed <= high) return [];
    const of = segments.length > 1 ? ` of segment ${j + 1}` : "";
    return [
      {
        code: "rating-curve/exponent",
        severity: "note",
        path: ["gaugings"],
        message: `${name}: exponent${of} = ${b.toFixed(2)} is ${printed < low ? "below" : "above"} the ${low} to ${high} that ${control ? `a ${control} control has` : "controls have"} (${cite(source)}). Look at the stage of zero flow first: a zero put too ${printed < low ? "high" : "low"} does that.`,
        actual: b.toFixed(2),
        limit: `${low} to ${high}`,
        source,
      },
    ];
  });
}

/**
 * A note for each gauging that lies outside the 95 % that the others set.
 *
 * @param name - Name of the rating.
 * @param gaugings - The gaugings beside the rating.
 * @returns The notices.
 */
export function outlierNotices(name: string, gaugings: readonly RatedGauging[]): Notice[] {
  return gaugings.flatMap(({ outlying, departure, flow }, row): Notice[] => {
    if (!outlying) return [];
    const off = departure["~si"];
    return [
      {
        code: "rating-curve/outlying",
        severity: "note",
        path: ["gaugings", row],
        message: `${name}: ${gaugingName(gaugings, row)}: ${flow.toString()} is ${Math.abs(100 * off).toPrecision(2)} % ${off < 0 ? "below" : "above"} the rating, outside the 95 % that the other gaugings set. One in twenty is so by chance; it is kept, look at it.`,
        actual: flow.toString(),
        source: iso18320.at("gaugings outside the 95 % limits are looked at again", "memory"),
      },
    ];
  });
}

/**
 * A notice for each step between segments that were fitted apart.
 *
 * @param name - Name of the rating.
 * @param segments - Parameters of its segments.
 * @param breaks - Where they meet.
 * @returns The notices.
 */
export function stepNotices(
  name: string,
  segments: readonly SegmentParameters[],
  breaks: readonly Point<"staff zero">[],
): Notice[] {
  return breaks.map((stage, j): Notice => {
    const [below, above] = [segments[j]!, segments[j + 1]!].map(
      (segment) => ratingDischarge({ ...segment, stage })["~si"],
    );
    const step = above! / below! - 1;
    const shown = `${(100 * step).toPrecision(2)} %`;
    return {
      code: "rating-curve/step",
      severity: step < 0 ? "caution" : "note",
      path: ["segments", "breaks", j],
      message: `${name}: at break ${j + 1}, ${stage.toString()}, the flow steps by ${shown}${step < 0 ? ", falling as the stage rises" : ""}. Join the segments, or move the break.`,
      actual: shown,
    };
  });
}
