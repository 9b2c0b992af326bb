import { table } from "@leat/formula";
import { ampere } from "@leat/quantity";

import { nfpa70 } from "./sources.ts";

/**
 * Ampacities of insulated American conductors up to 2000 V, by the temperature that the insulation and every
 * terminal stand (60, 75 or 90 °C): not more than three that carry current, in a raceway, a cable or direct
 * burial, at an ambient of 30 °C. Other ambients, more conductors and the code's own ceilings on the protection
 * of 14, 12 and 10 AWG are not in the table.
 *
 * Editions differ: to 2008 the 60 °C copper column began 20, 25 A at 14 and 12 AWG. The newer figures are followed.
 */
export const necAmpacities = /* @__PURE__ */ table(() => ({
  id: "nec-ampacities",
  key: "size",
  units: {
    copper60: ampere,
    copper75: ampere,
    copper90: ampere,
    aluminium60: ampere,
    aluminium75: ampere,
    aluminium90: ampere,
  },
  source: nfpa70.at("table 310.16 (table 310.15(B)(16) in 2011 to 2017)", "secondary"),
  // oxfmt-ignore
  rows: [
    { size: "18", copper90: 14 },
    { size: "16", copper90: 18 },
    { size: "14", copper60: 15, copper75: 20, copper90: 25 },
    { size: "12", copper60: 20, copper75: 25, copper90: 30, aluminium60: 15, aluminium75: 20, aluminium90: 25 },
    { size: "10", copper60: 30, copper75: 35, copper90: 40, aluminium60: 25, aluminium75: 30, aluminium90: 35 },
    { size: "8", copper60: 40, copper75: 50, copper90: 55, aluminium60: 35, aluminium75: 40, aluminium90: 45 },
    { size: "6", copper60: 55, copper75: 65, copper90: 75, aluminium60: 40, aluminium75: 50, aluminium90: 55 },
    { size: "4", copper60: 70, copper75: 85, copper90: 95, aluminium60: 55, aluminium75: 65, aluminium90: 75 },
    { size: "3", copper60: 85, copper75: 100, copper90: 115, aluminium60: 65, aluminium75: 75, aluminium90: 85 },
    { size: "2", copper60: 95, copper75: 115, copper90: 130, aluminium60: 75, aluminium75: 90, aluminium90: 100 },
    { size: "1", copper60: 110, copper75: 130, copper90: 145, aluminium60: 85, aluminium75: 100, aluminium90: 115 },
    { size: "1/0", copper60: 125, copper75: 150, copper90: 170, aluminium60: 100, aluminium75: 120, aluminium90: 135 },
    { size: "2/0", copper60: 145, copper75: 175, copper90: 195, aluminium60: 115, aluminium75: 135, aluminium90: 150 },
    { size: "3/0", copper60: 165, copper75: 200, copper90: 225, aluminium60: 130, aluminium75: 155, aluminium90: 175 },
    { size: "4/0", copper60: 195, copper75: 230, copper90: 260, aluminium60: 150, aluminium75: 180, aluminium90: 205 },
    { size: "250", copper60: 215, copper75: 255, copper90: 290, aluminium60: 170, aluminium75: 205, aluminium90: 230 },
    { size: "300", copper60: 240, copper75: 285, copper90: 320, aluminium60: 195, aluminium75: 230, aluminium90: 260 },
    { size: "350", copper60: 260, copper75: 310, copper90: 350, aluminium60: 210, aluminium75: 250, aluminium90: 280 },
    { size: "400", copper60: 280, copper75: 335, copper90: 380, aluminium60: 225, aluminium75: 270, aluminium90: 305 },
    { size: "500", copper60: 320, copper75: 380, copper90: 430, aluminium60: 260, aluminium75: 310, aluminium90: 350 },
  ],
}));
