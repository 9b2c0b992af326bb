import { commonPractice, firstPrinciples } from "@leat/formula";

import type { Ledger } from "../ledger.ts";
import type { FieldSurvey, Survey } from "../survey.ts";
import { type Conditions, conditionsOf } from "./conditions.ts";
import { measureFall } from "./fall.ts";
import type { Measured } from "./measured.ts";
import { measureStream } from "./stream.ts";

/**
 * The flow and the fall of a survey, as they were measured.
 *
 * @param survey - The survey.
 * @param ledger - Lists what is assumed.
 * @returns Both.
 */
export function measureBoth<S extends FieldSurvey>(
  survey: S,
  ledger: Ledger,
): {
  flow: Measured<"volume flow"> | (S extends Survey ? never : undefined);
  fall: Measured<"gross head"> | (S extends Survey ? never : undefined);
  conditions: Conditions;
} {
  const temperature = ledger.take(
    "site.waterTemperature",
    { kind: "absolute zero", measure: "put a thermometer in the stream", nominal: true },
    survey.site.waterTemperature,
  );
  assumeSite(ledger, survey);
  const conditions = conditionsOf(survey, ledger, temperature);
  return {
    conditions,
    flow: (survey.stream.measured.length > 0
      ? measureStream(survey, ledger, conditions)
      : undefined) as never,
    fall: (survey.fall && measureFall(survey.fall, ledger, conditions)) as never,
  };
}

/** Gravity and air of the site, where the survey does not say where it is. */
function assumeSite(ledger: Ledger, { site }: FieldSurvey): void {
  if (!site.latitude)
    ledger.assume(
      ["site", "latitude"],
      "gravity",
      "9.80665 m/s²; with the latitude it is worked out, and lies within 0.3 % of that",
      firstPrinciples.at("standard gravity, exact by convention"),
    );
  if (!site.elevation)
    ledger.assume(
      ["site", "elevation"],
      "height over the sea, for gravity and the pressure of the air",
      "0 m",
      commonPractice.at("it moves the density of water by millionths", "practice"),
    );
}
