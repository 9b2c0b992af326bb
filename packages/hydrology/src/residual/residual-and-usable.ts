import type { Notice } from "@leat/formula";
import { coverage95, cubicMetre, isQuantity, type Quantity, QuantityError } from "@leat/quantity";
import { Column, Quality, type SourceOf } from "@leat/quantity/column";

import { monthNames } from "../month-names.ts";
import { dailyFlows, type DailyFlows, type DailyRecord } from "../record/daily-flows.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import { type Move, type Requirement, requirementOf } from "./required-flow.ts";
import type { ResidualRule } from "./rules.ts";
import { hydropowerAbstraction } from "./sources.ts";

/** A record, what must stay of it, and what can be taken at most and at least. */
export interface ResidualAndUsableInput extends DailyRecord {
  /** What must stay in the stream. */
  readonly rule: ResidualRule;
  /** Most that may be taken: the licence's cap, or the bore of the pipe. */
  readonly most?: Quantity<"volume flow"> | undefined;
  /** Least that is worth taking: with less nothing is taken, and all of it stays. */
  readonly least?: Quantity<"volume flow"> | undefined;
}

/** What became of the days: `taking`, `tooLittle` and `nothing` make up `recorded`. */
export interface DaysOfUse {
  /** Days with a flow that counts. */
  readonly recorded: number;
  /** Days of which nothing was recorded. */
  readonly gaps: number;
  /** Days left out for their quality, as asked. */
  readonly leftOut: number;
  /** Days on which something can be taken. */
  readonly taking: number;
  /** Of those, days on which the most that may be taken is. */
  readonly capped: number;
  /** Days on which something is left over, but less than the least that is worth taking. */
  readonly tooLittle: number;
  /** Days on which nothing is left over. */
  readonly nothing: number;
  /** Of those, days on which the stream itself has less than must stay. */
  readonly short: number;
}

/** Volumes over the recorded days: left and usable make up the flow. */
export interface VolumesOfUse {
  /** What came down the stream. */
  readonly flow: Quantity<"volume">;
  /** What stays in it. */
  readonly left: Quantity<"volume">;
  /** What can be taken. */
  readonly usable: Quantity<"volume">;
}

/** One month of the year, all years together. */
export interface MonthOfUse extends VolumesOfUse {
  /** 1 to 12. */
  readonly month: number;
  /** Days with a flow that counts; none where the month is all gaps. */
  readonly recorded: number;
  /** Days of which nothing is known, or that were left out. */
  readonly gaps: number;
  /** Days on which something can be taken. */
  readonly taking: number;
}

/** What must stay, what does, and what can be taken. */
export interface ResidualAndUsable {
  /** What must stay, day by day, whether the stream has it or not. */
  readonly required: Column<"volume flow">;
  /** What does stay: all that is not taken. */
  readonly left: Column<"volume flow">;
  /** What can be taken. */
  readonly usable: Column<"volume flow">;
  /** What became of the days. */
  readonly days: DaysOfUse;
  /** Volumes over all recorded days, with the uncertainty that offset and scale of the record bring. */
  readonly volumes: VolumesOfUse;
  /** The twelve months. */
  readonly months: readonly MonthOfUse[];
  /** All that is to be said with the answer, first of all that the regulator decides. */
  readonly notices: readonly Notice[];
}

const daySeconds = 86_400;

/**
 * What must stay in the stream, what does, and what can be taken, day by day.
 *
 * On a recorded day left and usable make up the flow, nothing is taken before what must stay is there, and nothing is taken that is
 * more than the most or less than the least. A gap has no flow that could be used: it stays a gap in all three columns and is
 * counted, and no total makes up for it. The record must be of the stream as it is without the scheme.
 *
 * The volumes have the uncertainty that offset and scale of the record bring, worked out by taking the whole record that much higher
 * and lower: what is usable is a difference, and often less sure by far than the flow. The columns have none: what is left over of a
 * flow that is 10 % off is not 10 % off. A flow that a rule was given is taken as it is.
 *
 * @param input - The record, the rule, and the most and the least that is taken.
 * @param options - Told of every notice of the answer.
 * @returns Columns, counts, volumes and months.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no flow at all; a most that is below the least, either below
 * zero; a percentile that so few days do not reach.
 * @throws QuantityError a column of another kind, a most or a least that is no flow.
 * @example
 * ```ts
 * import { fixedFlow, residualAndUsable } from "@leat/hydrology";
 * import { cubicMetre, day, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // Five invented days, one of them not recorded.
 * const axis = TimeAxis.regular({ start: "2024-02-27", step: day.of(1), count: 5, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, [8, 12, null, 25, 90], { axis });
 * const { usable, days, volumes } = residualAndUsable({
 *   record,
 *   rule: fixedFlow({ flow: litrePerSecond.of(10) }),
 *   least: litrePerSecond.of(4),
 *   most: litrePerSecond.of(30),
 * });
 * Array.from(usable.in(litrePerSecond), Math.round); // => [0, 0, 0, 15, 30]
 * [days.taking, days.capped, days.tooLittle, days.short, days.gaps]; // => [2, 1, 1, 1, 1]
 * volumes.usable.in(cubicMetre).toFixed(0); // => "3888"
 * ```
 * @see Environment Agency, Hydroelectric power water abstraction levels, 2024
 */
