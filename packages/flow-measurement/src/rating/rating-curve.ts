import type { Notice } from "@leat/formula";
import { cubicMetrePerSecond, metre, one, type Point, point, type Quantity } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";

import { refused } from "../refusal.ts";
import type { RatingFit } from "./fit-power-law.ts";
import {
  type Gauging,
  type GaugingNumbers,
  gaugingNumbers,
  repeatedGaugings,
  stageNumber,
} from "./gauging.ts";
import { segmentAt } from "./power-law.ts";
import {
  fitGroup,
  type GroupFit,
  type RatedGroup,
  type SegmentParameters,
} from "./rated-segments.ts";
import {
  type FitStatistics,
  outlyingBeyond,
  ratedFlow,
  studentizedResiduals,
} from "./rating-fit.ts";
import { exponentNotices, outlierNotices, stepNotices, zeroNotices } from "./rating-notices.ts";
import {
  bandAtStage,
  flowAtStage,
  flowsOfStages,
  stageAtFlow,
  type RatingState,
} from "./rating-reading.ts";

/** A stage at which the control of a stream changes: from there upward another power of the depth holds. */
export interface RatingBreak {
  /** The stage. */
  readonly at: Point<"staff zero">;
  /** Stage of zero flow that the depth above it is counted from; absent for that of the lowest segment. */
  readonly zero?: Point<"staff zero"> | undefined;
}

/** What a rating curve is made of. */
export interface RatingCurveInput {
  /** Flows that were measured, with their stages, all on one named staff; three or more. */
  readonly gaugings: readonly Gauging[];
  /**
   * What is made least. `logarithms`: squares of ln Q less ln Q of the rating, so that each gauging counts by its
   * relative error. `flows`: squares of Q less Q of the rating, so that the high ones decide.
   */
  readonly fit: RatingFit;
  /** Stage of zero flow, levelled at the control; absent to find the one that fits best. */
  readonly zero?: Point<"staff zero"> | null | undefined;
  /** More than one power of the depth, one above the other. */
  readonly segments?:
    | {
        /** Where they meet, rising. */
        readonly breaks: readonly RatingBreak[];
        /**
         * `continuous`: one fit of all gaugings that has no step. `apart`: a fit for each segment by its own
         * gaugings, three or more, that may have steps; each finds a zero of its own where none is given.
         */
        readonly joined: "continuous" | "apart";
      }
    | undefined;
  /** Depth over the stage of zero flow at which the flow is a parameter; absent for the mean depth gauged. */
  readonly referenceDepth?: Quantity<"length"> | undefined;
  /** Shape of the control, to judge the exponent by. */
  readonly control?: "rectangular" | "parabolic" | "triangular" | undefined;
  /** Names the rating in messages and in its sources of uncertainty; `rating curve` if absent. */
  readonly name?: string | undefined;
}

/** Where notices go. */
export interface RatingOptions {
  /** Told of each; where a stage or a flow lies beyond the gaugings, its absence makes an error of the notice. */
  readonly onNotice?: ((notice: Notice) => void) | undefined;
}

/** A fit and how well it fits. */
export interface RatingStatistics {
  /** Gaugings in it. */
  readonly gaugings: number;
  /** Gaugings less parameters. */
  readonly degreesOfFreedom: number;
  /** R²: the part of the variance of ln Q, or of Q, that the rating explains. */
  readonly determination: number;
  /** Standard error of estimate of ln Q: about the relative scatter of a gauging. Only where logarithms were fitted. */
  readonly relativeStandardError: Quantity<"ratio"> | undefined;
  /** Standard error of estimate of Q. Only where flows were fitted. */
  readonly absoluteStandardError: Quantity<"volume flow"> | undefined;
  /** Names of the parameters as numbers of metres and seconds: `ln Q1`, `b`, `b 2` and so on, `h0` where it was found. */
  readonly parameters: readonly string[];
  /** Their standard errors, k = 1. */
  readonly standardErrors: readonly number[];
  /** Their covariance, a row a parameter. */
  readonly covariance: readonly (readonly number[])[];
}

/** A power of the depth and where it holds. */
export interface RatingSegment extends SegmentParameters {
  /** Stage above which it holds; absent in the lowest. */
  readonly from: Point<"staff zero"> | undefined;
  /** Stage up to which it holds; absent in the highest. */
  readonly to: Point<"staff zero"> | undefined;
  /**
   * Where the stage of zero flow was found: between which stages it lies, 95 %, by the profile of the squares. An end
   * is absent where the gaugings set none: downward the interval is then open, upward it ends at the lowest of them.
   */
  readonly zeroInterval:
    | {
        readonly low: Point<"staff zero"> | undefined;
        readonly high: Point<"staff zero"> | undefined;
      }
    | undefined;
  /** The fit that it belongs to: one for all segments that were joined, else one for each. */
  readonly statistics: RatingStatistics;
}

