import { formula, input, output } from "@leat/formula";

import { munsonFluids } from "../sources.ts";

/**
 * Diameter of the jet that draws the greatest power from a pipe in which only the wall takes head, its friction factor fixed.
 *
 *     d = D/(2·f·L/D)^(1/4)
 *
 * Then a third of the gross head is lost. A wider jet passes more water and gives less power.
 *
 * @throws NonPhysicalError a bore, a length or a friction factor of zero or less.
 * @example
 * ```ts
 * import { greatestPowerNozzle } from "@leat/penstock";
 * import { coherentUnit, metre, millimetre } from "@leat/quantity";
 *
 * const d = greatestPowerNozzle({
 *   insideDiameter: millimetre.of(100),
 *   length: metre.of(250).as("pipe length"),
 *   frictionFactor: coherentUnit("coefficient").of(0.02),
 * });
 * d.in(millimetre).toFixed(2); // => "31.62"
 * ```
 */
export const greatestPowerNozzle = /* @__PURE__ */ formula(() => ({
  id: "greatest-power-nozzle",
  equation: "d = D/(2·f·L/D)^(1/4)",
  inputs: {
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Length along the pipe. */
    length: input("pipe length", "L", { domain: "positive" }),
    /** Darcy friction factor of the pipe at that flow. */
    frictionFactor: input("coefficient", "f", { domain: "positive" }),
  },
  output: output("length", "d"),
  source: munsonFluids.at("problem 12.56"),
  body: ({ D, L, f }) => D / Math.sqrt(Math.sqrt((2 * f * L) / D)),
}));
