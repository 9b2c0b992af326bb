import { bound, firstPrinciples, formula, input, output, pointInput } from "@leat/formula";
import { celsius, coherentUnit, kilogramPerCubicMetre } from "@leat/quantity";

import { arcticUtilities, waterTables } from "../sources.ts";

/**
 * How long water at its freezing point takes until a share of it is ice.
 *
 *     t = ρ·Lf·x·(π·D²/4)·R/(T2 − Ta)
 *
 * Long before the pipe is solid, slush shuts screens, nozzles and valves, and a plug anywhere leaves the water between
 * plugs nowhere to go: that pressure bursts the pipe. Take a tenth for a pipe that must start again. The ice itself
 * keeps some heat in, which is left out to the safe side.
 *
 * @throws NonPhysicalError no bore, no resistance, a share above 1.
 * @throws OutOfValidityError surroundings above the freezing point, and `onNotice` is absent.
 * @example
 * ```ts
 * import { freezingTime, kelvinMetrePerWatt } from "@leat/intake";
 * import { celsius, hour, millimetre, one } from "@leat/quantity";
 *
 * const time = freezingTime({
 *   insideDiameter: millimetre.of(90),
 *   pipeResistance: kelvinMetrePerWatt.of(2.94),
 *   iceShare: one.of(0.1),
 *   surroundings: celsius.at(-15),
 * });
 * time.in(hour).toFixed(1); // => "11.6"
 * ```
 */
export const freezingTime = /* @__PURE__ */ formula(() => ({
  id: "freezing-time",
  equation: "t = ρ·Lf·x·π·D^2/4·R/(T2 - Ta)",
  inputs: {
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** What is between the water and the cold: the sum of its layers. */
    pipeResistance: input("m^-1·kg^-1·s^3·K", "R", { domain: "positive" }),
    /** Share of the water that becomes ice. */
    iceShare: input("ratio", "x", { domain: "fraction" }),
    /** Temperature of the air, or of the surface of the ground. */
    surroundings: pointInput("absolute zero", "Ta"),
    /** Freezing point. */
    freezingPoint: pointInput("absolute zero", "T2", {
      default: celsius.at(0),
      because: firstPrinciples.at("freezing point of water"),
    }),
    /** Density of the water. */
    density: input("density", "ρ", {
      domain: "positive",
      default: kilogramPerCubicMetre.of(1000),
      because: firstPrinciples.at("water near 4 °C"),
    }),
    /** Heat of fusion. */
    fusionHeat: input("specific energy", "Lf", {
      domain: "positive",
      default: coherentUnit("specific energy").of(333_550),
      because: waterTables.at("heat of fusion at 0 °C", "memory"),
    }),
  },
  output: output("time", "t"),
  limits: [
    bound(
      "surroundings",
      "surroundings over freezingPoint, from absolute zero",
      ({ Ta, T2 }: { Ta: number; T2: number }) => Ta / T2,
      { max: 1 },
      firstPrinciples.at("water that freezes"),
    ),
  ],
  source: arcticUtilities.at("ch. 12, freeze-up time without flow", "memory"),
  body: ({ ρ, Lf, x, D, R, T2, Ta }) => (((ρ * Lf * x * Math.PI * D * D) / 4) * R) / (T2 - Ta),
}));
