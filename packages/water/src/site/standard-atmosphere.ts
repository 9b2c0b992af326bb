import { formula, input, output, range } from "@leat/formula";
import {
  joulePerKilogramKelvin,
  kelvin,
  kilometre,
  metrePerSecondSquared,
  pascal,
  unit,
} from "@leat/quantity";

import { iso2533 } from "../sources.ts";

/**
 * The standard atmosphere: pressure, temperature and density of the air by height, on no day in particular.
 *
 *     T = T0 − L·H,   p = p0·(T/T0)^(g0/(L·R)),   ρ = p/(R·T)
 *
 * Height is geopotential: take a map's elevation through `geopotentialHeight` first. Weather moves the pressure
 * by 3 % either way; a barometer at the site knows better. The temperature is a difference over absolute zero.
 *
 * @throws OutOfValidityError outside −2 km to 11 km, and `onNotice` is absent.
 * @example
 * ```ts
 * import { metre, pascal } from "@leat/quantity";
 * import { geopotentialHeight, standardAtmosphere } from "@leat/water";
 *
 * const height = geopotentialHeight({ elevation: metre.of(2000) });
 * standardAtmosphere({ geopotentialHeight: height }).pressure.in(pascal).toFixed(0); // => "79501"
 * ```
 */
export const standardAtmosphere = /* @__PURE__ */ formula(() => ({
  id: "standard-atmosphere",
  equation: "p = p0·(T/T0)^(g0/(L·R)); T = T0 − L·H; ρ = p/(R·T)",
  inputs: {
    /** Geopotential height above mean sea level; negative below. */
    geopotentialHeight: input("length", "H", { domain: "any" }),
  },
  output: {
    pressure: output("pressure", "p"),
    temperature: output("temperature difference", "T"),
    density: output("density", "ρ"),
  },
  constants: {
    p0: pascal.of(101325),
    T0: kelvin.of(288.15),
    L: unit("m^-1·K", "K/km", 1, 1000).of(6.5),
    R: joulePerKilogramKelvin.of(287.05287),
    g0: metrePerSecondSquared.of(9.80665),
  },
  limits: [
    range(
      "geopotentialHeight",
      { min: kilometre.of(-2), max: kilometre.of(11) },
      iso2533.at("lowest layer", "secondary"),
    ),
  ],
  source: iso2533.at("lowest layer", "secondary"),
  body: ({ H, p0, T0, L, R, g0 }) => {
    const T = T0 - L * H;
    const p = p0 * Math.pow(T / T0, g0 / (L * R));
    return { p, T, ρ: p / (R * T) };
  },
}));
