import { bound, firstPrinciples, input, type Limit, type ScalarInput } from "@leat/formula";
import { joulePerKilogramKelvin, kilogramPerCubicMetre } from "@leat/quantity";

import { waterTables } from "../sources.ts";

/** The water in a pipe, for the formulas that ask it alike. */
export interface WaterInputs {
  /** Density of the water. */
  readonly density: ScalarInput<"density", "ρ", true>;
  /** Specific heat of the water. */
  readonly specificHeat: ScalarInput<"specific heat", "c", true>;
}

/** Those inputs. */
export function waterInputs(): WaterInputs {
  return {
    density: input("density", "ρ", {
      domain: "positive",
      default: kilogramPerCubicMetre.of(1000),
      because: firstPrinciples.at("water near 4 °C"),
    }),
    specificHeat: input("specific heat", "c", {
      domain: "positive",
      default: joulePerKilogramKelvin.of(4217),
      because: waterTables.at("specific heat at 0 °C", "memory"),
    }),
  };
}

interface Letters {
  readonly T1: number;
  readonly Ta: number;
  readonly T2: number;
}

/** Limits of water that cools from one temperature to another in something colder than both. */
export function coolingLimits<
  const A extends string,
  const S extends string,
  const B extends string,
>(start: A, surroundings: S, end: B): Limit<A | S | B>[] {
  return [
    bound(
      surroundings,
      `${surroundings} over ${end}, from absolute zero`,
      ({ Ta, T2 }: Letters) => Ta / T2,
      { max: 1 },
      firstPrinciples.at("water that goes on cooling"),
    ),
    bound(
      start,
      `${start} over ${end}, from absolute zero`,
      ({ T1, T2 }: Letters) => T1 / T2,
      { min: 1 },
      firstPrinciples.at("water that cools"),
    ),
  ];
}
