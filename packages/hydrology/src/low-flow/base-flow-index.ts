import { dailyFlows, type DailyRecord, firstMonthOf } from "../record/daily-flows.ts";
import { type BaseFlow, baseFlowOf } from "./base-flow.ts";
import { ihLowFlow } from "./sources.ts";
import { unbrokenRuns } from "./unbroken-runs.ts";

/** Days of a block. */
const block = 5;

/** A block's minimum is a turning point where so much of it is still below both its neighbours. */
const turning = 0.9;

/**
 * Base flow by smoothed minima, and its share of the flow: the base-flow index of the Institute of Hydrology.
 *
 * Blocks of five days follow each other through every unbroken run of days; each has a minimum. A minimum of which
 * nine tenths are below the minima on both sides is a turning point. Straight lines join the turning points; where
 * such a line runs above the flow, the flow itself is the base flow. Days before the first turning point of a run and
 * after its last have no base flow and are left out of both volumes, and so are days of gaps.
 *
 * Where the blocks begin is a matter of where the record begins: the index moves with it by 0.01 or so.
 *
 * @param input - The record, and what of it is taken.
 * @returns The index, the base flow of each day, and how many days there are with and without.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no run of days with two turning points.
 * @throws QuantityError a column of another kind.
 * @example
 * ```ts
 * import { baseFlowIndex } from "@leat/hydrology";
 * import { day, litrePerSecond, one } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // An invented spring of 10 L/s, and a flood of 10 L/s more on every tenth day.
 * const axis = TimeAxis.regular({ start: "2024-01-01", step: day.of(1), count: 60, utcOffset: "+00:00" });
 * const flows = Array.from({ length: 60 }, (_, row) => (row % 10 === 3 ? 20 : 10));
 * const { index } = baseFlowIndex({ record: Column.of(litrePerSecond, flows, { axis }) });
 * index.in(one).toFixed(2); // => "0.92"
 * ```
 * @see WMO, Manual on Low-flow Estimation and Prediction, 2008; Institute of Hydrology, report 108, 1992
 */
export function baseFlowIndex(input: DailyRecord): BaseFlow {
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { values } = daily.record;
  const base = new Float64Array(values.length);
  const has = new Uint8Array(values.length);
  for (const [from, to] of unbrokenRuns(daily)) {
    let before = -1;
    for (const row of turningPoints(values, from, to)) {
      if (before >= 0) draw(values, before, row, base, has);
      before = row;
    }
  }
  return baseFlowOf(
    "base-flow-index",
    daily,
    { base, has },
    "20 days in a row",
    ihLowFlow.at("base-flow index", "secondary"),
  );
}

/** Rows of the block minima that are turning points; a last block that is cut short is left out. */
function turningPoints(values: Float64Array, from: number, to: number): number[] {
  const points: number[] = [];
  const lowest: number[] = [];
  for (let start = from; start + block <= to; start += block) {
    let row = start;
    for (let at = start + 1; at < start + block; at++) {
      if ((values[at] as number) < (values[row] as number)) row = at;
    }
    lowest.push(row);
  }
  for (let at = 1; at < lowest.length - 1; at++) {
    const row = lowest[at] as number;
    const most = turning * (values[row] as number);
    const sides = [lowest[at - 1] as number, lowest[at + 1] as number];
    if (sides.every((side) => most < (values[side] as number))) points.push(row);
  }
  return points;
}

/** Draws the line from one turning point to the next, never above the flow. */
function draw(
  values: Float64Array,
  from: number,
  to: number,
  base: Float64Array,
  has: Uint8Array,
): void {
  const start = values[from] as number;
  const slope = ((values[to] as number) - start) / (to - from);
  for (let row = from; row <= to; row++) {
    base[row] = Math.min(start + slope * (row - from), values[row] as number);
    has[row] = 1;
  }
}
