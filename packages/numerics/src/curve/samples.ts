import { NumericsError } from "../numerics-error.ts";
import { requireFinite } from "../requirement.ts";

/** Checked copies of the samples of a curve, and what can be said of them as a whole. */
export interface Samples {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly range: readonly [number, number];
  readonly trend: "rising" | "falling" | "neither";
}

/**
 * Checks and copies samples: as many ordinates as abscissae, two or more, finite, abscissae strictly increasing.
 *
 * @param where - The public function that asks.
 * @param xs - Abscissae.
 * @param ys - Ordinates.
 * @returns The samples.
 */
export function checkedSamples(
  where: string,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
): Samples {
  const n = xs.length;
  if (n < 2 || ys.length !== n) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${n} abscissae and ${ys.length} ordinates. Pass as many of one as of the other, 2 or more.`,
      { where, abscissae: n, ordinates: ys.length },
    );
  }
  let least = Infinity;
  let most = -Infinity;
  let rising = true;
  let falling = true;
  for (let i = 0; i < n; i++) {
    const x = xs[i]!;
    const y = ys[i]!;
    requireFinite(where, `xs[${i}]`, x);
    requireFinite(where, `ys[${i}]`, y);
    if (y < least) least = y;
    if (y > most) most = y;
    if (i === 0) continue;
    if (!(x > xs[i - 1]!)) {
      throw new NumericsError(
        "not-increasing",
        `${where}: xs[${i}] = ${x} does not exceed xs[${i - 1}] = ${xs[i - 1]}. Sort the samples and merge equal abscissae.`,
        { where, index: i, x, previous: xs[i - 1] },
      );
    }
    if (!(y > ys[i - 1]!)) rising = false;
    if (!(y < ys[i - 1]!)) falling = false;
  }
  const trend = rising ? "rising" : falling ? "falling" : "neither";
  return { xs: Float64Array.from(xs), ys: Float64Array.from(ys), range: [least, most], trend };
}

/**
 * The interval of strictly rising or falling values that holds v, by bisection.
 *
 * @param values - The values, at least two.
 * @param v - A value between the first and the last.
 * @param falling - Whether the values fall.
 * @returns The index where the interval begins, at most `values.length - 2`.
 */
export function intervalOf(values: Float64Array, v: number, falling: boolean): number {
  let low = 0;
  let high = values.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    const m = values[middle]!;
    if (falling ? m >= v : m <= v) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Refuses an abscissa outside the samples.
 *
 * @param where - The public function that asks.
 * @param samples - The samples.
 * @param x - The abscissa.
 */
export function requireInDomain(where: string, samples: Samples, x: number): void {
  const lo = samples.xs[0]!;
  const hi = samples.xs[samples.xs.length - 1]!;
  if (x >= lo && x <= hi) return;
  requireFinite(where, "x", x);
  throw new NumericsError(
    "extrapolation",
    `${where}: x = ${x} is outside the samples, [${lo}, ${hi}]. Add samples that reach it.`,
    { where, x, lo, hi },
  );
}

/**
 * Refuses an ordinate that has no single abscissa.
 *
 * @param where - The public function that asks.
 * @param samples - The samples.
 * @param y - The ordinate.
 */
export function requireInvertible(where: string, samples: Samples, y: number): void {
  if (samples.trend === "neither") {
    throw new NumericsError(
      "not-monotone",
      `${where}: the ordinates neither strictly rise nor strictly fall, so y = ${y} has no single abscissa. ` +
        "Invert a part that does.",
      { where, y },
    );
  }
  const [lo, hi] = samples.range;
  if (y >= lo && y <= hi) return;
  requireFinite(where, "y", y);
  throw new NumericsError(
    "extrapolation",
    `${where}: y = ${y} is outside the samples, [${lo}, ${hi}]. Add samples that reach it.`,
    { where, y, lo, hi },
  );
}
