import { formula, output, pointInput } from "@leat/formula";

import { iapwsIf97 } from "../sources.ts";
import { liquidTemperature, saturationUnits } from "./liquid.ts";
import {
  quadraticA,
  quadraticB,
  quadraticC,
  saturationMegapascals,
  shifted,
} from "./saturation.ts";

/**
 * Vapour pressure of water: the absolute pressure below which it boils and a column of it parts.
 *
 *     pv = (2·C/(−B + √(B² − 4·A·C)))^4 in MPa
 *
 * @throws OutOfValidityError outside 0 °C to 100 °C, and `onNotice` is absent.
 * @example
 * ```ts
 * import { celsius, pascal } from "@leat/quantity";
 * import { vapourPressure } from "@leat/water";
 *
 * vapourPressure({ temperature: celsius.at(20) }).in(pascal).toFixed(0); // => "2339"
 * ```
 */
export const vapourPressure = /* @__PURE__ */ formula(() => ({
  id: "vapour-pressure",
  equation: "pv = MPa·(2·C/(−B + √(B² − 4·A·C)))^4",
  inputs: {
    /** Temperature of the water. */
    temperature: pointInput("absolute zero", "T"),
  },
  output: output("pressure", "pv"),
  constants: saturationUnits,
  steps: {
    ϑ: { kind: "ratio", equation: "T/K + n9/(T/K − n10)", of: ({ T, K }) => shifted(T / K) },
    A: { kind: "ratio", equation: "ϑ² + n1·ϑ + n2", of: ({ T, K }) => quadraticA(shifted(T / K)) },
    B: {
      kind: "ratio",
      equation: "n3·ϑ² + n4·ϑ + n5",
      of: ({ T, K }) => quadraticB(shifted(T / K)),
    },
    C: {
      kind: "ratio",
      equation: "n6·ϑ² + n7·ϑ + n8",
      of: ({ T, K }) => quadraticC(shifted(T / K)),
    },
  },
  limits: [liquidTemperature()],
  source: iapwsIf97.at("eq. 30, table 34", "secondary"),
  body: ({ T, K, MPa }) => saturationMegapascals(T / K) * MPa,
}));
