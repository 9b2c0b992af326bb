import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * What the air around a pipe puts in the way of heat, for a length of pipe.
 *
 *     R = 1/(π·D·h)
 *
 * h is some 10 W/(m²·K) in still air and 30 to 50 in wind (common practice, no source). For an insulated pipe it is
 * left out, to the safe side.
 *
 * @throws NonPhysicalError no diameter, a coefficient of zero or less.
 * @example
 * ```ts
 * import { kelvinMetrePerWatt, surfaceResistance, wattPerSquareMetreKelvin } from "@leat/intake";
 * import { millimetre } from "@leat/quantity";
 *
 * const resistance = surfaceResistance({
 *   outsideDiameter: millimetre.of(110),
 *   surfaceCoefficient: wattPerSquareMetreKelvin.of(30),
 * });
 * resistance.in(kelvinMetrePerWatt).toFixed(4); // => "0.0965"
 * ```
 */
export const surfaceResistance = /* @__PURE__ */ formula(() => ({
  id: "surface-resistance",
  equation: "R = 1/(π·D·h)",
  inputs: {
    /** Diameter over the wall, or over the insulation. */
    outsideDiameter: input("length", "D", { domain: "positive" }),
    /** Heat from the surface over its area and the difference of temperature. */
    surfaceCoefficient: input("kg·s^-3·K^-1", "h", { domain: "positive" }),
  },
  output: output("m^-1·kg^-1·s^3·K", "R"),
  source: firstPrinciples.at("heat from the surface of a cylinder"),
  body: ({ D, h }) => 1 / (Math.PI * D * h),
}));
