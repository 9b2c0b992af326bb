import { table } from "@leat/formula";
import { bar, celsius, millimetre, QuantityError } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded, rowOf } from "../pipe.ts";
import { iso11922, iso1452 } from "../sources.ts";
import { pvcIsoSizes } from "./pvc-iso.ts";

/** Sizes of metric PVC pressure pipe: outside diameters in millimetres. */
export type PvcIsoSize = ReturnType<typeof pvcIsoSizes.keys>[number];

/** Nominal pressures of metric PVC pipe, in bar. */
export type PvcIsoPressure = 6 | 8 | 10 | 12.5 | 16 | 20 | 25;

/**
 * Nominal pressures of metric PVC pipe at 20 °C, in bar, by standard dimension ratio: of pipe up to 90 mm, whose design
 * coefficient is 2.5, and of wider pipe, whose coefficient is 2.0. A blank is not made.
 */
export const pvcIsoNominalPressure = /* @__PURE__ */ table(() => ({
  id: "pvc-iso-nominal-pressure",
  key: "sdr",
  units: { upTo90: bar, over90: bar },
  source: iso1452.at("nominal pressures", "memory"),
  rows: [
    { sdr: 11, upTo90: 20, over90: 25 },
    { sdr: 13.6, upTo90: 16, over90: 20 },
    { sdr: 17, upTo90: 12.5, over90: 16 },
    { sdr: 21, upTo90: 10, over90: 12.5 },
    { sdr: 26, upTo90: 8, over90: 10 },
    { sdr: 33, upTo90: 6, over90: 8 },
    { sdr: 41, upTo90: undefined, over90: 6 },
  ],
}));

const family = "metric PVC";

/**
 * Greatest wall of metric PVC pipe, of tolerance grade W: a tenth and 0.2 mm over the least, rounded up to 0.1 mm.
 *
 * @param least - Least wall, in millimetres, to 0.1 mm.
 * @returns The greatest wall, in millimetres.
 */
export function greatestPvcWallMm(least: number): number {
  // In hundredths, where a tenth of a wall and 0.2 mm are whole, so that the rounding up is exact.
  const tolerance = Math.ceil((Math.round(least * 10) + 20) / 10) / 10;
  return rounded(least + tolerance, 10);
}

/**
 * Metric PVC pressure pipe by ISO 1452, by its size and nominal pressure, as it is sold.
 *
 * The average wall is the middle of the tolerance; the average bore is the outside diameter less two of it.
 *
 * @param size - Outside diameter in millimetres.
 * @param pressure - Nominal pressure in bar: 10 for PN 10.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pvcPipeISO(size: PvcIsoSize, pressure: PvcIsoPressure): Pipe {
  const row = rowOf([pvcIsoSizes], family, "mm", size);
  const made = pvcIsoNominalPressure.definition.rows.flatMap(({ sdr, upTo90, over90 }) => {
    const nominal = size > 90 ? over90 : upTo90;
    return nominal !== undefined && row[`SDR ${sdr}`] !== undefined ? [{ sdr, nominal }] : [];
  });
  const sdr = made.find(({ nominal }) => nominal === pressure)?.sdr;
  if (sdr === undefined) {
    throw new QuantityError(
      "size",
      `${family}: ${size} mm is not made in PN ${pressure}; it is made in ${made
        .map(({ nominal }) => `PN ${nominal}`)
        .toReversed()
        .join(", ")}.`,
    );
  }
  const { diameter: outside, wall } = printed([pvcIsoSizes], family, "mm", size, `SDR ${sdr}`);
  const averageWall = rounded((wall + greatestPvcWallMm(wall)) / 2, 100);
  return {
    name: `${size} mm PVC PN ${pressure}`,
    series: "PVC ISO",
    material: "PVC-U",
    outsideDiameter: millimetre.of(outside),
    minimumWall: millimetre.of(wall),
    averageWall: millimetre.of(averageWall),
    insideDiameter: {
      average: millimetre.of(rounded(outside - 2 * averageWall, 100)),
      minimumWall: millimetre.of(rounded(outside - 2 * wall, 100)),
    },
    massPerLength: massOf("PVC", millimetre.of(outside), millimetre.of(averageWall)),
    pressureRating: bar.of(pressure),
    ratedAt: celsius.at(20),
    roughness: roughnessOf("PVC"),
    source: pvcIsoSizes.definition.source,
    averageWallSource: iso11922.at("grade W: middle of the tolerance", "memory"),
  };
}

/**
 * The nominal pressure of metric PVC pipe that is named by its dimension ratio.
 *
 * @param size - Outside diameter in millimetres.
 * @param sdr - Standard dimension ratio.
 * @returns The nominal pressure in bar.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pvcIsoPressureOf(size: PvcIsoSize, sdr: number): PvcIsoPressure {
  printed([pvcIsoSizes], family, "mm", size, `SDR ${sdr}`);
  const { upTo90, over90 } = pvcIsoNominalPressure.row(sdr as 11);
  return (size > 90 ? over90 : upTo90) as PvcIsoPressure;
}
