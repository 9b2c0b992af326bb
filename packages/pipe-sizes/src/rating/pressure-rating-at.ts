import type { Citation } from "@leat/formula";
import { celsius, fahrenheit, one, type Point, type Quantity, QuantityError } from "@leat/quantity";

import { between } from "../material/elastic-modulus.ts";
import {
  peIsoTemperatureFactors,
  peTemperatureFactors,
  pvcIsoTemperatureFactors,
  pvcTemperatureFactors,
  steelTemperatureFactors,
} from "../material/temperature-factors.ts";
import type { Pipe } from "../pipe.ts";

/** Share of its rating that a pipe keeps. */
export interface TemperatureFactor {
  /** The share, 1 at the temperature of the rating and below. */
  readonly factor: Quantity<"ratio">;
  /** Whose factor it is; none where the rating's own temperature is not exceeded by a pipe of one's own. */
  readonly source: Citation | undefined;
}

/**
 * Share of its rating that a pipe keeps in warm water, by the rule of its own standard.
 *
 * PE in inches and metric PVC go by steps, as their sources do: the factor of a step holds up to its top. Metric PE and
 * PVC in inches go by straight lines between the temperatures that are printed. Cold water adds nothing.
 *
 * @param pipe - The pipe.
 * @param temperature - Of the water, and so of the wall; pipe that lies in the sun without flow is warmer.
 * @returns The factor and whose it is.
 * @throws QuantityError `size` for water that is warmer than the table goes, or than a pipe of one's own is rated for.
 */
export function temperatureFactorOf(
  pipe: Pipe,
  temperature: Point<"absolute zero">,
): TemperatureFactor {
  const beyond = (upTo: string): string =>
    `${pipe.name} in water of ${temperature.toString()}; its factors go up to ${upTo}: ask the maker`;
  const stepped = (
    table:
      | typeof peTemperatureFactors
      | typeof pvcIsoTemperatureFactors
      | typeof steelTemperatureFactors,
    unit: typeof celsius,
  ): TemperatureFactor => {
    const { rows, source } = table.definition;
    // A hair for the rounding of the units, so that a step holds up to its top.
    const degrees = temperature.in(unit) - 1e-9;
    const row = rows.find(({ upTo }) => degrees <= Number.parseFloat(upTo));
    if (!row) throw unknown(beyond(String(rows.at(-1)?.upTo)));
    return { factor: one.of(row.factor), source };
  };
  const lined = (
    table: typeof peIsoTemperatureFactors | typeof pvcTemperatureFactors,
    unit: typeof celsius,
  ): TemperatureFactor => {
    const { rows, source } = table.definition;
    const points = rows.map(({ at, factor }) => [Number.parseFloat(at), factor] as const);
    const degrees = Math.max(temperature.in(unit), points[0]?.[0] ?? 0);
    return {
      factor: one.of(between(points, degrees, () => beyond(String(rows.at(-1)?.at)))),
      source,
    };
  };
  switch (pipe.series) {
    case "PE IPS":
    case "PE SIDR":
      return stepped(peTemperatureFactors, fahrenheit);
    case "PE ISO":
      return lined(peIsoTemperatureFactors, celsius);
    case "PVC schedule":
    case "PVC SDR":
      return lined(pvcTemperatureFactors, fahrenheit);
    case "PVC ISO":
      return stepped(pvcIsoTemperatureFactors, celsius);
    case "steel":
      return stepped(steelTemperatureFactors, celsius);
    case "own":
      if (pipe.ratedAt && temperature.in(celsius) <= pipe.ratedAt.in(celsius) + 1e-9)
        return { factor: one.of(1), source: undefined };
      throw unknown(
        `${pipe.name} in water of ${temperature.toString()}; it is rated at ${pipe.ratedAt?.toString() ?? "no temperature that was stated"}: ask the maker`,
      );
  }
}

/**
 * Pressure that a pipe carries in water of a temperature.
 *
 * @param pipe - The pipe.
 * @param temperature - Of the water.
 * @returns Its rating times its temperature factor: steady pressure, without surge.
 * @throws QuantityError `size` for a pipe that states no rating, and as `temperatureFactorOf`.
 * @example
 * ```ts
 * import { pressureRatingAt, readPipe } from "@leat/pipe-sizes";
 * import { fahrenheit, poundPerSquareInch } from "@leat/quantity";
 *
 * const warm = pressureRatingAt(readPipe("2 in PE SIDR 15"), fahrenheit.at(85));
 * warm.in(poundPerSquareInch).toFixed(1); // => "112.5"
 * ```
 */
export function pressureRatingAt(
  pipe: Pipe,
  temperature: Point<"absolute zero">,
): Quantity<"pressure"> {
  const { pressureRating } = pipe;
  if (!pressureRating)
    throw unknown(`the pressure that ${pipe.name} carries: its maker states none`);
  return pressureRating.times(temperatureFactorOf(pipe, temperature).factor.in(one));
}

function unknown(what: string): QuantityError {
  return new QuantityError("size", `nothing is known of ${what}.`);
}
