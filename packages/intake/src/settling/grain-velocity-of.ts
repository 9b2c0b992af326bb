/** A grain in water, in coherent units. */
export interface Grain {
  /** Excess of its density over that of water. */
  readonly excess: number;
  /** Kinematic viscosity of the water. */
  readonly viscosity: number;
  /** Factor of creeping flow. */
  readonly creeping: number;
  /** Drag coefficient of large grains. */
  readonly drag: number;
  /** Gravity. */
  readonly gravity: number;
}

/** How fast a grain of a size sinks, by Ferguson and Church, on plain numbers. */
export function grainVelocityOf(
  size: number,
  { excess, viscosity, creeping, drag, gravity }: Grain,
): number {
  const pull = excess * gravity;
  return (
    (pull * size * size) / (creeping * viscosity + Math.sqrt(0.75 * drag * pull * size) * size)
  );
}
