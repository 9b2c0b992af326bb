import { ratingCurve, staffReadings } from "@leat/flow-measurement";
import { type Point, point, type Quantity } from "@leat/quantity";

import type { StaffSurvey } from "../survey.ts";
import type { Taken, Taking } from "./measurement.ts";

/** A staff, and the rating of the stream at it. */
export function staffFlow(taking: Taking, staff: StaffSurvey): Taken<"volume flow"> {
  const name = taking.ledger.sourceOf(`${taking.key}.staff`);
  for (const note of staff.notes ?? []) taking.tell(note);
  const on = (stage: Quantity<"length">): Point<"staff zero"> => point("staff zero", stage, name);
  const { level, outliers } = staffReadings(
    {
      name,
      readings: staff.readings.map(on),
      division: staff.division,
      calibration: staff.calibration,
    },
    { onNotice: taking.tell },
  );
  const rating = ratingCurve(
    {
      name: `${name}.rating`,
      gaugings: staff.gaugings.map(({ on: day, stage, flow }) => ({
        on: day,
        stage: on(stage),
        flow,
      })),
      fit: "logarithms",
      zero: staff.zero && on(staff.zero),
    },
    { onNotice: taking.tell },
  );
  const value = rating.flowAt(level, { onNotice: taking.tell });
  const [segment] = rating.segments;
  taking.facts.push(
    {
      what: "rating",
      value: `${staff.gaugings.length} gaugings, ln Q fitted on ln (h − h0), exponent ${segment ? Number(segment.exponent["~si"].toPrecision(3)) : ""}`,
    },
    {
      what: "readers",
      value: `${staff.readings.length}${outliers.length > 0 ? `, ${outliers.length} of them standing out` : ""}`,
    },
  );
  return { by: "staff and rating", value };
}