export function residualAndUsable(
  input: ResidualAndUsableInput,
  options: NoticeOptions = {},
): ResidualAndUsable {
  const daily = dailyFlows(input, 1);
  const { record, unusable, calendar } = daily;
  const [most, least] = limitsOf(input);
  const { values, quality, axis } = record;
  const requirement = requirementOf(input.rule, daily);
  const required = new Float64Array(values.length);
  const left = new Float64Array(values.length);
  const usable = new Float64Array(values.length);
  requirement(values, { times: 1, plus: 0 }, required);

  const flags = quality.slice();
  const tally = new Float64Array(13 * fields);
  let [gaps, leftOut, capped, tooLittle, short] = [0, 0, 0, 0, 0];
  for (let row = 0; row < values.length; row++) {
    const flag = quality[row] as number;
    const at = (calendar.months[row] as number) * fields;
    if ((flag & unusable) !== 0) {
      if ((flag & Quality.gap) !== 0) gaps += 1;
      else leftOut += 1;
      flags[row] = flag | Quality.gap;
      required[row] = 0;
      tally[at + 4] = (tally[at + 4] as number) + 1;
      continue;
    }
    const flow = values[row] as number;
    const must = required[row] as number;
    const take = takeOf(flow, must, most, least);
    // What stays is not the flow less what is taken: no rounding takes from what must stay.
    const stays = take === 0 ? flow : Math.max(must, flow - most);
    left[row] = stays;
    usable[row] = take;
    tally[at] = (tally[at] as number) + flow;
    tally[at + 1] = (tally[at + 1] as number) + stays;
    tally[at + 2] = (tally[at + 2] as number) + take;
    tally[at + 3] = (tally[at + 3] as number) + 1;
    if (take > 0) {
      tally[at + 5] = (tally[at + 5] as number) + 1;
      if (take === most) capped += 1;
    } else if (flow > must) tooLittle += 1;
    else if (flow < must) short += 1;
  }
  const wrap = (numbers: Float64Array): Column<"volume flow"> =>
    Column.wrap("volume flow", numbers, flags, { axis });
  const months = monthNames.map((_, i): MonthOfUse => {
    const [flow, stays, taken, recorded, without, taking] = tally.subarray(
      (i + 1) * fields,
      (i + 2) * fields,
    ) as unknown as [number, number, number, number, number, number];
    return {
      month: i + 1,
      flow: volume(flow),
      left: volume(stays),
      usable: volume(taken),
      recorded,
      gaps: without,
      taking,
    };
  });
  const taking = sumOf(months, ({ taking: days }) => days);
  const recorded = values.length - gaps - leftOut;
  const days: DaysOfUse = {
    recorded,
    gaps,
    leftOut,
    taking,
    capped,
    tooLittle,
    nothing: recorded - taking - tooLittle,
    short,
  };
  const notices = noticesOf(days, months);
  for (const notice of notices) options.onNotice?.(notice);
  return {
    required: wrap(required),
    left: wrap(left),
    usable: wrap(usable),
    days,
    volumes: volumesOf(months, daily, (move) => lookAt(daily, requirement, move, most, least)),
    months,
    notices,
  };
}

/** Sums and counts of a month: flow, left, usable, days recorded, days not, days on which something is taken. */
const fields = 6;

/** What can be taken of a flow: nothing, the most, or what is above what must stay. */
function takeOf(flow: number, must: number, most: number, least: number): number {
  const take = flow - most >= must ? most : flow - must;
  return take > 0 && take >= least ? take : 0;
}

/** What is usable, in m³/s and days, of a record whose flows are moved. A flow that would be below zero is none. */
function lookAt(
  { record, unusable }: DailyFlows,
  requirement: Requirement,
  move: Move,
  most: number,
  least: number,
): { readonly flow: number; readonly usable: number } {
  const { quality } = record;
  const values = new Float64Array(record.length);
  for (let row = 0; row < values.length; row++) {
    const flow = (record.values[row] as number) * move.times + move.plus;
    values[row] = flow > 0 ? flow : 0;
  }
  const required = new Float64Array(record.length);
  requirement(values, move, required);
  let [flows, usable] = [0, 0];
  for (let row = 0; row < values.length; row++) {
    if (((quality[row] as number) & unusable) !== 0) continue;
    const flow = values[row] as number;
    flows += flow;
    usable += takeOf(flow, required[row] as number, most, least);
  }
  return { flow: flows, usable };
}

