import { monotoneCurve } from "@leat/numerics";
import { pipesLike } from "@leat/pipe-sizes";

import type { Assumed } from "../assume.ts";
import { compute, streamOf, useBody, type Values } from "../compute.ts";
import { firstLook } from "../first-look.ts";
import { type Plan, planOf } from "../plan.ts";
import type { FieldSurvey, ReachSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";

/** A set of pipes, and what a scheme with them gives at a flow. */
export interface PipeToTry {
  /** Which, in words. */
  readonly pipe: string;
  /** Each reach as it is sold, from the intake down. */
  readonly reaches: readonly string[];
  /** Largest flow that was asked for and that the pipe carries, in m³/s. */
  readonly carries: number;
  /** Power at the battery's terminals in W, at a flow in m³/s that the pipe carries. */
  readonly powerAt: (flow: number) => number;
}

/** Pipes to try, and what was taken for the user to try them. */
export interface PipesToTry {
  /** The pipe of the survey first, then wider ones. */
  readonly pipes: readonly PipeToTry[];
  /** What was taken. */
  readonly assumed: readonly Assumed[];
}

/** Flows at which the power is worked out; between them it is a smooth curve. */
const knots = 48;

/** Sections of a scheme that its power comes of, besides the water and the fall. */
const ofPower = new Set<string | number>(["reaches", "jets", "wheel", "machine", "cable", "bank"]);

/**
 * The pipe of a survey, and the same in the next two sizes where it is one that is sold.
 *
 * @param survey - The survey.
 * @param largest - Largest flow that is asked for, in m³/s.
 * @returns No pipes where the survey has no scheme yet.
 * @throws {@link UnbuildableError} where no scheme can be made of it.
 */
export function pipesToTry(survey: FieldSurvey & Partial<Survey>, largest: number): PipesToTry {
  if (!isWhole(survey)) return { pipes: [], assumed: [] };
  // Every flow is tried with nozzles that fit it.
  const { nozzles: _, ...jets } = survey.jets;
  const open: Survey = { ...survey, jets: { count: 1, ...jets } };
  const first = asDesigned(open);
  const names = first.reaches.map(({ pipe }) => pipe?.name);
  const plans = [{ pipe: "as surveyed", plan: first }];
  for (const [wider, pipe] of [
    [1, "one size wider"],
    [2, "two sizes wider"],
  ] as const) {
    const reaches = survey.reaches.map((reach, i) => widened(reach, names[i], wider));
    if (reaches.every((reach) => reach !== undefined))
      plans.push({
        pipe,
        // The cable stays what it is.
        plan: {
          ...planOf(withoutRules({ ...open, reaches }), firstLook),
          conductor: first.conductor,
        },
      });
  }
  return {
    pipes: plans.map(({ pipe, plan }) => ({
      pipe,
      reaches: plan.reaches.map(({ name }) => name),
      ...powerCurve(plan, largest),
    })),
    assumed: first.assumed.filter(({ path }) => ofPower.has(path[0] as string)),
  };
}

function isWhole(survey: FieldSurvey & Partial<Survey>): survey is Survey {
  const { fall, reaches, cable, bank, stream } = survey;
  return !!fall && !!cable && !!bank && (reaches?.length ?? 0) > 0 && stream.measured.length > 0;
}

/** The plan that a design would have: pipe and cable that are chosen for the user are the same. */
function asDesigned(survey: Survey): Plan {
  try {
    const plan = planOf(survey, firstLook);
    if (streamOf(plan, valuesOf(plan)).usable > 0) return plan;
  } catch (error) {
    const unread = error instanceof UnbuildableError && /^(day|record)-unknown$/u.test(error.code);
    if (!unread) throw error;
  }
  // What cannot be read for the measured day, or leaves nothing then, says nothing of pipe and cable.
  return planOf(withoutRules(survey), firstLook);
}

function valuesOf({ parameters }: Plan): Values {
  return Object.fromEntries(parameters.map(({ key, value }) => [key, value]));
}

function withoutRules(survey: Survey): Survey {
  const { leave: _, ...stream } = survey.stream;
  return { ...survey, stream };
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

/** Power over flow as a smooth curve, up to what the pipe carries. */
function powerCurve(plan: Plan, largest: number): Pick<PipeToTry, "carries" | "powerAt"> {
  const values = valuesOf(plan);
  const at = (flow: number): number | undefined => {
    try {
      return compute(
        { ...plan, leaveBy: "flow" },
        { ...values, "stream.flow": flow, "stream.leave": 0 },
        useBody,
      ).delivered;
    } catch (error) {
      if (error instanceof UnbuildableError && error.code === "pipe-cannot-carry") return undefined;
      throw error;
    }
  };
  const carries = largestCarried(largest, (flow) => at(flow) !== undefined);
  const flows = Float64Array.from({ length: knots + 1 }, (_, i) => (carries * i) / knots);
  const powers = flows.map((flow) => (flow === 0 ? 0 : (at(flow) as number)));
  const curve = monotoneCurve(flows, powers);
  return { carries, powerAt: (flow) => curve.at(flow) };
}

/** The largest flow, to a millionth, that a pipe carries, by halving; the one asked for where it carries that. */
function largestCarried(largest: number, fits: (flow: number) => boolean): number {
  if (fits(largest)) return largest;
  let [low, high] = [0, largest];
  while (high - low > 1e-6 * largest) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
