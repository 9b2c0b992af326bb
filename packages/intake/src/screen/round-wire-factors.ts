import { table } from "@leat/formula";
import { coherentUnit, one } from "@leat/quantity";

import { blevinsGrilles } from "../sources.ts";

/** Factors β of cloth of round wire by the Reynolds number of the gap between two wires, for {@link wireClothLoss}. */
export const roundWireFactors = /* @__PURE__ */ table(() => ({
  id: "round-wire-factors",
  key: "at",
  units: { reynolds: one, factor: coherentUnit("coefficient") },
  source: blevinsGrilles.at("round wire screens, factor by Reynolds number", "secondary"),
  rows: [
    { at: "20", reynolds: 20, factor: 1.3 },
    { at: "30", reynolds: 30, factor: 1.1 },
    { at: "40", reynolds: 40, factor: 0.95 },
    { at: "60", reynolds: 60, factor: 0.83 },
    { at: "80", reynolds: 80, factor: 0.75 },
    { at: "100", reynolds: 100, factor: 0.7 },
    { at: "200", reynolds: 200, factor: 0.6 },
    { at: "400", reynolds: 400, factor: 0.52 },
  ],
}));

/**
 * The factor at a Reynolds number: a straight line from row to row, and the last row from there on.
 *
 * @param reynolds - Reynolds number of the gap; below the first row the table says nothing, and its slope is carried on.
 * @returns The factor.
 */
export function roundWireFactorOf(reynolds: number): number {
  const [first, ...others] = roundWireFactors.definition.rows;
  let low = first!;
  for (const high of others) {
    if (reynolds < high.reynolds) {
      const share = (reynolds - low.reynolds) / (high.reynolds - low.reynolds);
      return low.factor + share * (high.factor - low.factor);
    }
    low = high;
  }
  return low.factor;
}
