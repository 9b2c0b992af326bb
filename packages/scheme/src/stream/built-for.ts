import { commonPractice, type Notice } from "@leat/formula";
import {
  designFlows,
  type DesignFlows,
  flowDuration,
  type ResidualAndUsable,
} from "@leat/hydrology";
import {
  cubicMetrePerSecond,
  gallonPerMinute,
  litrePerSecond,
  percent,
  type Quantity,
  type Unit,
} from "@leat/quantity";
import type { Column } from "@leat/quantity/column";

import { isCustomary } from "../customary.ts";
import type { Ledger } from "../ledger.ts";
import type { FieldSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";
import { pipesToTry, type PipeToTry } from "./power-of-flow.ts";

/** What a scheme could be built for. */
export interface BuiltFor {
  /** Days and water of each flow that it could be built for. */
  readonly flows: DesignFlows;
  /** Energy with each set of pipes, that of the survey first; none where there is no scheme yet. */
  readonly pipes: readonly PipeTried[];
}

/** A set of pipes, and the energy with it. */
export interface PipeTried {
  /** Which, in words. */
  readonly pipe: string;
  /** Each reach as it is sold, from the intake down. */
  readonly reaches: readonly string[];
  /** The flows that it carries; absent where it carries none of them. */
  readonly flows?: DesignFlows;
}

/** Least share of the flow that it is built for that a machine runs on. */
const least = /* @__PURE__ */ percent.of(20);

/**
 * What a scheme could be built for, with each set of pipes.
 *
 * @param survey - The survey; its scheme is used where there is one.
 * @param use - What stays, and what may be taken.
 * @param ledger - Lists what is assumed.
 * @param onNotice - Told of what is out of the ordinary.
 * @returns Nothing where there is never anything to take.
 */
export function builtFor(
  survey: FieldSurvey & Partial<Survey>,
  { usable, left }: ResidualAndUsable,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): BuiltFor | undefined {
  const candidates = survey.stream.builtFor
    ? survey.stream.builtFor.toSorted((a, b) => a["~si"] - b["~si"])
    : usualCandidates(usable, isCustomary(survey) ? gallonPerMinute : litrePerSecond);
  if (candidates.length === 0) return undefined;
  ledger.assume(
    ["stream", "builtFor"],
    "least share of the flow it is built for that a machine runs on",
    least.toString(),
    commonPractice.at("one of several small jets stays open", "practice"),
  );
  const of = { usable, left, leastShare: least };
  const flows = designFlows({ ...of, candidates }, { onNotice });
  const largest = (candidates.at(-1) as Quantity<"volume flow">)["~si"];
  return {
    flows,
    pipes: pipesOf(survey, largest, ledger, onNotice).map(({ pipe, reaches, carries, powerAt }) => {
      const carried = candidates.filter((flow) => flow["~si"] <= carries);
      return {
        pipe,
        reaches,
        ...(carried.length > 0 && {
          flows: designFlows({ ...of, candidates: carried, powerAt }),
        }),
      };
    }),
  };
}

/** The pipes to try; why there are none is told, and stops nothing else. */
function pipesOf(
  survey: FieldSurvey & Partial<Survey>,
  largest: number,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): readonly PipeToTry[] {
  try {
    const { pipes, assumed } = pipesToTry(survey, largest);
    if (pipes.length > 0)
      ledger.assume(
        ["stream", "builtFor"],
        "efficiency of wheel and machine on less water",
        "as at the full flow, with nozzles opened and shut to suit",
        commonPractice.at("a machine far below its full power does worse", "practice"),
      );
    ledger.assumed.push(...assumed);
    return pipes;
  } catch (error) {
    if (!(error instanceof UnbuildableError)) throw error;
    const { code, path, message } = error;
    onNotice({ code, severity: "caution", path, message: `No energy is worked out: ${message}` });
    return [];
  }
}

/** Flows that may be taken for these shares of the time. */
const usualShares = [0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1];

function usualCandidates(
  usable: Column<"volume flow">,
  unit: Unit<"volume flow">,
): Quantity<"volume flow">[] {
  const { flows, shares } = flowDuration({ record: usable }, { onNotice: () => undefined });
  const found = usualShares.map((share) => {
    const at = shares.values.findIndex((p) => p >= share);
    const flow = at < 0 ? 0 : cubicMetrePerSecond.of(flows.values[at] as number).in(unit);
    return Number(flow.toPrecision(2));
  });
  return [...new Set(found)].filter((q) => q > 0).map((q) => unit.of(q));
}
