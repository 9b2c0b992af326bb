/** Mean velocity in a round mouth, on plain numbers. */
export function mouthVelocityOf(flow: number, diameter: number): number {
  return (4 * flow) / (Math.PI * diameter * diameter);
}
