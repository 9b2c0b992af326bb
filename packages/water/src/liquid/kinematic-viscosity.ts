import { formula, output, pointInput } from "@leat/formula";

import { iapwsViscosity } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import { densityOf, region1Constants } from "./region-1.ts";
import { crowding, dilute, viscosityConstants } from "./viscosity-fit.ts";

/**
 * Kinematic viscosity of liquid water: what a Reynolds number needs.
 *
 *     ν = μ/ρ
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, squareMillimetrePerSecond } from "@leat/quantity";
 * import { kinematicViscosity } from "@leat/water";
 *
 * kinematicViscosity({ temperature: celsius.at(10) }).in(squareMillimetrePerSecond).toFixed(3); // => "1.306"
 * ```
 */
export const kinematicViscosity = /* @__PURE__ */ formula(() => ({
  id: "kinematic-viscosity",
  equation: "ν = μ/ρ",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("kinematic viscosity", "ν"),
  constants: { ...region1Constants, ...saturationUnits, ...viscosityConstants },
  steps: {
    ρ: {
      kind: "density",
      equation: "density at T, p",
      of: ({ T, p, p1, T1, R }) => densityOf(T, p, p1, T1, R),
    },
    μ: {
      kind: "dynamic viscosity",
      equation: "dynamic viscosity at T, ρ",
      of: ({ T, p, p1, T1, R, Tc, ρc, μ1 }) =>
        μ1 * dilute(T / Tc) * crowding(T / Tc, densityOf(T, p, p1, T1, R) / ρc),
    },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsViscosity.at("eqs 10 to 12, over the density of R7-97(2012)", "secondary"),
  body: ({ T, p, p1, T1, R, Tc, ρc, μ1 }) => {
    const ρ = densityOf(T, p, p1, T1, R);
    return (μ1 * dilute(T / Tc) * crowding(T / Tc, ρ / ρc)) / ρ;
  },
}));
