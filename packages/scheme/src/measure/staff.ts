import { ratingCurve, ratingDischarge, staffReadings } from "@leat/flow-measurement";
import { type Point, point, type Quantity } from "@leat/quantity";

import { bothHeights } from "../both.ts";
import type { StaffSurvey } from "../survey.ts";
import type { Taken, Taking } from "./measurement.ts";

/** A staff, and the rating of the stream at it. */
export function staffFlow(taking: Taking, staff: StaffSurvey): Taken<"volume flow"> {
  const name = taking.ledger.sourceOf(`${taking.key}.staff`);
  staff.notes?.forEach(taking.tell);
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
  taking.hints({
    [`${name}.rating: flow`]: ["scatter of the gaugings", "gauge the stream at more stages"],
    [`${name}.rating: exponent`]: ["exponent of the rating", "gauge at low and at high water"],
    [`${name}.rating: stage of zero flow`]: ["stage of zero flow", "level it at the control"],
    [`${name}: noise of reading`]: ["noise of reading", "let more people read the staff"],
    [`${name}: rounding to the division`]: ["division of the staff", "read a finer staff"],
  });
  const value = rating.flowAt(level, { onNotice: taking.tell });
  const [segment] = rating.segments;
  if (segment) {
    const { zeroFlowStage, referenceDepth, referenceFlow, exponent } = segment;
    taking.sheet(ratingDischarge, {
      stage: level,
      zeroFlowStage,
      referenceDepth,
      referenceFlow,
      exponent,
    });
  }
  taking.facts.push(
    {
      what: "rating",
      value: [
        `${staff.gaugings.length} gaugings, ln Q fitted on ln (h − h0)`,
        ...(segment
          ? [
              `zero flow at ${bothHeights(segment.zeroFlowStage["~si"], taking.customary)}`,
              `exponent ${Number(segment.exponent["~si"].toPrecision(3))}`,
            ]
          : []),
      ].join(", "),
    },
    {
      what: "readers",
      value: `${staff.readings.length}${outliers.length > 0 ? `, ${outliers.length} of them standing out` : ""}`,
    },
  );
  return { by: "staff and rating", value };
}
