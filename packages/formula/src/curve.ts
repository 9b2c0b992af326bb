import { monotoneCurve } from "@leat/numerics";

import type { CurveInput } from "./input.ts";

/**
 * A curve input; the body sees a function of numbers in coherent units, monotone between the points.
 *
 * @param x - Kind of the abscissa.
 * @param y - Kind of the ordinate.
 * @param letter - The name by which the body knows it.
 * @returns The input.
 */
export function curve<const X extends string, const Y extends string, const L extends string>(
  x: X,
  y: Y,
  letter: L,
): CurveInput<X, Y, L> {
  return {
    type: "curve",
    x,
    y,
    letter,
    through(xs, ys) {
      const drawn = monotoneCurve(xs, ys);
      return (at) => drawn.at(at);
    },
    optional: false,
    default: undefined,
    because: undefined,
  };
}
