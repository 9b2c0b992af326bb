import { formula, input, output, pointInput } from "@leat/formula";

import { arcticUtilities } from "../sources.ts";
import { coolingLimits, waterInputs } from "./water-inputs.ts";

/**
 * Least flow that brings its water to the end of a cold pipe unfrozen.
 *
 *     Q = L/(ρ·c·R·ln((T1 − Ta)/(T2 − Ta)))
 *
 * T2 is the temperature that must be left at the end, a little above freezing. The heat that friction makes is left
 * out: 100 m of lost head warm the water by 0.23 K. In a cold stream the water itself comes at 0 °C, and brings no
 * heat at all: then nothing but insulation, depth or draining helps, and frazil ice shuts the screen.
 *
 * @throws NonPhysicalError no length, no resistance.
 * @throws OutOfValidityError surroundings above the temperature at the end, or water below it, and `onNotice` is absent.
 * @example
 * ```ts
 * import { kelvinMetrePerWatt, leastFlowAgainstFreezing } from "@leat/intake";
 * import { celsius, format, litrePerSecond, metre } from "@leat/quantity";
 *
 * const flow = leastFlowAgainstFreezing({
 *   length: metre.of(300).as("pipe length"),
 *   pipeResistance: kelvinMetrePerWatt.of(0.34),
 *   waterTemperature: celsius.at(2),
 *   surroundings: celsius.at(-15),
 *   endTemperature: celsius.at(0.5),
 * });
 * format(flow, litrePerSecond, 2); // => "2.3 L/s"
 * ```
 */
export const leastFlowAgainstFreezing = /* @__PURE__ */ formula(() => ({
  id: "least-flow-against-freezing",
  equation: "Q = L/(ρ·c·R·ln((T1 - Ta)/(T2 - Ta)))",
  inputs: {
    /** Length of the pipe that lies in the cold. */
    length: input("pipe length", "L", { domain: "positive" }),
    /** What is between the water and the cold: the sum of its layers. */
    pipeResistance: input("m^-1·kg^-1·s^3·K", "R", { domain: "positive" }),
    /** Temperature of the water that comes in. */
    waterTemperature: pointInput("absolute zero", "T1"),
    /** Temperature of the air, or of the surface of the ground. */
    surroundings: pointInput("absolute zero", "Ta"),
    /** Temperature that must be left at the end. */
    endTemperature: pointInput("absolute zero", "T2"),
    ...waterInputs(),
  },
  output: output("volume flow", "Q"),
  limits: coolingLimits("waterTemperature", "surroundings", "endTemperature"),
  source: arcticUtilities.at("ch. 12, temperature drop along a pipe", "memory"),
  body: ({ L, ρ, c, R, T1, Ta, T2 }) => L / (ρ * c * R * Math.log((T1 - Ta) / (T2 - Ta))),
}));
