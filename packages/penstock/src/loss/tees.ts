// Losses where flows part and meet, on plain numbers, for a solver: coefficients on the velocity head of the whole flow,
// by the share that goes through the branch and the ratio of the branch's area to that of the run.

/** A branch that stands steeper than this, in degrees, counts as square to the run. */
const square = 75;

/** Ratio of bores above which a square branch is wide. */
const wide = 2 / 3;

/**
 * Loss of the water that turns off into a branch: G·(1 + H·u² − J·u·cos θ), u the speed in the branch over that of the whole flow.
 *
 * @param share - Flow of the branch over the whole flow, 0 to 1.
 * @param areas - Area of the branch over the area of the run, at most 1.
 * @param degrees - Angle of the branch with the run, in degrees.
 * @param cosine - Its cosine.
 * @returns The coefficient on the velocity head of the whole flow.
 */
export function dividingBranchOf(
  share: number,
  areas: number,
  degrees: number,
  cosine: number,
): number {
  const speed = share / areas;
  return (
    dividingScale(share, areas, degrees) *
    (1 + dividingSpeed(areas, degrees) * speed * speed - dividingTurn(degrees) * speed * cosine)
  );
}

/** G, before the bracket. */
export function dividingScale(share: number, areas: number, degrees: number): number {
  if (degrees > square) return areas > wide ? 1 + 0.3 * share * share : 1;
  if (areas > 0.35) return share > 0.6 ? 0.6 : 1 - 0.6 * share;
  return share > 0.4 ? 0.85 : 1.1 - 0.7 * share;
}

/** H, on the square of the speed in the branch: a wide square branch lets it count for less. */
export function dividingSpeed(areas: number, degrees: number): number {
  return degrees > square && areas > wide * wide ? 0.3 : 1;
}

/** J, on the speed in the branch along the run. */
export function dividingTurn(degrees: number): number {
  return degrees > square ? 0 : 2;
}

/**
 * Loss of the water that goes straight on where a branch leaves: M·share².
 *
 * @param share - Flow of the branch over the whole flow, 0 to 1.
 * @param areas - Area of the branch over the area of the run, at most 1.
 * @returns The coefficient on the velocity head of the whole flow; negative where the slower water behind gains head.
 */
export function dividingRunOf(share: number, areas: number): number {
  return dividingRunScale(share, areas) * share * share;
}

/** M, before the square of the share. */
export function dividingRunScale(share: number, areas: number): number {
  if (areas <= 0.4) return 0.4;
  return (share > 0.5 ? 0.3 : 2) * (2 * share - 1);
}

/**
 * Loss of the water that comes in through a branch: C·(1 + u² − 2·(1 − share)² − F/areas·share²).
 *
 * @param share - Flow of the branch over the whole flow, 0 to 1.
 * @param areas - Area of the branch over the area of the run, at most 1.
 * @param twist - F, see {@link branchTwist}.
 * @returns The coefficient on the velocity head of the whole flow; negative where the run drags the branch along.
 */
export function combiningBranchOf(share: number, areas: number, twist: number): number {
  const speed = share / areas;
  const left = 1 - share;
  return (
    combiningScale(share, areas) *
    (1 + speed * speed - 2 * left * left - (twist / areas) * share * share)
  );
}

/** C, before the bracket. */
export function combiningScale(share: number, areas: number): number {
  if (areas <= 0.35) return 1;
  return share > 0.4 ? 0.55 : 0.9 * (1 - share);
}

/**
 * Loss of the water that comes straight on where a branch joins: 1 − (1 − share)² − F/areas·share², and where the branch is square
 * 1.55·share − share².
 *
 * @param share - Flow of the branch over the whole flow, 0 to 1.
 * @param areas - Area of the branch over the area of the run, at most 1.
 * @param degrees - Angle of the branch with the run, in degrees.
 * @param twist - F, see {@link branchTwist}.
 * @returns The coefficient on the velocity head of the whole flow; negative where the branch drives the run.
 */
export function combiningRunOf(
  share: number,
  areas: number,
  degrees: number,
  twist: number,
): number {
  return (
    combiningRunScale(degrees) * share - combiningRunTwist(areas, degrees, twist) * share * share
  );
}

/** What stands before the share. */
export function combiningRunScale(degrees: number): number {
  return degrees > square ? 1.55 : 2;
}

/** What stands before the square of the share. */
export function combiningRunTwist(areas: number, degrees: number, twist: number): number {
  return degrees > square ? 1 : 1 + twist / areas;
}

/**
 * F, what the angle of a branch gives back where flows meet: 1.74 at 30°, 1.41 at 45°, 1 at 60°, 0 at 90°, straight in between.
 *
 * @param degrees - Angle of the branch with the run, 30 to 90 degrees.
 * @returns The factor.
 */
export function branchTwist(degrees: number): number {
  if (degrees <= 45) return 1.74 + ((degrees - 30) / 15) * (1.41 - 1.74);
  if (degrees <= 60) return 1.41 + ((degrees - 45) / 15) * (1 - 1.41);
  return (90 - degrees) / 30;
}
