import { fahrenheit, inch, poundPerSquareInch } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { peDesignStress } from "../material/design-stress.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { hoopPressureOf } from "../rating/pe-pressure-rating.ts";
import { ppiHandbook } from "../sources.ts";
import { peIpsBetweenSizes } from "./pe-ips-between.ts";
import { peIpsSizes } from "./pe-ips.ts";

/** Sizes of PE pipe in iron pipe sizes, in inches. */
export type PeIpsSize = ReturnType<typeof peIpsSizes.keys>[number];

/** Dimension ratios of PE pipe in iron pipe sizes. */
export type PeIpsRatio = 7 | 7.3 | 9 | 9.3 | 11 | 13.5 | 15.5 | 17 | 21 | 26 | 32.5;

/** Materials of PE pipe in iron pipe sizes. */
export type PeIpsMaterial = "PE4710" | "PE3608";

/**
 * PE pipe in an iron pipe size.
 *
 * The average bore is OD − 2.12·OD/DR, by the handbook's rule that walls are made 6 % over the least.
 *
 * @param size - Nominal size in inches, such as `"1 1/2"`.
 * @param dr - Dimension ratio: outside diameter over least wall.
 * @param material - PE4710, the one that is sold today, or PE3608, which carries a fifth less.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pePipeIPS(
  size: PeIpsSize,
  dr: PeIpsRatio,
  material: PeIpsMaterial = "PE4710",
): Pipe {
  const { diameter: outside, wall } = printed(
    [peIpsSizes, peIpsBetweenSizes],
    "PE in iron pipe sizes",
    "in",
    size,
    `DR ${dr}`,
  );
  const averageWall = inch.of(rounded((1.06 * outside) / dr, 1000));
  const stress = peDesignStress.get(material, "at73F").in(poundPerSquareInch);
  return {
    name: `${size} in ${material} DR ${dr}`,
    series: "PE IPS",
    material,
    outsideDiameter: inch.of(outside),
    minimumWall: inch.of(wall),
    averageWall,
    insideDiameter: {
      average: inch.of(rounded(outside - (2.12 * outside) / dr, 1000)),
      minimumWall: inch.of(rounded(outside - 2 * wall, 1000)),
    },
    massPerLength: massOf(material, inch.of(outside), averageWall),
    pressureRating: poundPerSquareInch.of(rounded(hoopPressureOf(stress, dr), 1)),
    ratedAt: fahrenheit.at(73),
    roughness: roughnessOf("PE"),
    source: (dr === 9.3 || dr === 15.5 ? peIpsBetweenSizes : peIpsSizes).definition.source,
    averageWallSource: ppiHandbook.at(
      "average inside diameter: walls 6 % over the least",
      "secondary",
    ),
  };
}
