import { formula, output, pointInput } from "@leat/formula";

import { iapwsIf97 } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import { byTemperatureTwice, region1Constants } from "./region-1.ts";

/**
 * Specific heat of liquid water at constant pressure.
 *
 *     cp = −R·τ²·∂²γ/∂τ²
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, joulePerKilogramKelvin } from "@leat/quantity";
 * import { waterSpecificHeat } from "@leat/water";
 *
 * waterSpecificHeat({ temperature: celsius.at(60) }).in(joulePerKilogramKelvin).toFixed(0); // => "4183"
 * ```
 */
export const waterSpecificHeat = /* @__PURE__ */ formula(() => ({
  id: "water-specific-heat",
  equation: "cp = −R·τ²·gtt",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("specific heat", "cp"),
  constants: { ...region1Constants, ...saturationUnits },
  steps: {
    τ: { kind: "ratio", equation: "T1/T", of: ({ T, T1 }) => T1 / T },
    gtt: {
      kind: "ratio",
      equation: "∂²γ/∂τ² at π = p/p1, τ",
      of: ({ T, p, p1, T1 }) => byTemperatureTwice(p / p1, T1 / T),
    },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsIf97.at("eq. 7, tables 2 and 3", "secondary"),
  body: ({ T, p, p1, T1, R }) => {
    const τ = T1 / T;
    return -R * τ * τ * byTemperatureTwice(p / p1, τ);
  },
}));
