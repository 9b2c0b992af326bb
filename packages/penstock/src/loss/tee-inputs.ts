// What the four formulas of branches share: their limits.

import { bound, firstPrinciples, type Limit, range, ratio } from "@leat/formula";
import { degree } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";

interface Letters {
  readonly d: number;
  readonly D: number;
  readonly θ: number;
  readonly deg: number;
}

/** Limits of every branch: no wider than the run, no more than all the flow. */
export const branchLimits = (): readonly Limit<
  "branchFlow" | "flow" | "branchBore" | "insideDiameter"
>[] => [
  ratio("branchFlow", "flow", { max: 1 }, firstPrinciples.at("a part is no more than the whole")),
  ratio(
    "branchBore",
    "insideDiameter",
    { max: 1 },
    craneTp410.at("ch. 2, tees and wyes", "secondary"),
  ),
];

/** Limits of the angle: 30° to 60°, or square. */
export const angleLimits = (): readonly Limit<"branchAngle">[] => [
  range(
    "branchAngle",
    { min: degree.of(30), max: degree.of(90) },
    craneTp410.at("ch. 2, tees and wyes", "secondary"),
  ),
  bound(
    "branchAngle",
    "the angle lies between 60° and 90°, for which nothing is printed: degrees from the nearer of the two",
    ({ θ, deg }: Letters) => between(θ / deg, 60, 90),
    { max: 0 },
    craneTp410.at("ch. 2, tees and wyes", "secondary"),
  ),
];

/** A square branch is as wide as the run, or two thirds of it and less. */
export const squareLimit = (): Limit<"branchBore"> =>
  bound(
    "branchBore",
    "a square branch is between two thirds of the run and all of it, for which nothing is printed: ratio from the nearer of the two",
    ({ d, D, θ, deg }: Letters) => (θ / deg > 75 ? between(d / D, 2 / 3, 1) : 0),
    { max: 0 },
    craneTp410.at("ch. 2, table of H and J", "secondary"),
  );

/** How far a number lies inside a gap, from the nearer end; 0 at an end, a rounding error aside, and outside. */
function between(n: number, low: number, high: number): number {
  const inside = Math.min(n - low, high - n);
  return inside > 1e-9 ? inside : 0;
}