/** A gauging beside its rating. */
export interface RatedGauging extends Gauging {
  /** Flow of the rating at its stage. */
  readonly rated: Quantity<"volume flow">;
  /** Gauged less rated flow, over the rated. */
  readonly departure: Quantity<"ratio">;
  /**
   * Departure in standard deviations, the gauging left out of them: Student's distribution, one degree of freedom less.
   * Absent where there is nothing to judge it by.
   */
  readonly studentized: number | undefined;
  /** Whether it lies outside the 95 % of a gauging at its stage that the others set: to be looked at, not dropped. */
  readonly outlying: boolean;
}

/** What an interval is asked of. */
export interface BandOptions extends RatingOptions {
  /** `rating`: where the curve itself lies. `gauging`: where one more gauging would fall. */
  readonly of: "rating" | "gauging";
  /** Probability between the ends; 0.95 if absent. */
  readonly confidence?: number | undefined;
}

/** A rating curve. */
export interface RatingCurve {
  /** Its name. */
  readonly name: string;
  /** What was made least. */
  readonly fit: RatingFit;
  /** Its segments, lowest first. */
  readonly segments: readonly RatingSegment[];
  /** The gaugings beside it, in the order that they were given. */
  readonly gaugings: readonly RatedGauging[];
  /** Lowest gauged stage. */
  readonly lowest: Point<"staff zero">;
  /** Highest gauged stage. */
  readonly highest: Point<"staff zero">;
  /** All that was told of when it was made. */
  readonly notices: readonly Notice[];
  /**
   * Flow at a stage. Its uncertainty is that of the rating and of the stage as it was read, source by source; what a
   * single flow departs from the rating by is not in it.
   *
   * @param stage - Level over the zero of the staff.
   * @param options - Where notices go.
   * @returns The flow.
   * @throws NonPhysicalError a stage below that of zero flow; OutOfValidityError a stage beyond the gauged ones where
   * `onNotice` is absent; QuantityError another staff.
   */
  flowAt(stage: Point<"staff zero">, options?: RatingOptions): Quantity<"volume flow">;
  /**
   * Stage at which a flow passes.
   *
   * @param flow - The flow.
   * @param options - Where notices go.
   * @returns The stage.
   * @throws NonPhysicalError a flow below zero, or in the step between two segments; OutOfValidityError a stage beyond
   * the gauged ones where `onNotice` is absent.
   */
  stageAt(flow: Quantity<"volume flow">, options?: RatingOptions): Point<"staff zero">;
  /**
   * Interval at a stage, by Student's distribution. Where logarithms were fitted it is an interval of ln Q, so that
   * its upper part is the longer; where flows were, it is as long either way and may reach below zero.
   *
   * @param stage - Level over the zero of the staff, taken as exact.
   * @param options - Of what, how probable, where notices go.
   * @returns Its ends.
   * @throws As `flowAt`; NumericsError for a confidence that is not between 0 and 1.
   */
  bandAt(
    stage: Point<"staff zero">,
    options: BandOptions,
  ): { readonly low: Quantity<"volume flow">; readonly high: Quantity<"volume flow"> };
  /**
   * Flows of a record of stages. Gaps stay gaps. Rows beyond the gauged stages are flagged as out of range, rows below
   * the stage of zero flow become gaps that are flagged so as well; each sort is counted in a notice.
   *
   * @param stages - Levels over the zero of the same staff.
   * @param options - Where notices go.
   * @returns The flows; parameters and the staff give them one relative uncertainty, that of the median flow.
   * @throws OutOfValidityError rows beyond the gauged stages where `onNotice` is absent.
   */
  flows(stages: Column<"length">, options?: RatingOptions): Column<"volume flow">;
}

