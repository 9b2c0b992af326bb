import { refusal } from "../record/refusal.ts";

/** A visit as a body sees it. */
export interface LogVisit {
  /** Flow at the site. */
  readonly Qu: number;
  /** Flow at the gauge. */
  readonly Qg: number;
}

/** Sums of the logarithms of visits. Flows are taken over those of the first visit, for a logarithm wants a number. */
export interface LogMoments {
  /** Mean of ln(Qg/Qg of the first). */
  readonly x: number;
  /** Mean of ln(Qu/Qu of the first). */
  readonly y: number;
  /** Sum of the squares of ln Qg about its mean. */
  readonly xx: number;
  /** Sum of the products about both means. */
  readonly xy: number;
  /** Sum of the squares of ln Qu about its mean. */
  readonly yy: number;
}

/**
 * Sums of the logarithms of visits.
 *
 * @param id - Formula that asks, for its messages.
 * @param visits - The visits, flows above zero.
 * @returns The sums.
 * @throws NonPhysicalError for fewer than two visits, and for visits that are all at one flow of the gauge.
 */
export function logMoments(id: string, visits: readonly LogVisit[]): LogMoments {
  const [first] = visits;
  // guard: a test asks for fewer
  if (!first || visits.length < 2) {
    throw refusal(
      "visits/too-few",
      ["visits"],
      `${id}: visits = ${visits.length}, and a line wants two points. Measure at more flows, or scale by a ratio.`,
      { actual: String(visits.length), limit: "at least 2" },
    );
  }
  const n = visits.length;
  let x = 0;
  let y = 0;
  for (const { Qu, Qg } of visits) {
    x += Math.log(Qg / first.Qg);
    y += Math.log(Qu / first.Qu);
  }
  x /= n;
  y /= n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { Qu, Qg } of visits) {
    const dx = Math.log(Qg / first.Qg) - x;
    const dy = Math.log(Qu / first.Qu) - y;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  if (!(xx > 0)) {
    throw refusal(
      "visits/one-flow",
      ["visits"],
      `${id}: all ${n} visits fell on days when the gauge had one and the same flow, and no line goes through one point. Measure at other flows, or scale by a ratio.`,
    );
  }
  return { x, y, xx, xy, yy };
}
