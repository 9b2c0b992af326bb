import { type CallOptions, cite, type Notice } from "@leat/formula";
import { cubicMetrePerSecond, type Quantity } from "@leat/quantity";
import { TimeAxis } from "@leat/quantity/column";

import { monthNames } from "../month-names.ts";
import { dailyFlows, type DailyRecord } from "../record/daily-flows.ts";
import { flowOf } from "../record/flow-of.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import { scaleByVisits, type ScaleByVisitsInput } from "./scale-by-visits.ts";
import { transferRecord } from "./transfer-record.ts";
import type { FactorTransfer } from "./transfer.ts";
import { twelveVisitSpread } from "./twelve-visits.ts";
import { withSpread, type VisitFit } from "./visit-fit.ts";
import { requireFlow, type Visit } from "./visits.ts";

/** Flow of one month of the year. */
export interface MonthOfPattern {
  /** 1 to 12. */
  readonly month: number;
  /** Mean flow of that month; absent where nothing is known of it. */
  readonly flow: Quantity<"volume flow"> | undefined;
  /** That over the mean flow of the year; absent where a month of the year is unknown. */
  readonly share: Quantity<"ratio"> | undefined;
  /** Visits in that month, or days that were recorded. */
  readonly count: number;
}

/** Flows of the twelve months. */
export interface MonthlyPattern {
  /** January first. */
  readonly months: readonly MonthOfPattern[];
  /** Mean flow of the year, months counting by their days; absent where a month is unknown. */
  readonly meanFlow: Quantity<"volume flow"> | undefined;
  /** All that is out of the ordinary, once more for those who took no `onNotice`. */
  readonly notices: readonly Notice[];
}

/** Visits through the year to a stream that has no gauge, nor a neighbour with one. */
export interface PatternOfVisitsInput {
  /** Begins the names of its sources of uncertainty. */
  readonly name: string;
  /** Flows measured at the site, in any order; best twelve, one a month. */
  readonly visits: readonly Visit[];
  /** Which stream of {@link twelveVisitSpread} this one is most like; the first by default, which is told as a notice. */
  readonly like?: Parameters<typeof twelveVisitSpread.row>[0] | undefined;
}

/** A pattern from a neighbour's record, and how the visits agree with it. */
export interface PatternOfNeighbour extends MonthlyPattern {
  /** How the site was scaled to the neighbour. */
  readonly fit: VisitFit<FactorTransfer>;
}

/** A year without a leap day. */
const yearDays = 365;
const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** A stretch without a visit that is longer than this is guessed. */
const longest = 62;
const noFlow = /* @__PURE__ */ cubicMetrePerSecond.of(0);

/**
 * Flows of the months from visits through the year: straight lines between the visits, round the year.
 *
 * Visits of several years are laid into one. A dozen visits see little: the uncertainty is that of a trial on open records
 * ({@link twelveVisitSpread}), or what each visit is off from the line of its neighbours where that is more. It is a spread of
 * logarithms: 79 % is a factor of 2.2 either way. Floods are missed and the mean comes out low; where a gauge is near, take
 * {@link monthlyPatternOfNeighbour}.
 *
 * @param input - Visits, a name, and what stream it is like.
 * @param options - Notices.
 * @returns The twelve months and the mean.
 * @throws NonPhysicalError fewer than three visits, no flow at any of them, a flow below zero, by its row.
 * @throws QuantityError `time` for a date that is none.
 * @example
 * ```ts
 * const visits = [12, 14, 20, 35, 60, 80, 70, 40, 25, 18, 15, 13].map((flow, month) => ({
 *   at: `2024-${String(month + 1).padStart(2, "0")}-15`,
 *   flow: litrePerSecond.of(flow),
 * }));
 * const like = "snow melt, steep creek";
 * const { months, meanFlow } = monthlyPatternOfVisits({ name: "creek", visits, like });
 * format(months[5]?.flow ?? litrePerSecond.of(0), litrePerSecond, { plusMinus: true }); // => "76 ± 52 L/s (k = 1.96)"
 * meanFlow?.in(litrePerSecond).toFixed(1); // => "33.5"
 * ```
 */
