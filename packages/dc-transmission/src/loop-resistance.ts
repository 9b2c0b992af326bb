import { straightLine, temperatureFactor } from "@leat/conductors";
import { firstPrinciples, formula, input, output, pointInput } from "@leat/formula";

/**
 * Resistance of a two-wire loop, there and back, at the temperature of its conductors.
 *
 *     R = 2 · L · r · (1 + α · (t2 − t1))
 *
 * Joints, lugs, fuses and switches are not in it.
 *
 * @example
 * ```ts
 * import { conductor } from "@leat/conductors";
 *
 * const { resistancePerLength, at, temperatureCoefficient } = conductor({ system: "AWG", name: "2" }, "copper");
 * loopResistance({
 *   length: foot.of(600),
 *   resistancePerLength, at, temperatureCoefficient,
 *   temperature: celsius.at(75),
 * }).in(ohm).toFixed(4);
 * // => 0.2328
 * ```
 *
 * @throws NonPhysicalError a negative length, resistance or coefficient.
 * @throws OutOfValidityError a temperature outside 220 to 420 K (about −50 to 150 °C) and `onNotice` is absent.
 */
export const loopResistance = /* @__PURE__ */ formula(() => ({
  id: "loop-resistance",
  equation: "R = 2 · L · r · (1 + α · (t2 − t1))",
  inputs: {
    /** One way, from the machine to the bus. */
    length: input("length", "L"),
    /** Resistance per length of one conductor, as its table gives it. */
    resistancePerLength: input("resistance per length", "r"),
    /** Temperature at which the table gives it. */
    at: pointInput("absolute zero", "t1"),
    /** Relative change per kelvin, from that temperature. */
    temperatureCoefficient: input("temperature coefficient", "α"),
    /** Temperature of the conductors; not of the air or the soil around them. */
    temperature: pointInput("absolute zero", "t2"),
  },
  output: output("resistance", "R"),
  limits: [straightLine()],
  source: firstPrinciples.at(
    "resistance of two uniform conductors in series, changing with temperature by a straight line",
  ),
  body: ({ L, r, t1, α, t2 }) => 2 * L * r * temperatureFactor(α, t1, t2),
}));
