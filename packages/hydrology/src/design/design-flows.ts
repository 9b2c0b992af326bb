import type { Notice } from "@leat/formula";
import {
  cubicMetre,
  cubicMetrePerSecond,
  isQuantity,
  joule,
  type Quantity,
  QuantityError,
  watt,
  year as yearUnit,
} from "@leat/quantity";
import { type Column, Quality } from "@leat/quantity/column";

import { dailyCalendar } from "../record/calendar.ts";
import { firstMonthOf } from "../record/daily-flows.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";

/** Flows that can be used, and the machines that might use them. */
export interface DesignFlowsInput {
  /** What can be used, day by day; or without dates and in any order, as a duration curve has it. */
  readonly usable: Column<"volume flow">;
  /** What stays in the stream on the same days, for the account of the water. */
  readonly left?: Column<"volume flow"> | undefined;
  /** Flows that a scheme could be built for, each larger than the one before. */
  readonly candidates: readonly Quantity<"volume flow">[];
  /** Least share of its design flow that a machine runs on. */
  readonly leastShare: Quantity<"ratio">;
  /**
   * Power of a machine built for `design` m³/s at `flow` m³/s, in W: a pure function, called at part flow once a day and candidate
   * and at full flow once a candidate. Efficiency at part flow, losses and head are in it.
   */
  readonly powerAt?: ((flow: number, design: number) => number) | undefined;
  /** Month whose first day begins a year, 1 to 12; that of the axis by default, else January. */
  readonly firstMonth?: number | undefined;
}

/** What becomes of the water, over all recorded days: used, spilled and left make up the total. */
export interface WaterAccount {
  /** Through the machine. */
  readonly used: Quantity<"volume">;
  /** Could have been used, but was more than the machine takes or too little for it; it goes down the stream. */
  readonly spilled: Quantity<"volume">;
  /** Stays in the stream; absent where that was not given. */
  readonly left: Quantity<"volume"> | undefined;
  /** All of it. */
  readonly total: Quantity<"volume">;
}

/** How far the complete years differ. */
export interface YearSpread<K extends string> {
  /** The poorest. */
  readonly least: Quantity<K>;
  /** The middle one: half of the years have more. */
  readonly middle: Quantity<K>;
  /** The richest. */
  readonly most: Quantity<K>;
}

/** One size of machine. */
export interface DesignFlow {
  /** What it is built for. */
  readonly flow: Quantity<"volume flow">;
  /** Time in a year that it runs full. */
  readonly full: Quantity<"time">;
  /** Time in a year that it runs on less. */
  readonly part: Quantity<"time">;
  /** Time in a year that it stands. */
  readonly idle: Quantity<"time">;
  /** Mean of the flow through it, standing included. */
  readonly meanUsed: Quantity<"volume flow">;
  /** What becomes of the water. */
  readonly water: WaterAccount;
  /** Volume through it in each complete year; absent where there is none. */
  readonly usedByYear: YearSpread<"volume"> | undefined;
  /** Mean power, standing included; absent without `powerAt`. */
  readonly meanPower: Quantity<"power"> | undefined;
  /** Energy in a year of mean power; absent without `powerAt`. */
  readonly energy: Quantity<"energy"> | undefined;
  /** Energy in each complete year; absent without `powerAt` and where there is no such year. */
  readonly energyByYear: YearSpread<"energy"> | undefined;
  /** Energy in a year beyond that of the candidate before; absent for the first. */
  readonly gain: Quantity<"energy"> | undefined;
}

/** All sizes, and the one that gives the most. */
export interface DesignFlows {
  /** In the order of the candidates. */
  readonly candidates: readonly DesignFlow[];
  /** Which of them gives the most energy, or uses the most water where `powerAt` is absent. The most energy is not the best buy. */
  readonly greatest: number;
  /** Days that the answer rests on. */
  readonly recorded: number;
  /** Days of which nothing is known. */
  readonly gaps: number;
  /** Complete years that the spread is of. */
  readonly completeYears: number;
  /** All that is out of the ordinary, once more for those who took no `onNotice`. */
  readonly notices: readonly Notice[];
}

const daySeconds = 86_400;

/** Sums of one candidate each. */
interface Sums {
  readonly used: Float64Array;
  readonly work: Float64Array;
  readonly full: Uint32Array;
  readonly part: Uint32Array;
}

