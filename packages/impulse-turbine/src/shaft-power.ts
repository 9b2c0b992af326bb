import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Shaft power, on plain numbers in coherent units.
 *
 * @param power - Power of the water that reaches the wheel.
 * @param efficiency - Shaft power over that power.
 * @returns The power at the shaft.
 */
export function shaftPowerOf(power: number, efficiency: number): number {
  return power * efficiency;
}

/**
 * Power at the shaft of a wheel whose efficiency is stated.
 *
 *     Ps = η·P
 *
 * The efficiency must be over the same power: one stated over the net head is not one over the jet, and
 * one stated "water to wire" holds the alternator too and gives no shaft power.
 *
 * @throws NonPhysicalError a negative power, an efficiency below 0 or above 1.
 */
export const shaftPower = /* @__PURE__ */ formula(() => ({
  id: "shaft-power",
  equation: "Ps = η·P",
  inputs: {
    /** Power of the water that the efficiency is stated over: at the net head, or of the jet. */
    hydraulicPower: input("hydraulic power", "P"),
    /** Efficiency of the wheel, as its maker states it or as it was measured. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
  },
  output: output("shaft power", "Ps"),
  source: firstPrinciples.at("definition of efficiency"),
  body: ({ P, η }) => shaftPowerOf(P, η),
}));
