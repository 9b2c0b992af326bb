import { residualAndUsable } from "@leat/hydrology";
import { cubicMetrePerSecond, day, isQuantity, type Quantity } from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";

import { bothFlows } from "../both.ts";
import type { Ledger } from "../ledger.ts";
import type { Measured } from "../measure/measured.ts";
import type { LeaveSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";
import { leaveRule } from "./leave-rule.ts";
import { siteRecord } from "./site-record.ts";

/**
 * What stays of the measured flow by the rules of the survey, on the day that it was measured.
 *
 * @param survey - The survey.
 * @param flow - What was measured.
 * @param ledger - Lists what came of the rules.
 * @returns The flow that stays; nothing where the survey has no rules.
 * @throws {@link UnbuildableError} where a rule cannot be read for that day.
 */
export function leftByRules(
  survey: Survey,
  flow: Measured<"volume flow">,
  ledger: Ledger,
): Quantity<"volume flow"> | undefined {
  const { leave } = survey.stream;
  if (leave === undefined || isQuantity(leave)) return undefined;
  const { on, value } = flow.taken;
  if (on === undefined)
    throw new UnbuildableError(
      "day-unknown",
      ["stream"],
      "rules for what must stay go by the day, and the day of the measured flow is not told. Write it, such as on: 2026-08-14.",
    );
  const known = siteRecord(survey.id, survey.stream, flow, () => undefined)?.record;
  const { shareOfMean, exceeded, exceededByMonth, tennant } = leave as LeaveSurvey;
  if (
    !known &&
    [shareOfMean, exceeded, exceededByMonth, tennant].some((rule) => rule !== undefined)
  )
    throw new UnbuildableError(
      "record-unknown",
      ["stream", "leave by rules"],
      "a rule goes by what the stream has in the mean or for most of the time, and there is no record. Give a record or a gauged stream, or write what stays as a flow.",
    );
  const [record, row] = known ? withDay(known, on, value) : ofOneDay(on, value);
  const { rule, most } = leaveRule(leave, ledger);
  const use = residualAndUsable(
    { record, rule, ...(most && { most }) },
    { onNotice: () => undefined },
  );
  const left = use.left.values[row] as number;
  ledger.assume(
    ["stream", "leave"],
    `what stays of the flow by the rules, on ${on}`,
    bothFlows(left),
    undefined,
  );
  return cubicMetrePerSecond.of(left);
}

/** The record with the measured flow on a day of the same date: the last one that it has. */
function withDay(
  record: Column<"volume flow">,
  on: string,
  flow: Quantity<"volume flow">,
): [Column<"volume flow">, number] {
  const axis = record.axis as TimeAxis;
  const wanted = on.slice(5);
  let row = axis.length - 1;
  // The 29th of February is taken as the 28th in a record without a leap year.
  while (row >= 0 && !fits(axis.isoAt(row).slice(5, 10), wanted)) row -= 1;
  if (row < 0)
    throw new UnbuildableError(
      "day-unknown",
      ["stream", "record"],
      `the record has no day of the year like ${on}, so that the rules cannot be read for it. Give a record of a whole year.`,
    );
  const values = record.values.slice();
  values[row] = flow["~si"];
  const quality = record.quality.slice();
  quality[row] = 0;
  return [Column.wrap("volume flow", values, quality, { axis }), row];
}

function fits(date: string, wanted: string): boolean {
  return date === wanted || (wanted === "02-29" && date === "02-28");
}

function ofOneDay(on: string, flow: Quantity<"volume flow">): [Column<"volume flow">, number] {
  const axis = TimeAxis.regular({ start: on, step: day.of(1), count: 1, utcOffset: "+00:00" });
  const values = Float64Array.of(flow["~si"]);
  return [Column.wrap("volume flow", values, new Uint8Array(1), { axis }), 0];
}
