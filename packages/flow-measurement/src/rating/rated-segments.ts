import { NumericsError, normalQuantile, studentQuantile } from "@leat/numerics";
import {
  cubicMetrePerSecond,
  metre,
  one,
  type Point,
  point,
  type Quantity,
  type Sources,
} from "@leat/quantity";

import { refused } from "../refusal.ts";
import { findZero, type ZeroFailure } from "./find-zero.ts";
import { fitPowerLaw, type PowerFit, type RatingFit, weightOf } from "./fit-power-law.ts";
import { type Gauging, gaugingName, type GaugingNumbers } from "./gauging.ts";
import { type PowerLaw, segmentAt } from "./power-law.ts";
import { ratingDischarge } from "./rating-discharge.ts";
import { fitStatistics, type FitStatistics, parameterParts, parameterShift } from "./rating-fit.ts";

/** Gaugings that are fitted together: all of a rating, or those of one segment that stands apart. */
export interface RatedGroup {
  /** What the fit and its sources of uncertainty are called. */
  readonly name: string;
  /** Rows of its gaugings. */
  readonly rows: readonly number[];
  /** Stages at which its segments meet. */
  readonly breaks: readonly Point<"staff zero">[];
  /** Stage of zero flow of each segment; absent where it is to be found. */
  readonly zeros: readonly (Point<"staff zero"> | undefined)[];
  /** Depth at which the flow is a parameter; absent for the mean depth. */
  readonly referenceDepth: Quantity<"length"> | undefined;
}

/** The parameters of a segment, with their uncertainty. */
export interface SegmentParameters {
  /** Stage of zero flow, given or found. */
  readonly zeroFlowStage: Point<"staff zero">;
  /** Depth at which the reference flow passes. */
  readonly referenceDepth: Quantity<"length">;
  /** Flow at the reference depth. */
  readonly referenceFlow: Quantity<"volume flow">;
  /** Power with which the flow rises with the depth. */
  readonly exponent: Quantity<"ratio">;
}

/** A fit of a group. */
export interface GroupFit {
  /** The fit and its statistics. */
  readonly statistics: FitStatistics;
  /** Its segments, lowest first. */
  readonly segments: readonly SegmentParameters[];
  /** Where a stage of zero flow was found: its 95 % interval, an end absent where the gaugings set none. */
  readonly zeroInterval:
    | { readonly low: number | undefined; readonly high: number | undefined }
    | undefined;
}

/**
 * Fits a group of gaugings.
 *
 * @param group - Which, and what is given of it.
 * @param gaugings - All gaugings.
 * @param numbers - The same as numbers.
 * @param by - What is made least.
 * @returns The fit.
 * @throws NonPhysicalError where the gaugings give no rating.
 */
export function fitGroup(
  group: RatedGroup,
  gaugings: readonly Gauging[],
  numbers: GaugingNumbers,
  by: RatingFit,
): GroupFit {
  const { name, rows, zeros } = group;
  const h = Float64Array.from(rows, (row) => numbers.h[row]!);
  const q = Float64Array.from(rows, (row) => numbers.q[row]!);
  const breaks = group.breaks.map((each) => each["~si"]);
  const shares = zeros.map((zero) => zero === undefined);
  const found = shares.includes(true);
  checkGroup(group, gaugings, h, breaks);

  const lawAt = (reference: number, zero: number): PowerLaw => ({
    breaks,
    zeros: zeros.map((each) => each?.["~si"] ?? zero),
    reference,
  });
  const degrees = rows.length - 1 - zeros.length - (found ? 1 : 0);
  let zero = Number.NaN;
  let zeroInterval: GroupFit["zeroInterval"];
  if (found) {
    const t = studentQuantile(0.975, degrees);
    const range = Math.max(...h) - Math.min(...h);
    const search = findZero((z) => lawAt(range, z), shares, h, q, by, 1 + (t * t) / degrees);
    if (typeof search === "string") {
      // Where the flow falls, the search fails as well, and the zero is not what is wrong.
      const rough = statisticsOf(
        name,
        lawAt(range, Math.min(...h) - range),
        h,
        q,
        "logarithms",
        [],
      );
      if (rough.fit.theta.slice(1).every((each) => !(each > 0))) checkRises(name, rough);
      throw noZero(name, search);
    }
    zero = search.best.law.zeros[shares.indexOf(true)]!;
    zeroInterval = { low: search.low, high: search.high };
  }
  // At the mean depth of the lowest segment the flow and the exponent are nearly independent.
  const depths = Array.from(h)
    .filter((stage) => segmentAt(breaks, stage) === 0)
    .map((stage) => Math.log(stage - (zeros[0]?.["~si"] ?? zero)));
  const reference =
    group.referenceDepth?.["~si"] ??
    Math.exp(depths.reduce((sum, each) => sum + each, 0) / depths.length);

  const statistics = statisticsOf(name, lawAt(reference, zero), h, q, by, shares);
  checkRises(name, statistics);
  return {
    statistics,
    segments: segmentsOf(group, gaugings, numbers, q, statistics, zero),
    zeroInterval,
  };
}

