/** Where a line of heights turns, by the place of its points. */
export interface TurningPoints {
  /** High points: the line goes down by the depth and more on both sides. */
  readonly high: readonly number[];
  /** Low points: it goes up by the depth and more on both sides. */
  readonly low: readonly number[];
}

/**
 * High and low points of a line, by a depth that counts: a hump or a dip that is less deep is none. The ends are neither.
 *
 * Between two high points there is always a low one. Of several points of one height the first is taken.
 *
 * @param heights - Heights of the points, one after the other.
 * @param depth - How deep a turn must be, above 0.
 * @returns Places of the high and of the low points.
 */
export function turningPointsOf(heights: ArrayLike<number>, depth: number): TurningPoints {
  const high: number[] = [];
  const low: number[] = [];
  let top = 0;
  let bottom = 0;
  let rising: boolean | undefined;
  for (let i = 1; i < heights.length; i += 1) {
    const here = heights[i] as number;
    if (here > (heights[top] as number)) top = i;
    if (here < (heights[bottom] as number)) bottom = i;
    if (rising !== false && here <= (heights[top] as number) - depth) {
      // It has come down far enough: the top before it was one, unless the line begins there.
      if (top > 0) high.push(top);
      rising = false;
      bottom = i;
    } else if (rising !== true && here >= (heights[bottom] as number) + depth) {
      if (bottom > 0) low.push(bottom);
      rising = true;
      top = i;
    }
  }
  return { high, low };
}
