import { formula, output, pointInput } from "@leat/formula";

import { iapwsIf97 } from "../sources.ts";
import { atOneAtmosphere, liquidPressure, liquidTemperature, saturationUnits } from "./liquid.ts";
import {
  byBoth,
  byPressure,
  byPressureTwice,
  byTemperatureTwice,
  region1Constants,
  soundSpeedOf,
} from "./region-1.ts";

/**
 * Speed of sound in liquid water: the fastest that a pressure wave could run, in a pipe that did not give.
 *
 *     w = √(R·T·gp²/((gp − τ·gpt)²/(τ²·gtt) − gpp))
 *
 * The letters are derivatives of the Gibbs energy γ: gp by π, gpp twice by π, gtt twice by τ, gpt by both.
 * Against the scientific formulation (IAPWS-95) it is up to 0.2 % high. A few bubbles of air in the water slow
 * the wave far more than that.
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, below vapour pressure or above 100 MPa, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, metrePerSecond } from "@leat/quantity";
 * import { soundSpeed } from "@leat/water";
 *
 * soundSpeed({ temperature: celsius.at(10) }).in(metrePerSecond).toFixed(0); // => "1448"
 * ```
 */
export const soundSpeed = /* @__PURE__ */ formula(() => ({
  id: "sound-speed",
  equation: "w = √(R·T·gp²/((gp − τ·gpt)²/(τ²·gtt) − gpp))",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
    /** Absolute pressure; one standard atmosphere where it is left out. */
    pressure: pointInput("vacuum", "p", atOneAtmosphere()),
  },
  output: output("velocity", "w"),
  constants: { ...region1Constants, ...saturationUnits },
  steps: {
    τ: { kind: "ratio", equation: "T1/T", of: ({ T, T1 }) => T1 / T },
    gp: {
      kind: "ratio",
      equation: "∂γ/∂π at π = p/p1, τ",
      of: ({ T, p, p1, T1 }) => byPressure(p / p1, T1 / T),
    },
    gpp: {
      kind: "ratio",
      equation: "∂²γ/∂π²",
      of: ({ T, p, p1, T1 }) => byPressureTwice(p / p1, T1 / T),
    },
    gtt: {
      kind: "ratio",
      equation: "∂²γ/∂τ²",
      of: ({ T, p, p1, T1 }) => byTemperatureTwice(p / p1, T1 / T),
    },
    gpt: { kind: "ratio", equation: "∂²γ/∂π∂τ", of: ({ T, p, p1, T1 }) => byBoth(p / p1, T1 / T) },
  },
  limits: [liquidTemperature(), ...liquidPressure()],
  source: iapwsIf97.at("eq. 7, tables 2 and 3", "secondary"),
  body: ({ T, p, p1, T1, R }) => soundSpeedOf(T, p, p1, T1, R),
}));
