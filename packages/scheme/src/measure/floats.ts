import {
  floatDischarge,
  floatGauging,
  type FloatSection,
  soundedArea,
} from "@leat/flow-measurement";
import type { Quantity } from "@leat/quantity";

import { bothAreas, bothVelocities } from "../both.ts";
import type { FloatsSurvey } from "../survey.ts";
import type { Taken, Taking } from "./measurement.ts";

/** Floats timed over a stretch. */
export function floatsFlow(taking: Taking, floats: FloatsSurvey): Taken<"volume flow"> {
  const name = taking.ledger.sourceOf(`${taking.key}.floats`);
  const { coefficient, bed, depth } = floats;
  const {
    flow,
    surfaceVelocity,
    area,
    coefficient: taken,
  } = floatGauging(
    {
      name,
      reachLength: floats.stretch,
      times: floats.times,
      sections: floats.sections.map(
        (section) =>
          (section.area
            ? { area: section.area }
            : { width: section.width, depths: section.depths }) as FloatSection,
      ),
      coefficient: coefficient ?? (bed ? { bed } : { averageDepth: depth as Quantity<"length"> }),
    },
    { onNotice: taking.tell },
  );
  taking.hints({
    [`${name}: cross-sections`]: ["the cross-sections", "sound more sections of the stretch"],
    [`${name}: scatter of the runs`]: ["scatter of the floats", "time more floats"],
    [`${name}: float coefficient`]: [
      "the floats' coefficient",
      "gauge once by meter, notch or salt beside the floats",
    ],
    [`${name}.coefficient`]: [
      "the floats' coefficient",
      "gauge once by meter, notch or salt beside the floats",
    ],
  });
  // The sections as they were added up: the mean of them is what the sheet shows.
  taking.sheet(floatDischarge, {
    reachLength: floats.stretch,
    runs: floats.times.map((time) => ({ time })),
    sections: floats.sections.map((section) => ({ area: areaOf(section) })),
    floatCoefficient: taken,
  });
  taking.facts.push(
    {
      what: "speed of the floats",
      value: bothVelocities(surfaceVelocity["~si"], taking.customary),
    },
    { what: "mean cross-section", value: bothAreas(area["~si"], taking.customary) },
    { what: "coefficient", value: String(Number(taken["~si"].toPrecision(3))) },
  );
  return { by: "floats", value: flow };
}

function areaOf({ area, ...sounded }: FloatsSurvey["sections"][number]): Quantity<"area"> {
  const { width, depths } = sounded as Required<typeof sounded>;
  return area ?? soundedArea({ width, depths: depths.map((depth) => ({ depth })) });
}
