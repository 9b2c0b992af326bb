import {
  allOf,
  fishPassage,
  fixedFlow,
  flowDuration,
  flowExceeded,
  licenceFlows,
  monthlyPercentileFlow,
  percentileFlow,
  recordSummary,
  type ResidualRule,
  shareAboveHandsOff,
  shareOfMeanFlow,
  tennantSeasons,
} from "@leat/hydrology";
import { cubicMetrePerSecond, isQuantity, percent, type Quantity } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";

import type { LeaveSurvey, StreamSurvey } from "../survey.ts";

/** What must stay, as a rule, and the most that may be taken. */
export interface LeaveRule {
  /** The rule. */
  readonly rule: ResidualRule;
  /** Most that may be taken. */
  readonly most?: Quantity<"volume flow"> | undefined;
}

/** Share of each day's flow that stays where the survey says nothing: a placeholder. */
export const placeholderShare: Quantity<"ratio"> = /* @__PURE__ */ percent.of(40);

/**
 * What must stay, as a rule for every day.
 *
 * @param leave - What the survey says.
 * @returns The rule; the placeholder where it says nothing.
 */
export function leaveRule(leave: StreamSurvey["leave"]): LeaveRule {
  if (leave === undefined) return { rule: shareOfFlow(placeholderShare) };
  if (isQuantity(leave)) {
    const given = leave;
    return given.kind === "volume flow"
      ? { rule: fixedFlow({ flow: given }) }
      : { rule: shareOfFlow(given) };
  }
  const rules = leave;
  return { rule: rulesOf(rules), most: rules.most };
}

/** A share of each day's flow stays: above a hands-off flow of nothing, the rest may be taken. */
function shareOfFlow(stays: Quantity<"ratio">): ResidualRule {
  return shareAboveHandsOff({
    handsOff: cubicMetrePerSecond.of(0),
    share: percent.of(100).minus(stays),
  });
}

/** Every rule that is given; the greatest decides, and what fish need comes on top. */
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

/**
 * A rule with what it takes from a record written out as flows: it can then be read for a day that the record lacks.
 *
 * @param rule - The rule.
 * @param record - The record.
 * @returns The rule.
 */
export function settled(rule: ResidualRule, record: Column<"volume flow">): ResidualRule {
  switch (rule.rule) {
    case "shares of mean flow":
      return { ...rule, meanFlow: rule.meanFlow ?? recordSummary({ record }).mean };
    case "percentile flow": {
      const { exceeded: share } = rule;
      return rule.of === "year"
        ? fixedFlow({ flow: flowExceeded({ duration: flowDuration({ record }), share }) })
        : licenceFlows({ flows: monthsExceeded(record, share) });
    }
    case "fish passage":
      return { ...rule, over: settled(rule.over, record) };
    case "greatest of":
      return { ...rule, rules: rule.rules.map((each) => settled(each, record)) };
    default:
      return rule;
  }
}

/** The flow of each month that is exceeded for a share of it; none is asked of a month without a day. */
function monthsExceeded(
  record: Column<"volume flow">,
  share: Quantity<"ratio">,
): Quantity<"volume flow">[] {
  const { neverRecorded } = recordSummary({ record });
  return Array.from({ length: 12 }, (_, i) =>
    neverRecorded.includes(i + 1)
      ? cubicMetrePerSecond.of(0)
      : flowExceeded({ duration: flowDuration({ record, months: [i + 1] }), share }),
  );
}