function checkGroup(
  { name, rows, zeros }: RatedGroup,
  gaugings: readonly Gauging[],
  h: Float64Array,
  breaks: readonly number[],
): void {
  const counts = zeros.map(() => 0);
  h.forEach((stage, i) => {
    const j = segmentAt(breaks, stage);
    counts[j] = counts[j]! + 1;
    const zero = zeros[j];
    if (zero && !(stage > zero["~si"])) {
      const row = rows[i]!;
      const { stage: read, flow } = gaugings[row]!;
      throw refused(
        ["gaugings", row, "stage"],
        `${name}: ${gaugingName(gaugings, row)}: stage = ${read.toString()} is not above the stage of zero flow, ${zero.toString()}, yet ${flow.toString()} was measured. Correct the row or the zero.`,
        { actual: read.toString(), limit: `above ${zero.toString()}` },
      );
    }
  });
  counts.forEach((count, j) => {
    if (count === 0) {
      throw refused(
        ["segments", "breaks", j === 0 ? 0 : j - 1],
        `${name}: no gauging lies in segment ${j + 1}. Move the break, or measure there.`,
        { actual: "0", limit: "at least 1" },
      );
    }
  });
  const parameters = 1 + zeros.length + (zeros.includes(undefined) ? 1 : 0);
  if (rows.length <= parameters) {
    throw refused(
      ["gaugings"],
      `${name}: ${rows.length} gaugings cannot find ${parameters} parameters and how far they are off. Measure ${parameters + 1} or more${zeros.includes(undefined) ? ", or give zero" : ""}.`,
      { actual: String(rows.length), limit: `at least ${parameters + 1}` },
    );
  }
}

/** Refuses a flow that falls as the stage rises. */
function checkRises(name: string, { fit }: FitStatistics): void {
  fit.theta.slice(1).forEach((exponent, j) => {
    if (exponent > 0) return;
    throw refused(
      ["gaugings"],
      `${name}: the exponent${fit.theta.length > 2 ? ` of segment ${j + 1}` : ""} comes to ${exponent.toPrecision(3)}: by these gaugings the flow does not rise with the stage. Look for stages and flows that were exchanged.`,
      { actual: exponent.toPrecision(3), limit: "above zero" },
    );
  });
}

function noZero(name: string, failure: ZeroFailure): Error {
  const why = {
    "no-lower-end":
      "the further down it is put the better the gaugings fit, as where the flow is an exponential of the stage",
    "at-lowest-stage": "the best place for it is the lowest gauged stage itself",
    "no-minimum": "the squares of the residuals have no clear least",
  }[failure];
  return refused(
    ["zero"],
    `${name}: the gaugings do not tell the stage of zero flow: ${why}. Level it at the control and give it as zero.`,
  );
}

function statisticsOf(
  name: string,
  law: PowerLaw,
  h: Float64Array,
  q: Float64Array,
  by: RatingFit,
  shares: readonly boolean[],
): FitStatistics {
  let fit: PowerFit | undefined;
  try {
    fit = fitPowerLaw(law, h, q, by);
    if (fit) return fitStatistics(fit, by, q, shares);
  } catch (error) {
    if (!(error instanceof NumericsError && error.code === "singular")) throw error;
    throw refused(
      ["gaugings"],
      `${name}: the stages are too few or too much alike to tell its ${law.zeros.length > 1 ? "segments" : "parameters"} apart. Measure at other stages${law.zeros.length > 1 ? ", or leave a break out" : ""}.`,
    );
  }
  throw refused(
    ["fit"],
    `${name}: no least squares of the flows were found. Fit the logarithms instead.`,
    { actual: by, limit: "logarithms" },
  );
}

