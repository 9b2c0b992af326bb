import { firstPrinciples, formula, input, output, pointInput } from "@leat/formula";
import { celsius } from "@leat/quantity";

import { ashraeFundamentals } from "../sources.ts";
import { coolingLimits, waterInputs } from "./water-inputs.ts";

/**
 * How long water that stands in a pipe takes to cool to its freezing point.
 *
 *     t = ρ·c·(π·D²/4)·R·ln((T1 − Ta)/(T2 − Ta))
 *
 * The water is of one temperature across the pipe, the cold comes all at once, and the heat of the pipe's wall is
 * left out: real pipes take longer, and dead ends, valves and gauges beside them freeze first. Ice forms from then on:
 * see {@link freezingTime}. Not a promise: ice has burst pipes and closed vents where sums said otherwise.
 *
 * @throws NonPhysicalError no bore, no resistance.
 * @throws OutOfValidityError surroundings above the freezing point, and `onNotice` is absent.
 * @example
 * ```ts
 * import { coolingTime, insulationResistance, wattPerMetreKelvin } from "@leat/intake";
 * import { celsius, hour, millimetre } from "@leat/quantity";
 *
 * const time = coolingTime({
 *   insideDiameter: millimetre.of(90),
 *   pipeResistance: insulationResistance({
 *     innerDiameter: millimetre.of(110),
 *     outerDiameter: millimetre.of(210),
 *     conductivity: wattPerMetreKelvin.of(0.035),
 *   }),
 *   waterTemperature: celsius.at(4),
 *   surroundings: celsius.at(-15),
 * });
 * time.in(hour).toFixed(1); // => "5.2"
 * ```
 */
export const coolingTime = /* @__PURE__ */ formula(() => ({
  id: "cooling-time",
  equation: "t = ρ·c·π·D^2/4·R·ln((T1 - Ta)/(T2 - Ta))",
  inputs: {
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** What is between the water and the cold: the sum of its layers. */
    pipeResistance: input("m^-1·kg^-1·s^3·K", "R", { domain: "positive" }),
    /** Temperature of the water as it comes to rest. */
    waterTemperature: pointInput("absolute zero", "T1"),
    /** Temperature of the air, or of the surface of the ground. */
    surroundings: pointInput("absolute zero", "Ta"),
    /** Temperature that it cools to. */
    endTemperature: pointInput("absolute zero", "T2", {
      default: celsius.at(0),
      because: firstPrinciples.at("freezing point of water"),
    }),
    ...waterInputs(),
  },
  output: output("time", "t"),
  limits: coolingLimits("waterTemperature", "surroundings", "endTemperature"),
  source: ashraeFundamentals.at("ch. 23, time to cool to freezing", "secondary"),
  body: ({ ρ, c, D, R, T1, Ta, T2 }) =>
    ((ρ * c * Math.PI * D * D) / 4) * R * Math.log((T1 - Ta) / (T2 - Ta)),
}));
