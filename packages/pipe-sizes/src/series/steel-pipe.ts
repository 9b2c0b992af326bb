import { celsius, inch, poundPerSquareInch } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { steelRoughnessOf } from "../material/steel-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { steelPressureRating } from "../rating/steel-pressure-rating.ts";
import { steelSizes } from "./steel.ts";

/** Sizes of steel pipe, in inches. */
export type SteelSize = ReturnType<typeof steelSizes.keys>[number];

/** Schedules of steel pipe. STD is schedule 40 up to 10 in and 3/8 in of wall above. */
export type SteelSchedule = 40 | 80 | "STD";

/** What the steel is covered with. */
export type SteelFinish = "black" | "galvanised";

/** Yield strength of the weakest pipe that is sold under the standard: grade A, and furnace-welded pipe. */
const leastYieldPsi = 30_000;

/**
 * Steel pipe of a schedule.
 *
 * The nominal wall of steel pipe is its average: friction and weight are worked out with it. The mill may leave an eighth
 * of it out, and the least wall has that off. The rating is at half the yield strength of the weakest steel of the
 * standard over the least wall, without rust: threads cut away a third of a thin wall, and welds are taken as tested.
 *
 * @param size - Nominal size in inches, such as `"1 1/2"`.
 * @param schedule - 40, 80 or `"STD"`.
 * @param finish - Black, as it is rolled, or galvanised, which is rougher and does not rust at first.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function steelPipe(
  size: SteelSize,
  schedule: SteelSchedule,
  finish: SteelFinish = "black",
): Pipe {
  const column = schedule === "STD" ? "STD" : `Sch ${schedule}`;
  const { diameter: outside, wall } = printed([steelSizes], "steel", "in", size, column);
  const least = inch.of(rounded(0.875 * wall, 10_000));
  const rating = steelPressureRating({
    outsideDiameter: inch.of(outside),
    wall: inch.of(wall),
    yieldStrength: poundPerSquareInch.of(leastYieldPsi),
  });
  return {
    name: `${size} in ${finish === "black" ? "" : `${finish} `}steel ${column}`,
    series: "steel",
    material: finish === "black" ? "steel" : "galvanised steel",
    outsideDiameter: inch.of(outside),
    minimumWall: least,
    averageWall: inch.of(wall),
    insideDiameter: {
      average: inch.of(rounded(outside - 2 * wall, 1000)),
      minimumWall: inch.of(rounded(outside - 2 * least.in(inch), 1000)),
    },
    massPerLength: massOf("steel", inch.of(outside), inch.of(wall)),
    // Downwards, to ten: a rating is no more exact than the strength it is worked out with.
    pressureRating: poundPerSquareInch.of(Math.floor(rating.in(poundPerSquareInch) / 10) * 10),
    ratedAt: celsius.at(20),
    roughness: steelRoughnessOf(finish),
    source: steelSizes.definition.source,
    averageWallSource: steelSizes.definition.source,
  };
}
