import type { Notice } from "@leat/formula";
import { type AnyQuantity, isQuantity, type Quantity, QuantityError } from "@leat/quantity";
import { type Column, Quality, TimeAxis } from "@leat/quantity/column";

import { dailyCalendar, dateOf } from "../record/calendar.ts";
import { refusal } from "../record/refusal.ts";
import type { SeenFlows } from "./transfer.ts";

/** A flow that was measured at the site. */
export interface Visit {
  /** When, on the clock of the gauge's record: `2024-08-31` or `2024-08-31T10:40`. */
  readonly at: string;
  /** What was measured, with its uncertainty where it is known. */
  readonly flow: Quantity<"volume flow">;
}

/** A visit on a day that the gauge has. */
export interface PairedVisit extends Visit {
  /** Its row in the list of visits, from 0. */
  readonly visit: number;
  /** Row of the gauge's record. */
  readonly row: number;
  /** Flow at the gauge on that day, with the uncertainty of its record. */
  readonly gaugedFlow: Quantity<"volume flow">;
}

/** A visit that says nothing of the gauge, and why. */
export interface UnpairedVisit extends Visit {
  /** Its row in the list of visits, from 0. */
  readonly visit: number;
  /** What keeps it out. */
  readonly why:
    | "before the record"
    | "after the record"
    | "gap"
    | "no flow at the gauge"
    | "no flow at the site";
}

/** Visits and what the gauge had on the same days. */
export interface PairedVisits {
  /** Visits on recorded days, in the order given. */
  readonly pairs: readonly PairedVisit[];
  /** The others: none is dropped without a word. */
  readonly unpaired: readonly UnpairedVisit[];
  /** One notice for those, where there are any. */
  readonly notices: readonly Notice[];
}

/** Visits to a site and the record of a gauge. */
export interface VisitsInput {
  /** Flows measured at the site. */
  readonly visits: readonly Visit[];
  /** Daily flows of the gauge. */
  readonly record: Column<"volume flow">;
}

const daySeconds = 86_400;

/**
 * The gauge's flow on the day of each visit.
 *
 * @param input - Visits and the gauge's daily record.
 * @returns The pairs, the visits that have none, and why.
 * @throws NonPhysicalError a record without daily dates; a measured flow below zero, named by its row.
 * @throws QuantityError `time` for a date that is none, `kind` for a visit's flow that is none.
 * @example
 * ```ts
 * import { pairVisits } from "@leat/hydrology";
 * import { day, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-06-01", step: day.of(1), count: 3, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, [200, null, 180], { axis });
 * const visits = ["2024-06-01", "2024-06-02T09:30", "2024-06-03"].map((at) => ({ at, flow: litrePerSecond.of(20) }));
 * const { pairs, unpaired } = pairVisits({ visits, record });
 * pairs.map(({ visit, row }) => [visit, row]); // => [[0, 0], [2, 2]]
 * unpaired.map(({ visit, why }) => [visit, why]); // => [[1, "gap"]]
 * ```
 */
export function pairVisits({ visits, record }: VisitsInput): PairedVisits {
  dailyCalendar(record, 1);
  const axis = record.axis as TimeAxis;
  const pairs: PairedVisit[] = [];
  const unpaired: UnpairedVisit[] = [];
  for (const [visit, { at, flow }] of visits.entries()) {
    requireFlow(flow, visit);
    const row = rowOf(axis, at);
    const gaugedFlow = row >= 0 && row < record.length ? record.at(row) : undefined;
    const why =
      row < 0
        ? "before the record"
        : row >= record.length
          ? "after the record"
          : (record.quality[row] as number) & Quality.gap
            ? "gap"
            : (record.values[row] as number) > 0
              ? undefined
              : "no flow at the gauge";
    if (why === undefined && gaugedFlow) pairs.push({ visit, at, flow, row, gaugedFlow });
    else if (why) unpaired.push({ visit, at, flow, why });
  }
  return {
    pairs,
    unpaired,
    notices: unpaired.length > 0 ? [unpairedNotice(unpaired, visits)] : [],
  };
}

function unpairedNotice(unpaired: readonly UnpairedVisit[], visits: readonly Visit[]): Notice {
  const named = unpaired.map(({ visit, at, why }) => `visit ${visit}, ${at} (${why})`).join("; ");
  return {
    code: "visits/not-on-record",
    severity: "caution",
    path: ["visits"],
    message: `pair-visits: ${unpaired.length} of ${visits.length} visits have no flow of the gauge to stand beside and are left out: ${named}. Ask the gauge's owner for those days, or choose another gauge.`,
    actual: String(unpaired.length),
    limit: "0",
  };
}

/** The row of the day of a visit; −1 before the record, its length after it. */
function rowOf(axis: TimeAxis, at: string): number {
  const after = axis.indexAtOrAfter(at);
  const onDate = after < axis.length && dateOf(axis, after) === at.slice(0, 10);
  // A date without a time is the row of that date, whatever time of day the rows are stamped with.
  if (at.length === 10 || (onDate && secondsOf(at) === axis.secondsAt(after))) {
    return onDate ? after : after === 0 ? -1 : axis.length;
  }
  const row = after - 1;
  if (row < 0) return -1;
  return secondsOf(at) < axis.secondsAt(row) + daySeconds ? row : axis.length;
}

function secondsOf(at: string): number {
  return TimeAxis.irregular([at], { utcOffset: "+00:00" }).secondsAt(0);
}

/**
 * Refuses a measured flow that is none.
 *
 * @param flow - What was given.
 * @param visit - Row in the list of visits.
 */
export function requireFlow(flow: Quantity<"volume flow">, visit: number): void {
  if (!isQuantity(flow) || flow.kind !== "volume flow") {
    throw new QuantityError(
      "kind",
      `visits: visit ${visit} has ${isQuantity(flow) ? `${flow.toString()} (${(flow as AnyQuantity).kind})` : String(flow)} for its flow; give a volume flow (such as 1 L/s)`,
    );
  }
  if (flow["~si"] < 0) {
    throw refusal(
      "visits/below-zero",
      ["visits", visit, "flow"],
      `visits: visit ${visit} has a flow of ${flow.toString()}, below zero. Check its sign.`,
      { actual: flow.toString(), limit: "at least 0" },
    );
  }
}

/**
 * The range of the gauge's flows at the visits.
 *
 * @param pairs - One or more.
 * @returns The least and the greatest.
 */
export function seenFlows(pairs: readonly PairedVisit[]): SeenFlows {
  let [lowest, highest] = [pairs[0] as PairedVisit, pairs[0] as PairedVisit];
  for (const pair of pairs) {
    if (pair.gaugedFlow["~si"] < lowest.gaugedFlow["~si"]) lowest = pair;
    if (pair.gaugedFlow["~si"] > highest.gaugedFlow["~si"]) highest = pair;
  }
  return { lowest: lowest.gaugedFlow, highest: highest.gaugedFlow };
}
