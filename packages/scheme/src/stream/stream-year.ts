import { commonPractice, type Notice } from "@leat/formula";
import {
  annualMinima,
  baseFlowIndex,
  type ConfidentFlow,
  type DesignFlows,
  designFlows,
  durationConfidence,
  type DurationRow,
  flowDuration,
  lowFlowByPosition,
  lowFlowQuantile,
  monthlyFlows,
  type MonthlyPattern,
  monthlyPatternOfVisits,
  recordSummary,
  type RecordSummary,
  type ResidualAndUsable,
  residualAndUsable,
} from "@leat/hydrology";
import { cubicMetrePerSecond, day, percent, type Quantity, second, year } from "@leat/quantity";
import { Column, Quality, TimeAxis } from "@leat/quantity/column";

import type { Assumed } from "../assume.ts";
import { fieldCautionNotices } from "../cautions.ts";
import { inOrder } from "../in-order.ts";
import { Ledger } from "../ledger.ts";
import { measureBoth } from "../measure/both-ends.ts";
import type { FieldSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";
import { leaveRule } from "./leave-rule.ts";
import { pipesToTry } from "./power-of-flow.ts";
import { type Carried, siteRecord, visitsOf } from "./site-record.ts";

/** A stream through the year: what flows, what stays, what may be taken, and what a scheme could be built for. */
export interface StreamYear {
  /** What people call the site, or the id of the survey. */
  readonly site: string;
  /** How the daily flows are known, in words. */
  readonly by: string;
  /** What there is of a record; absent where only visits are known. */
  readonly record?: RecordSummary;
  /** How it was carried over from a gauged stream. */
  readonly carried?: Carried;
  /** Flow by the share of the time that it is equalled or exceeded. */
  readonly duration: readonly (DurationRow & Partial<Pick<ConfidentFlow, "low" | "high">>)[];
  /** January first. */
  readonly months: readonly MonthOfStream[];
  /** Low flows; absent where no year is complete. */
  readonly low?: LowFlows;
  /** Share of the flow that is base flow. */
  readonly baseFlowIndex?: Quantity<"ratio">;
  /** Days and volumes of what may be taken. */
  readonly use: Pick<ResidualAndUsable, "days" | "volumes">;
  /** What a scheme could be built for, with the pipe of the survey and with wider ones. */
  readonly builtFor: readonly BuiltFor[];
  /** Everything that was taken for the user. */
  readonly assumed: readonly Assumed[];
  /** Stops first, then cautions, then notes. */
  readonly notices: readonly Notice[];
}

/** A month of the calendar. */
export interface MonthOfStream {
  /** 1 to 12. */
  readonly month: number;
  /** Days that it rests on; visits, where there is no record. */
  readonly count: number;
  /** Mean flow; absent for a month of which nothing is known. */
  readonly mean?: Quantity<"volume flow">;
  /** Flow that is exceeded on half of the days. */
  readonly median?: Quantity<"volume flow">;
  /** Flow that is exceeded on 19 days of 20. */
  readonly q95?: Quantity<"volume flow">;
  /** Mean of what stays. */
  readonly left?: Quantity<"volume flow">;
  /** Mean of what may be taken. */
  readonly usable?: Quantity<"volume flow">;
  /** Share of the days on which something may be taken. */
  readonly taking?: Quantity<"ratio">;
}

/** Low flows of the years of a record. */
export interface LowFlows {
  /** Month that a year begins with. */
  readonly yearFrom: number;
  /** Years that are complete enough. */
  readonly years: number;
  /** Mean annual minimum of so many days together. */
  readonly minima: readonly { readonly days: number; readonly mean: Quantity<"volume flow"> }[];
  /** Least flow of seven days that comes once in ten years, by the logarithms. */
  readonly sevenDayTenYear?: Quantity<"volume flow">;
  /** The same by position among the years. */
  readonly sevenDayTenYearByPosition?: Quantity<"volume flow">;
}

/** What a scheme could be built for, with one set of pipes. */
export interface BuiltFor {
  /** Which pipes, in words. */
  readonly pipe: string;
  /** Each flow that it could be built for. */
  readonly flows: DesignFlows;
}

/** Days of a year that may be missing before it counts as incomplete. */
const missing = 0.05;

/** Least share of its design flow that a machine runs on. */
const least = 0.2;

/**
 * A stream through the year.
 *
 * @param survey - The survey; pipe, cable and bank are used where they are known.
 * @param assumed - What reading it took for granted.
 * @returns The year.
 * @throws {@link UnbuildableError} where nothing is known of the year.
 */
export function streamYear(
  survey: FieldSurvey & Partial<Survey>,
  assumed: readonly Assumed[] = [],
): StreamYear {
  const ledger = new Ledger(survey.id);
  const notices: Notice[] = [];
  const onNotice = (notice: Notice): void => {
    notices.push({ ...notice, path: ["stream", ...notice.path] });
  };
  const { flow } = measureBoth(survey, ledger);
  notices.push(...(flow?.notices ?? []));
  const { stream } = survey;
  for (const { notes } of [stream.record, stream.gauged?.record].filter((each) => !!each))
    notes.forEach(onNotice);
  const known = siteRecord(survey.id, stream, flow, onNotice);
  const pattern = known ? undefined : patternOf(survey, flow, onNotice);
  const record = known?.record ?? dailyOf(pattern as MonthlyPattern);
  const { rule, most } = leaveRule(stream.leave, ledger);
  const use = residualAndUsable({ record, rule, ...(most && { most }) }, { onNotice });
  const summary =
    known && recordSummary({ record, missingShare: percent.of(100 * missing) }, { onNotice });
  const low = summary && lowFlows(record, stream.yearFrom, ledger, onNotice);
  return {
    site: survey.site.name ?? survey.id,
    by: known?.by ?? `${visitsOf(flow).length} visits`,
    ...(summary && { record: summary }),
    ...(known?.carried && { carried: known.carried }),
    duration: summary ? durationOf(record, summary, ledger, onNotice) : [],
    months: monthsOf(record, use, pattern),
    ...(low && { low }),
    ...(summary && { baseFlowIndex: baseFlowIndex({ record }).index }),
    use,
    builtFor: builtFor(survey, use, ledger, onNotice),
    assumed: [...assumed, ...ledger.assumed],
    notices: inOrder([...notices, ...fieldCautionNotices(survey)]),
  };
}

/** The months of a stream that was only visited. */
function patternOf(
  survey: FieldSurvey,
  flow: Parameters<typeof visitsOf>[0],
  onNotice: (notice: Notice) => void,
): MonthlyPattern {
  const visits = visitsOf(flow);
  if (visits.length < 3)
    throw new UnbuildableError(
      "year-unknown",
      ["stream"],
      `nothing is known of the stream through the year: there is no record, no gauged stream, and ${visits.length} measurements on days that are told. Give a record, or measure once a month.`,
    );
  return monthlyPatternOfVisits({ name: `${survey.id}.stream.measured`, visits }, { onNotice });
}

/** A year of days, each with the mean of its month: what can be said where only months are known. */
function dailyOf({ months }: MonthlyPattern): Column<"volume flow"> {
  // Any common year does.
  const axis = TimeAxis.regular({
    start: "2023-01-01",
    step: day.of(1),
    count: 365,
    utcOffset: "+00:00",
  });
  const values = new Float64Array(axis.length);
  const quality = new Uint8Array(axis.length);
  for (let row = 0; row < axis.length; row++) {
    const mean = months[axis.civilAt(row).month - 1]?.flow;
    if (mean) values[row] = mean["~si"];
    quality[row] = mean ? Quality.estimated : Quality.gap;
  }
  return Column.wrap("volume flow", values, quality, { axis });
}

function durationOf(
  record: Column<"volume flow">,
  summary: RecordSummary,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): StreamYear["duration"] {
  const { table } = flowDuration({ record }, { onNotice });
  if (summary.completeYears < 2) return table;
  ledger.assume(
    ["stream"],
    "days of a year that may be missing",
    `${100 * missing} %`,
    commonPractice.at("a year counts as complete with a few days missing", "practice"),
  );
  const { quantiles } = durationConfidence(
    { record, shares: table.map(({ share }) => share), missingShare: percent.of(100 * missing) },
    { onNotice },
  );
  return table.map((row, i) => {
    const found = quantiles[i];
    return found ? { ...row, low: found.low, high: found.high } : row;
  });
}

function monthsOf(
  record: Column<"volume flow">,
  use: ResidualAndUsable,
  pattern: MonthlyPattern | undefined,
): MonthOfStream[] {
  const statistics = new Map(
    (pattern ? [] : monthlyFlows({ record })).map((each) => [each.month, each]),
  );
  return use.months.map(({ month, recorded, left, usable, taking }) => {
    const known = statistics.get(month);
    const visited = pattern?.months[month - 1];
    const mean = known?.mean ?? visited?.flow;
    const time = second.of(recorded * 86_400);
    return {
      month,
      count: visited?.count ?? recorded,
      ...(mean && { mean }),
      ...(known?.median && { median: known.median }),
      ...(known?.q95 && { q95: known.q95 }),
      ...(recorded > 0 && {
        left: left.dividedBy(time),
        usable: usable.dividedBy(time),
        taking: percent.of((100 * taking) / recorded),
      }),
    };
  });
}

function lowFlows(
  record: Column<"volume flow">,
  yearFrom: number | undefined,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): LowFlows | undefined {
  const firstMonth = yearFrom ?? 4;
  const complete = recordSummary({
    record,
    firstMonth,
    missingShare: percent.of(100 * missing),
  }).completeYears;
  if (complete === 0) return undefined;
  if (yearFrom === undefined)
    ledger.assume(
      ["stream", "yearFrom"],
      "month that a year of low flows begins with",
      "April: the low season of a northern stream lies inside the year",
      commonPractice.at("the climatic year begins in April", "practice"),
    );
  const minima = [1, 7, 30].map((days) =>
    annualMinima(
      { record, firstMonth, days, missingShare: percent.of(100 * missing) },
      days === 7 ? { onNotice } : { onNotice: () => undefined },
    ),
  );
  const [, seven] = minima;
  // A quantile of a few years is a guess: ten years in two cannot be seen at all.
  const enough = seven !== undefined && seven.years.length >= 5;
  const of = enough ? { minima: seven, recurrence: year.of(10) } : undefined;
  return {
    yearFrom: firstMonth,
    years: complete,
    minima: minima.map(({ days, mean }) => ({ days, mean })),
    ...(of && { sevenDayTenYear: lowFlowQuantile(of, { onNotice }).flow }),
    ...(of && of.minima.years.length >= 9 && { sevenDayTenYearByPosition: lowFlowByPosition(of) }),
  };
}

/** What a scheme could be built for, with each set of pipes. */
function builtFor(
  survey: FieldSurvey & Partial<Survey>,
  { usable, left }: ResidualAndUsable,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): BuiltFor[] {
  const candidates = survey.stream.builtFor
    ? survey.stream.builtFor.toSorted((a, b) => a["~si"] - b["~si"])
    : usualCandidates(usable);
  if (candidates.length === 0) return [];
  ledger.assume(
    ["stream", "builtFor"],
    "least share of the flow it is built for that a machine runs on",
    `${100 * least} %`,
    commonPractice.at("one of several small jets stays open", "practice"),
  );
  const of = { usable, left, candidates, leastShare: percent.of(100 * least) };
  const largest = (candidates.at(-1) as Quantity<"volume flow">)["~si"];
  const pipes = pipesToTry(survey, largest);
  return pipes.length === 0
    ? [{ pipe: "no pipe yet", flows: designFlows(of, { onNotice }) }]
    : pipes.map(({ pipe, powerAt }, i) => ({
        pipe,
        flows: designFlows({ ...of, powerAt }, { onNotice: i === 0 ? onNotice : () => undefined }),
      }));
}

/** Flows that may be taken for these shares of the time. */
const usualShares = [0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1];

function usualCandidates(usable: Column<"volume flow">): Quantity<"volume flow">[] {
  const { flows, shares } = flowDuration({ record: usable }, { onNotice: () => undefined });
  const found = usualShares.map((share) => {
    const at = shares.values.findIndex((p) => p >= share);
    return at < 0 ? 0 : Number((flows.values[at] as number).toPrecision(2));
  });
  return [...new Set(found)].filter((q) => q > 0).map((q) => cubicMetrePerSecond.of(q));
}
