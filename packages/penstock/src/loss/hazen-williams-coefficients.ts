import { table } from "@leat/formula";
import { ppiHandbook } from "@leat/pipe-sizes";
import { coherentUnit } from "@leat/quantity";

import { epanetManual } from "../sources.ts";

/** Coefficients of Hazen and Williams for new pipe, as EPANET's manual prints them. */
export const hazenWilliamsCoefficients = /* @__PURE__ */ table(() => ({
  id: "hazen-williams-coefficients",
  key: "material",
  units: { low: coherentUnit("coefficient"), high: coherentUnit("coefficient") },
  source: epanetManual.at("ch. 3, Table 3.2"),
  rows: [
    { material: "cast iron, new", low: 130, high: 140 },
    { material: "galvanised iron", low: 120, high: 120 },
    { material: "plastic", low: 140, high: 150 },
    { material: "steel, new", low: 140, high: 150 },
  ],
}));

/** Coefficients of Hazen and Williams for PE with its beads, as a maker prints them of the handbook of the plastic pipe institute. */
export const polyethyleneFlowCoefficients = /* @__PURE__ */ table(() => ({
  id: "polyethylene-flow-coefficients",
  key: "material",
  units: { low: coherentUnit("coefficient"), high: coherentUnit("coefficient") },
  source: ppiHandbook.at("ch. 6, flow in PE pipe", "secondary"),
  rows: [{ material: "PE, butt fused", low: 150, high: 155 }],
}));
