import { temperatureFactorOf } from "@leat/pipe-sizes";
import { one, type Point, type Quantity, QuantityError } from "@leat/quantity";

import type { Profile } from "../profile/profile.ts";
import type { GradePoint, ReachPressure } from "./grade-line.ts";

/** What each reach must hold, and what it can. */
export function reachPressures(
  profile: Profile,
  points: readonly GradePoint[],
  water: Point<"absolute zero">,
): ReachPressure[] {
  return profile.reaches.map(({ pipe, first, last }, i) => {
    const here = points.filter(({ reach }) => reach === i);
    const atRest = most(here, ({ restPressure }) => restPressure, 1);
    const temperature = warmestOf(profile, first, last, water);
    const factor = factorOf(pipe, temperature);
    const rating = factor && pipe.pressureRating?.times(factor["~si"]);
    return {
      atRest,
      running: most(here, ({ runningPressure }) => runningPressure, 1),
      least: most(here, ({ runningPressure }) => runningPressure, -1),
      temperature,
      factor,
      rating,
      needs: factor && atRest.dividedBy(factor["~si"]),
      margin: rating?.minus(atRest),
    };
  });
}

/** The greatest of a list, or with −1 the least. */
function most(
  points: readonly GradePoint[],
  of: (point: GradePoint) => Quantity<"pressure">,
  sign: 1 | -1,
): Quantity<"pressure"> {
  return points
    .map(of)
    .reduce((best, next) => (sign * next["~si"] > sign * best["~si"] ? next : best));
}

/** The warmest that a reach gets: its water, or a stretch of it that is known to be warmer. */
function warmestOf(
  { stations, stretches }: Profile,
  first: number,
  last: number,
  water: Point<"absolute zero">,
): Point<"absolute zero"> {
  const from = stations[first]?.distance["~si"] ?? 0;
  const to = stations[last]?.distance["~si"] ?? 0;
  return stretches
    .filter((stretch) => stretch.from["~si"] < to && stretch.to["~si"] > from)
    .reduce(
      (warmest, { warmest: here }) => (here && here["~si"] > warmest["~si"] ? here : warmest),
      water,
    );
}

/** The share of a rating that is left, or nothing where nobody says. */
function factorOf(
  pipe: Profile["reaches"][number]["pipe"],
  temperature: Point<"absolute zero">,
): Quantity<"ratio"> | undefined {
  try {
    return one.of(temperatureFactorOf(pipe, temperature).factor["~si"]);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
