import type { Notice } from "@leat/formula";
import {
  Column,
  type ColumnUncertainty,
  Quality,
  type SourceOf,
  type TimeAxis,
} from "@leat/quantity/column";

import { dateOf } from "../record/calendar.ts";
import { dailyFlows } from "../record/daily-flows.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import type { FactorTransfer, LineTransfer, Transfer } from "./transfer.ts";
import { contributionsOf } from "./visit-fit.ts";

/** A gauge's record and how it is carried over. */
export interface TransferRecordInput {
  /** Daily flows of the gauge. */
  readonly record: Column<"volume flow">;
  /** From `areaTransfer`, `runoffTransfer`, `scaleByVisits` or `lineThroughVisits`. */
  readonly transfer: Transfer;
}

/** A record of a site that nobody recorded. */
export interface TransferredRecord {
  /** Daily flows of the site: all of them estimated, gaps where the gauge has gaps. */
  readonly record: Column<"volume flow">;
  /** Days on which the gauge was below the flows at the visits; flagged as out of range. */
  readonly below: number;
  /** Days on which it was above them; flagged as out of range. */
  readonly above: number;
  /** Days without a flow. */
  readonly gaps: number;
  /** All that is out of the ordinary, once more for those who took no `onNotice`. */
  readonly notices: readonly Notice[];
}

/** Sources by id, as the scale of a column has them. */
type Scale = Map<string, number>;

/**
 * The record of a gauge, carried to a site.
 *
 * Every day is flagged as estimated; days on which the gauge's flow lies outside the flows at the visits are flagged as out of
 * range too, counted, and told of in one notice. The uncertainty of the transfer is a scale of the column: shared by all days, so
 * that no average makes it smaller. What is wrong with the gauge in proportion to its flow is joined to it source by source, and cancels
 * where the visits saw it too; what is left is given without its sign. A line's uncertainty differs from day to day, least at the
 * mean of the visits: the scale is its root mean square over the days of the record. An offset of the gauge becomes
 * that at the mean of the visits, which is told as a note. How single days scatter is not in it: `scatter` of the fit says.
 *
 * @param input - The gauge's daily record and the transfer.
 * @param options - `onNotice` is told of days outside the visits.
 * @returns The site's record, and its days outside the visits.
 * @throws NonPhysicalError a record that is not daily, a flow below zero, no flow at all: each with its row and date.
 * @example
 * ```ts
 * import { areaTransfer, transferRecord } from "@leat/hydrology";
 * import { day, format, litrePerSecond, percent, squareKilometre } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-06-01", step: day.of(1), count: 3, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, [200, null, 180], { axis });
 * const transfer = areaTransfer({
 *   name: "creek",
 *   area: squareKilometre.of(8),
 *   gaugedArea: squareKilometre.of(10),
 *   spread: percent.of(20),
 * });
 * const site = transferRecord({ record, transfer }).record;
 * const flow = site.at(0);
 * flow ? format(flow, litrePerSecond, { plusMinus: true }) : "a gap"; // => "160 ± 63 L/s (k = 1.96)"
 * site.at(1); // => undefined
 * ```
 */
export function transferRecord(
  { record, transfer }: TransferRecordInput,
  options: NoticeOptions = {},
): TransferredRecord {
  dailyFlows({ record }, 1);
  const { values, quality, axis, length } = record;
  const out = new Float64Array(length);
  const flags = new Uint8Array(length);
  const lowest = transfer.form === "line" || transfer.seen ? seenOf(transfer).lowest : 0;
  const highest =
    transfer.form === "line" || transfer.seen ? seenOf(transfer).highest : Number.POSITIVE_INFINITY;
  let [below, above, gaps] = [0, 0, 0];
  for (let row = 0; row < length; row++) {
    const flag = quality[row] as number;
    const flow = values[row] as number;
    if (flag & Quality.gap) {
      gaps += 1;
      flags[row] = flag;
      continue;
    }
    let outside = 0;
    if (flow < lowest) {
      below += 1;
      outside = Quality.outOfRange;
    } else if (flow > highest) {
      above += 1;
      outside = Quality.outOfRange;
    }
    flags[row] = flag | Quality.estimated | outside;
  }
  const notices: Notice[] = [];
  const uncertainty =
    transfer.form === "factor"
      ? byFactor(record, transfer, out)
      : byLine(record, transfer, out, notices);
  if (below + above > 0) notices.unshift(outsideNotice(record, transfer, { below, above, gaps }));
  for (const notice of notices) options.onNotice?.(notice);
  return {
    record: Column.wrap("volume flow", out, flags, { axis, uncertainty }),
    below,
    above,
    gaps,
    notices,
  };
}

function seenOf({ seen }: Transfer): { readonly lowest: number; readonly highest: number } {
  // A hair for flows that were written in another unit than the visits' day was.
  return {
    lowest: (seen?.lowest["~si"] ?? 0) * (1 - 1e-12),
    highest: (seen?.highest["~si"] ?? 0) * (1 + 1e-12),
  };
}