/**
 * How machines of several sizes would have run on the days of a record.
 *
 * A machine takes what can be used, up to its design flow, and stands where that is less than the least share of it: then
 * nothing is used. Sums are over recorded days and told per year of 365.25 days; a gap is in none of them. All candidates
 * are worked out in one pass, in memory that grows with years and not with days.
 *
 * The days of a record are taken as they come: that a machine is started and stopped costs nothing here, and neither does a screen that
 * is full of leaves. The answers have no uncertainty: ask once more with a record that is as much higher or lower as it may be.
 *
 * @param input - Usable flows, candidates, least share, and the power of each.
 * @param options - Told of gaps, of a record without a complete year, and of a greatest that is the last candidate.
 * @returns Each candidate's time, water and energy, and which gives the most.
 * @throws NonPhysicalError no candidates, or one that is not larger than the one before, by its row; a least share that is not from 0 to
 * 100 %; a usable flow below zero, by its row; no day at all; `left` of another length; a power that is no number or below zero.
 * @throws QuantityError `kind` for what is no flow or no share.
 * @example
 * ```ts
 * import { designFlows } from "@leat/hydrology";
 * import { day, kilowattHour, litrePerSecond, percent } from "@leat/quantity";
 * import { Column } from "@leat/quantity/column";
 *
 * // An invented year in four days: 5, 10, 20 and 40 L/s that can be used, 50 m, 60 % of it as power.
 * const { candidates, greatest } = designFlows({
 *   usable: Column.of(litrePerSecond, [5, 10, 20, 40]),
 *   candidates: [10, 20, 40].map((flow) => litrePerSecond.of(flow)),
 *   leastShare: percent.of(20),
 *   powerAt: (flow) => 1000 * 9.81 * flow * 50 * 0.6,
 * });
 * candidates.map(({ full }) => full.in(day)); // => [273.9375, 182.625, 91.3125]
 * candidates.map(({ energy }) => energy?.in(kilowattHour).toFixed(0)); // => ["22574", "35473", "45147"]
 * greatest; // => 2
 * ```
 */
export function designFlows(input: DesignFlowsInput, options: NoticeOptions = {}): DesignFlows {
  const { usable, left, candidates, powerAt } = input;
  const designs = requireCandidates(candidates);
  const leastShare = requireLeast(input.leastShare);
  requireColumns(usable, left);
  const calendar = usable.axis
    ? dailyCalendar(usable, input.firstMonth ?? firstMonthOf(usable))
    : undefined;
  const { values, quality } = usable;
  const n = designs.length;
  const starts = calendar?.yearStarts ?? Uint32Array.of(0, values.length);
  const years = starts.length - 1;
  const byYear = new Float64Array(years * n);
  const workByYear = new Float64Array(years * n);
  const complete: number[] = [];
  const sums: Sums = {
    used: new Float64Array(n),
    work: new Float64Array(n),
    full: new Uint32Array(n),
    part: new Uint32Array(n),
  };
  const least = designs.map((design) => design * leastShare);
  const powers = designs.map((design) => powerOf(powerAt, design, design));

  let gaps = 0;
  let offered = 0;
  let stays = 0;
  for (let year = 0; year < years; year++) {
    const end = starts[year + 1] as number;
    const gapsBefore = gaps;
    for (let row = starts[year] as number; row < end; row++) {
      if (((quality[row] as number) & Quality.gap) !== 0) {
        gaps += 1;
        continue;
      }
      const flow = values[row] as number;
      offered += flow;
      if (left) stays += left.values[row] as number;
      for (let i = 0; i < n; i++) {
        const design = designs[i] as number;
        const at = year * n + i;
        if (flow >= design) {
          sums.full[i] = (sums.full[i] as number) + 1;
          byYear[at] = (byYear[at] as number) + design;
          workByYear[at] = (workByYear[at] as number) + (powers[i] as number);
        } else if (flow > 0 && flow >= (least[i] as number)) {
          sums.part[i] = (sums.part[i] as number) + 1;
          byYear[at] = (byYear[at] as number) + flow;
          if (powerAt) {
            workByYear[at] = (workByYear[at] as number) + powerOf(powerAt, flow, design);
          }
        }
      }
    }
    if (
      calendar &&
      gaps === gapsBefore &&
      end - (starts[year] as number) === calendar.yearDays[year]
    ) {
      complete.push(year);
    }
  }
  for (let at = 0; at < byYear.length; at++) {
    const i = at % n;
    sums.used[i] = (sums.used[i] as number) + (byYear[at] as number);
    sums.work[i] = (sums.work[i] as number) + (workByYear[at] as number);
  }
  const recorded = values.length - gaps;
  if (recorded === 0) throw noDays(values.length);

  const ofYears = (of: Float64Array, i: number): YearNumbers | undefined =>
    spreadOf(complete.map((year) => of[year * n + i] as number));
  const answers: DesignFlow[] = [];
  for (const [i, flow] of candidates.entries()) {
    const time = (days: number): Quantity<"time"> => yearUnit.of(days / recorded);
    const [full, part] = [sums.full[i] as number, sums.part[i] as number];
    const used = sums.used[i] as number;
    const power = powerAt && watt.of((sums.work[i] as number) / recorded);
    const energy = power?.times(yearUnit.of(1)).as("energy");
    const before = answers.at(-1)?.energy;
    const usedByYear = ofYears(byYear, i);
    const energyByYear = powerAt && ofYears(workByYear, i);
    answers.push({
      flow,
      full: time(full),
      part: time(part),
      idle: time(recorded - full - part),
      meanUsed: cubicMetrePerSecond.of(used / recorded),
      water: {
        used: cubicMetre.of(used * daySeconds),
        spilled: cubicMetre.of((offered - used) * daySeconds),
        left: left && cubicMetre.of(stays * daySeconds),
        total: cubicMetre.of((offered + stays) * daySeconds),
      },
      usedByYear: usedByYear && inUnit(usedByYear, (days) => cubicMetre.of(days * daySeconds)),
      meanPower: power,
      energy,
      energyByYear: energyByYear && inUnit(energyByYear, (days) => joule.of(days * daySeconds)),
      gain: energy && before && energy.minus(before),
    });
  }
  const greatest = indexOfGreatest(powerAt ? sums.work : sums.used);
  const notices = noticesOf(answers, greatest, {
    recorded,
    gaps,
    completeYears: complete.length,
    dated: calendar !== undefined,
  });
  for (const notice of notices) options.onNotice?.(notice);
  return { candidates: answers, greatest, recorded, gaps, completeYears: complete.length, notices };
}

