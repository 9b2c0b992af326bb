import { NumericsError } from "../numerics-error.ts";
import { normalQuantile } from "../random/normal-quantile.ts";
import { requirePositive, requireProbability } from "../requirement.ts";
import { gammaTails } from "./incomplete-gamma.ts";
import { quantileOf } from "./quantile-of.ts";
import { stirlingRemainder } from "./stirling.ts";

/**
 * The quantile of the gamma distribution of unit scale: the x below which a fraction p of it lies.
 *
 * To ten digits or more. Multiply by the scale for another scale.
 *
 * @param p - Probability below, above 0 and below 1.
 * @param shape - Above zero, whole or not.
 * @returns x, above zero.
 * @throws {@link NumericsError} `bad-argument`: p is not between 0 and 1, the shape is not above zero, or x would
 * be too small to be held; `not-converged` at a shape far above a hundred million.
 * @example
 * ```ts
 * import { gammaQuantile } from "@leat/numerics";
 *
 * // At shape 1 it is the exponential distribution: -ln(1 - p).
 * gammaQuantile(0.5, 1).toFixed(9); // => "0.693147181"
 * ```
 */
export function gammaQuantile(p: number, shape: number): number {
  requireProbability("gammaQuantile", p);
  requirePositive("gammaQuantile", "shape", shape);
  return gammaPoint("gammaQuantile", p, shape);
}

/**
 * The same, for the functions that are a gamma distribution in other words.
 *
 * @param where - The public function that asks.
 * @param p - Probability below.
 * @param shape - Shape.
 * @returns x.
 */
export function gammaPoint(where: string, p: number, shape: number): number {
  // Wilson and Hilferty's guess, where it is above zero; else the first term of the series.
  const ninth = 1 / (9 * shape);
  const cubeRoot = 1 - ninth + normalQuantile(p) * Math.sqrt(ninth);
  const guess =
    cubeRoot > 0.2
      ? Math.log(shape) + 3 * Math.log(cubeRoot)
      : (Math.log(p) + logGammaOfNext(shape)) / shape;
  const least = -700;
  const lower = p <= 0.5;
  const target = lower ? p : 1 - p;
  if (gammaTails(where, shape, Math.exp(least)).lower > p) {
    throw new NumericsError(
      "bad-argument",
      `${where}: at p = ${p} and so small a shape, ${shape}, the quantile is below 1e-304. ` +
        "Ask for a larger p.",
      { where, p, shape },
    );
  }
  return quantileOf(
    (x) => {
      const { lower: below, upper, rise } = gammaTails(where, shape, x);
      return lower ? { side: below, slope: rise } : { side: upper, slope: -rise };
    },
    target,
    guess,
    [least, 700],
  );
}

// ln Γ(x + 1)
function logGammaOfNext(x: number): number {
  return x * (Math.log(x) - 1) + 0.5 * Math.log(2 * Math.PI * x) + stirlingRemainder(x);
}
