/**
 * Loss of a thin ring or a perforated plate across a pipe, on plain numbers: ((1 − m) + √c·(1 − m)^0.375)²/m².
 *
 * @param open - m, the share of the area that it leaves open, above 0.
 * @param edge - c, what its edge loses on entry: 0.5 sharp, 0.03 well rounded.
 * @returns The coefficient on the velocity head of the whole area.
 */
export function ringLossOf(open: number, edge: number): number {
  const shut = 1 - open;
  const loss = (shut + Math.sqrt(edge) * shut ** 0.375) / open;
  return loss * loss;
}
