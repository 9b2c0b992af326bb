/** Shapes of opening whose flow grows with different powers of the head. */
export type NotchShape = "rectangular" | "V-notch" | "Cipolletti";

/**
 * The power of the head in the free flow over a thin plate.
 *
 * @param shape - Shape of the notch.
 * @returns 2.5 for a V-notch, 1.5 for the others.
 */
export function headPower(shape: NotchShape): number {
  return shape === "V-notch" ? 2.5 : 1.5;
}
