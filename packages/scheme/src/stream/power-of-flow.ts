import { monotoneCurve } from "@leat/numerics";
import { pipesLike } from "@leat/pipe-sizes";

import { compute, useBody, type Values } from "../compute.ts";
import { firstLook } from "../first-look.ts";
import { type Plan, planOf } from "../plan.ts";
import type { FieldSurvey, ReachSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";

/** A set of pipes, and what a scheme with them gives at a flow. */
export interface PipeToTry {
  /** Which, in words. */
  readonly pipe: string;
  /** Power at the battery's terminals, in W, with nozzles opened and shut to suit the flow, in m³/s. */
  readonly powerAt: (flow: number) => number;
}

/** Flows at which the power is worked out; between them it is a smooth curve. */
const knots = 48;

/**
 * The pipe of a survey, and the same in the next two sizes where it is one that is sold.
 *
 * @param survey - The survey.
 * @param largest - Largest flow that is asked for, in m³/s.
 * @returns None where the survey has no scheme yet.
 */
export function pipesToTry(survey: FieldSurvey & Partial<Survey>, largest: number): PipeToTry[] {
  if (!isWhole(survey)) return [];
  // Every flow is tried with nozzles that fit it.
  const { nozzles: _, ...jets } = survey.jets;
  const open: Survey = { ...survey, jets, stream: { ...survey.stream, leave: undefined as never } };
  const first = planOf(open, firstLook);
  const names = first.reaches.map(({ pipe }) => pipe?.name);
  const tries = [{ pipe: "pipe of the survey", plan: first }];
  for (const [wider, pipe] of [
    [1, "one size wider"],
    [2, "two sizes wider"],
  ] as const) {
    const reaches = survey.reaches.map((reach, i) => widened(reach, names[i], wider));
    if (reaches.every((reach) => reach !== undefined))
      tries.push({ pipe, plan: planOf({ ...open, reaches }, firstLook) });
  }
  return tries.map(({ pipe, plan }) => ({ pipe, powerAt: powerCurve(plan, largest) }));
}

function isWhole(survey: FieldSurvey & Partial<Survey>): survey is Survey {
  const { fall, reaches, cable, bank, stream } = survey;
  return !!fall && !!cable && !!bank && (reaches?.length ?? 0) > 0 && stream.measured.length > 0;
}

/** The reach in a wider size of its own class; nothing where there is none. */
function widened(
  reach: ReachSurvey,
  name: string | undefined,
  by: number,
): ReachSurvey | undefined {
  if (name === undefined || reach.bore) return undefined;
  const sizes = pipesLike(name);
  const at = sizes.findIndex((each) => each.name === name);
  const wider = at < 0 ? undefined : sizes[at + by];
  return wider && { ...reach, pipe: wider.name };
}

/** Power over flow as a smooth curve; none where the pipe cannot carry the flow. */
function powerCurve(plan: Plan, largest: number): (flow: number) => number {
  const values: Values = Object.fromEntries(plan.parameters.map(({ key, value }) => [key, value]));
  const at = (flow: number): number => {
    try {
      return compute(
        { ...plan, leaveBy: "flow" },
        { ...values, "stream.flow": flow, "stream.leave": 0 },
        useBody,
      ).delivered;
    } catch (error) {
      if (error instanceof UnbuildableError) return 0;
      throw error;
    }
  };
  const flows = Float64Array.from({ length: knots + 1 }, (_, i) => (largest * i) / knots);
  const powers = flows.map((flow) => (flow === 0 ? 0 : at(flow)));
  const curve = monotoneCurve(flows, powers);
  return (flow) => curve.at(flow);
}
