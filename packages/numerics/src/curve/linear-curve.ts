import type { Curve } from "./curve.ts";
import { checkedSamples, intervalOf, requireInDomain, requireInvertible } from "./samples.ts";

const where = "linearCurve";

/**
 * Straight lines from sample to sample.
 *
 * @param xs - Abscissae, strictly increasing, two or more; copied.
 * @param ys - Ordinates, as many; copied.
 * @returns The curve.
 * @throws {@link NumericsError} `bad-argument`, `non-finite`, `not-increasing`.
 * @example
 * ```ts
 * import { linearCurve } from "@leat/numerics";
 *
 * const curve = linearCurve([0, 1, 3], [0, 10, 50]);
 * curve.at(2); // => 30
 * curve.derivative(2); // => 20
 * curve.inverse(30); // => 2
 * ```
 */
export function linearCurve(xs: ArrayLike<number>, ys: ArrayLike<number>): Curve {
  const samples = checkedSamples(where, xs, ys);
  const { xs: x, ys: y, range, trend } = samples;

  return {
    domain: [x[0]!, x[x.length - 1]!],
    range,
    trend,
    at(at) {
      requireInDomain(where, samples, at);
      const i = intervalOf(x, at, false);
      return between(x[i]!, y[i]!, x[i + 1]!, y[i + 1]!, at);
    },
    derivative(at) {
      requireInDomain(where, samples, at);
      const i = intervalOf(x, at, false);
      return (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
    },
    inverse(of) {
      requireInvertible(where, samples, of);
      const i = intervalOf(y, of, trend === "falling");
      return between(y[i]!, x[i]!, y[i + 1]!, x[i + 1]!, of);
    },
  };
}

// On the line from (x0, y0) to (x1, y1): exact at both ends, since each half is measured from its own end.
function between(x0: number, y0: number, x1: number, y1: number, x: number): number {
  const fraction = (x - x0) / (x1 - x0);
  return fraction < 0.5 ? y0 + fraction * (y1 - y0) : y1 - ((x1 - x) / (x1 - x0)) * (y1 - y0);
}
