/** A channel with a flat bed and straight banks, in coherent units. */
export interface Channel {
  /** Width of the bed. */
  readonly bed: number;
  /** How far a bank runs back over how far it rises. */
  readonly bank: number;
  /** Manning's number. */
  readonly roughness: number;
  /** Fall over length. */
  readonly slope: number;
  /** The metre and the metre a second in which Manning's equation is written. */
  readonly metre: number;
  readonly metrePerSecond: number;
}

/** Wetted cross-section. */
export function wettedAreaOf(depth: number, { bed, bank }: Channel): number {
  return (bed + bank * depth) * depth;
}

/** Mean velocity by Manning, on plain numbers. */
export function manningVelocityOf(depth: number, channel: Channel): number {
  const { bed, bank, roughness, slope, metre, metrePerSecond } = channel;
  const perimeter = bed + 2 * depth * Math.sqrt(1 + bank * bank);
  const radius = wettedAreaOf(depth, channel) / perimeter;
  return (metrePerSecond / roughness) * (radius / metre) ** (2 / 3) * Math.sqrt(slope);
}