export function monthlyPatternOfVisits(
  { name, visits, like }: PatternOfVisitsInput,
  options: CallOptions = {},
): MonthlyPattern {
  if (visits.length < 3) {
    throw refusal(
      "pattern/too-few",
      ["visits"],
      `monthly-pattern: ${visits.length} visits say nothing of twelve months. Measure once a month through a year, three times at the very least.`,
      { actual: String(visits.length), limit: "at least 3" },
    );
  }
  const placed = visits
    .map((visit, row) => ({ ...placeOf(visit, row), flow: visit.flow, row }))
    .toSorted((a, b) => a.day - b.day);
  const days = placed.map(({ day }) => day);
  const flows = placed.map(({ flow }) => flow["~si"]);
  if (flows.every((flow) => flow === 0)) {
    throw refusal(
      "pattern/dry",
      ["visits"],
      `monthly-pattern: all ${visits.length} visits found no flow. There is nothing to make a pattern of.`,
    );
  }
  const stream = like ?? "rain and storms, flat country";
  const year = twelveVisitSpread.get(stream, "year")["~si"];
  const trial = twelveVisitSpread.get(stream, "month")["~si"];
  const seen = offNeighbours(days, flows);
  const notices = noticesOfVisits(placed, like === undefined ? stream : undefined);
  if (seen > trial) notices.push(flashyNotice(seen, trial));
  const spread = Math.max(seen, trial);

  const counts = Array.from({ length: 12 }, () => 0);
  for (const { month } of placed) counts[month - 1] = (counts[month - 1] as number) + 1;
  const weights = weightsOf(days);
  const means = weights.map((row, month) => {
    let flow: Quantity<"volume flow"> = noFlow;
    for (const [i, weight] of row.entries()) {
      if (weight > 0) flow = flow.plus((placed[i] as (typeof placed)[number]).flow.times(weight));
    }
    return withSpread(
      withSpread(flow, year, `${name}: one year of visits`),
      spread,
      `${name}: visits to ${monthNames[month]}`,
    );
  });
  for (const notice of notices) options.onNotice?.(notice);
  return patternOf(means, counts, notices);
}

/**
 * Flows of the months from a daily record: the mean of all recorded days of each month.
 *
 * @param input - The record, and what of it is taken.
 * @param options - Notices.
 * @returns The twelve months and the mean; a month that is all gaps is unknown, and so then is the mean.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no flow at all.
 */
export function monthlyPatternOfRecord(
  input: DailyRecord,
  options: NoticeOptions = {},
): MonthlyPattern {
  const { record, unusable, calendar } = dailyFlows(input, 1);
  const { values, quality } = record;
  const sums = new Float64Array(13);
  const counts = new Uint32Array(13);
  for (let row = 0; row < values.length; row++) {
    if ((quality[row] as number) & unusable) continue;
    const month = calendar.months[row] as number;
    sums[month] = (sums[month] as number) + (values[row] as number);
    counts[month] = (counts[month] as number) + 1;
  }
  const means = monthNames.map((name, i) => {
    const days = counts[i + 1] as number;
    return days > 0 ? flowOf(record, (sums[i + 1] as number) / days, { name, days }) : undefined;
  });
  const notices: Notice[] = [];
  const unknown = monthNames.filter((_, i) => !means[i]);
  if (unknown.length > 0) notices.push(noDaysNotice(unknown, calendar.beginsIn.length));
  for (const notice of notices) options.onNotice?.(notice);
  return patternOf(means, Array.from(counts.subarray(1)), notices);
}

/**
 * Flows of the months of a site that was visited a few times, from the record of a neighbour: the neighbour's months, scaled to the
 * site by the visits.
 *
 * The neighbour gives the shape and the many years, the visits the size. That the site's months differ from the neighbour's (one keeps its
 * snow longer) is not in the uncertainty: see whether the residuals of the fit go with the season.
 *
 * @param input - Visits, the neighbour's daily record, a name, and which mean.
 * @param options - Notices.
 * @returns The twelve months, the mean, and the fit.
 * @throws NonPhysicalError, OutOfValidityError as {@link scaleByVisits} does.
 */
export function monthlyPatternOfNeighbour(
  input: ScaleByVisitsInput,
  options: CallOptions = {},
): PatternOfNeighbour {
  const fit = scaleByVisits(input, options);
  const site = transferRecord({ record: input.record, transfer: fit.transfer }, options);
  const pattern = monthlyPatternOfRecord({ record: site.record }, options);
  return { ...pattern, fit, notices: [...fit.notices, ...site.notices, ...pattern.notices] };
}

function noDaysNotice(unknown: readonly string[], years: number): Notice {
  return {
    code: "pattern/no-days",
    severity: "caution",
    path: ["record"],
    message: `monthly-pattern: no day of ${unknown.join(", ")} is recorded in ${years} years: what flows then is unknown, and with it the mean of the year. Take another gauge, or fill those months from one.`,
    actual: "0 d",
    limit: "at least 1 d",
  };
}

function patternOf(
  means: readonly (Quantity<"volume flow"> | undefined)[],
  counts: readonly number[],
  notices: readonly Notice[],
): MonthlyPattern {
  let total: Quantity<"volume flow"> | undefined = noFlow;
  for (const [i, mean] of means.entries()) {
    const days = monthDays[i] as number;
    total = mean && total ? total.plus(mean.times(days / yearDays)) : undefined;
  }
  const meanFlow = total;
  return {
    months: means.map((flow, i) => ({
      month: i + 1,
      flow,
      share: flow && meanFlow && meanFlow["~si"] > 0 ? flow.dividedBy(meanFlow) : undefined,
      count: counts[i] as number,
    })),
    meanFlow,
    notices,
  };
}

