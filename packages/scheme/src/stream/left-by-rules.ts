import { residualAndUsable } from "@leat/hydrology";
import { cubicMetrePerSecond, day, isQuantity, type Quantity } from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";

import { bothFlows } from "../both.ts";
import type { Ledger } from "../ledger.ts";
import type { Measured } from "../measure/measured.ts";
import type { Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";
import { guarded } from "./in-stream-words.ts";
import { leaveRule, settled } from "./leave-rule.ts";
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
  const { shareOfMean, exceeded, exceededByMonth, tennant } = leave;
  const byRecord = [shareOfMean, exceeded, exceededByMonth, tennant].some((rule) => rule);
  const known = byRecord
    ? siteRecord(survey.id, survey.stream, flow, { onNotice: () => undefined })
    : undefined;
  if (byRecord && !known)
    throw new UnbuildableError(
      "record-unknown",
      ["stream", "leave by rules"],
      "a rule goes by what the stream has in the mean or for most of the time, and there is no record. Give a record or a gauged stream, or write what stays as a flow.",
    );
  const left = guarded(() => {
    const { rule, most } = leaveRule(leave);
    const use = residualAndUsable(
      {
        record: ofOneDay(on, value),
        rule: known ? settled(rule, known.record) : rule,
        ...(most && { most }),
      },
      { onNotice: () => undefined },
    );
    return use.left.values[0] as number;
  });
  ledger.assume(
    ["stream", "leave"],
    `what stays of the flow by the rules, on ${on}`,
    bothFlows(left),
    undefined,
  );
  return cubicMetrePerSecond.of(left);
}

function ofOneDay(on: string, flow: Quantity<"volume flow">): Column<"volume flow"> {
  const axis = TimeAxis.regular({ start: on, step: day.of(1), count: 1, utcOffset: "+00:00" });
  return Column.wrap("volume flow", Float64Array.of(flow["~si"]), new Uint8Array(1), { axis });
}
