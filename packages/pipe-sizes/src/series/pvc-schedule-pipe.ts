import { fahrenheit, inch, poundPerSquareInch } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { pvcScheduleSizes } from "./pvc-schedule.ts";

/** Sizes of PVC schedule pipe, in inches. */
export type PvcScheduleSize = ReturnType<typeof pvcScheduleSizes.keys>[number];

/** Schedules of PVC pipe. */
export type PvcSchedule = 40 | 80;

/**
 * PVC pipe, schedule 40 or 80, of PVC 1120. The average bore and the rating are those that tables print.
 *
 * @param size - Nominal size in inches, such as `"1 1/2"`.
 * @param schedule - 40 or 80.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pvcPipeSchedule(size: PvcScheduleSize, schedule: PvcSchedule): Pipe {
  const {
    diameter: outside,
    wall,
    row,
  } = printed([pvcScheduleSizes], "PVC by schedule", "in", size, `Sch ${schedule}`);
  const bore = row[`bore ${schedule}`] as number;
  const averageWall = inch.of(rounded((outside - bore) / 2, 10_000));
  return {
    name: `${size} in PVC Sch ${schedule}`,
    series: "PVC schedule",
    material: "PVC 1120",
    outsideDiameter: inch.of(outside),
    minimumWall: inch.of(wall),
    averageWall,
    insideDiameter: {
      average: inch.of(bore),
      minimumWall: inch.of(rounded(outside - 2 * wall, 1000)),
    },
    massPerLength: massOf("PVC", inch.of(outside), averageWall),
    pressureRating: poundPerSquareInch.of(row[`rating ${schedule}`] as number),
    ratedAt: fahrenheit.at(73),
    roughness: roughnessOf("PVC"),
    source: pvcScheduleSizes.definition.source,
    averageWallSource: pvcScheduleSizes.definition.source,
  };
}
