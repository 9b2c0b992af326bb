import { formula, input, NonPhysicalError, type Notice, output } from "@leat/formula";

import { iso9555 } from "./sources.ts";

/**
 * Discharge of a stream from a tracer that is fed into it at a constant rate, once the concentration downstream
 * no longer rises.
 *
 *     Q = q · (C1 − C2) / (C2 − C0)
 *
 * The balance of mass, without neglecting the flow that is fed in. The discharge is that of the stream above the feed.
 *
 * Concentrations may be relative: with the fed solution at any number and the others as parts of it the answer
 * is the same. A rise of conductivity becomes a concentration by a calibration: with `C2` as factor times rise, `C0` is nought.
 *
 * @throws NonPhysicalError a plateau that is not above the background, or not below the fed solution.
 * @example
 * ```ts
 * import { saltConstantRateDischarge } from "@leat/flow-measurement";
 * import { gramPerLitre, litrePerSecond, milligramPerLitre } from "@leat/quantity";
 *
 * const q = saltConstantRateDischarge({
 *   injectionRate: litrePerSecond.of(0.02),
 *   injectedConcentration: gramPerLitre.of(100),
 *   plateauConcentration: milligramPerLitre.of(45),
 *   backgroundConcentration: milligramPerLitre.of(5),
 * });
 * q.in(litrePerSecond).toFixed(2); // => "49.98"
 * ```
 * @see ISO 9555-1
 */
export const saltConstantRateDischarge = /* @__PURE__ */ formula(() => ({
  id: "salt-constant-rate-discharge",
  equation: "Q = q · (C1 − C2) / (C2 − C0)",
  inputs: {
    /** Flow of the solution that is fed in. */
    injectionRate: input("volume flow", "q", { domain: "positive" }),
    /** Concentration of the solution that is fed in. */
    injectedConcentration: input("density", "C1", { domain: "positive" }),
    /** Concentration downstream, once it is steady. */
    plateauConcentration: input("density", "C2", { domain: "positive" }),
    /** Concentration in the stream above the feed. */
    backgroundConcentration: input("density", "C0"),
  },
  output: output("volume flow", "Q"),
  source: iso9555.at("constant-rate injection", "secondary"),
  body: ({ q, C1, C2, C0 }) => {
    const problems: Notice[] = [];
    if (!(C2 > C0)) problems.push(outOfOrder("is not above the background", C2, C0));
    if (!(C1 > C2)) problems.push(outOfOrder("is not below the solution that is fed in", C2, C1));
    if (problems.length > 0) throw new NonPhysicalError(problems);
    return (q * (C1 - C2)) / (C2 - C0);
  },
}));

function outOfOrder(what: string, actual: number, limit: number): Notice {
  return {
    code: "non-physical",
    severity: "stop",
    path: ["plateauConcentration"],
    message: `salt-constant-rate-discharge: plateauConcentration = ${actual} kg/m³ ${what}, ${limit} kg/m³: no stream does that. Check that the three are of one unit and in their places.`,
    actual: `${actual} kg/m³`,
    limit: `${limit} kg/m³`,
    source: iso9555.at("constant-rate injection", "secondary"),
  };
}
