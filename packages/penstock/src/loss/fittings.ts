import { table } from "@leat/formula";
import { coherentUnit } from "@leat/quantity";

import { epanetManual } from "../sources.ts";

/**
 * Loss coefficients of fittings, on the velocity head in their bore, as EPANET's manual prints them.
 *
 * Round figures for a first design: screwed fittings and small bores lose more, and the maker's figure goes first.
 */
export const fittingCoefficients = /* @__PURE__ */ table(() => ({
  id: "fitting-coefficients",
  key: "fitting",
  units: { coefficient: coherentUnit("coefficient") },
  source: epanetManual.at("ch. 3, Table 3.3, minor loss coefficients for selected fittings"),
  rows: [
    { fitting: "globe valve, fully open", coefficient: 10 },
    { fitting: "angle valve, fully open", coefficient: 5 },
    { fitting: "swing check valve, fully open", coefficient: 2.5 },
    { fitting: "gate valve, fully open", coefficient: 0.2 },
    { fitting: "short-radius elbow", coefficient: 0.9 },
    { fitting: "medium-radius elbow", coefficient: 0.8 },
    { fitting: "long-radius elbow", coefficient: 0.6 },
    { fitting: "45 degree elbow", coefficient: 0.4 },
    { fitting: "closed return bend", coefficient: 2.2 },
    { fitting: "standard tee, flow through run", coefficient: 0.6 },
    { fitting: "standard tee, flow through branch", coefficient: 1.8 },
    { fitting: "square entrance", coefficient: 0.5 },
    { fitting: "exit", coefficient: 1 },
  ],
}));