function powerOf(powerAt: DesignFlowsInput["powerAt"], flow: number, design: number): number {
  if (!powerAt) return 0;
  const power = powerAt(flow, design);
  if (power >= 0 && power < Number.POSITIVE_INFINITY) return power;
  throw refusal(
    "design/no-power",
    ["powerAt"],
    `design-flows: powerAt gives ${String(power)} W at ${flow} m³/s of a design of ${design} m³/s. Give a power of zero or more for every flow up to the design.`,
    { actual: String(power), limit: "at least 0 W" },
  );
}

interface YearNumbers {
  readonly least: number;
  readonly middle: number;
  readonly most: number;
}

function spreadOf(years: readonly number[]): YearNumbers | undefined {
  if (years.length === 0) return undefined;
  const sorted = Float64Array.from(years).toSorted();
  const half = (sorted.length - 1) / 2;
  const middle = ((sorted[Math.floor(half)] as number) + (sorted[Math.ceil(half)] as number)) / 2;
  return { least: sorted[0] as number, middle, most: sorted[sorted.length - 1] as number };
}

function inUnit<K extends string>(
  { least, middle, most }: YearNumbers,
  of: (days: number) => Quantity<K>,
): YearSpread<K> {
  return { least: of(least), middle: of(middle), most: of(most) };
}

/** The first of the greatest: a larger machine that gives no more is not taken. */
function indexOfGreatest(of: Float64Array): number {
  let greatest = 0;
  for (let i = 1; i < of.length; i++) {
    if ((of[i] as number) > (of[greatest] as number)) greatest = i;
  }
  return greatest;
}

function requireCandidates(candidates: readonly Quantity<"volume flow">[]): number[] {
  if (candidates.length === 0) {
    throw refusal(
      "design/no-candidates",
      ["candidates"],
      "design-flows: candidates has none. Give flows that the scheme could be built for, the smallest first.",
    );
  }
  let before = 0;
  return candidates.map((candidate, row) => {
    requireKind(["candidates", row], candidate, "volume flow", "20 L/s");
    const design = candidate["~si"];
    if (!(design > before)) {
      throw refusal(
        "design/not-rising",
        ["candidates", row],
        `design-flows: candidate ${row}, ${candidate.toString()}, is not above ${row === 0 ? "zero" : `candidate ${row - 1}, ${String(candidates[row - 1])}`}. Give them from the smallest to the largest, each once.`,
        { actual: candidate.toString() },
      );
    }
    before = design;
    return design;
  });
}

