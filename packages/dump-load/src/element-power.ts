import { firstPrinciples, formula, input, output } from "@leat/formula";

/** Power of a resistance at another voltage. */
function powerAt(Pr: number, Vr: number, V: number): number {
  return Pr * (V / Vr) * (V / Vr);
}

/**
 * Power of a heating element on another voltage than it is rated for.
 *
 *     P = Pr · (V/Vr)²
 *
 * Its resistance is taken as constant, which holds within a few percent for metal-sheathed elements, and not
 * for lamps. The current is V/Vr times the rated one: never run an element above its rated voltage.
 *
 * @example
 * ```ts
 * elementPower({ ratedPower: watt.of(4500), ratedVoltage: volt.of(240), voltage: volt.of(57.6) }).toString();
 * // => 259.2 W
 * ```
 *
 * @throws NonPhysicalError a negative power or voltage, or no rated voltage.
 */
export const elementPower = /* @__PURE__ */ formula(() => ({
  id: "element-power",
  equation: "P = Pr · (V/Vr)²",
  inputs: {
    /** Power at the rated voltage. */
    ratedPower: input(["electric power", "power"], "Pr"),
    /** Voltage that the element is rated for. */
    ratedVoltage: input("voltage", "Vr", { domain: "positive" }),
    /** Voltage across the element. */
    voltage: input("voltage", "V"),
  },
  output: output("electric power", "P"),
  source: firstPrinciples.at("Ohm's law at constant resistance"),
  body: ({ Pr, Vr, V }) => powerAt(Pr, Vr, V),
}));
