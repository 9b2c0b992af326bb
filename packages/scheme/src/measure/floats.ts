import { floatGauging, type FloatSection } from "@leat/flow-measurement";
import {
  format,
  footPerSecond,
  metrePerSecond,
  type Quantity,
  squareFoot,
  squareMetre,
} from "@leat/quantity";

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
    [`${name}: coefficient`]: [
      "the floats' coefficient",
      "gauge once by meter, notch or salt beside the floats",
    ],
    [`${taking.key}.floats.coefficient`]: [
      "the floats' coefficient",
      "gauge once by meter, notch or salt",
    ],
  });
  taking.facts.push(
    {
      what: "speed of the floats",
      value: `${format(surfaceVelocity, metrePerSecond, 3)} (${format(surfaceVelocity, footPerSecond, 3)})`,
    },
    {
      what: "mean cross-section",
      value: `${format(area, squareMetre, 3)} (${format(area, squareFoot, 3)})`,
    },
    { what: "coefficient", value: String(Number(taken["~si"].toPrecision(3))) },
  );
  return { by: "floats", value: flow };
}
