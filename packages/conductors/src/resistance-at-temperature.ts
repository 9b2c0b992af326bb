import {
  commonPractice,
  formula,
  input,
  type Limit,
  output,
  pointInput,
  range,
} from "@leat/formula";
import { kelvin } from "@leat/quantity";

import { nfpa70 } from "./sources.ts";

/**
 * What a resistance is multiplied by from one temperature to another, for loops: 1 + α · (t2 − t1).
 *
 * @param coefficient - Relative change per kelvin, from t1.
 * @param t1 - Temperature at which the resistance is given, in kelvin.
 * @param t2 - Temperature at which it is wanted, in kelvin.
 * @returns The factor.
 */
export function temperatureFactor(coefficient: number, t1: number, t2: number): number {
  return 1 + coefficient * (t2 - t1);
}

/**
 * Limit of every formula here that has a conductor's temperature: metals leave the straight line far from where
 * its coefficient was taken.
 *
 * @returns The limit on `temperature`, 220 to 420 K.
 */
export function straightLine(): Limit<"temperature"> {
  return range(
    "temperature",
    { min: kelvin.of(220), max: kelvin.of(420) },
    commonPractice.at("about −50 to 150 °C, where the straight line is used", "practice"),
  );
}

/**
 * Resistance of a conductor at another temperature, per length.
 *
 *     r2 = r1 · (1 + α · (t2 − t1))
 *
 * The coefficient belongs to the temperature t1 at which r1 is given: 0.00323 per K for copper and 0.00330 for
 * aluminium at the 75 °C of the American table, 0.00393 and 0.00403 at the 20 °C of the metric one.
 *
 * @throws NonPhysicalError a negative resistance or coefficient.
 * @throws OutOfValidityError a temperature outside 220 to 420 K (about −50 to 150 °C) and `onNotice` is absent.
 */
export const resistanceAtTemperature = /* @__PURE__ */ formula(() => ({
  id: "resistance-at-temperature",
  equation: "r2 = r1 · (1 + α · (t2 − t1))",
  inputs: {
    /** Resistance per length as it is given. */
    resistancePerLength: input("resistance per length", "r1"),
    /** Temperature at which it is given. */
    at: pointInput("absolute zero", "t1"),
    /** Relative change per kelvin, from that temperature. */
    temperatureCoefficient: input("temperature coefficient", "α"),
    /** Temperature at which it is wanted. */
    temperature: pointInput("absolute zero", "t2"),
  },
  output: output("resistance per length", "r2"),
  limits: [straightLine()],
  source: nfpa70.at("ch. 9, table 8, note on change of temperature", "secondary"),
  body: ({ r1, t1, α, t2 }) => r1 * temperatureFactor(α, t1, t2),
}));
