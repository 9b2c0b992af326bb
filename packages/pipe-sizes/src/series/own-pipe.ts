import { isQuantity, metre, type Point, type Quantity, QuantityError } from "@leat/quantity";

import { pipeMassPerLength } from "../mass/pipe-mass-per-length.ts";
import type { Pipe, RoughnessRange } from "../pipe.ts";

/** A pipe that no table here holds, as it was measured or as its maker states it. */
export interface OwnPipe {
  /** Outside diameter. */
  readonly outsideDiameter: Quantity<"length">;
  /** Wall, as measured: least and average are taken to be this. */
  readonly wall: Quantity<"length">;
  /** Roughness of the wall: one figure, or a range. */
  readonly roughness: Quantity<"length"> | RoughnessRange;
  /** What it is called. */
  readonly name?: string;
  /** What it is made of. */
  readonly material?: string;
  /** Density of what it is made of, for its weight. */
  readonly density?: Quantity<"density">;
  /** Pressure that its maker states. */
  readonly pressureRating?: Quantity<"pressure">;
  /** Temperature that the maker's pressure is for. */
  readonly ratedAt?: Point<"absolute zero">;
}

/**
 * A pipe of one's own.
 *
 * @param own - Outside diameter, wall and roughness, and what else is known.
 * @returns The pipe; its rating is absent unless it was given.
 * @throws QuantityError `size` where there is no bore left inside the wall.
 */
export function ownPipe(own: OwnPipe): Pipe {
  const { outsideDiameter, wall, roughness, material = "not stated", density } = own;
  const bore = outsideDiameter.minus(wall).minus(wall);
  if (!(bore.in(metre) > 0) || !(wall.in(metre) > 0)) {
    throw new QuantityError(
      "size",
      `own pipe: a wall of ${wall.toString()} in an outside diameter of ${outsideDiameter.toString()} leaves no pipe. Check both.`,
    );
  }
  return {
    name: own.name ?? `pipe of ${outsideDiameter.toString()} with a wall of ${wall.toString()}`,
    series: "own",
    material,
    outsideDiameter,
    minimumWall: wall,
    averageWall: wall,
    insideDiameter: { average: bore, minimumWall: bore },
    massPerLength: density && pipeMassPerLength({ outsideDiameter, wall, density }),
    pressureRating: own.pressureRating,
    ratedAt: own.ratedAt,
    roughness: isQuantity(roughness)
      ? { low: roughness, typical: roughness, high: roughness }
      : roughness,
    source: undefined,
    averageWallSource: undefined,
  };
}
