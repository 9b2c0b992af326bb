import { percent } from "@leat/quantity";

import { beyondPositions } from "../duration/flow-duration.ts";
import type { DailyFlows } from "../record/daily-flows.ts";
import { flowAtShare } from "./order-statistic.ts";
import { monthAndDay, type PercentileFlow, type ResidualRule, type SharesOfMean } from "./rules.ts";

/** How a flow is moved for another look at the record: to a·Q + b, were the gauge off by as much. */
export interface Move {
  /** Factor of every flow. */
  readonly times: number;
  /** What is added, in m³/s. */
  readonly plus: number;
}

/**
 * Fills in what must stay on each day, of flows that were moved.
 *
 * @param values - The flows, moved, in m³/s.
 * @param move - How they were moved.
 * @param out - One number a day, in m³/s; on days that are not taken whatever comes out.
 */
export type Requirement = (values: Float64Array, move: Move, out: Float64Array) => void;

/**
 * Makes a rule ready for a record: what it takes from the record, a mean or a percentile, is worked out once. Moved flows have that
 * mean and that percentile moved alike.
 *
 * @param rule - The rule.
 * @param daily - The record, looked through.
 * @returns What fills in the days.
 * @throws NonPhysicalError a percentile that so few days do not reach.
 */
export function requirementOf(rule: ResidualRule, daily: DailyFlows): Requirement {
  const { months } = daily.calendar;
  switch (rule.rule) {
    case "fixed flow": {
      const flow = rule.flow["~si"];
      return (_, __, out) => {
        out.fill(flow);
      };
    }
    case "shares of mean flow":
      return ofMean(rule, daily);
    case "percentile flow":
      return ofPercentile(rule, daily);
    case "share above hands-off flow": {
      const handsOff = rule.handsOff["~si"];
      const kept = 1 - rule.share["~si"];
      return (values, _, out) => {
        for (let row = 0; row < values.length; row++) {
          const above = (values[row] as number) - handsOff;
          out[row] = above > 0 ? handsOff + kept * above : handsOff;
        }
      };
    }
    case "licence flows": {
      const flows = Float64Array.from(rule.flows, (flow) => flow["~si"]);
      return (_, __, out) => {
        fillMonths(months, flows, out);
      };
    }
    case "fish passage": {
      const over = requirementOf(rule.over, daily);
      const season = [monthAndDay(rule.from), monthAndDay(rule.to)] as const;
      return (values, move, out) => {
        over(values, move, out);
        addInSeason(rule.flow["~si"], season, daily, out);
      };
    }
    case "greatest of": {
      const [first, ...others] = rule.rules.map((each) => requirementOf(each, daily));
      return (values, move, out) => {
        (first as Requirement)(values, move, out);
        const other = new Float64Array(out.length);
        for (const each of others) {
          each(values, move, other);
          for (let row = 0; row < out.length; row++) {
            if ((other[row] as number) > (out[row] as number)) out[row] = other[row] as number;
          }
        }
      };
    }
  }
}

/** Fills each day with the number of its month. */
function fillMonths(months: Uint8Array, of: Float64Array, out: Float64Array): void {
  for (let row = 0; row < out.length; row++) out[row] = of[(months[row] as number) - 1] as number;
}

function ofMean({ shares, meanFlow }: SharesOfMean, daily: DailyFlows): Requirement {
  const mean = meanFlow ? meanFlow["~si"] : meanOf(daily);
  return (_, { times, plus }, out) => {
    // A mean that the rule was given does not move with the gauge.
    const flow = meanFlow ? mean : times * mean + plus;
    fillMonths(
      daily.calendar.months,
      Float64Array.from(shares, (share) => share["~si"] * flow),
      out,
    );
  };
}

function meanOf({ record, unusable }: DailyFlows): number {
  const { values, quality } = record;
  let sum = 0;
  let days = 0;
  for (let row = 0; row < values.length; row++) {
    if (((quality[row] as number) & unusable) !== 0) continue;
    sum += values[row] as number;
    days += 1;
  }
  return sum / days;
}

function ofPercentile({ exceeded, of }: PercentileFlow, daily: DailyFlows): Requirement {
  const flows = new Float64Array(12);
  const share = exceeded["~si"];
  const percentile = (picked: Float64Array, where: string): number => {
    const flow = flowAtShare(picked, share);
    if (flow !== undefined) return flow;
    const days = picked.length;
    throw beyondPositions(
      where,
      percent.of(Number((share * 100).toPrecision(12))),
      [1 / (days + 1), days / (days + 1)],
      days,
    );
  };
  const picked = pickDays(daily);
  if (of === "year") {
    flows.fill(percentile(picked.flows, "percentile-flow"));
  } else {
    for (let month = 1; month <= 12; month++) {
      const inMonth = picked.flows.subarray(picked.starts[month], picked.starts[month + 1]);
      // A month without a day asks for nothing.
      if (inMonth.length === 0) continue;
      flows[month - 1] = percentile(inMonth, `monthly-percentile-flow, month ${month}`);
    }
  }
  return (_, { times, plus }, out) => {
    fillMonths(
      daily.calendar.months,
      flows.map((flow) => times * flow + plus),
      out,
    );
  };
}

/** The flows that count, January's of all years first, and where each month starts. */
function pickDays({ record, unusable, calendar }: DailyFlows): {
  readonly flows: Float64Array;
  readonly starts: Uint32Array;
} {
  const { values, quality } = record;
  const { months } = calendar;
  const starts = new Uint32Array(14);
  for (let row = 0; row < values.length; row++) {
    if (((quality[row] as number) & unusable) !== 0) continue;
    const month = months[row] as number;
    starts[month + 1] = (starts[month + 1] as number) + 1;
  }
  for (let month = 1; month <= 13; month++) {
    starts[month] = (starts[month] as number) + (starts[month - 1] as number);
  }
  const flows = new Float64Array(starts[13] as number);
  const next = starts.slice();
  for (let row = 0; row < values.length; row++) {
    if (((quality[row] as number) & unusable) !== 0) continue;
    const month = months[row] as number;
    flows[next[month] as number] = values[row] as number;
    next[month] = (next[month] as number) + 1;
  }
  return { flows, starts };
}

/** Adds a flow from one day of the year to another, both included, over New Year where the second comes first. */
function addInSeason(
  flow: number,
  [from, to]: readonly [number, number],
  { record, calendar }: DailyFlows,
  out: Float64Array,
): void {
  const { months } = calendar;
  let day = record.axis?.civilAt(0).day ?? 1;
  for (let row = 0; row < out.length; row++) {
    const month = months[row] as number;
    if (row > 0) day = month === months[row - 1] ? day + 1 : 1;
    const date = month * 100 + day;
    const inside = from <= to ? date >= from && date <= to : date >= from || date <= to;
    if (inside) out[row] = (out[row] as number) + flow;
  }
}
