import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Voltage lost along a two-wire loop, there and back.
 *
 *     U = 2 · L · r · I
 *
 * @example
 * ```ts
 * loopDrop({
 *   length: foot.of(600),
 *   resistancePerLength: ohmPerKilofoot.of(0.194),
 *   current: ampere.of(15.5),
 * }).in(volt).toFixed(1);
 * // => 3.6
 * ```
 *
 * @throws NonPhysicalError a negative length, resistance or current.
 */
export const loopDrop = /* @__PURE__ */ formula(() => ({
  id: "loop-drop",
  equation: "U = 2 · L · r · I",
  inputs: {
    /** One way, from the machine to the bus. */
    length: input("length", "L"),
    /** Resistance per length of one conductor, at its temperature. */
    resistancePerLength: input("resistance per length", "r"),
    /** Current in the loop. */
    current: input("current", "I"),
  },
  output: output("voltage", "U"),
  source: firstPrinciples.at("Ohm's law for two conductors in series"),
  body: ({ L, r, I }) => 2 * L * r * I,
}));
