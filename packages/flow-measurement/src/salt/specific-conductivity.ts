import { bound, formula, input, output, pointInput } from "@leat/formula";
import { celsius, perKelvin, type Quantity } from "@leat/quantity";

import { conductivityManuals, iso7888 } from "./sources.ts";

/**
 * How much the conductivity of stream water changes with its temperature, of its value at 25 °C: 2.0 ± 0.1 %
 * a kelvin.
 *
 * Meters leave the works at 1.9, 1.91 or 2.0 % a kelvin: the spread holds them all.
 *
 * @returns The coefficient; its source of uncertainty is `temperature coefficient`.
 */
export function streamTemperatureCoefficient(): Quantity<"temperature coefficient"> {
  return perKelvin.of(0.02).plusMinus(
    perKelvin.of(0.001), // guard: a spread, held by a test of its own
    "temperature coefficient",
  );
}

/**
 * Conductivity that water would have at 25 °C: its specific conductivity.
 *
 *     κ25 = κ / (1 + α · (T − T25))
 *
 * For readings that no meter has compensated. A reading that the meter brought to 25 °C itself is that
 * already: compensated once more it comes out 40 % too high at 10 °C.
 *
 * The standard has a curve for natural waters instead of a line. The line of 2 % is 0.1 % below it at 10 °C, 0.5 %
 * below at 15 °C and 20 °C, and 4 % above it at 0 °C. In a salt gauging most of this cancels, because slug and
 * calibration are read in the same stream.
 *
 * @throws NonPhysicalError conductivity below zero.
 * @throws OutOfValidityError a temperature that the standard does not reach, and `onNotice` is absent.
 * @example
 * ```ts
 * import { specificConductivity } from "@leat/flow-measurement";
 * import { celsius, microsiemensPerCentimetre } from "@leat/quantity";
 *
 * const at25 = specificConductivity({
 *   conductivity: microsiemensPerCentimetre.of(70),
 *   temperature: celsius.at(10),
 * });
 * at25.in(microsiemensPerCentimetre).toFixed(1); // => "100.0"
 * ```
 */
export const specificConductivity = /* @__PURE__ */ formula(() => ({
  id: "specific-conductivity",
  equation: "κ25 = κ / (1 + α · (T − T25))",
  inputs: {
    /** As measured, not compensated. */
    conductivity: input("conductivity", "κ"),
    /** Of the water when it was measured. */
    temperature: pointInput("absolute zero", "T"),
    /** Relative change a kelvin, of the value at 25 °C. */
    temperatureCoefficient: input("temperature coefficient", "α", {
      domain: "positive",
      default: streamTemperatureCoefficient(),
      because: conductivityManuals.at("2 % a kelvin; others 1.9 and 1.91 %"),
    }),
  },
  output: output("conductivity", "κ25"),
  constants: { T25: celsius.at(25).overOrigin() },
  limits: [
    bound(
      "temperature",
      "temperature in °C",
      ({ T }: { T: number }) => T - 273.15,
      { min: 0, max: 36 },
      iso7888.at("definition range of the curve for natural waters", "secondary"),
    ),
  ],
  source: iso7888.at("linear compensation", "secondary"),
  body: ({ κ, T, α, T25 }) => κ / (1 + α * (T - T25)),
}));
