import { firstPrinciples, formula, input, output, pointInput } from "@leat/formula";

import { straightLine, temperatureFactor } from "./resistance-at-temperature.ts";

/**
 * Resistance of a length of one conductor at its temperature; a loop is there and back, twice that.
 *
 *     R = r · (1 + α · (t2 − t1)) · L
 *
 * @example
 * ```ts
 * const { resistancePerLength, at, temperatureCoefficient } = conductor({ system: "AWG", name: "2" }, "copper");
 * conductorResistance({
 *   resistancePerLength, at, temperatureCoefficient,
 *   temperature: celsius.at(20),
 *   length: foot.of(1200),
 * }).in(ohm).toFixed(4);
 * // => 0.1914
 * ```
 *
 * @throws NonPhysicalError a negative resistance, coefficient or length.
 * @throws OutOfValidityError a temperature outside 220 to 420 K (about −50 to 150 °C) and `onNotice` is absent.
 */
export const conductorResistance = /* @__PURE__ */ formula(() => ({
  id: "conductor-resistance",
  equation: "R = r · (1 + α · (t2 − t1)) · L",
  inputs: {
    /** Resistance per length as its table gives it. */
    resistancePerLength: input("resistance per length", "r"),
    /** Temperature at which the table gives it. */
    at: pointInput("absolute zero", "t1"),
    /** Relative change per kelvin, from that temperature. */
    temperatureCoefficient: input("temperature coefficient", "α"),
    /** Temperature of the conductor; not of the air around it. */
    temperature: pointInput("absolute zero", "t2"),
    /** Length of the conductor. */
    length: input("length", "L"),
  },
  output: output("resistance", "R"),
  limits: [straightLine()],
  source: firstPrinciples.at(
    "resistance of a uniform conductor, changing with temperature by a straight line",
  ),
  body: ({ r, t1, α, t2, L }) => r * temperatureFactor(α, t1, t2) * L,
}));
