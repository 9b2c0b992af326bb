import { table } from "@leat/formula";
import { coherentUnit } from "@leat/quantity";

import { perryFittings } from "../sources.ts";

/**
 * Loss coefficients of valves by how far they are open, and of small fittings, on the velocity head in their bore.
 *
 * The angles of cocks and butterfly valves are those that they are turned from fully open. Between two rows there is
 * no straight line: the coefficient rises by tens. Weisbach's gate valve, which other tables print, loses 0.26, 2.1 and
 * 17 at three quarters, half and a quarter open, where this one has 0.9, 4.5 and 24: valves differ by as much. A
 * full-bore ball valve that is open loses about 0.05, as a piece of pipe does.
 */
export const valveCoefficients = /* @__PURE__ */ table(() => ({
  id: "valve-coefficients",
  key: "valve",
  units: { coefficient: coherentUnit("coefficient") },
  source: perryFittings.at("valves, cocks, couplings and meters", "secondary"),
  rows: [
    { valve: "gate valve, open", coefficient: 0.17 },
    { valve: "gate valve, three quarters open", coefficient: 0.9 },
    { valve: "gate valve, half open", coefficient: 4.5 },
    { valve: "gate valve, a quarter open", coefficient: 24 },
    { valve: "diaphragm valve, open", coefficient: 2.3 },
    { valve: "diaphragm valve, three quarters open", coefficient: 2.6 },
    { valve: "diaphragm valve, half open", coefficient: 4.3 },
    { valve: "diaphragm valve, a quarter open", coefficient: 21 },
    { valve: "globe valve, open", coefficient: 6 },
    { valve: "globe valve, half open", coefficient: 9.5 },
    { valve: "angle valve, open", coefficient: 2 },
    { valve: "Y valve, open", coefficient: 3 },
    { valve: "plug cock, turned 5°", coefficient: 0.05 },
    { valve: "plug cock, turned 10°", coefficient: 0.29 },
    { valve: "plug cock, turned 20°", coefficient: 1.56 },
    { valve: "plug cock, turned 40°", coefficient: 17.3 },
    { valve: "plug cock, turned 60°", coefficient: 206 },
    { valve: "butterfly valve, turned 5°", coefficient: 0.24 },
    { valve: "butterfly valve, turned 10°", coefficient: 0.52 },
    { valve: "butterfly valve, turned 20°", coefficient: 1.54 },
    { valve: "butterfly valve, turned 40°", coefficient: 10.8 },
    { valve: "butterfly valve, turned 60°", coefficient: 118 },
    { valve: "check valve, swing", coefficient: 2 },
    { valve: "check valve, disk", coefficient: 10 },
    { valve: "check valve, ball", coefficient: 70 },
    { valve: "foot valve", coefficient: 15 },
    { valve: "water meter, disk", coefficient: 7 },
    { valve: "water meter, piston", coefficient: 15 },
    { valve: "water meter, turbine wheel", coefficient: 6 },
    { valve: "coupling", coefficient: 0.04 },
    { valve: "union", coefficient: 0.04 },
  ],
}));
