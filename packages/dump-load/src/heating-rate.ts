import { commonPractice, firstPrinciples, formula, input, output } from "@leat/formula";
import { joulePerKilogramKelvin, kilogramPerCubicMetre } from "@leat/quantity";

import { kell } from "./sources.ts";

/**
 * Flow of water that a power heats through a rise of temperature.
 *
 *     Q = η · P/(ρ · c · ΔT)
 *
 * The flow is that of cold water, at the density given.
 *
 * @throws NonPhysicalError a negative power, no rise, an efficiency above 1.
 */
export const heatingRate = /* @__PURE__ */ formula(() => ({
  id: "heating-rate",
  equation: "Q = η · P/(ρ · c · ΔT)",
  inputs: {
    /** Power of the elements, at the voltage across them. */
    power: input(["electric power", "power"], "P"),
    /** How much warmer the water becomes. */
    rise: input("temperature difference", "ΔT", { domain: "positive" }),
    /** Share of the power that stays in the water. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
    /** Specific heat of water. */
    specificHeat: input("specific heat", "c", {
      domain: "positive",
      default: joulePerKilogramKelvin.of(4186),
      because: commonPractice.at("water, 4180 to 4220 J/(kg·K) from 0 to 100 °C", "practice"),
    }),
    /** Density of water. */
    density: input("density", "ρ", {
      domain: "positive",
      default: kilogramPerCubicMetre.of(998.2),
      because: kell.at("eq. 16 at 20 °C, 998.204", "secondary"),
    }),
  },
  output: output("volume flow", "Q"),
  source: firstPrinciples.at("heat balance of a flow"),
  body: ({ P, ΔT, η, c, ρ }) => (η * P) / (ρ * c * ΔT),
}));
