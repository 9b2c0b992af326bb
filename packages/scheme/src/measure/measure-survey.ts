import type { Notice } from "@leat/formula";
import { isQuantity } from "@leat/quantity";

import type { Assumed } from "../assume.ts";
import { fieldCautionNotices } from "../cautions.ts";
import { inOrder } from "../in-order.ts";
import { Ledger } from "../ledger.ts";
import type { FieldSurvey } from "../survey.ts";
import { measureBoth } from "./both-ends.ts";
import type { Conditions } from "./conditions.ts";
import type { Measured } from "./measured.ts";
import { type Board, boardName, boardOf, boardOfNotch } from "./weir.ts";

/** Every measurement of a survey. */
export interface Measurements {
  /** What people call the site, or the id of the survey. */
  readonly site: string;
  /** The flow of the stream. */
  readonly flow?: Measured<"volume flow">;
  /** The fall. */
  readonly fall?: Measured<"gross head">;
  /** Tables of flows by the marks of the rulers on the weirs. */
  readonly boards: readonly Board[];
  /** Everything that was taken for the user. */
  readonly assumed: readonly Assumed[];
  /** Stops first, then cautions, then notes: those of every measurement and of their combination. */
  readonly notices: readonly Notice[];
}

/**
 * Works out every measurement of a survey: flow and fall, each with its uncertainty, and combines those of a day.
 *
 * @param survey - The survey.
 * @param assumed - What reading it took for granted.
 * @returns The measurements.
 */
export function measureSurvey(survey: FieldSurvey, assumed: readonly Assumed[] = []): Measurements {
  const ledger = new Ledger(survey.id);
  const { flow, fall, conditions } = measureBoth(survey, ledger);
  return {
    site: survey.site.name ?? survey.id,
    ...(flow && { flow }),
    ...(fall && { fall }),
    boards: boardsOf(survey, conditions),
    assumed: [...assumed, ...ledger.assumed],
    notices: inOrder([
      ...[...(flow?.measurements ?? []), ...(fall?.measurements ?? [])].flatMap(
        ({ notices }) => notices,
      ),
      ...(flow?.notices ?? []),
      ...(fall?.notices ?? []),
      ...fieldCautionNotices(survey),
    ]),
  };
}

/** The board that the survey names, else one for each notch whose surroundings are known. */
function boardsOf({ stream }: FieldSurvey, conditions: Conditions): Board[] {
  const { board: named, measured, leave } = stream;
  const stays = isQuantity(leave)
    ? leave.kind === "volume flow"
      ? leave
      : undefined
    : leave?.flow;
  if (named) return [boardOf(named, boardName(named.shape, undefined), conditions, { stays })];
  return measured.flatMap(({ name, notch }) => {
    const made = notch && boardOfNotch(notch);
    if (!made) return [];
    const { board, reading } = made;
    return [boardOf(board, boardName(board.shape, name), conditions, { stays, reading })];
  });
}