/**
 * Fits the rating curve of a stream: its flow as a power of the depth over the stage of zero flow.
 *
 *     Q = Q1·((h − h0)/h1)^b
 *
 * The line is that of Q on h: stages are taken as exact and flows as scattered. The line of h on Q through the same
 * gaugings is another one, with a greater exponent, and is not fitted here. With `fit: "logarithms"` the flow of the
 * rating is the median of what would be gauged at a stage; the mean is exp(s²/2) times it, 0.5 % more at a scatter s
 * of 10 %. Which of the two fits is chosen changes the answer more than that wherever gaugings scatter.
 *
 * Intervals come from the covariance of all parameters that were found, the stage of zero flow among them (Venetis
 * 1970), and from Student's distribution. Uncertainty that several gaugings share, such as a meter's calibration or
 * the zero of the staff, does not show in their scatter: it is carried over from the quantities by source. What each
 * gauging has of its own is in the scatter and is not counted twice.
 *
 * @param input - Gaugings and what is known of the control.
 * @param options - Where notices go; they stand in the answer as well.
 * @returns The curve.
 * @throws NonPhysicalError where the gaugings give no rating, naming the row; QuantityError another kind or staff.
 * @example
 * ```ts
 * import { ratingCurve } from "@leat/flow-measurement";
 * import { format, litrePerSecond, metre, point } from "@leat/quantity";
 *
 * // An invented creek, zero flow levelled at the riffle.
 * const at = (level: number) => point("staff zero", metre.of(level), "staff at the ford");
 * const curve = ratingCurve({
 *   gaugings: [
 *     { stage: at(0.21), flow: litrePerSecond.of(9.2), on: "March" },
 *     { stage: at(0.26), flow: litrePerSecond.of(24.5), on: "April" },
 *     { stage: at(0.34), flow: litrePerSecond.of(67), on: "May" },
 *     { stage: at(0.45), flow: litrePerSecond.of(142), on: "June" },
 *   ],
 *   fit: "logarithms",
 *   zero: at(0.15),
 * });
 * curve.segments[0]!.exponent.toString().slice(0, 4); // => "1.71"
 * curve.flowAt(at(0.3)).in(litrePerSecond).toFixed(0); // => "43"
 * format(curve.bandAt(at(0.3), { of: "rating" }).high, litrePerSecond, 2); // => "47 L/s"
 * ```
 * @see ISO 18320 (docs/sources.md#iso-18320)
 */
export function ratingCurve(input: RatingCurveInput, options: RatingOptions = {}): RatingCurve {
  const { gaugings, fit, name = "rating curve", segments: asked } = input;
  const numbers = gaugingNumbers(name, gaugings);
  checkGiven(name, input, numbers);
  const places = (asked?.breaks ?? []).map(({ at }) => at);
  const groups = groupsOf(name, input, numbers, places);
  const fits = groups.map((group) => fitGroup(group, gaugings, numbers, fit));
  const parameters = fits.flatMap((each) => each.segments);
  checkFound(name, parameters, places);
  const segments = segmentsOf(fits, places, numbers.staff);
  const rated = ratedGaugings(gaugings, groups, fits, numbers);

  const { h, q, staff } = numbers;
  const rows = Array.from(h.keys()).toSorted((a, b) => h[a]! - h[b]!);
  const lowest = gaugings[rows[0]!]!.stage;
  const highest = gaugings[rows.at(-1)!]!.stage;
  const state: RatingState = {
    name,
    staff,
    segments: parameters,
    breaks: places.map((each) => each["~si"]),
    statistics: fits.flatMap((each) => each.segments.map(() => each.statistics)),
    lowest,
    highest,
    leastFlow: Math.min(...q),
    mostFlow: Math.max(...q),
  };
  const notices = [
    ...repeatedGaugings(name, gaugings),
    ...zeroNotices(name, segments),
    ...exponentNotices(name, segments, input.control),
    ...outlierNotices(name, rated),
    ...(asked?.joined === "apart" ? stepNotices(name, parameters, places) : []),
  ];
  for (const notice of notices) options.onNotice?.(notice);
  return {
    name,
    fit,
    segments,
    gaugings: rated,
    lowest,
    highest,
    notices,
    flowAt: (stage, told = {}) => flowAtStage(state, stage, told),
    stageAt: (flow, told = {}) => stageAtFlow(state, flow, told),
    bandAt: (stage, wanted) => bandAtStage(state, stage, wanted),
    flows: (stages, told = {}) => flowsOfStages(state, stages, told),
  };
}

/** Refuses a zero, breaks or a reference that cannot be meant. */
function checkGiven(
  name: string,
  { zero, segments, referenceDepth }: RatingCurveInput,
  { staff }: GaugingNumbers,
): void {
  if (zero) stageNumber(`${name}: zero`, zero, staff);
  let below = -Infinity;
  segments?.breaks.forEach(({ at, zero: own }, i) => {
    const where = `${name}: break ${i + 1}`;
    const h = stageNumber(where, at, staff);
    const counted = own ?? zero;
    if (own) stageNumber(`${where}: zero`, own, staff);
    if (!(h > below)) {
      throw refused(
        ["segments", "breaks", i, "at"],
        `${where}: ${at.toString()} is not above the break before it. Give breaks from the lowest up.`,
        { actual: at.toString(), limit: "above the break before" },
      );
    }
    if (counted && !(h > counted["~si"])) {
      throw refused(
        ["segments", "breaks", i, "at"],
        `${where}: ${at.toString()} is not above the stage of zero flow of the segment that begins there, ${counted.toString()}. Correct one of them.`,
        { actual: at.toString(), limit: `above ${counted.toString()}` },
      );
    }
    below = h;
  });
  if (referenceDepth && !(referenceDepth["~si"] > 0)) {
    throw refused(
      ["referenceDepth"],
      `${name}: referenceDepth = ${referenceDepth.toString()} is not above zero. Give a depth over the stage of zero flow.`,
      { actual: referenceDepth.toString(), limit: "above zero" },
    );
  }
}

