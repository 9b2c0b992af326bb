import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * The current at which Vm·I = P and Vm = V + I·R. Of the two roots of R·I² + V·I − P = 0 it is the one that
 * lives on as R goes to zero, written so that nothing is subtracted: at small R the usual form loses every digit.
 */
function currentInto(P: number, V: number, R: number): number {
  return (2 * P) / (V + Math.sqrt(V * V + 4 * R * P));
}

/**
 * Current of a machine that gives a constant power at its own terminals, through a loop, into a bus that holds
 * its voltage.
 *
 *     I = 2·P/(V + √(V² + 4·R·P))
 *
 * It solves Vm·I = P with Vm = V + I·R, and there is always one answer: a source of power that feeds a battery
 * has no limit like that of a load at the far end of a line.
 *
 * @throws NonPhysicalError a negative power or resistance, or no voltage.
 */
export const sendingCurrent = /* @__PURE__ */ formula(() => ({
  id: "sending-current",
  equation: "I = 2·P/(V + √(V² + 4·R·P))",
  inputs: {
    /** Power at the machine's terminals. */
    power: input(["electric power", "power"], "P"),
    /** Voltage that the bus holds. */
    busVoltage: input("voltage", "V", { domain: "positive" }),
    /** Resistance of the loop, at its temperature. */
    loopResistance: input("resistance", "R"),
  },
  output: output("current", "I"),
  source: firstPrinciples.at("Ohm's law and the quadratic that follows from it"),
  body: ({ P, V, R }) => currentInto(P, V, R),
}));

/**
 * What stands at the machine's end of a loop: current, voltage there, and the power lost on the way, for a
 * constant power into a bus that holds its voltage. See {@link sendingCurrent}.
 *
 *     I = 2·P/(V + √(V² + 4·R·P)), Vm = V + I·R, Pl = I²·R
 *
 * @example
 * ```ts
 * const end = machineEnd({ power: watt.of(844.75), busVoltage: volt.of(50.8916), loopResistance: ohm.of(0.2328) });
 * [end.current.in(ampere).toFixed(1), end.voltage.in(volt).toFixed(1), end.loss.in(watt).toFixed(1)].join(" A, ");
 * // => 15.5 A, 54.5 A, 55.9
 * ```
 *
 * @throws NonPhysicalError a negative power or resistance, or no voltage.
 */
export const machineEnd = /* @__PURE__ */ formula(() => ({
  id: "machine-end",
  equation: "I = 2·P/(V + √(V² + 4·R·P)); Vm = V + I·R; Pl = I²·R",
  inputs: {
    /** Power at the machine's terminals. */
    power: input(["electric power", "power"], "P"),
    /** Voltage that the bus holds. */
    busVoltage: input("voltage", "V", { domain: "positive" }),
    /** Resistance of the loop, at its temperature. */
    loopResistance: input("resistance", "R"),
  },
  output: {
    /** Current in the loop. */
    current: output("current", "I"),
    /** Voltage at the machine. */
    voltage: output("voltage", "Vm"),
    /** Power lost in the loop. */
    loss: output("electric power", "Pl"),
  },
  source: firstPrinciples.at("Ohm's law and the quadratic that follows from it"),
  body: ({ P, V, R }) => {
    const I = currentInto(P, V, R);
    return { I, Vm: V + I * R, Pl: I * I * R };
  },
}));
