/**
 * The straight line through the two points about x, and on beyond the ends: a limit of the formula says where
 * the ends are, and a caller who accepts the extrapolation gets one.
 *
 * @param xs - Abscissae, rising; two or more.
 * @param ys - Ordinates, as many.
 * @param x - Where.
 * @returns The ordinate at x.
 */
export function between(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = 1;
  while (i < xs.length - 1 && x > (xs[i] as number)) i++;
  const [x0, x1, y0, y1] = [
    xs[i - 1] as number,
    xs[i] as number,
    ys[i - 1] as number,
    ys[i] as number,
  ];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
