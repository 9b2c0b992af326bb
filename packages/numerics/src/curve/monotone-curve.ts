import { newtonInBracket } from "../root/newton-in-bracket.ts";
import type { Curve } from "./curve.ts";
import { checkedSamples, intervalOf, requireInDomain, requireInvertible } from "./samples.ts";

const where = "monotoneCurve";

/**
 * A smooth curve through samples that never overshoots them: piecewise cubic, with a continuous slope.
 *
 * It rises where the samples rise, falls where they fall, and is level where two neighbours are equal; its
 * peaks and troughs are samples. Inner slopes are the weighted harmonic means of Fritsch and Butland; end
 * slopes come from the parabola through three samples, kept within the bounds of Fritsch and Carlson.
 * Two samples give a straight line.
 *
 * @param xs - Abscissae, strictly increasing, two or more; copied.
 * @param ys - Ordinates, as many; copied.
 * @returns The curve.
 * @throws {@link NumericsError} `bad-argument`, `non-finite`, `not-increasing`.
 * @example
 * ```ts
 * import { monotoneCurve } from "@leat/numerics";
 *
 * const curve = monotoneCurve([0, 1, 2], [0, 1, 4]);
 * curve.at(1); // => 1
 * curve.at(1.5); // => 2.1875
 * curve.inverse(2.1875).toFixed(9); // => "1.500000000"
 * ```
 * @see F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17
 * (1980) 238-246; F. N. Fritsch and J. Butland, A method for constructing local monotone piecewise cubic
 * interpolants, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
 */
export function monotoneCurve(xs: ArrayLike<number>, ys: ArrayLike<number>): Curve {
  const samples = checkedSamples(where, xs, ys);
  const { xs: x, ys: y, range, trend } = samples;
  const slopes = monotoneSlopes(x, y);

  const valueIn = (i: number, at: number): number => {
    const h = x[i + 1]! - x[i]!;
    const chord = (y[i + 1]! - y[i]!) / h;
    const d0 = slopes[i]!;
    const d1 = slopes[i + 1]!;
    const bend = d0 + d1 - 2 * chord;
    const forward = at - x[i]!;
    const backward = x[i + 1]! - at;
    // Measured from the nearer sample, so that both are met exactly and not overshot by a rounding.
    if (forward < backward) {
      const t = forward / h;
      return y[i]! + forward * (d0 + t * (3 * chord - 2 * d0 - d1 + t * bend));
    }
    const t = backward / h;
    return y[i + 1]! - backward * (d1 + t * (3 * chord - 2 * d1 - d0 + t * bend));
  };

  const slopeIn = (i: number, at: number): number => {
    const h = x[i + 1]! - x[i]!;
    const chord = (y[i + 1]! - y[i]!) / h;
    const d0 = slopes[i]!;
    const d1 = slopes[i + 1]!;
    const t = (at - x[i]!) / h;
    return d0 + t * (2 * (3 * chord - 2 * d0 - d1) + 3 * t * (d0 + d1 - 2 * chord));
  };

  return {
    domain: [x[0]!, x[x.length - 1]!],
    range,
    trend,
    at(at) {
      requireInDomain(where, samples, at);
      return valueIn(intervalOf(x, at, false), at);
    },
    derivative(at) {
      requireInDomain(where, samples, at);
      return slopeIn(intervalOf(x, at, false), at);
    },
    inverse(of) {
      requireInvertible(where, samples, of);
      const i = intervalOf(y, of, trend === "falling");
      return newtonInBracket(
        (at) => valueIn(i, at) - of,
        (at) => slopeIn(i, at),
        x[i]!,
        x[i + 1]!,
      ).root;
    },
  };
}

// The slope at each sample.
function monotoneSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const slopes = new Float64Array(n);
  let h0 = x[1]! - x[0]!;
  let chord0 = (y[1]! - y[0]!) / h0;
  if (n === 2) return slopes.fill(chord0);

  for (let i = 1; i < n - 1; i++) {
    const h1 = x[i + 1]! - x[i]!;
    const chord1 = (y[i + 1]! - y[i]!) / h1;
    // At a peak, a trough or the edge of a level stretch the slope stays zero.
    if ((chord0 > 0 && chord1 > 0) || (chord0 < 0 && chord1 < 0)) {
      const w0 = 2 * h1 + h0;
      const w1 = h1 + 2 * h0;
      slopes[i] = (w0 + w1) / (w0 / chord0 + w1 / chord1);
    }
    if (i === 1) slopes[0] = endSlope(h0, h1, chord0, chord1);
    if (i === n - 2) slopes[n - 1] = endSlope(h1, h0, chord1, chord0);
    h0 = h1;
    chord0 = chord1;
  }
  return slopes;
}

// The slope at an end from the nearest interval (h0) and the next (h1).
function endSlope(h0: number, h1: number, chord0: number, chord1: number): number {
  const slope = ((2 * h0 + h1) * chord0 - h0 * chord1) / (h0 + h1);
  if (slope > 0 !== chord0 > 0 || chord0 === 0) return 0;
  if (chord0 > 0 !== chord1 > 0 && Math.abs(slope) > 3 * Math.abs(chord0)) return 3 * chord0;
  return slope;
}