function requireLeast(leastShare: Quantity<"ratio">): number {
  requireKind(["leastShare"], leastShare, "ratio", "20 %");
  const share = leastShare["~si"];
  if (share >= 0 && share <= 1) return share;
  throw refusal(
    "design/no-share",
    ["leastShare"],
    `design-flows: leastShare = ${leastShare.toString()} is not from 0 to 100 %. Give the share of its design flow on which the machine still runs.`,
    { actual: leastShare.toString(), limit: "0 to 100 %" },
  );
}

function requireKind(
  path: readonly (string | number)[],
  value: { readonly kind: string; toString(): string },
  kind: string,
  example: string,
): void {
  if (isQuantity(value) && value.kind === kind) return;
  throw new QuantityError(
    "kind",
    `design-flows: ${path.join(".")} = ${String(value)} is refused: give a ${kind} (such as ${example})`,
  );
}

function requireColumns(
  usable: Column<"volume flow">,
  left: Column<"volume flow"> | undefined,
): void {
  for (const [name, column] of Object.entries({ usable, left })) {
    if (column === undefined) continue;
    if (column["~leat"] !== "column" || column.kind !== "volume flow") {
      throw new QuantityError(
        "kind",
        `design-flows: ${name} is no column of volume flow; pass what residualAndUsable gives`,
      );
    }
  }
  if (left && left.length !== usable.length) {
    throw refusal(
      "design/other-length",
      ["left"],
      `design-flows: left has ${left.length} rows and usable has ${usable.length}. Give both of the same days.`,
      { actual: String(left.length), limit: String(usable.length) },
    );
  }
  const row = usable.values.findIndex((flow) => flow < 0);
  if (row < 0) return;
  throw refusal(
    "design/below-zero",
    ["usable", row],
    `design-flows: row ${row} of usable is ${usable.values[row]} m³/s, below zero. Pass what residualAndUsable gives.`,
    { actual: `${usable.values[row]} m³/s`, limit: "at least 0 m³/s" },
  );
}

function noDays(days: number): Error {
  return refusal(
    "design/no-days",
    ["usable"],
    `design-flows: usable has ${days} days and no flow among them. Give a record that has some.`,
    { actual: "0", limit: "at least 1" },
  );
}

function noticesOf(
  candidates: readonly DesignFlow[],
  greatest: number,
  of: {
    readonly recorded: number;
    readonly gaps: number;
    readonly completeYears: number;
    readonly dated: boolean;
  },
): Notice[] {
  const notices: Notice[] = [];
  const { recorded, gaps, completeYears, dated } = of;
  if (gaps > 0) {
    notices.push({
      code: "design/gaps",
      severity: "note",
      path: ["usable"],
      message: `design-flows: ${gaps} of ${recorded + gaps} days are gaps. A year is made of the others: where one season is missing more than another, it is the wrong year.`,
      actual: String(gaps),
      limit: "0",
    });
  }
  if (dated && completeYears === 0) {
    notices.push({
      code: "design/no-complete-year",
      severity: "caution",
      path: ["usable"],
      message: `design-flows: no year of the record is complete, and how far years differ cannot be said. Give a longer record, or another first month.`,
      actual: "0",
      limit: "at least 1",
    });
  }
  if (greatest === candidates.length - 1 && candidates.length > 1) {
    notices.push({
      code: "design/greatest-is-last",
      severity: "note",
      path: ["candidates", greatest],
      message: `design-flows: the last candidate, ${String(candidates[greatest]?.flow)}, gives the most. A larger one might give more; whether it pays is another question.`,
      actual: String(candidates[greatest]?.flow),
    });
  }
  for (const [row, { flow, meanUsed }] of candidates.entries()) {
    if (meanUsed["~si"] > 0) continue;
    notices.push({
      code: "design/never-runs",
      severity: "caution",
      path: ["candidates", row],
      message: `design-flows: candidate ${row}, ${flow.toString()}, runs on none of ${recorded} days. Take a smaller one, or several machines.`,
      actual: "0 d",
    });
  }
  return notices;
}
