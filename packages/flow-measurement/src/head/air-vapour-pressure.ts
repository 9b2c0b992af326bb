import { formula, input, output, pointInput, range } from "@leat/formula";
import { kelvin, pascal } from "@leat/quantity";

import { moistureOfAir } from "./sources.ts";

/**
 * Pressure of the water vapour in air of a relative humidity.
 *
 *     e = U·E0·10^(7.5·(T − T0)/(Tb + T − T0))
 *
 * The saturation pressure over water of Tetens' form, within 0.2 % of the steam tables from 0 °C to 50 °C: ample for
 * the little that moisture adds to a barometric height. Below freezing it is that over supercooled water.
 *
 * @throws NonPhysicalError humidity not between 0 and 1.
 * @throws OutOfValidityError below −20 °C or above 50 °C, and `onNotice` is absent.
 * @example
 * ```ts
 * const e = airVapourPressure({ relativeHumidity: percent.of(60), airTemperature: celsius.at(20) });
 * format(e, hectopascal, 3); // => "14.0 hPa"
 * ```
 */
export const airVapourPressure = /* @__PURE__ */ formula(() => ({
  id: "air-vapour-pressure",
  equation: "e = U·E0·10^(7.5·(T − T0)/(Tb + T − T0))",
  inputs: {
    /** Vapour in the air over what it can hold, 0 to 1. */
    relativeHumidity: input("ratio", "U", { domain: "fraction" }),
    /** Temperature of the air. */
    airTemperature: pointInput("absolute zero", "T"),
  },
  output: output("pressure", "e"),
  constants: { E0: pascal.of(610.78), T0: kelvin.of(273.15), Tb: kelvin.of(237.3) },
  limits: [
    range(
      "airTemperature",
      { min: kelvin.of(253.15), max: kelvin.of(323.15) },
      moistureOfAir.at("constants for pressure over water", "practice"),
    ),
  ],
  source: moistureOfAir.at("items 2 and 3"),
  body: ({ U, T, E0, T0, Tb }) => {
    const t = T - T0;
    return U * E0 * Math.pow(10, (7.5 * t) / (Tb + t));
  },
}));
