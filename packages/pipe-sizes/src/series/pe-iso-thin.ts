import { table } from "@leat/formula";
import { millimetre } from "@leat/quantity";

import { din8074 } from "../sources.ts";

/**
 * Minimum walls of thin metric PE pipe, in millimetres, in the two ratios that ISO 4427 prints for large pipe only; the
 * size is the outside diameter. To 200 mm as DIN 8074 prints them; above as a print of AS/NZS 4130 has them.
 */
export const peIsoThinSizes = /* @__PURE__ */ table(() => ({
  id: "pe-iso-thin-sizes",
  key: "size",
  units: { outsideDiameter: millimetre, "SDR 33": millimetre, "SDR 41": millimetre },
  source: din8074.at("walls of SDR 33 and SDR 41", "secondary"),
  rows: [
    { size: 50, outsideDiameter: 50, "SDR 33": 1.8 },
    { size: 63, outsideDiameter: 63, "SDR 33": 2, "SDR 41": 1.8 },
    { size: 75, outsideDiameter: 75, "SDR 33": 2.3, "SDR 41": 1.9 },
    { size: 90, outsideDiameter: 90, "SDR 33": 2.8, "SDR 41": 2.2 },
    { size: 110, outsideDiameter: 110, "SDR 33": 3.4, "SDR 41": 2.7 },
    { size: 125, outsideDiameter: 125, "SDR 33": 3.9, "SDR 41": 3.1 },
    { size: 140, outsideDiameter: 140, "SDR 33": 4.3, "SDR 41": 3.5 },
    { size: 160, outsideDiameter: 160, "SDR 33": 4.9, "SDR 41": 4 },
    { size: 180, outsideDiameter: 180, "SDR 33": 5.5, "SDR 41": 4.4 },
    { size: 200, outsideDiameter: 200, "SDR 33": 6.2, "SDR 41": 4.9 },
    { size: 225, outsideDiameter: 225, "SDR 33": 6.9, "SDR 41": 5.5 },
    { size: 250, outsideDiameter: 250, "SDR 33": 7.7, "SDR 41": 6.2 },
    { size: 280, outsideDiameter: 280, "SDR 33": 8.6, "SDR 41": 6.9 },
    { size: 315, outsideDiameter: 315, "SDR 33": 9.7, "SDR 41": 7.7 },
    { size: 355, outsideDiameter: 355, "SDR 33": 10.9, "SDR 41": 8.7 },
    { size: 400, outsideDiameter: 400, "SDR 33": 12.3, "SDR 41": 9.8 },
    { size: 450, outsideDiameter: 450, "SDR 33": 13.8, "SDR 41": 11 },
    { size: 500, outsideDiameter: 500, "SDR 33": 15.3, "SDR 41": 12.3 },
    { size: 560, outsideDiameter: 560, "SDR 33": 17.2, "SDR 41": 13.7 },
    { size: 630, outsideDiameter: 630, "SDR 33": 19.3, "SDR 41": 15.4 },
  ],
}));
