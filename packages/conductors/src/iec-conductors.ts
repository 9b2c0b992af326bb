import { table } from "@leat/formula";
import { ohmPerKilometre, squareMillimetre } from "@leat/quantity";

import { iec60228 } from "./sources.ts";

/**
 * Metric conductors: greatest direct-current resistance at 20 °C of plain annealed copper and of aluminium,
 * class 2 (stranded) and class 1 (solid). A conductor is its nominal area by its resistance, not by its
 * measured area. Solid copper of 25 mm² and more is for particular cables only, such as mineral-insulated.
 */
export const iecConductors = /* @__PURE__ */ table(() => ({
  id: "iec-conductors",
  key: "size",
  units: {
    area: squareMillimetre,
    copper: ohmPerKilometre,
    aluminium: ohmPerKilometre,
    solidCopper: ohmPerKilometre,
    solidAluminium: ohmPerKilometre,
  },
  source: iec60228.at("tables 1 and 2", "secondary"),
  // oxfmt-ignore
  rows: [
    { size: "0.5", area: 0.5, copper: 36, solidCopper: 36 },
    { size: "0.75", area: 0.75, copper: 24.5, solidCopper: 24.5 },
    { size: "1", area: 1, copper: 18.1, solidCopper: 18.1 },
    { size: "1.5", area: 1.5, copper: 12.1, solidCopper: 12.1 },
    { size: "2.5", area: 2.5, copper: 7.41, solidCopper: 7.41 },
    { size: "4", area: 4, copper: 4.61, solidCopper: 4.61 },
    { size: "6", area: 6, copper: 3.08, solidCopper: 3.08 },
    { size: "10", area: 10, copper: 1.83, aluminium: 3.08, solidCopper: 1.83, solidAluminium: 3.08 },
    { size: "16", area: 16, copper: 1.15, aluminium: 1.91, solidCopper: 1.15, solidAluminium: 1.91 },
    { size: "25", area: 25, copper: 0.727, aluminium: 1.2, solidCopper: 0.727, solidAluminium: 1.2 },
    { size: "35", area: 35, copper: 0.524, aluminium: 0.868, solidCopper: 0.524, solidAluminium: 0.868 },
    { size: "50", area: 50, copper: 0.387, aluminium: 0.641, solidCopper: 0.387, solidAluminium: 0.641 },
    { size: "70", area: 70, copper: 0.268, aluminium: 0.443, solidCopper: 0.268, solidAluminium: 0.443 },
    { size: "95", area: 95, copper: 0.193, aluminium: 0.32, solidCopper: 0.193, solidAluminium: 0.32 },
    { size: "120", area: 120, copper: 0.153, aluminium: 0.253, solidCopper: 0.153, solidAluminium: 0.253 },
    { size: "150", area: 150, copper: 0.124, aluminium: 0.206, solidCopper: 0.124, solidAluminium: 0.206 },
    { size: "185", area: 185, copper: 0.0991, aluminium: 0.164, solidCopper: 0.101, solidAluminium: 0.164 },
    { size: "240", area: 240, copper: 0.0754, aluminium: 0.125, solidCopper: 0.0775, solidAluminium: 0.125 },
    { size: "300", area: 300, copper: 0.0601, aluminium: 0.1, solidCopper: 0.062, solidAluminium: 0.1 },
  ],
}));
