import { commonPractice, firstPrinciples, formula, input, output } from "@leat/formula";
import { joulePerKilogramKelvin } from "@leat/quantity";

/**
 * Time to heat a mass of water.
 *
 *     t = m · c · ΔT/(η · P)
 *
 * A tank's mass is its volume times the density of water; the rise is the difference of two temperatures. What the
 * tank loses meanwhile is in the efficiency, which has no default: an immersed element alone is 1.
 *
 * @example
 * ```ts
 * heatingTime({
 *   mass: kilogram.of(150),
 *   rise: celsius.at(60).minus(celsius.at(10)),
 *   power: watt.of(2000),
 *   efficiency: one.of(1).as("efficiency"),
 * }).in(hour).toFixed(2);
 * // => 4.36
 * ```
 *
 * @throws NonPhysicalError a negative mass or rise, no power, an efficiency of zero or above 1.
 */
export const heatingTime = /* @__PURE__ */ formula(() => ({
  id: "heating-time",
  equation: "t = m · c · ΔT/(η · P)",
  inputs: {
    /** Mass of water. */
    mass: input("mass", "m"),
    /** Specific heat of water. */
    specificHeat: input("specific heat", "c", {
      domain: "positive",
      default: joulePerKilogramKelvin.of(4186),
      because: commonPractice.at("water, 4180 to 4220 J/(kg·K) from 0 to 100 °C", "practice"),
    }),
    /** How much warmer it becomes. */
    rise: input("temperature difference", "ΔT"),
    /** Power of the elements, at the voltage across them. */
    power: input(["electric power", "power"], "P", { domain: "positive" }),
    /** Share of it that stays in the water. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
  },
  output: output("time", "t"),
  source: firstPrinciples.at("heat balance of a stirred tank"),
  body: ({ m, c, ΔT, P, η }) => (m * c * ΔT) / (η * P),
}));
