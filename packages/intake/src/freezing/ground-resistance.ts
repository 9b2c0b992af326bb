import { bound, firstPrinciples, formula, input, output } from "@leat/formula";

import { arcticUtilities } from "../sources.ts";

interface Letters {
  readonly z: number;
  readonly D: number;
}

/**
 * What the ground over a buried pipe puts in the way of heat, for a length of pipe.
 *
 *     R = ln(2·z/D + √((2·z/D)² − 1))/(2·π·k)      the same as arcosh(2·z/D)/(2·π·k)
 *
 * For a surface that has had its temperature for long: ground lags by weeks, and a cold snap reaches a metre down only
 * in a season. Frozen ground conducts better than thawed, and wet better than dry: take the frozen figure.
 *
 * @throws NonPhysicalError no depth, no diameter, a conductivity of zero or less.
 * @throws OutOfValidityError a pipe that is not wholly buried, and `onNotice` is absent.
 * @example
 * ```ts
 * import { groundResistance, kelvinMetrePerWatt, wattPerMetreKelvin } from "@leat/intake";
 * import { millimetre } from "@leat/quantity";
 *
 * const resistance = groundResistance({
 *   depthOfAxis: millimetre.of(600),
 *   outsideDiameter: millimetre.of(110),
 *   conductivity: wattPerMetreKelvin.of(2),
 * });
 * resistance.in(kelvinMetrePerWatt).toFixed(3); // => "0.245"
 * ```
 */
export const groundResistance = /* @__PURE__ */ formula(() => ({
  id: "ground-resistance",
  equation: "R = ln(2·z/D + √((2·z/D)^2 - 1))/(2·π·k)",
  inputs: {
    /** From the surface down to the axis of the pipe. */
    depthOfAxis: input("length", "z", { domain: "positive" }),
    /** Diameter over the wall, or over the insulation. */
    outsideDiameter: input("length", "D", { domain: "positive" }),
    /** Thermal conductivity of the ground. */
    conductivity: input("m·kg·s^-3·K^-1", "k", { domain: "positive" }),
  },
  output: output("m^-1·kg^-1·s^3·K", "R"),
  limits: [
    bound(
      "depthOfAxis",
      "2·depthOfAxis/outsideDiameter",
      ({ z, D }: Letters) => (2 * z) / D,
      { min: 1 },
      firstPrinciples.at("a pipe under the surface"),
    ),
  ],
  source: arcticUtilities.at("ch. 12, p. 12-20, arccosh(Hp/rp)"),
  body: ({ z, D, k }) => {
    const ratio = (2 * z) / D;
    return Math.log(ratio + Math.sqrt(ratio * ratio - 1)) / (2 * Math.PI * k);
  },
}));
