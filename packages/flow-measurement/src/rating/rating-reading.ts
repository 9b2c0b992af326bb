import { commonPractice, type Notice, OutOfValidityError } from "@leat/formula";
import { studentQuantile } from "@leat/numerics";
import {
  cubicMetrePerSecond,
  isQuantity,
  metre,
  type Point,
  point,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import { Column, type ColumnUncertainty, Quality, type SourceOf } from "@leat/quantity/column";

import { refused } from "../refusal.ts";
import { stageNumber } from "./gauging.ts";
import { segmentAt } from "./power-law.ts";
import type { SegmentParameters } from "./rated-segments.ts";
import type { BandOptions, RatingOptions } from "./rating-curve.ts";
import { ratingDischarge } from "./rating-discharge.ts";
import { type FitStatistics, ratedFlow } from "./rating-fit.ts";
import { ratingStage } from "./rating-stage.ts";

/** A rating that is read: its parameters and what was gauged. */
export interface RatingState {
  /** Its name. */
  readonly name: string;
  /** Its staff. */
  readonly staff: string;
  /** Its segments, lowest first. */
  readonly segments: readonly SegmentParameters[];
  /** Stages at which they meet. */
  readonly breaks: readonly number[];
  /** The fit that each belongs to. */
  readonly statistics: readonly FitStatistics[];
  /** Lowest gauged stage. */
  readonly lowest: Point<"staff zero">;
  /** Highest gauged stage. */
  readonly highest: Point<"staff zero">;
  /** Least gauged flow. */
  readonly leastFlow: number;
  /** Greatest gauged flow. */
  readonly mostFlow: number;
}

/** A rating is carried no further than this times the highest gauged flow, or this part of the lowest. */
const farBeyond = 2;

/** See `RatingCurve.flowAt`. */
export function flowAtStage(
  state: RatingState,
  stage: Point<"staff zero">,
  options: RatingOptions,
): Quantity<"volume flow"> {
  const segment = segmentOf(state, stage);
  const flow = ratingDischarge({ ...segment, stage });
  tell(beyondGauged(state, stage, flow["~si"], ["stage"]), options);
  return flow;
}

/** See `RatingCurve.stageAt`. */
export function stageAtFlow(
  state: RatingState,
  flow: Quantity<"volume flow">,
  options: RatingOptions,
): Point<"staff zero"> {
  const { name, staff, segments, breaks } = state;
  if (!isQuantity(flow) || flow.kind !== "volume flow") {
    throw new QuantityError(
      "kind",
      `${name}: flow = ${String(flow)} is refused: give a volume flow.`,
    );
  }
  const stages = segments
    .map((segment) => ratingStage({ ...segment, flow }))
    .filter((h, j) => segmentAt(breaks, h["~si"]) === j);
  const [stage] = stages;
  if (!stage || stages.length > 1) {
    throw refused(
      ["flow"],
      `${name}: flow = ${flow.toString()} passes at ${stages.length} stages, as the segments do not meet. Join them, or read the flow of a stage.`,
      { actual: flow.toString() },
    );
  }
  const found = point("staff zero", stage, staff);
  tell(beyondGauged(state, found, flow["~si"], ["flow"]), options);
  return found;
}

/** See `RatingCurve.bandAt`. */
export function bandAtStage(
  state: RatingState,
  stage: Point<"staff zero">,
  { of, confidence = 0.95, onNotice }: BandOptions,
): { readonly low: Quantity<"volume flow">; readonly high: Quantity<"volume flow"> } {
  const { zeroFlowStage } = segmentOf(state, stage);
  const h = stage["~si"];
  if (h === zeroFlowStage["~si"]) {
    throw refused(
      ["stage"],
      `${state.name}: stage = ${stage.toString()} is that of zero flow, where there is no interval. Ask above it.`,
      { actual: stage.toString() },
    );
  }
  const statistics = state.statistics[segmentAt(state.breaks, h)]!;
  const { flow, spread } = ratedFlow(statistics, h);
  tell(beyondGauged(state, stage, flow, ["stage"]), { onNotice });
  const { scatter, degreesOfFreedom, by } = statistics;
  const t = studentQuantile((1 + confidence) / 2, degreesOfFreedom);
  const half = t * scatter * Math.sqrt(spread * spread + (of === "gauging" ? 1 : 0));
  const [low, high] =
    by === "logarithms"
      ? [flow * Math.exp(-half), flow * Math.exp(half)]
      : [flow - half, flow + half];
  return { low: cubicMetrePerSecond.of(low), high: cubicMetrePerSecond.of(high) };
}

/** See `RatingCurve.flows`. */
export function flowsOfStages(
  state: RatingState,
  stages: Column<"length">,
  options: RatingOptions,
): Column<"volume flow"> {
  const { name, segments, breaks, lowest, highest } = state;
  if (stages.kind !== "length") {
    throw new QuantityError(
      "column",
      `${name}: stages are a column of ${String(stages.kind)}: give lengths.`,
    );
  }
  const letters = segments.map((each) => ({
    h: 0,
    h0: each.zeroFlowStage["~si"],
    h1: each.referenceDepth["~si"],
    Q1: each.referenceFlow["~si"],
    b: each.exponent["~si"],
  }));
  const { values, length } = stages;
  const out = new Float64Array(length);
  const quality = stages.quality.slice();
  const dry: number[] = [];
  const beyond: number[] = [];
  for (let row = 0; row < length; row++) {
    if (quality[row]! & Quality.gap) continue;
    const h = values[row]!;
    const at = letters[segmentAt(breaks, h)]!;
    if (h < at.h0) {
      dry.push(row);
      quality[row] = quality[row]! | Quality.gap | Quality.outOfRange;
      continue;
    }
    at.h = h;
    out[row] = ratingDischarge.body(at);
    if (h < lowest["~si"] || h > highest["~si"]) {
      beyond.push(row);
      quality[row] = quality[row]! | Quality.outOfRange;
    }
  }
  if (dry.length > 0) {
    const row = dry[0]!;
    const message = `${name}: ${dry.length} of ${length} stages are below that of zero flow, the first being row ${row} with ${values[row]} m. They are gaps in the flows: nothing passed the control, or the staff was misread.`;
    if (!options.onNotice) throw refused(["stages", row], message, { actual: String(values[row]) });
    options.onNotice({
      code: "rating-curve/no-flow",
      severity: "caution",
      path: ["stages", row],
      message,
      actual: String(values[row]),
    });
  }
  if (beyond.length > 0) {
    const row = beyond.reduce((far, each) =>
      distance(state, values[each]!) > distance(state, values[far]!) ? each : far,
    );
    const [notice] = beyondGauged(
      state,
      point("staff zero", metre.of(values[row]!), state.staff),
      out[row]!,
      ["stages", row],
      `in ${beyond.length} of ${length} rows, at worst `,
    );
    tell(notice ? [notice] : [], options);
  }
  const uncertainty = uncertaintyOf(state, stages, out, quality);
  return Column.wrap("volume flow", out, quality, {
    axis: stages.axis,
    ...(uncertainty && { uncertainty }),
  });
}

/** How far a stage lies beyond the gauged ones. */
function distance({ lowest, highest }: RatingState, h: number): number {
  return Math.max(lowest["~si"] - h, h - highest["~si"]);
}

/** The segment of a stage that is on the staff and above its zero. */
function segmentOf(state: RatingState, stage: Point<"staff zero">): SegmentParameters {
  const { name, staff, segments, breaks } = state;
  const h = stageNumber(name, stage, staff);
  const segment = segments[segmentAt(breaks, h)]!;
  const { zeroFlowStage } = segment;
  if (h < zeroFlowStage["~si"]) {
    throw refused(
      ["stage"],
      `${name}: stage = ${stage.toString()} is below that of zero flow, ${zeroFlowStage.toString()}. Nothing passes the control, or the staff was misread.`,
      { actual: stage.toString(), limit: `at least ${zeroFlowStage.toString()}` },
    );
  }
  return segment;
}

/** A notice where a stage lies beyond the gauged ones. */
function beyondGauged(
  { name, lowest, highest, leastFlow, mostFlow }: RatingState,
  stage: Point<"staff zero">,
  flow: number,
  path: Notice["path"],
  rows = "",
): Notice[] {
  const h = stage["~si"];
  const above = h > highest["~si"];
  if (!above && !(h < lowest["~si"])) return [];
  const far = above ? flow > farBeyond * mostFlow : flow * farBeyond < leastFlow;
  const times = (flow / (above ? mostFlow : leastFlow)).toPrecision(2);
  return [
    {
      code: far ? "rating-curve/far-beyond" : "rating-curve/beyond-gaugings",
      severity: "caution",
      path,
      message: `${name}: stage = ${rows}${stage.toString()} is ${above ? "above the highest" : "below the lowest"} gauged, ${String(above ? highest : lowest)}, and its flow ${times} times the ${above ? "greatest" : "least"} gauged.${far ? " A rating is not carried so far: gauge there." : ""}`,
      actual: stage.toString(),
      limit: `${lowest.toString()} to ${highest.toString()}`,
      source: commonPractice.at(
        "a rating is carried to twice the highest and half the lowest flow that was gauged",
        "practice",
      ),
    },
  ];
}

function tell(notices: readonly Notice[], { onNotice }: RatingOptions): void {
  if (notices.length > 0 && !onNotice) throw new OutOfValidityError(notices);
  for (const notice of notices) onNotice?.(notice);
}

/** Uncertainty of the flows at the row whose flow is the median, as a formula over a column has it. */
function uncertaintyOf(
  state: RatingState,
  { values, uncertainty }: Column<"length">,
  out: Float64Array,
  quality: Uint8Array,
): ColumnUncertainty | undefined {
  const rows = Array.from(out.keys())
    .filter((row) => !(quality[row]! & Quality.gap) && out[row]! > 0)
    .toSorted((a, b) => out[a]! - out[b]!);
  const row = rows[Math.floor(rows.length / 2)];
  if (row === undefined) return undefined;
  const h = values[row]!;
  const segment = state.segments[segmentAt(state.breaks, h)]!;
  const flow = ratingDischarge({
    ...segment,
    stage: point("staff zero", metre.of(h), state.staff),
  });
  const scale = new Map<string, number>();
  const add = (id: string, c: number): void => void scale.set(id, (scale.get(id) ?? 0) + c);
  flow["~sources"]?.forEach((c, id) => add(id, c / flow["~si"]));
  const steepness = segment.exponent["~si"] / (h - segment.zeroFlowStage["~si"]);
  for (const [id, c] of uncertainty?.offset ?? []) add(id, steepness * c);
  for (const [id, c] of uncertainty?.scale ?? []) add(id, steepness * c * h);
  const noise = (uncertainty?.noise ?? []).map(([id, c]): SourceOf => [
    id,
    steepness * c * flow["~si"],
  ]);
  return scale.size + noise.length > 0 ? { scale: [...scale], noise } : undefined;
}