function byFactor(
  { values, quality, uncertainty }: Column<"volume flow">,
  { factor }: FactorTransfer,
  out: Float64Array,
): ColumnUncertainty {
  const k = factor["~si"];
  for (let row = 0; row < values.length; row++) {
    if (!((quality[row] as number) & Quality.gap)) out[row] = (values[row] as number) * k;
  }
  const scale: Scale = k === 0 ? new Map<string, number>() : new Map(contributionsOf(factor, k));
  join(scale, uncertainty?.scale, 1);
  return {
    scale: Array.from(scale, ([id, standard]) => [id, Math.abs(standard)]),
    offset: times(uncertainty?.offset, k),
    noise: times(uncertainty?.noise, k),
  };
}

function byLine(
  { values, quality, uncertainty }: Column<"volume flow">,
  { slope, flow, gaugedFlow }: LineTransfer,
  out: Float64Array,
  notices: Notice[],
): ColumnUncertainty {
  const [b, level, centre] = [slope["~si"], flow["~si"], gaugedFlow["~si"]];
  let [sum, squares, days] = [0, 0, 0];
  for (let row = 0; row < values.length; row++) {
    const gauge = values[row] as number;
    // No flow at the gauge is no flow at the site, and gaps hold zero.
    if (gauge === 0 || (quality[row] as number) & Quality.gap) continue;
    const x = Math.log(gauge / centre);
    out[row] = level * Math.exp(b * x);
    sum += x;
    squares += x * x;
    days += 1;
  }
  const mean = days > 0 ? sum / days : 0;
  // Never below the square of the mean but by rounding.
  const square = days > 0 ? Math.max(squares / days, mean * mean) : 0;

  // A source moves the logarithm of a day's flow by a + c·x: its level and its slope.
  const levels: Scale = new Map(contributionsOf(flow, level));
  join(levels, [...contributionsOf(gaugedFlow, centre)], -b);
  join(levels, uncertainty?.scale, b);
  const slopes = contributionsOf(slope, 1);
  const given = new Map(uncertainty?.scale);
  const scale: SourceOf[] = [];
  for (const id of new Set([...levels.keys(), ...slopes.keys()])) {
    const [a, c] = [levels.get(id) ?? 0, slopes.get(id) ?? 0];
    // The mean of (a + c·x)², in a form that no rounding makes negative.
    const size = Math.hypot(a + c * mean, c * Math.sqrt(square - mean * mean));
    if (size > cancelled * Math.abs(b * (given.get(id) ?? 0))) scale.push([id, size]);
  }
  const steepness = (b * level) / centre;
  if (uncertainty?.offset?.some(([, standard]) => standard !== 0)) notices.push(offsetNotice());
  return {
    scale,
    offset: times(uncertainty?.offset, steepness),
    noise: times(uncertainty?.noise, steepness),
  };
}

/** What is left of two that cancel is no more than this of either: slopes of formulas are differences, good to seven digits. */
const cancelled = 1e-6;

/** Adds sources to a scale: one that is there already is the same source. */
function join(scale: Scale, sources: readonly SourceOf[] | undefined, factor: number): void {
  for (const [id, standard] of sources ?? []) {
    const sum = (scale.get(id) ?? 0) + standard * factor;
    if (Math.abs(sum) <= cancelled * Math.abs(standard * factor)) scale.delete(id);
    else scale.set(id, sum);
  }
}

function times(sources: readonly SourceOf[] | undefined, factor: number): readonly SourceOf[] {
  return (sources ?? []).map(([id, standard]) => [id, standard * factor]);
}

function outsideNotice(
  { values, quality, axis, length }: Column<"volume flow">,
  transfer: Transfer,
  { below, above, gaps }: { below: number; above: number; gaps: number },
): Notice {
  const { lowest, highest } = seenOf(transfer);
  let first = 0;
  while (
    (quality[first] as number) & Quality.gap ||
    ((values[first] as number) >= lowest && (values[first] as number) <= highest)
  ) {
    first += 1;
  }
  const days = length - gaps;
  const range = `${String(transfer.seen?.lowest)} to ${String(transfer.seen?.highest)}`;
  return {
    code: "transfer/beyond-visits",
    severity: "caution",
    path: ["record", first],
    message: `transfer-record: on ${below + above} of ${days} days the gauge lies outside the flows at the visits, ${range}: ${below} below, ${above} above, first on ${dateOf(axis as TimeAxis, first)}. Those days are guessed; visit the site at such flows.`,
    actual: `${below + above} d`,
    limit: range,
  };
}

function offsetNotice(): Notice {
  return {
    code: "transfer/offset-at-mean",
    severity: "note",
    path: ["transfer"],
    message:
      "transfer-record: the offset of the gauge's record is carried over as it is at the mean of the visits; by a curved relation it is smaller in low water and greater in high water.",
  };
}
