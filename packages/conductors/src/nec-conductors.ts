import { table } from "@leat/formula";
import { inch, ohmPerKilofoot } from "@leat/quantity";

import { circularMil } from "./circular-mil.ts";
import { nfpa70 } from "./sources.ts";

/**
 * American conductors: area, diameter and direct-current resistance at 75 °C of uncoated copper and of
 * aluminium, stranded, and solid where the table has it. The nominal area of a size is that of its solid wire.
 *
 * Sizes to 4/0 are AWG, from 250 on kcmil.
 */
export const necConductors = /* @__PURE__ */ table(() => ({
  id: "nec-conductors",
  key: "size",
  units: {
    area: circularMil,
    diameter: inch,
    solidDiameter: inch,
    copper: ohmPerKilofoot,
    aluminium: ohmPerKilofoot,
    solidCopper: ohmPerKilofoot,
    solidAluminium: ohmPerKilofoot,
  },
  source: nfpa70.at("ch. 9, table 8", "secondary"),
  // oxfmt-ignore
  rows: [
    { size: "18", area: 1620, strands: 7, diameter: 0.046, copper: 7.95, aluminium: 13.1, solidDiameter: 0.04, solidCopper: 7.77, solidAluminium: 12.8 },
    { size: "16", area: 2580, strands: 7, diameter: 0.058, copper: 4.99, aluminium: 8.21, solidDiameter: 0.051, solidCopper: 4.89, solidAluminium: 8.05 },
    { size: "14", area: 4110, strands: 7, diameter: 0.073, copper: 3.14, aluminium: 5.17, solidDiameter: 0.064, solidCopper: 3.07, solidAluminium: 5.06 },
    { size: "12", area: 6530, strands: 7, diameter: 0.092, copper: 1.98, aluminium: 3.25, solidDiameter: 0.081, solidCopper: 1.93, solidAluminium: 3.18 },
    { size: "10", area: 10380, strands: 7, diameter: 0.116, copper: 1.24, aluminium: 2.04, solidDiameter: 0.102, solidCopper: 1.21, solidAluminium: 2 },
    { size: "8", area: 16510, strands: 7, diameter: 0.146, copper: 0.778, aluminium: 1.28, solidDiameter: 0.128, solidCopper: 0.764, solidAluminium: 1.26 },
    { size: "6", area: 26240, strands: 7, diameter: 0.184, copper: 0.491, aluminium: 0.808 },
    { size: "4", area: 41740, strands: 7, diameter: 0.232, copper: 0.308, aluminium: 0.508 },
    { size: "3", area: 52620, strands: 7, diameter: 0.26, copper: 0.245, aluminium: 0.403 },
    { size: "2", area: 66360, strands: 7, diameter: 0.292, copper: 0.194, aluminium: 0.319 },
    { size: "1", area: 83690, strands: 19, diameter: 0.332, copper: 0.154, aluminium: 0.253 },
    { size: "1/0", area: 105600, strands: 19, diameter: 0.372, copper: 0.122, aluminium: 0.201 },
    { size: "2/0", area: 133100, strands: 19, diameter: 0.418, copper: 0.0967, aluminium: 0.159 },
    { size: "3/0", area: 167800, strands: 19, diameter: 0.47, copper: 0.0766, aluminium: 0.126 },
    { size: "4/0", area: 211600, strands: 19, diameter: 0.528, copper: 0.0608, aluminium: 0.1 },
    { size: "250", area: 250000, strands: 37, diameter: 0.575, copper: 0.0515, aluminium: 0.0847 },
    { size: "300", area: 300000, strands: 37, diameter: 0.63, copper: 0.0429, aluminium: 0.0707 },
    { size: "350", area: 350000, strands: 37, diameter: 0.681, copper: 0.0367, aluminium: 0.0605 },
    { size: "400", area: 400000, strands: 37, diameter: 0.728, copper: 0.0321, aluminium: 0.0529 },
    { size: "500", area: 500000, strands: 37, diameter: 0.813, copper: 0.0258, aluminium: 0.0424 },
    { size: "600", area: 600000, strands: 61, diameter: 0.893, copper: 0.0214, aluminium: 0.0353 },
  ],
}));
