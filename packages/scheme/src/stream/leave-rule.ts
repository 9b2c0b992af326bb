import {
  allOf,
  fishPassage,
  fixedFlow,
  licenceFlows,
  monthlyPercentileFlow,
  percentileFlow,
  type ResidualRule,
  shareAboveHandsOff,
  shareOfMeanFlow,
  tennant,
  tennantSeasons,
} from "@leat/hydrology";
import { cubicMetrePerSecond, isQuantity, percent, type Quantity } from "@leat/quantity";

import type { Ledger } from "../ledger.ts";
import type { LeaveSurvey, StreamSurvey } from "../survey.ts";

/** What must stay, as a rule, and the most that may be taken. */
export interface LeaveRule {
  /** The rule. */
  readonly rule: ResidualRule;
  /** Most that may be taken. */
  readonly most?: Quantity<"volume flow"> | undefined;
}

/**
 * What must stay, as a rule for every day.
 *
 * @param leave - What the survey says.
 * @param ledger - Lists the placeholder where it says nothing.
 * @returns The rule.
 */
export function leaveRule(leave: StreamSurvey["leave"], ledger: Ledger): LeaveRule {
  if (leave === undefined) {
    const share = percent.of(40);
    ledger.assume(
      ["stream", "leave"],
      "share of each day's flow that stays in the stream (a placeholder: the regulator decides)",
      "40 %",
      tennant.at(
        "table, good, April to September, 40 % of the mean annual flow; here of each day's flow",
        "memory",
      ),
    );
    return { rule: shareOfFlow(share) };
  }
  if (isQuantity(leave)) {
    const given = leave as Quantity<"volume flow"> | Quantity<"ratio">;
    return given.kind === "volume flow"
      ? { rule: fixedFlow({ flow: given as Quantity<"volume flow"> }) }
      : { rule: shareOfFlow(given as Quantity<"ratio">) };
  }
  return { rule: rulesOf(leave as LeaveSurvey), most: (leave as LeaveSurvey).most };
}

/** A share of each day's flow stays: above a hands-off flow of nothing, the rest may be taken. */
function shareOfFlow(stays: Quantity<"ratio">): ResidualRule {
  return shareAboveHandsOff({
    handsOff: cubicMetrePerSecond.of(0),
    share: percent.of(100).minus(stays),
  });
}

/** Every rule that is given; the greatest decides. */
function rulesOf(leave: LeaveSurvey): ResidualRule {
  const { flow, shareOfMean, exceeded, exceededByMonth, handsOff, takeAbove, months, fish } = leave;
  const rules: ResidualRule[] = [
    ...(flow ? [fixedFlow({ flow })] : []),
    ...(shareOfMean ? [shareOfMeanFlow({ share: shareOfMean })] : []),
    ...(exceeded ? [percentileFlow({ exceeded })] : []),
    ...(exceededByMonth ? [monthlyPercentileFlow({ exceeded: exceededByMonth })] : []),
    ...(leave.tennant && leave.lowMonths
      ? [tennantSeasons({ condition: leave.tennant, lowFlowMonths: leave.lowMonths })]
      : []),
    ...(handsOff && takeAbove ? [shareAboveHandsOff({ handsOff, share: takeAbove })] : []),
    ...(months ? [licenceFlows({ flows: months })] : []),
  ];
  const all = rules.length > 0 ? allOf(...rules) : fixedFlow({ flow: cubicMetrePerSecond.of(0) });
  return (fish ?? []).reduce<ResidualRule>(
    (over, { from, to, flow: needed }) => fishPassage({ flow: needed, from, to, over }),
    all,
  );
}
