import { table } from "@leat/formula";
import { millimetre } from "@leat/quantity";

import type { RoughnessRange } from "../pipe.ts";
import { steelRoughnessTables } from "../sources.ts";

/** Absolute roughness of steel pipe when new, as ranges. Rust makes black pipe ten times rougher and more. */
export const steelRoughness = /* @__PURE__ */ table(() => ({
  id: "steel-roughness",
  key: "finish",
  units: { low: millimetre, typical: millimetre, high: millimetre },
  source: steelRoughnessTables.at("commercial steel and galvanised iron, new", "secondary"),
  rows: [
    { finish: "black", low: 0.03, typical: 0.045, high: 0.1 },
    { finish: "galvanised", low: 0.15, typical: 0.15, high: 0.2 },
  ],
}));

/** The range for a finish. */
export function steelRoughnessOf(finish: "black" | "galvanised"): RoughnessRange {
  return {
    low: steelRoughness.get(finish, "low"),
    typical: steelRoughness.get(finish, "typical"),
    high: steelRoughness.get(finish, "high"),
  };
}
