import { table } from "@leat/formula";
import { bar, celsius, millimetre, QuantityError } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { iso11922, iso4427 } from "../sources.ts";
import { peIsoThinSizes } from "./pe-iso-thin.ts";
import { peIsoSizes } from "./pe-iso.ts";

/** Sizes of metric PE pipe: outside diameters in millimetres. */
export type PeIsoSize = ReturnType<typeof peIsoSizes.keys>[number];

/** Standard dimension ratios of metric PE pipe. */
export type PeIsoRatio = 6 | 7.4 | 9 | 11 | 13.6 | 17 | 21 | 26 | 33 | 41;

/** Materials of metric PE pipe. */
export type PeIsoMaterial = "PE100" | "PE80";

/** Nominal pressures of metric PE pipe at 20 °C, in bar, by standard dimension ratio. A blank is not made. */
export const peIsoNominalPressure = /* @__PURE__ */ table(() => ({
  id: "pe-iso-nominal-pressure",
  key: "sdr",
  units: { PE80: bar, PE100: bar },
  source: iso4427.at("part 2, PN by SDR", "secondary"),
  rows: [
    { sdr: 6, PE80: 25, PE100: undefined },
    { sdr: 7.4, PE80: 20, PE100: 25 },
    { sdr: 9, PE80: 16, PE100: 20 },
    { sdr: 11, PE80: 12.5, PE100: 16 },
    { sdr: 13.6, PE80: 10, PE100: 12.5 },
    { sdr: 17, PE80: 8, PE100: 10 },
    { sdr: 21, PE80: 6, PE100: 8 },
    { sdr: 26, PE80: 5, PE100: 6 },
    { sdr: 33, PE80: 4, PE100: 5 },
    { sdr: 41, PE80: 3.2, PE100: 4 },
  ],
}));

/**
 * Greatest wall of metric plastic pipe of tolerance grade V: a tenth and 0.1 mm over the least, rounded up to 0.1 mm.
 *
 * @param least - Least wall, in millimetres, to 0.1 mm.
 * @returns The greatest wall, in millimetres.
 */
export function greatestWallMm(least: number): number {
  // In hundredths, where a tenth of a wall and 0.1 mm are whole, so that the rounding up is exact.
  const tolerance = Math.ceil((Math.round(least * 10) + 10) / 10) / 10;
  return rounded(least + tolerance, 10);
}

/**
 * Metric PE pipe by ISO 4427.
 *
 * The average wall is the middle of the tolerance; the average bore is the outside diameter less two of it. The
 * rating is the nominal pressure that is printed on the pipe; absent where the makers' tables leave it blank.
 *
 * @param size - Outside diameter in millimetres.
 * @param sdr - Standard dimension ratio.
 * @param material - PE100, or PE80, which carries a fifth less.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pePipeISO(
  size: PeIsoSize,
  sdr: PeIsoRatio,
  material: PeIsoMaterial = "PE100",
): Pipe {
  const { diameter: outside, wall } = printed(
    [peIsoSizes, peIsoThinSizes],
    "metric PE",
    "mm",
    size,
    `SDR ${sdr}`,
  );
  const nominal = peIsoNominalPressure.row(sdr)[material];
  const averageWall = rounded((wall + greatestWallMm(wall)) / 2, 100);
  return {
    name: `${size} mm ${material} SDR ${sdr}`,
    series: "PE ISO",
    material,
    outsideDiameter: millimetre.of(outside),
    minimumWall: millimetre.of(wall),
    averageWall: millimetre.of(averageWall),
    insideDiameter: {
      average: millimetre.of(rounded(outside - 2 * averageWall, 100)),
      minimumWall: millimetre.of(rounded(outside - 2 * wall, 100)),
    },
    massPerLength: massOf(material, millimetre.of(outside), millimetre.of(averageWall)),
    pressureRating: nominal === undefined ? undefined : bar.of(nominal),
    ratedAt: celsius.at(20),
    roughness: roughnessOf("PE"),
    source: (sdr > 26 ? peIsoThinSizes : peIsoSizes).definition.source,
    averageWallSource: iso11922.at("grade V: middle of the tolerance", "memory"),
  };
}

/**
 * The dimension ratio of metric PE pipe that is sold by its nominal pressure.
 *
 * @param nominal - Nominal pressure in bar, such as 10 for PN 10.
 * @param material - PE100 or PE80: of the same nominal pressure, PE80 is thicker.
 * @returns The ratio.
 * @throws QuantityError `size` where no such pressure is made; the message lists those that are.
 */
export function peIsoRatioOf(nominal: number, material: PeIsoMaterial = "PE100"): PeIsoRatio {
  const { rows } = peIsoNominalPressure.definition;
  const row = rows.find((one) => one[material] === nominal);
  if (!row) {
    const made = rows.flatMap((one) =>
      one[material] === undefined ? [] : [`PN ${one[material]}`],
    );
    throw new QuantityError(
      "size",
      `metric PE: PN ${nominal} is not made of ${material}; it is made in ${made.join(", ")}.`,
    );
  }
  return row.sdr;
}
