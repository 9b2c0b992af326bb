import { one, type Quantity, QuantityError } from "@leat/quantity";

import { dailyFlows, type DailyRecord, firstMonthOf } from "../record/daily-flows.ts";
import { type BaseFlow, baseFlowOf } from "./base-flow.ts";
import { ladsonBaseFlow } from "./sources.ts";
import { unbrokenRuns } from "./unbroken-runs.ts";

/** What is asked of {@link filteredBaseFlow}. */
export interface FilteredBaseFlowInput extends DailyRecord {
  /** Filter parameter, above 0 and below 1; 0.925 by default. */
  readonly filterParameter?: Quantity<"ratio"> | undefined;
}

/** Days that are mirrored at each end of a run before the filter passes over it. */
const mirrored = 30;

/** Over the run forwards, backwards, forwards. */
const passes = 3;

/**
 * Base flow by the recursive filter of Lyne and Hollick, and its share of the flow: a second opinion on
 * {@link baseFlowIndex}.
 *
 *     f(k) = α·f(k − 1) + (1 + α)/2 · (q(k) − q(k − 1)),   b(k) = q(k) − f(k) where f(k) is above 0, else q(k)
 *
 * The filter passes three times, forwards, backwards and forwards, each time over the base flow b that the pass before
 * left; f begins each pass at zero, so that a flow that never changes is all base flow. (Some begin it with all of the
 * flow: that costs a tenth of the base flow on the first day, and nothing after three months.) Thirty days are
 * mirrored at each end of every unbroken run of days and taken off again; runs of fewer than 31 days have no base flow.
 *
 * It has no physics in it: its parameter was chosen so that what it gives looks like what hydrologists draw. The
 * two indices need not agree; where they do not, neither is known to better than their difference.
 *
 * @param input - The record, what of it is taken, and the filter parameter.
 * @returns The index, the base flow of each day, and how many days there are with and without.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no run of 31 days with flow.
 * @throws QuantityError a column of another kind, a parameter that is not above 0 and below 1.
 * @example
 * ```ts
 * import { filteredBaseFlow } from "@leat/hydrology";
 * import { day, litrePerSecond, one } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // An invented spring of 10 L/s, and a flood of 10 L/s more on every tenth day.
 * const axis = TimeAxis.regular({ start: "2024-01-01", step: day.of(1), count: 60, utcOffset: "+00:00" });
 * const flows = Array.from({ length: 60 }, (_, row) => (row % 10 === 3 ? 20 : 10));
 * const { index } = filteredBaseFlow({ record: Column.of(litrePerSecond, flows, { axis }) });
 * index.in(one).toFixed(2); // => "0.91"
 * ```
 * @see A. R. Ladson and others, A standard approach to baseflow separation, 2013; R. J. Nathan and T. A. McMahon, 1990
 */
export function filteredBaseFlow(input: FilteredBaseFlowInput): BaseFlow {
  const { filterParameter = one.of(0.925) } = input;
  const α = filterParameter["~si"];
  if (filterParameter.kind !== "ratio" || !(α > 0 && α < 1)) {
    throw new QuantityError(
      "kind",
      `filtered-base-flow: filterParameter = ${String(filterParameter)} is not a ratio above 0 and below 1`,
    );
  }
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { values } = daily.record;
  const base = new Float64Array(values.length);
  const has = new Uint8Array(values.length);
  for (const [from, to] of unbrokenRuns(daily)) {
    if (to - from <= mirrored) continue;
    base.set(filtered(values.subarray(from, to), α), from);
    has.fill(1, from, to);
  }
  return baseFlowOf(
    "filtered-base-flow",
    daily,
    { base, has },
    `${mirrored + 1} days in a row`,
    ladsonBaseFlow.at("the filter in three passes", "secondary"),
  );
}

/** Base flow of a run. */
function filtered(run: Float64Array, α: number): Float64Array {
  const days = run.length;
  const flow = new Float64Array(days + 2 * mirrored);
  flow.set(run, mirrored);
  for (let at = 1; at <= mirrored; at++) {
    flow[mirrored - at] = run[at] as number;
    flow[mirrored + days - 1 + at] = run[days - 1 - at] as number;
  }
  for (let pass = 0; pass < passes; pass++) {
    filterOnce(flow, α);
    // After three turns the days stand backwards once more than they should: see below.
    flow.reverse();
  }
  flow.reverse();
  return flow.subarray(mirrored, mirrored + days);
}

/** One pass, from the first day to the last, in place. */
function filterOnce(flow: Float64Array, α: number): void {
  let before = flow[0] as number;
  let quick = 0;
  for (let at = 1; at < flow.length; at++) {
    const q = flow[at] as number;
    quick = α * quick + ((1 + α) / 2) * (q - before);
    flow[at] = quick > 0 ? q - quick : q;
    before = q;
  }
}