/** The parameters as quantities: what scatters, what gaugings share, and what is known of a zero that was given. */
function segmentsOf(
  { name, rows, zeros, breaks }: RatedGroup,
  gaugings: readonly Gauging[],
  { staff }: GaugingNumbers,
  q: Float64Array,
  statistics: FitStatistics,
  zero: number,
): SegmentParameters[] {
  const { fit, by, shares } = statistics;
  const m = zeros.length;
  const several = m > 1;
  const shifts = new Map<string, readonly number[]>();
  parameterParts(statistics).forEach((part, k) => {
    const what =
      k === 0 ? "flow" : k <= m ? `exponent${several ? ` ${k}` : ""}` : "stage of zero flow";
    shifts.set(`${name}: ${what}`, part);
  });
  const changes = new Map<string, Float64Array>();
  const change = (id: string, i: number, by1: number): void => {
    const vector = changes.get(id) ?? new Float64Array(rows.length);
    vector[i] = vector[i]! + by1;
    changes.set(id, vector);
  };
  const shared = sharedSources(rows.map((row) => gaugings[row]!));
  rows.forEach((row, i) => {
    const { stage, flow } = gaugings[row]!;
    const weight = weightOf(fit, by, i);
    const j = segmentAt(fit.law.breaks, stage["~si"]);
    const steepness = fit.theta[j + 1]! / (stage["~si"] - fit.law.zeros[j]!);
    flow["~sources"]?.forEach((c, id) => {
      if (shared.has(id)) change(id, i, by === "logarithms" ? c / q[i]! : c);
    });
    stage["~sources"]?.forEach((c, id) => {
      if (shared.has(id)) change(id, i, -weight * steepness * c);
    });
    zeros.forEach((given, k) => {
      const slope = fit.theta[k + 1]! * fit.rows[i]!.dZero[k]!;
      given?.["~sources"]?.forEach((c, id) => change(id, i, -weight * slope * c));
    });
  });
  for (const [id, vector] of changes) shifts.set(id, parameterShift(statistics, vector));

  const spread = <T>(start: T, add: (sum: T, id: string, shift: readonly number[]) => T): T => {
    let sum = start;
    for (const [id, shift] of shifts) sum = add(sum, id, shift);
    return sum;
  };
  const k = normalQuantile(0.975);
  const Q1 = Math.exp(fit.theta[0]!);
  const foundZero = (): Point<"staff zero"> =>
    point(
      "staff zero",
      spread(metre.of(zero), (sum, id, shift) =>
        sum.plus(
          metre
            .of(0)
            .plusMinus(metre.of(k), id)
            .times(shift[m + 1] ?? 0),
        ),
      ),
      staff,
    );
  const shownZero = shares.includes(true) ? foundZero() : undefined;
  const segments: SegmentParameters[] = [];
  zeros.forEach((given, j) => {
    const zeroFlowStage = given ?? shownZero!;
    const exponent = spread(one.of(fit.theta[j + 1]!), (sum, id, shift) =>
      sum.plus(
        one
          .of(0)
          .plusMinus(one.of(k), id)
          .times(shift[j + 1]!),
      ),
    );
    const below = segments.at(-1);
    if (!below) {
      const referenceFlow = spread(cubicMetrePerSecond.of(Q1), (sum, id, shift) =>
        sum.plus(
          cubicMetrePerSecond
            .of(0)
            .plusMinus(cubicMetrePerSecond.of(k), id)
            .times(Q1 * shift[0]!),
        ),
      );
      const referenceDepth = metre.of(fit.law.reference);
      segments.push({ zeroFlowStage, referenceDepth, referenceFlow, exponent });
      return;
    }
    const at = breaks[j - 1]!;
    segments.push({
      zeroFlowStage,
      referenceDepth: at.minus(zeroFlowStage),
      referenceFlow: ratingDischarge({ ...below, stage: at }),
      exponent,
    });
  });
  return segments;
}

/** Sources that more than one gauging has: what differs from one to the next shows in the scatter already. */
function sharedSources(gaugings: readonly Gauging[]): ReadonlySet<string> {
  const once = new Set<string>();
  const twice = new Set<string>();
  for (const { stage, flow } of gaugings) {
    const ids = new Set([...keysOf(stage["~sources"]), ...keysOf(flow["~sources"])]);
    for (const id of ids) (once.has(id) ? twice : once).add(id);
  }
  return twice;
}

function keysOf(sources: Sources | undefined): Iterable<string> {
  return sources?.keys() ?? [];
}