/** Refuses a segment whose flow would begin above the stage that it is to be read from. */
function checkFound(
  name: string,
  segments: readonly SegmentParameters[],
  places: readonly Point<"staff zero">[],
): void {
  places.forEach((at, j) => {
    const h0 = segments[j + 1]!.zeroFlowStage["~si"];
    if (!(at["~si"] > h0)) {
      throw refused(
        ["segments", "breaks", j, "at"],
        `${name}: break ${j + 1}: the stage of zero flow that fits the gaugings above it best, ${h0.toFixed(3)} m, is not below ${at.toString()}. Give its zero, or join the segments.`,
        { actual: at.toString() },
      );
    }
  });
}

/** What is fitted together: everything, or each segment by its own gaugings. */
function groupsOf(
  name: string,
  { zero, segments, referenceDepth }: RatingCurveInput,
  { h }: GaugingNumbers,
  places: readonly Point<"staff zero">[],
): RatedGroup[] {
  const zeros = [
    zero ?? undefined,
    ...(segments?.breaks ?? []).map((each) => each.zero ?? zero ?? undefined),
  ];
  const all = Array.from(h.keys());
  if (segments?.joined !== "apart") {
    return [{ name, rows: all, breaks: places, zeros, referenceDepth }];
  }
  const breaks = places.map((each) => each["~si"]);
  return zeros.map((each, j) => ({
    name: `${name}, segment ${j + 1}`,
    rows: all.filter((row) => segmentAt(breaks, h[row]!) === j),
    breaks: [],
    zeros: [each],
    referenceDepth,
  }));
}

/** The segments of all fits, in order, each with where it holds. */
function segmentsOf(
  fits: readonly GroupFit[],
  places: readonly Point<"staff zero">[],
  staff: string,
): RatingSegment[] {
  const stage = (h: number | undefined): Point<"staff zero"> | undefined =>
    h === undefined ? undefined : point("staff zero", metre.of(h), staff);
  return fits
    .flatMap(({ statistics, segments, zeroInterval }) => {
      const shown = shownStatistics(statistics);
      return segments.map((parameters, j) => ({
        ...parameters,
        zeroInterval:
          statistics.shares[j] && zeroInterval
            ? { low: stage(zeroInterval.low), high: stage(zeroInterval.high) }
            : undefined,
        statistics: shown,
      }));
    })
    .map((segment, j) => ({ ...segment, from: places[j - 1], to: places[j] }));
}

function shownStatistics(statistics: FitStatistics): RatingStatistics {
  const { by, scatter, shares, unscaled, fit } = statistics;
  const covariance = unscaled.map((row) => row.map((each) => each * scatter * scatter));
  const exponents = shares.map((_, j) => (j === 0 ? "b" : `b ${j + 1}`));
  return {
    gaugings: fit.rows.length,
    degreesOfFreedom: statistics.degreesOfFreedom,
    determination: statistics.determination,
    relativeStandardError: by === "logarithms" ? one.of(scatter) : undefined,
    absoluteStandardError: by === "flows" ? cubicMetrePerSecond.of(scatter) : undefined,
    parameters: ["ln Q1", ...exponents, ...(shares.includes(true) ? ["h0"] : [])],
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i]!)),
    covariance,
  };
}

/** Each gauging beside the rating of its group. */
function ratedGaugings(
  gaugings: readonly Gauging[],
  groups: readonly RatedGroup[],
  fits: readonly GroupFit[],
  { h, q }: GaugingNumbers,
): RatedGauging[] {
  const rated: RatedGauging[] = [];
  groups.forEach(({ rows }, g) => {
    const { statistics } = fits[g]!;
    const studentized = studentizedResiduals(statistics);
    const beyond = outlyingBeyond(statistics);
    rows.forEach((row, i) => {
      const { flow } = ratedFlow(statistics, h[row]!);
      const off = studentized[i];
      rated[row] = {
        ...gaugings[row]!,
        rated: cubicMetrePerSecond.of(flow),
        departure: one.of(q[row]! / flow - 1),
        studentized: off,
        outlying: off !== undefined && Math.abs(off) > beyond,
      };
    });
  });
  return rated;
}
