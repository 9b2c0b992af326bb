import type { Citation } from "@leat/formula";
import { coverage95, one, type Quantity } from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";

import type { DailyFlows } from "../record/daily-flows.ts";
import { sharedBy } from "../record/flow-of.ts";
import { refusal } from "../record/refusal.ts";

/** What of a stream's flow comes steadily, out of the ground. */
export interface BaseFlow {
  /** Volume of the base flow over that of all flow, on the days that have a base flow. */
  readonly index: Quantity<"ratio">;
  /** Base flow of each day, on the axis of the record, with its offset and scale; a gap where there is none. */
  readonly baseFlow: Column<"volume flow">;
  /** Days that the index rests on. */
  readonly days: number;
  /** Days with a flow that is taken, but no base flow: too near a gap or an end of the record. */
  readonly daysWithout: number;
  /** Whose method it is. */
  readonly source: Citation;
}

/** Base flow of each day, and a mark on the days that have one. */
export interface BaseFlowDays {
  readonly base: Float64Array;
  readonly has: Uint8Array;
}

/**
 * Makes an index of base flows.
 *
 * A scale error of the record cancels in it, and noise averages away; an offset remains: it adds to both volumes.
 *
 * @param where - The public function that asks.
 * @param daily - The record, looked through.
 * @param of - The base flows.
 * @param least - Days in a row that are needed, for the message.
 * @param source - Whose method it is.
 * @returns The index and the column.
 */
export function baseFlowOf(
  where: string,
  daily: DailyFlows,
  of: BaseFlowDays,
  least: string,
  source: Citation,
): BaseFlow {
  const { record, unusable } = daily;
  const { base, has } = of;
  const quality = new Uint8Array(record.length);
  let days = 0;
  let used = 0;
  let baseSum = 0;
  let sum = 0;
  for (let row = 0; row < quality.length; row++) {
    if (((record.quality[row] as number) & unusable) === 0) used++;
    if (has[row] === 0) {
      quality[row] = Quality.gap;
      continue;
    }
    days++;
    baseSum += base[row] as number;
    sum += record.values[row] as number;
  }
  if (!(sum > 0)) {
    throw refusal(
      "record/no-base-flow",
      ["record"],
      `${where}: record has no ${least}, gaps aside, in which anything flows. Give a longer record without gaps.`,
      { actual: `${days} days`, limit: least },
    );
  }
  let index = one.of(baseSum / sum);
  for (const [id, standard] of record.uncertainty?.offset ?? []) {
    const half = one.of((coverage95 * standard * days * (1 - baseSum / sum)) / sum);
    index = index.plusMinus(half, id);
  }
  const { axis } = record;
  return {
    index,
    baseFlow: Column.wrap("volume flow", base, quality, { axis, uncertainty: sharedBy(record) }),
    days,
    daysWithout: used - days,
    source,
  };
}
