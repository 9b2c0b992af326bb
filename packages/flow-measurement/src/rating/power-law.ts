/*
 * The rating as numbers in metres and seconds: ln Q = a + Σ bⱼ·gⱼ(h), where gⱼ is the logarithm by which the depth
 * grows within segment j. With one segment g is ln((h − h0)/h1).
 */

/** Where the segments of a rating meet and what their depths are counted from. */
export interface PowerLaw {
  /** Stages at which one segment ends and the next begins, rising; none where there is one segment. */
  readonly breaks: readonly number[];
  /** Stage of zero flow of each segment. */
  readonly zeros: readonly number[];
  /** Depth in the lowest segment at which a is the logarithm of the flow. */
  readonly reference: number;
}

/** What a stage contributes to the equation of each segment. */
export interface PowerRow {
  /** gⱼ of each segment. */
  readonly g: Float64Array;
  /** Change of each gⱼ with the zero of its segment. */
  readonly dZero: Float64Array;
}

/**
 * The segment that a stage lies in; a break belongs to the segment below it.
 *
 * @param breaks - Stages at which segments meet.
 * @param h - The stage.
 * @returns Its index, from the lowest.
 */
export function segmentAt(breaks: readonly number[], h: number): number {
  let j = 0;
  while (j < breaks.length && h > breaks[j]!) j++;
  return j;
}

/**
 * The row of a stage.
 *
 * @param law - The segments.
 * @param h - A stage above the zero of its segment.
 * @returns Logarithms of the growth of depth, and their changes.
 */
export function powerRow({ breaks, zeros, reference }: PowerLaw, h: number): PowerRow {
  const g = new Float64Array(zeros.length);
  const dZero = new Float64Array(zeros.length);
  const last = segmentAt(breaks, h);
  for (let j = 0; j <= last; j++) {
    const depth = (j < last ? breaks[j]! : h) - zeros[j]!;
    const start = j === 0 ? reference : breaks[j - 1]! - zeros[j]!;
    g[j] = Math.log(depth / start);
    dZero[j] = (j === 0 ? 0 : 1 / start) - 1 / depth;
  }
  return { g, dZero };
}

/**
 * a + Σ bⱼ·gⱼ.
 *
 * @param theta - a, then each bⱼ.
 * @param g - gⱼ.
 * @returns The logarithm of the flow.
 */
export function logFlow(theta: ArrayLike<number>, g: Float64Array): number {
  let sum = theta[0]!;
  for (let j = 0; j < g.length; j++) sum += theta[j + 1]! * g[j]!;
  return sum;
}
