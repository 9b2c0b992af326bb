/** A screen of tilted wires, in coherent units; angles over one radian. */
export interface TiltedWires {
  /** Clear slot along the screen, before the wires are tilted. */
  readonly slot: number;
  /** Width of the face of a wire. */
  readonly wire: number;
  /** How far the face of a wire is turned out of the screen. */
  readonly tilt: number;
}

/** Step from one slot to the next. */
export function pitchOf({ slot, wire }: TiltedWires): number {
  return slot + wire;
}

/** How far the leading edge of a wire stands into the water, over the trailing edge of the wire before it. */
export function offsetOf({ wire, tilt }: TiltedWires): number {
  return wire * Math.sin(tilt);
}

/** Clear way along the screen from one wire's trailing edge to the next wire's leading edge. */
export function gapOf({ slot, wire, tilt }: TiltedWires): number {
  return slot + wire - wire * Math.cos(tilt);
}

/**
 * Flow through one slot over its length, on plain numbers: the water comes along the screen and is pressed onto it,
 * and the slot is open to the sum of the two, by the angle between that sum and the opening.
 *
 * @param wires - The screen.
 * @param coefficient - Discharge coefficient of the slot.
 * @param energy - Specific energy of the water over the screen, square to it.
 * @param froude - Froude number of the water along the screen.
 * @param gravity - Gravity at the site.
 * @returns Flow over length of slot.
 */
export function slotFlowOf(
  wires: TiltedWires,
  coefficient: number,
  energy: number,
  froude: number,
  gravity: number,
): number {
  // The opening times the sine of the angle at which the water meets it: what is sheared off and what falls through.
  const met =
    (offsetOf(wires) * froude + gapOf(wires) * Math.SQRT2) / Math.sqrt(froude * froude + 2);
  return coefficient * Math.sqrt(2 * gravity * energy) * met;
}
