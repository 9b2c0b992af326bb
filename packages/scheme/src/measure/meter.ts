import {
  type GaugedEdge,
  midSectionDischarge,
  type PointVelocities,
  velocityArea,
} from "@leat/flow-measurement";

import { bothVelocities } from "../both.ts";
import type { MeterSurvey } from "../survey.ts";
import type { Taken, Taking } from "./measurement.ts";

/** A gauging with meter and rod. */
export function meterFlow(taking: Taking, meter: MeterSurvey): Taken<"volume flow"> {
  const name = taking.ledger.sourceOf(`${taking.key}.meter`);
  const { edges, verticals, exposure, rating } = meter;
  const { flow, meanVelocity, sections } = velocityArea(
    {
      name,
      edges: edges.map(({ at, ...edge }) => ({ distance: at, ...edge })) as unknown as readonly [
        GaugedEdge,
        GaugedEdge,
      ],
      verticals: verticals.map(({ at, depth, ...read }) => ({
        distance: at,
        depth,
        velocity: pointsOf(read),
      })),
      exposure,
      rating,
    },
    { onNotice: taking.tell },
  );
  taking.sheet(midSectionDischarge, {
    verticals: sections.map(({ distance, depth, velocity }) => ({ distance, depth, velocity })),
  });
  const largest = Math.max(...sections.map(({ share }) => share["~si"]));
  taking.facts.push(
    {
      what: "verticals",
      value: `${verticals.length}, the largest with ${(100 * largest).toFixed(1)} % of the flow`,
    },
    {
      what: "mean velocity",
      value: bothVelocities(meanVelocity["~si"], taking.customary),
    },
  );
  return { by: "meter, by verticals", value: flow };
}

/** The readings of a vertical; none where only depth was sounded. */
function pointsOf({
  surface,
  twoTenths,
  sixTenths,
  eightTenths,
}: Pick<MeterSurvey["verticals"][number], "surface" | "twoTenths" | "sixTenths" | "eightTenths">):
  | PointVelocities
  | undefined {
  if (twoTenths || eightTenths)
    return {
      ...(twoTenths && { atTwoTenths: twoTenths }),
      ...(sixTenths && { atSixTenths: sixTenths }),
      ...(eightTenths && { atEightTenths: eightTenths }),
    } as PointVelocities;
  if (sixTenths) return { atSixTenths: sixTenths };
  return surface && { atSurface: surface };
}
