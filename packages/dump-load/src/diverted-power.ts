import { firstPrinciples, formula, input, output } from "@leat/formula";
import { one, watt } from "@leat/quantity";

import { nfpa70 } from "./sources.ts";

/**
 * Power that a diversion load must be able to take: everything that can come while nobody uses any, with a margin.
 *
 *     P = k · (Pm + Po)
 *
 * The machine's power is its greatest, with all jets open, at the voltage where diversion is full: not the power of
 * a dry month and not that at the nominal voltage. The load's own power is to be taken at that same voltage.
 *
 * @throws NonPhysicalError a negative power, or no margin.
 */
export const divertedPower = /* @__PURE__ */ formula(() => ({
  id: "diverted-power",
  equation: "P = k · (Pm + Po)",
  inputs: {
    /** Greatest power of the machine, at the voltage of diversion. */
    machinePower: input(["electric power", "power"], "Pm"),
    /** Greatest power of every other source on the same bus. */
    otherPower: input(["electric power", "power"], "Po", {
      default: watt.of(0),
      because: firstPrinciples.at("a scheme with no other source"),
    }),
    /** Rating of the load over the power that can come. */
    margin: input("ratio", "k", {
      domain: "positive",
      default: one.of(1.5),
      because: nfpa70.at(
        "690.72(B)(2) to 2014: a diversion load of at least 150 % of the array's rating",
        "memory",
      ),
    }),
  },
  output: output("electric power", "P"),
  source: firstPrinciples.at("balance of power on a bus with no load"),
  body: ({ Pm, Po, k }) => k * (Pm + Po),
}));