/** The day of a visit in a year of 365 days, and its month. */
function placeOf(
  { at, flow }: Visit,
  row: number,
): { readonly day: number; readonly month: number } {
  requireFlow(flow, row);
  const axis = TimeAxis.irregular([at], { utcOffset: "+00:00" });
  const { year, month } = axis.civilAt(0);
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return { day: ((axis.dayOfYear(0) - 0.5) / (leap ? yearDays + 1 : yearDays)) * yearDays, month };
}

/** How much each visit counts in the mean of each month. Visits of one day share it. */
function weightsOf(days: readonly number[]): number[][] {
  const n = days.length;
  const weights = monthDays.map(() => Array.from({ length: n }, () => 0));
  let at = 0;
  for (const [month, length] of monthDays.entries()) {
    const row = weights[month] as number[];
    for (let day = 0; day < length; day++) {
      for (const [i, weight] of between(days, at + day + 0.5)) {
        row[i] = (row[i] as number) + weight / length;
      }
    }
    at += length;
  }
  return weights;
}

/** The visits before and after a day, round the year, and how much each counts. */
function between(days: readonly number[], day: number): [visit: number, weight: number][] {
  const n = days.length;
  let after = days.findIndex((other) => other > day);
  if (after < 0) after = 0;
  const before = (after + n - 1) % n;
  const round = (apart: number): number => ((apart % yearDays) + yearDays) % yearDays;
  const past = round(day - (days[before] as number));
  const gap = round((days[after] as number) - (days[before] as number));
  // All visits on one day of the year.
  if (gap === 0) return days.map((_, i) => [i, 1 / n]);
  return [
    [before, 1 - past / gap],
    [after, past / gap],
  ];
}

/** Root mean square of ln(flow / line of its neighbours); zero where it cannot be seen. */
function offNeighbours(days: readonly number[], flows: readonly number[]): number {
  if (flows.length < 4 || flows.some((flow) => flow === 0)) return 0;
  let squares = 0;
  for (const [i, flow] of flows.entries()) {
    const others = days.filter((_, j) => j !== i);
    const values = flows.filter((_, j) => j !== i);
    let line = 0;
    for (const [j, weight] of between(others, days[i] as number)) {
      line += weight * (values[j] as number);
    }
    const off = Math.log(flow / line);
    squares += off * off;
  }
  return Math.sqrt(squares / flows.length);
}

function noticesOfVisits(
  placed: readonly { readonly day: number; readonly month: number; readonly row: number }[],
  assumed: string | undefined,
): Notice[] {
  const notices: Notice[] = [];
  const empty = monthNames.filter((_, i) => placed.every(({ month }) => month !== i + 1));
  if (empty.length > 0) {
    notices.push({
      code: "pattern/months-without-visit",
      severity: "caution",
      path: ["visits"],
      message: `monthly-pattern: no visit fell in ${empty.join(", ")}; those flows lie on a line between the visits before and after. Measure in those months.`,
      actual: String(12 - empty.length),
      limit: "12",
    });
  }
  for (const [i, { day, row }] of placed.entries()) {
    const next = placed[(i + 1) % placed.length] as (typeof placed)[number];
    const gap = i + 1 < placed.length ? next.day - day : next.day + yearDays - day;
    if (gap <= longest) continue;
    notices.push({
      code: "pattern/long-gap",
      severity: "caution",
      path: ["visits", row],
      message: `monthly-pattern: ${Math.round(gap)} days of the year pass after visit ${row} before the next, visit ${next.row}: what flows between is guessed. Measure between them.`,
      actual: `${Math.round(gap)} d`,
      limit: `at most ${longest} d`,
    });
  }
  if (assumed !== undefined) {
    const { source } = twelveVisitSpread.definition;
    notices.push({
      code: "pattern/like-assumed",
      severity: "note",
      path: ["like"],
      message: `monthly-pattern: like was not given, and the spread of "${assumed}" is taken, the larger (${cite(source)}). Say which stream this one is like.`,
      actual: assumed,
      source,
    });
  }
  return notices;
}

function flashyNotice(seen: number, trial: number): Notice {
  return {
    code: "pattern/flashy",
    severity: "note",
    path: ["visits"],
    message: `monthly-pattern: the visits are off the line of their neighbours by ${Math.round(seen * 100)} %, more than the ${Math.round(trial * 100)} % of the trial, and that is taken. Measure more often.`,
    actual: `${Math.round(seen * 100)} %`,
    limit: `at most ${Math.round(trial * 100)} %`,
    source: twelveVisitSpread.definition.source,
  };
}
