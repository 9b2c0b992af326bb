import { fahrenheit, inch, poundPerSquareInch } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { peDesignStress } from "../material/design-stress.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { insideHoopPressureOf } from "../rating/pe-sidr-pressure-rating.ts";
import { astmSidrPipe } from "../sources.ts";
import type { PeIpsMaterial } from "./pe-ips-pipe.ts";
import { peSidrSizes } from "./pe-sidr.ts";

/** Sizes of PE pipe that is sized by its inside, in inches. */
export type PeSidrSize = ReturnType<typeof peSidrSizes.keys>[number];

/** Standard inside dimension ratios. */
export type PeSidrRatio = 5.3 | 7 | 9 | 11.5 | 15 | 19;

/**
 * PE pipe that is sized by its inside, as it is sold in coils with fittings that are pushed into it.
 *
 * The standard controls the inside, which is the same for every ratio: the average bore is that, and the widest is that
 * with its tolerance, whatever the wall. The average wall is the least and half of its tolerance, which is 12 % or 0.020 in, whichever is more; the outside diameter follows from it. The
 * rating is that of the material named: older coil of the same ratio is sold for a fifth less.
 *
 * @param size - Nominal size in inches, such as `"1 1/2"`.
 * @param sidr - Standard inside dimension ratio: inside diameter over least wall.
 * @param material - PE4710, the one that is sold today, or PE3608, which carries a fifth less.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pePipeSIDR(
  size: PeSidrSize,
  sidr: PeSidrRatio,
  material: PeIpsMaterial = "PE4710",
): Pipe {
  const {
    diameter: inside,
    wall,
    row,
  } = printed([peSidrSizes], "PE sized by its inside", "in", size, `SIDR ${sidr}`);
  const averageWall = rounded(wall + Math.max(0.01, 0.06 * wall), 1000);
  const outside = inch.of(rounded(inside + 2 * averageWall, 1000));
  const stress = peDesignStress.get(material, "at73F").in(poundPerSquareInch);
  return {
    name: `${size} in ${material} SIDR ${sidr}`,
    series: "PE SIDR",
    material,
    outsideDiameter: outside,
    minimumWall: inch.of(wall),
    averageWall: inch.of(averageWall),
    insideDiameter: {
      average: inch.of(inside),
      minimumWall: inch.of(rounded(inside + (row["over"] as number), 1000)),
    },
    massPerLength: massOf(material, outside, inch.of(averageWall)),
    pressureRating: poundPerSquareInch.of(rounded(insideHoopPressureOf(stress, sidr), 1)),
    ratedAt: fahrenheit.at(73),
    roughness: roughnessOf("PE"),
    source: peSidrSizes.definition.source,
    averageWallSource: astmSidrPipe.at("tolerance of the wall", "memory"),
  };
}
