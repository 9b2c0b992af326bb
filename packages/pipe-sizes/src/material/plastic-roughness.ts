import { table } from "@leat/formula";
import { millimetre } from "@leat/quantity";

import type { RoughnessRange } from "../pipe.ts";
import { plasticRoughnessTables } from "../sources.ts";

/** Absolute roughness of plastic pipe: the least and greatest that tables give, and a middle. Beads and growth add to it. */
export const plasticRoughness = /* @__PURE__ */ table(() => ({
  id: "plastic-roughness",
  key: "plastic",
  units: { low: millimetre, typical: millimetre, high: millimetre },
  source: plasticRoughnessTables.at("plastic, PE and PVC", "secondary"),
  rows: [
    { plastic: "PE", low: 0.0015, typical: 0.003, high: 0.007 },
    { plastic: "PVC", low: 0.0015, typical: 0.003, high: 0.007 },
  ],
}));

/** The range for a plastic. */
export function roughnessOf(plastic: "PE" | "PVC"): RoughnessRange {
  return {
    low: plasticRoughness.get(plastic, "low"),
    typical: plasticRoughness.get(plastic, "typical"),
    high: plasticRoughness.get(plastic, "high"),
  };
}
