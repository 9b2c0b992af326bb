import type { DailyFlows } from "../record/daily-flows.ts";

/**
 * Runs of days that are all taken.
 *
 * @param daily - The record, looked through.
 * @returns First row of each run, and one after its last.
 */
export function unbrokenRuns({ record, unusable }: DailyFlows): (readonly [number, number])[] {
  const { quality } = record;
  const runs: (readonly [number, number])[] = [];
  let from = -1;
  for (let row = 0; row <= quality.length; row++) {
    const taken = row < quality.length && ((quality[row] as number) & unusable) === 0;
    if (taken && from < 0) from = row;
    if (!taken && from >= 0) {
      runs.push([from, row]);
      from = -1;
    }
  }
  return runs;
}
