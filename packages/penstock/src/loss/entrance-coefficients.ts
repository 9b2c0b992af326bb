import { table } from "@leat/formula";
import { coherentUnit } from "@leat/quantity";

import { entranceTables } from "../sources.ts";

/** Loss coefficients of entrances, on the velocity head in the pipe: least and greatest of two printed tables. */
export const entranceCoefficients = /* @__PURE__ */ table(() => ({
  id: "entrance-coefficients",
  key: "entrance",
  units: { low: coherentUnit("coefficient"), high: coherentUnit("coefficient") },
  source: entranceTables.at("entrances"),
  rows: [
    { entrance: "bell mouth", low: 0.05, high: 0.05 },
    { entrance: "rounded edge", low: 0.2, high: 0.25 },
    { entrance: "square edge", low: 0.5, high: 0.5 },
    { entrance: "projecting pipe", low: 0.8, high: 1 },
  ],
}));
