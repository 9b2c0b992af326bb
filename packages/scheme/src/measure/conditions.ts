import {
  kelvin,
  metrePerSecondSquared,
  pascal,
  type Point,
  point,
  type Quantity,
} from "@leat/quantity";
import { waterDensity } from "@leat/water";

import { siteOf, useBody } from "../compute.ts";
import { isCustomary } from "../customary.ts";
import type { Ledger, Parameter } from "../ledger.ts";
import type { FieldSurvey } from "../survey.ts";

/** Gravity and water of the site, as measurements need them. */
export interface Conditions {
  /** Gravity at the site. */
  readonly gravity: Quantity<"acceleration">;
  /** Density of the water, as sure as its temperature. */
  readonly density: Quantity<"density">;
  /** Whether the survey is written in feet and gallons, which then come first in what is printed. */
  readonly customary: boolean;
}

/**
 * Gravity and water of the site.
 *
 * @param survey - The survey.
 * @param ledger - Lists where uncertainties come from.
 * @param temperature - Temperature of the water, as given or assumed.
 * @returns The conditions.
 */
export function conditionsOf(
  survey: FieldSurvey,
  ledger: Ledger,
  temperature: Parameter,
): Conditions {
  const { gravity, atmosphere } = siteOf({ survey }, useBody);
  const source = ledger.sourceOf(temperature.key);
  ledger.hint(source, { what: temperature.what, how: temperature.measure });
  const given = temperature.given as unknown as Point<"absolute zero">;
  const { spread } = temperature;
  const known =
    given["~sources"] || !spread
      ? given
      : given.within(kelvin.of(spread.standard * Math.sqrt(3)), source);
  return {
    customary: isCustomary(survey),
    gravity: metrePerSecondSquared.of(gravity),
    // The limits of the formula are told where the scheme itself calls it.
    density: waterDensity(
      { temperature: known, pressure: point("vacuum", pascal.of(atmosphere)) },
      { onNotice: () => undefined },
    ),
  };
}
