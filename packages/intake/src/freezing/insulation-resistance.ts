import { bound, firstPrinciples, formula, input, output } from "@leat/formula";

import { ashraeFundamentals } from "../sources.ts";

/**
 * What a layer around a pipe, or its own wall, puts in the way of heat, for a length of pipe.
 *
 *     R = ln(D2/D1)/(2·π·k)
 *
 * Layers one over the other add up. Insulation that is wet keeps little: keep it dry, or count it as water.
 *
 * @throws NonPhysicalError a diameter or a conductivity of zero or less.
 * @throws OutOfValidityError a layer that is thinner than nothing, and `onNotice` is absent.
 * @example
 * ```ts
 * import { insulationResistance, kelvinMetrePerWatt, wattPerMetreKelvin } from "@leat/intake";
 * import { millimetre } from "@leat/quantity";
 *
 * const resistance = insulationResistance({
 *   innerDiameter: millimetre.of(110),
 *   outerDiameter: millimetre.of(210),
 *   conductivity: wattPerMetreKelvin.of(0.035),
 * });
 * resistance.in(kelvinMetrePerWatt).toFixed(2); // => "2.94"
 * ```
 */
export const insulationResistance = /* @__PURE__ */ formula(() => ({
  id: "insulation-resistance",
  equation: "R = ln(D2/D1)/(2·π·k)",
  inputs: {
    /** Diameter under the layer. */
    innerDiameter: input("length", "D1", { domain: "positive" }),
    /** Diameter over the layer. */
    outerDiameter: input("length", "D2", { domain: "positive" }),
    /** Thermal conductivity of the layer. */
    conductivity: input("m·kg·s^-3·K^-1", "k", { domain: "positive" }),
  },
  output: output("m^-1·kg^-1·s^3·K", "R"),
  limits: [
    bound(
      "outerDiameter",
      "outerDiameter/innerDiameter",
      ({ D1, D2 }: { D1: number; D2: number }) => D2 / D1,
      { min: 1 },
      firstPrinciples.at("a layer around a pipe"),
    ),
  ],
  source: ashraeFundamentals.at("ch. 23, resistance of the insulation", "secondary"),
  body: ({ D1, D2, k }) => Math.log(D2 / D1) / (2 * Math.PI * k),
}));
