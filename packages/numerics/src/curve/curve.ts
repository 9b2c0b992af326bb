/** A function through samples, on the interval they span and nowhere else. */
export interface Curve {
  /** The first and the last abscissa. */
  readonly domain: readonly [number, number];
  /** The smallest and the largest ordinate. */
  readonly range: readonly [number, number];
  /** Whether the ordinates strictly rise, strictly fall, or neither; an inverse needs one of the first two. */
  readonly trend: "rising" | "falling" | "neither";
  /**
   * The ordinate at x. A sample is returned exactly.
   *
   * @param x - Inside the domain.
   * @returns The ordinate.
   * @throws NumericsError `extrapolation` outside the domain, `non-finite`.
   */
  at(x: number): number;
  /**
   * The slope at x; at a corner the slope to its right, at the last sample the slope to its left.
   *
   * @param x - Inside the domain.
   * @returns The slope.
   * @throws NumericsError `extrapolation` outside the domain, `non-finite`.
   */
  derivative(x: number): number;
  /**
   * The abscissa where the curve has the ordinate y.
   *
   * @param y - Inside the range.
   * @returns The abscissa.
   * @throws NumericsError `not-monotone` where the trend is neither, `extrapolation` outside the range, `non-finite`.
   */
  inverse(y: number): number;
}
