/**
 * Speed of the pitch circle of a wheel on a jet, on plain numbers in coherent units.
 *
 * @param head - Net head before the nozzle.
 * @param gravity - Gravity at the site.
 * @param speedRatio - Speed of the pitch circle over the velocity of the jet.
 * @param velocityCoefficient - Velocity of the jet over √(2·g·h).
 * @returns The speed.
 */
export function pitchCircleSpeedOf(
  head: number,
  gravity: number,
  speedRatio: number,
  velocityCoefficient: number,
): number {
  return speedRatio * velocityCoefficient * Math.sqrt(2 * gravity * head);
}
