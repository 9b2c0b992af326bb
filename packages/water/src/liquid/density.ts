import { formula, output, pointInput } from "@leat/formula";

import { iapwsIf97 } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import { byPressure, densityOf, region1Constants } from "./region-1.ts";

/**
 * Density of liquid water, free of air and salt.
 *
 *     ρ = p1/(R·T·∂γ/∂π)
 *
 * Stream water carries air (less than 0.005 kg/m³) and silt (0.6 g for each gram a litre): neither is in it.
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, kilogramPerCubicMetre } from "@leat/quantity";
 * import { waterDensity } from "@leat/water";
 *
 * waterDensity({ temperature: celsius.at(10) }).in(kilogramPerCubicMetre).toFixed(2); // => "999.70"
 * ```
 */
export const waterDensity = /* @__PURE__ */ formula(() => ({
  id: "water-density",
  equation: "ρ = p1/(R·T·gp)",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("density", "ρ"),
  constants: { ...region1Constants, ...saturationUnits },
  steps: {
    gp: {
      kind: "ratio",
      equation: "∂γ/∂π at π = p/p1, τ = T1/T",
      of: ({ T, p, p1, T1 }) => byPressure(p / p1, T1 / T),
    },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsIf97.at("eq. 7, tables 2 and 3", "secondary"),
  body: ({ T, p, p1, T1, R }) => densityOf(T, p, p1, T1, R),
}));
