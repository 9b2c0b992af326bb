import { formula, output, pointInput } from "@leat/formula";

import { iapwsViscosity } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import { densityOf, region1Constants } from "./region-1.ts";
import { crowding, dilute, viscosityConstants } from "./viscosity-fit.ts";

/**
 * Dynamic viscosity of liquid water.
 *
 *     μ = μ0(T)·μ1(T, ρ)
 *
 * Density is that of `waterDensity`; where it is known otherwise, use `waterViscosityAtDensity`.
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, millipascalSecond } from "@leat/quantity";
 * import { waterViscosity } from "@leat/water";
 *
 * waterViscosity({ temperature: celsius.at(20) }).in(millipascalSecond).toFixed(4); // => "1.0016"
 * ```
 */
export const waterViscosity = /* @__PURE__ */ formula(() => ({
  id: "water-viscosity",
  equation: "μ = μ1·M0·M1",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("dynamic viscosity", "μ"),
  constants: { ...region1Constants, ...saturationUnits, ...viscosityConstants },
  steps: {
    M0: { kind: "ratio", equation: "at no density, at T/Tc", of: ({ T, Tc }) => dilute(T / Tc) },
    M1: {
      kind: "ratio",
      equation: "for density, at T/Tc and ρ/ρc",
      of: ({ T, p, p1, T1, R, Tc, ρc }) => crowding(T / Tc, densityOf(T, p, p1, T1, R) / ρc),
    },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsViscosity.at("eqs 10 to 12, tables 1 and 2", "secondary"),
  body: ({ T, p, p1, T1, R, Tc, ρc, μ1 }) =>
    μ1 * dilute(T / Tc) * crowding(T / Tc, densityOf(T, p, p1, T1, R) / ρc),
}));
