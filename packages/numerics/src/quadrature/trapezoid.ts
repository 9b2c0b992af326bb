import { checkedSamples } from "../curve/samples.ts";
import { requireFinite } from "../requirement.ts";
import { CompensatedSum } from "../sum/compensated-sum.ts";

const where = "trapezoid";

/**
 * The area under straight lines from sample to sample, summed with compensation.
 *
 * There is no error estimate: samples say nothing of what lies between them.
 *
 * @param xs - Abscissae, strictly increasing, two or more.
 * @param ys - Ordinates, as many.
 * @returns The area, in the unit of x times the unit of y.
 * @throws {@link NumericsError} `bad-argument`, `non-finite`, `not-increasing`.
 * @example
 * ```ts
 * import { trapezoid } from "@leat/numerics";
 *
 * trapezoid([0, 1, 3], [0, 2, 2]); // => 5
 * ```
 */
export function trapezoid(xs: ArrayLike<number>, ys: ArrayLike<number>): number {
  const { xs: x, ys: y } = checkedSamples(where, xs, ys);
  const area = new CompensatedSum();
  for (let i = 1; i < x.length; i++) {
    const strip = 0.5 * (y[i - 1]! + y[i]!) * (x[i]! - x[i - 1]!);
    requireFinite(where, "an area", strip);
    area.add(strip);
  }
  return area.value;
}
