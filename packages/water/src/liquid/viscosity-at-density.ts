import { formula, input, output, pointInput } from "@leat/formula";

import { iapwsViscosity } from "../sources.ts";
import { liquidTemperature } from "./liquid.ts";
import { crowding, dilute, viscosityConstants } from "./viscosity-fit.ts";

/**
 * Dynamic viscosity of water of a known density.
 *
 *     μ = μ0(T)·μ1(T, ρ)
 *
 * @throws NonPhysicalError a density not above zero.
 * @throws OutOfValidityError outside 0 °C to 100 °C, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, kilogramPerCubicMetre, millipascalSecond } from "@leat/quantity";
 * import { waterViscosityAtDensity } from "@leat/water";
 *
 * const viscosity = waterViscosityAtDensity({ temperature: celsius.at(25), density: kilogramPerCubicMetre.of(998) });
 * viscosity.in(millipascalSecond).toFixed(4); // => "0.8897"
 * ```
 */
export const waterViscosityAtDensity = /* @__PURE__ */ formula(() => ({
  id: "water-viscosity-at-density",
  equation: "μ = μ1·M0·M1",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Density of the water. */
    density: input("density", "ρ", { domain: "positive" }),
  },
  output: output("dynamic viscosity", "μ"),
  constants: viscosityConstants,
  steps: {
    M0: { kind: "ratio", equation: "at no density, at T/Tc", of: ({ T, Tc }) => dilute(T / Tc) },
    M1: {
      kind: "ratio",
      equation: "for density, at T/Tc and ρ/ρc",
      of: ({ T, ρ, Tc, ρc }) => crowding(T / Tc, ρ / ρc),
    },
  },
  limits: [liquidTemperature()],
  source: iapwsViscosity.at("eqs 10 to 12, tables 1 and 2", "secondary"),
  body: ({ T, ρ, Tc, ρc, μ1 }) => μ1 * dilute(T / Tc) * crowding(T / Tc, ρ / ρc),
}));
