import { table } from "@leat/formula";
import { fahrenheit, inch, poundPerSquareInch } from "@leat/quantity";

import { massOf } from "../mass/pipe-mass-per-length.ts";
import { roughnessOf } from "../material/plastic-roughness.ts";
import { type Pipe, printed, rounded } from "../pipe.ts";
import { astmPvcSdr } from "../sources.ts";
import { pvcSdrSizes } from "./pvc-sdr.ts";

/** Sizes of PVC pipe by standard dimension ratio, in inches. */
export type PvcSdrSize = ReturnType<typeof pvcSdrSizes.keys>[number];

/** Standard dimension ratios of PVC pipe. */
export type PvcSdrRatio = 13.5 | 17 | 21 | 26 | 32.5 | 41;

/** Pressure ratings of PVC 1120 pipe at 73 °F, as printed, by standard dimension ratio. */
export const pvcSdrRatings = /* @__PURE__ */ table(() => ({
  id: "pvc-sdr-ratings",
  key: "sdr",
  units: { rating: poundPerSquareInch },
  source: astmPvcSdr.at("pressure ratings", "secondary"),
  rows: [
    { sdr: 13.5, rating: 315 },
    { sdr: 17, rating: 250 },
    { sdr: 21, rating: 200 },
    { sdr: 26, rating: 160 },
    { sdr: 32.5, rating: 125 },
    { sdr: 41, rating: 100 },
  ],
}));

/**
 * PVC pipe by standard dimension ratio, in iron pipe sizes, of PVC 1120.
 *
 * The average wall is the least and half of its tolerance, which is 12 % or 0.020 in, whichever is more.
 *
 * @param size - Nominal size in inches, such as `"1 1/2"`.
 * @param sdr - Standard dimension ratio.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pvcPipeSDR(size: PvcSdrSize, sdr: PvcSdrRatio): Pipe {
  const { diameter: outside, wall } = printed(
    [pvcSdrSizes],
    "PVC by SDR",
    "in",
    size,
    `SDR ${sdr}`,
  );
  const averageWall = rounded(wall + Math.max(0.01, 0.06 * wall), 1000);
  return {
    name: `${size} in PVC SDR ${sdr}`,
    series: "PVC SDR",
    material: "PVC 1120",
    outsideDiameter: inch.of(outside),
    minimumWall: inch.of(wall),
    averageWall: inch.of(averageWall),
    insideDiameter: {
      average: inch.of(rounded(outside - 2 * averageWall, 1000)),
      minimumWall: inch.of(rounded(outside - 2 * wall, 1000)),
    },
    massPerLength: massOf("PVC", inch.of(outside), inch.of(averageWall)),
    pressureRating: pvcSdrRatings.get(sdr, "rating"),
    ratedAt: fahrenheit.at(73),
    roughness: roughnessOf("PVC"),
    source: pvcSdrSizes.definition.source,
    averageWallSource: astmPvcSdr.at("tolerance of the wall", "memory"),
  };
}
