import { formula, output, pointInput } from "@leat/formula";

import { iapwsIf97 } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import { densityOf, region1Constants, soundSpeedOf } from "./region-1.ts";

/**
 * Bulk modulus of liquid water as a fast change of pressure meets it (isentropic): what water hammer needs.
 *
 *     Ks = ρ·w²
 *
 * A slow change, at one temperature, meets 1 % less at 25 °C and 11 % less at 100 °C. The square doubles what the
 * speed of sound is off: up to 0.4 % high.
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, gigapascal } from "@leat/quantity";
 * import { bulkModulus } from "@leat/water";
 *
 * bulkModulus({ temperature: celsius.at(10) }).in(gigapascal).toFixed(2); // => "2.09"
 * ```
 */
export const bulkModulus = /* @__PURE__ */ formula(() => ({
  id: "bulk-modulus",
  equation: "Ks = ρ·w²",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("pressure", "Ks"),
  constants: { ...region1Constants, ...saturationUnits },
  steps: {
    ρ: {
      kind: "density",
      equation: "density at T, p",
      of: ({ T, p, p1, T1, R }) => densityOf(T, p, p1, T1, R),
    },
    w: {
      kind: "velocity",
      equation: "speed of sound at T, p",
      of: ({ T, p, p1, T1, R }) => soundSpeedOf(T, p, p1, T1, R),
    },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsIf97.at("eq. 7, tables 2 and 3", "secondary"),
  body: ({ T, p, p1, T1, R }) => {
    const w = soundSpeedOf(T, p, p1, T1, R);
    return densityOf(T, p, p1, T1, R) * w * w;
  },
}));
