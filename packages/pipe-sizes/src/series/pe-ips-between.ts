import { table } from "@leat/formula";
import { inch } from "@leat/quantity";

import { astmPePipe } from "../sources.ts";

/**
 * Outside diameters and minimum walls of PE pipe in iron pipe sizes in the two ratios that the other table leaves out,
 * in inches. DR 15.5 is made from 2 in upwards: thinner pipe is not sold.
 */
export const peIpsBetweenSizes = /* @__PURE__ */ table(() => ({
  id: "pe-ips-between-sizes",
  key: "size",
  units: { outsideDiameter: inch, "DR 9.3": inch, "DR 15.5": inch },
  source: astmPePipe.at("minimum walls of DR 9.3 and DR 15.5", "memory"),
  rows: [
    { size: "1/2", outsideDiameter: 0.84, "DR 9.3": 0.09 },
    { size: "3/4", outsideDiameter: 1.05, "DR 9.3": 0.113 },
    { size: "1", outsideDiameter: 1.315, "DR 9.3": 0.141 },
    { size: "1 1/4", outsideDiameter: 1.66, "DR 9.3": 0.178 },
    { size: "1 1/2", outsideDiameter: 1.9, "DR 9.3": 0.204 },
    { size: "2", outsideDiameter: 2.375, "DR 9.3": 0.255, "DR 15.5": 0.153 },
    { size: "2 1/2", outsideDiameter: 2.875, "DR 9.3": 0.309, "DR 15.5": 0.185 },
    { size: "3", outsideDiameter: 3.5, "DR 9.3": 0.376, "DR 15.5": 0.226 },
    { size: "4", outsideDiameter: 4.5, "DR 9.3": 0.484, "DR 15.5": 0.29 },
    { size: "5", outsideDiameter: 5.563, "DR 9.3": 0.598, "DR 15.5": 0.359 },
    { size: "6", outsideDiameter: 6.625, "DR 9.3": 0.712, "DR 15.5": 0.427 },
    { size: "8", outsideDiameter: 8.625, "DR 9.3": 0.927, "DR 15.5": 0.556 },
    { size: "10", outsideDiameter: 10.75, "DR 9.3": 1.156, "DR 15.5": 0.694 },
    { size: "12", outsideDiameter: 12.75, "DR 9.3": 1.371, "DR 15.5": 0.823 },
    { size: "14", outsideDiameter: 14, "DR 9.3": 1.505, "DR 15.5": 0.903 },
    { size: "16", outsideDiameter: 16, "DR 9.3": 1.72, "DR 15.5": 1.032 },
    { size: "18", outsideDiameter: 18, "DR 9.3": 1.935, "DR 15.5": 1.161 },
    { size: "20", outsideDiameter: 20, "DR 9.3": 2.151, "DR 15.5": 1.29 },
    { size: "22", outsideDiameter: 22, "DR 9.3": 2.366, "DR 15.5": 1.419 },
    { size: "24", outsideDiameter: 24, "DR 9.3": 2.581, "DR 15.5": 1.548 },
  ],
}));
