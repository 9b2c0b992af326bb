import { formula, input, output, pointInput } from "@leat/formula";

import { arcticUtilities } from "../sources.ts";
import { waterInputs } from "./water-inputs.ts";

/**
 * How much colder water is at the end of a cold pipe than where it came in.
 *
 *     ΔT = (T1 − Ta)·(1 − exp(−L/(ρ·c·Q·R)))
 *
 * Where ΔT is more than the water has over its freezing point, ice forms before the end.
 *
 * @throws NonPhysicalError no flow, no length, no resistance.
 * @example
 * ```ts
 * import { coolingAlongPipe, kelvinMetrePerWatt } from "@leat/intake";
 * import { celsius, kelvin, litrePerSecond, metre } from "@leat/quantity";
 *
 * const drop = coolingAlongPipe({
 *   flow: litrePerSecond.of(12),
 *   length: metre.of(300).as("pipe length"),
 *   pipeResistance: kelvinMetrePerWatt.of(0.34),
 *   waterTemperature: celsius.at(2),
 *   surroundings: celsius.at(-15),
 * });
 * drop.in(kelvin).toFixed(2); // => "0.29"
 * ```
 */
export const coolingAlongPipe = /* @__PURE__ */ formula(() => ({
  id: "cooling-along-pipe",
  equation: "ΔT = (T1 - Ta)·(1 - exp(-L/(ρ·c·Q·R)))",
  inputs: {
    /** Flow. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Length of the pipe that lies in the cold. */
    length: input("pipe length", "L", { domain: "positive" }),
    /** What is between the water and the cold: the sum of its layers. */
    pipeResistance: input("m^-1·kg^-1·s^3·K", "R", { domain: "positive" }),
    /** Temperature of the water that comes in. */
    waterTemperature: pointInput("absolute zero", "T1"),
    /** Temperature of the air, or of the surface of the ground. */
    surroundings: pointInput("absolute zero", "Ta"),
    ...waterInputs(),
  },
  output: output("temperature difference", "ΔT"),
  source: arcticUtilities.at("ch. 12, temperature drop along a pipe", "memory"),
  body: ({ Q, L, R, T1, Ta, ρ, c }) => (T1 - Ta) * (1 - Math.exp(-L / (ρ * c * Q * R))),
}));
