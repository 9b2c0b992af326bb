import { flowDuration, flowExceeded, recordSummary, tennantShares } from "@leat/hydrology";
import { isQuantity, percent, type Quantity } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";

import { bothFlows } from "../both.ts";
import type { Fact } from "../measure/measurement.ts";
import type { LeaveSurvey, StreamSurvey } from "../survey.ts";
import { placeholderShare } from "./leave-rule.ts";

/**
 * What must stay, in words, with the flows that a record makes of it.
 *
 * @param leave - What the survey says.
 * @param record - Daily flows.
 * @returns A line for each rule.
 */
export function leaveFacts(leave: StreamSurvey["leave"], record: Column<"volume flow">): Fact[] {
  if (leave === undefined)
    return [{ what: "no rule is given", value: `${text(placeholderShare)} of each day's flow` }];
  if (isQuantity(leave)) {
    const given = leave;
    return given.kind === "ratio"
      ? [{ what: "a share", value: `${text(given)} of each day's flow` }]
      : [{ what: "all year", value: bothFlows(given["~si"]) }];
  }
  return rulesInWords(leave, record);
}

function rulesInWords(rules: LeaveSurvey, record: Column<"volume flow">): Fact[] {
  const { flow, shareOfMean, exceeded, exceededByMonth, tennant, lowMonths } = rules;
  const { handsOff, takeAbove, months, fish, most } = rules;
  const facts: Fact[] = [];
  const say = (what: string, value: string): void => {
    facts.push({ what, value });
  };
  const ofMean = (share: Quantity<"ratio">): string =>
    bothFlows(share["~si"] * recordSummary({ record }).mean["~si"]);
  if (flow) say("all year", bothFlows(flow["~si"]));
  if (shareOfMean) say(`${text(shareOfMean)} of the mean flow`, ofMean(shareOfMean));
  if (exceeded) {
    const found = flowExceeded({ duration: flowDuration({ record }), share: exceeded });
    say(`exceeded for ${text(exceeded)} of the time`, bothFlows(found["~si"]));
  }
  if (exceededByMonth)
    say(`month by month`, `the flow that is exceeded for ${text(exceededByMonth)} of that month`);
  if (tennant && lowMonths) {
    const [low, high] = (["octoberToMarch", "aprilToSeptember"] as const).map((season) =>
      tennantShares.get(tennant, season),
    ) as [Quantity<"ratio">, Quantity<"ratio">];
    say(
      `Tennant, ${tennant}`,
      `${text(low)} of the mean flow in the low months, ${ofMean(low)}; else ${text(high)}, ${ofMean(high)}`,
    );
  }
  if (handsOff && takeAbove)
    say(
      "hands off",
      `all below ${bothFlows(handsOff["~si"])}; ${text(takeAbove)} of what is above it may be taken`,
    );
  if (months) {
    const sizes = months.map((each) => each["~si"]);
    say(
      "a flow for each month",
      `${bothFlows(Math.min(...sizes))} to ${bothFlows(Math.max(...sizes))}`,
    );
  }
  for (const { from, to, flow: needed } of fish ?? [])
    say(`for fish, ${from} to ${to}`, `${bothFlows(needed["~si"])} on top`);
  if (most) say("most that may be taken", bothFlows(most["~si"]));
  return facts;
}

function text(share: Quantity<"ratio">): string {
  return `${Number(share.in(percent).toPrecision(4))} %`;
}
