/** What air is, and how hard it is drawn. */
export interface AirState {
  /** Pressure outside, over vacuum. */
  readonly outside: number;
  /** Density outside. */
  readonly density: number;
  /** Pressure inside over that outside. */
  readonly pressureRatio: number;
}

/** Ratio of the specific heats of air. */
const gamma = 1.4;

/**
 * Volume of outside air that an ideal opening draws a second, over its area: isentropic flow slower than sound.
 *
 * @param air - The air outside, and the pressure inside over that outside: above 0.528.
 * @returns Volume flow at the density outside, over the area.
 */
export function airFluxOf({ outside, density, pressureRatio: r }: AirState): number {
  const work = r ** (2 / gamma) - r ** ((gamma + 1) / gamma);
  return Math.sqrt((((2 * gamma) / (gamma - 1)) * outside * work) / density);
}