function limitsOf({ most, least }: ResidualAndUsableInput): [most: number, least: number] {
  for (const [name, flow] of Object.entries({ most, least })) {
    if (flow === undefined) continue;
    if (!isQuantity(flow) || flow.kind !== "volume flow") {
      throw new QuantityError(
        "kind",
        `residual-and-usable: ${name} = ${String(flow)} is refused: give a volume flow (such as 1 L/s)`,
      );
    }
    if (flow["~si"] < 0) {
      throw refusal(
        "residual/below-zero",
        [name],
        `residual-and-usable: ${name} = ${flow.toString()} is below zero. Check its sign.`,
        { actual: flow.toString(), limit: "at least 0" },
      );
    }
  }
  const limits: [number, number] = [most?.["~si"] ?? Number.POSITIVE_INFINITY, least?.["~si"] ?? 0];
  if (limits[0] < limits[1]) {
    throw refusal(
      "residual/most-below-least",
      ["most"],
      `residual-and-usable: most = ${String(most)} is below least = ${String(least)}, and nothing could ever be taken. Check both.`,
      { actual: String(most), limit: `at least ${String(least)}` },
    );
  }
  return limits;
}

function volume(flowDays: number): Quantity<"volume"> {
  return cubicMetre.of(flowDays * daySeconds);
}

function sumOf<T>(all: readonly T[], of: (each: T) => number): number {
  let sum = 0;
  for (const each of all) sum += of(each);
  return sum;
}

/**
 * Volumes over all days, and what they would be were the record off. All scales pull the record the same way and so do all
 * offsets: it is looked at once higher and once lower for each of the two, by all of them together, and each has its part.
 */
function volumesOf(
  months: readonly MonthOfUse[],
  { record }: DailyFlows,
  look: (move: Move) => { readonly flow: number; readonly usable: number },
): VolumesOfUse {
  let flow = cubicMetre.of(sumOf(months, (month) => month.flow["~si"]));
  let left = cubicMetre.of(sumOf(months, (month) => month.left["~si"]));
  let usable = cubicMetre.of(sumOf(months, (month) => month.usable["~si"]));
  const add = (sources: readonly SourceOf[] | undefined, move: (size: number) => Move): void => {
    const all = Math.hypot(0, ...(sources ?? []).map(([, standard]) => standard));
    if (all === 0) return;
    const [higher, lower] = [look(move(all)), look(move(-all))];
    for (const [id, standard] of sources ?? []) {
      const part = standard / all / 2;
      const byFlow = (higher.flow - lower.flow) * part;
      const byUsable = (higher.usable - lower.usable) * part;
      flow = spread(flow, byFlow, id);
      usable = spread(usable, byUsable, id);
      left = spread(left, byFlow - byUsable, id);
    }
  };
  add(record.uncertainty?.scale, (size) => ({ times: 1 + size, plus: 0 }));
  add(record.uncertainty?.offset, (size) => ({ times: 1, plus: size }));
  return { flow, left, usable };
}

/** Adds a source, with its sign. */
function spread(of: Quantity<"volume">, flowDays: number, id: string): Quantity<"volume"> {
  const half = volume(Math.abs(flowDays)).times(coverage95);
  return flowDays < 0 ? of.negate().plusMinus(half, id).negate() : of.plusMinus(half, id);
}

function noticesOf(days: DaysOfUse, months: readonly MonthOfUse[]): Notice[] {
  const notices: Notice[] = [
    {
      code: "residual/regulator-decides",
      severity: "caution",
      path: ["rule"],
      message:
        "residual-and-usable: how much must stay, and whether any may be taken, is for the water regulator to decide, not for this rule. Ask before money is spent; other rights, fish and the season all count.",
      source: hydropowerAbstraction.at("in licensing hydropower schemes"),
    },
  ];
  const unknown = months.filter(({ recorded }) => recorded === 0);
  if (unknown.length > 0) {
    notices.push({
      code: "residual/no-days",
      severity: "caution",
      path: ["record"],
      message: `residual-and-usable: no day of ${unknown.map(({ month }) => monthNames[month - 1]).join(", ")} is recorded: what can be taken then is unknown, and the totals are of the other months. Take another record, or fill those months.`,
      actual: "0 d",
      limit: "at least 1 d",
    });
  }
  if (days.gaps + days.leftOut > 0) {
    notices.push({
      code: "residual/gaps",
      severity: "note",
      path: ["record"],
      message: `residual-and-usable: ${days.gaps + days.leftOut} of ${days.recorded + days.gaps + days.leftOut} days have no flow that counts. They are in no total.`,
      actual: String(days.gaps + days.leftOut),
      limit: "0",
    });
  }
  if (days.taking === 0) {
    notices.push({
      code: "residual/never-usable",
      severity: "caution",
      path: ["rule"],
      message: `residual-and-usable: on none of ${days.recorded} days is there anything to take. Check the rule and the least flow against the stream.`,
      actual: "0 d",
    });
  }
  return notices;
}
