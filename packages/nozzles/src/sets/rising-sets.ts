/** A set of open jets: what it passes, and what it gives. */
export interface SetFigures {
  /** All flow. */
  readonly flow: number;
  /** Power of all jets. */
  readonly power: number;
}

/**
 * The sets worth opening, by rising flow: each gives more power than every set that passes less.
 *
 * Past the greatest power of a pipe a set passes more and gives less; it is in no row.
 *
 * @param sets - Sets of open jets, in any order.
 * @returns Those that are worth it; of two that pass and give the same, the first.
 */
export function risingSets<S extends SetFigures>(sets: readonly S[]): S[] {
  const rows: S[] = [];
  let best = 0;
  for (const set of sets.toSorted((a, b) => a.flow - b.flow || b.power - a.power)) {
    if (!(set.power > best)) continue;
    rows.push(set);
    best = set.power;
  }
  return rows;
}

/**
 * The least share of a flow that is used, over all flows of a range: at each of them the set is open that passes the most of those
 * that it holds up.
 *
 * @param rows - Sets by rising flow.
 * @param low - Least flow that may be taken.
 * @param high - Greatest.
 * @returns The least share, which is met just below the flow of the next set, or at the ends; 0 where no set runs on `low`.
 */
export function leastShareUsed(
  rows: readonly Pick<SetFigures, "flow">[],
  low: number,
  high: number,
): number {
  let share = Number.POSITIVE_INFINITY;
  let runs = 0;
  for (const { flow } of rows) {
    if (flow > high) break;
    // What has run until here ran up to this flow.
    if (flow > low) share = Math.min(share, runs / flow);
    runs = flow;
  }
  return Math.min(share, runs / high);
}
