import { commonPractice, NonPhysicalError, type Notice } from "@leat/formula";
import {
  type AnnualMinima,
  annualMinima,
  baseFlowIndex,
  type ConfidentFlow,
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
  tennant,
  twelveVisitSpread,
} from "@leat/hydrology";
import { day, isQuantity, percent, type Quantity, second, year } from "@leat/quantity";
import { Column, Quality, TimeAxis } from "@leat/quantity/column";

import type { Assumed } from "../assume.ts";
import { cautions, fieldCautionNotices } from "../cautions.ts";
import { inOrder } from "../in-order.ts";
import { Ledger } from "../ledger.ts";
import { measureBoth } from "../measure/both-ends.ts";
import type { Fact } from "../measure/measurement.ts";
import type { FieldSurvey, StreamSurvey, Survey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";
import { type BuiltFor, builtFor } from "./built-for.ts";
import { guarded, inStreamWords } from "./in-stream-words.ts";
import { leaveFacts } from "./leave-facts.ts";
import { leaveRule, placeholderShare } from "./leave-rule.ts";
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
  /** Flow by the share of the time that it is equalled or exceeded; none where only visits are known. */
  readonly duration: readonly DurationOfStream[];
  /** January first. */
  readonly months: readonly MonthOfStream[];
  /** Low flows; absent where no year is complete. */
  readonly low?: LowFlows;
  /** Share of the flow that is base flow; absent where no run of days is long enough to tell. */
  readonly baseFlowIndex?: Quantity<"ratio">;
  /** What must stay, rule by rule, in words. */
  readonly leave: readonly Fact[];
  /** Days and volumes of what may be taken. */
  readonly use: Pick<ResidualAndUsable, "days" | "volumes">;
  /** What a scheme could be built for; absent where there is never anything to take. */
  readonly builtFor?: BuiltFor;
  /** Everything that was taken for the user. */
  readonly assumed: readonly Assumed[];
  /** Stops first, then cautions, then notes. */
  readonly notices: readonly Notice[];
}

/** A flow of the duration curve. */
export interface DurationOfStream extends DurationRow {
  /** The same of complete years alone, with how far other draws of those years move it; absent where there are fewer than two. */
  readonly ofCompleteYears?: Pick<ConfidentFlow, "flow" | "low" | "high">;
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
  /** Least mean of so many days together in a year, in the mean of the years. */
  readonly minima: readonly {
    readonly days: number;
    readonly mean: Quantity<"volume flow">;
    /** Years that are complete enough. */
    readonly years: number;
  }[];
  /** Least flow of seven days that comes once in ten years, by the logarithms; absent for fewer than ten years. */
  readonly sevenDayTenYear?: Quantity<"volume flow">;
  /** The same by position among the years. */
  readonly sevenDayTenYearByPosition?: Quantity<"volume flow">;
}

/** Share of a year's days that may be missing before it counts as incomplete. */
const missing = /* @__PURE__ */ percent.of(5);

/** Years that a flow which comes once in ten years needs. */
const yearsForTen = 10;

/** Notices that say once more what another says. */
const saidElsewhere = new Set(["residual/gaps"]);

/**
 * A stream through the year.
 *
 * @param survey - The survey; pipe, cable and bank are used where they are known.
 * @param assumed - What reading it took for granted.
 * @returns The year.
 * @throws {@link UnbuildableError} where nothing is known of the year.
 * @throws NonPhysicalError for rules and flows that no stream can have.
 */
export function streamYear(
  survey: FieldSurvey & Partial<Survey>,
  assumed: readonly Assumed[] = [],
): StreamYear {
  const ledger = new Ledger(survey.id);
  const { flow } = measureBoth(survey, ledger);
  const days = visitsOf(flow).map(({ at }) => at);
  const notices: Notice[] = [...(flow?.notices ?? [])];
  const onNotice = (notice: Notice): void => {
    if (!saidElsewhere.has(notice.code)) notices.push(inStreamWords(notice, days));
  };
  const result = guarded(() => yearOf(survey, flow, ledger, onNotice), days);
  return {
    ...result,
    assumed: [...assumed, ...ledger.assumed],
    notices: inOrder([...notices, ...unsetNotices(survey), ...fieldCautionNotices(survey)]),
  };
}

function yearOf(
  survey: FieldSurvey & Partial<Survey>,
  flow: Parameters<typeof visitsOf>[0],
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): Omit<StreamYear, "assumed" | "notices"> {
  const { stream } = survey;
  for (const { notes } of [stream.record, stream.gauged?.record].filter((each) => !!each))
    notes.forEach(onNotice);
  const known = siteRecord(survey.id, stream, flow, { onNotice, ledger });
  const pattern = known ? undefined : patternOf(survey, flow, ledger, onNotice);
  const record = known?.record ?? dailyOf(pattern as MonthlyPattern);
  if (stream.leave === undefined) assumePlaceholder(ledger);
  if (pattern) monthsNotices(stream).forEach(onNotice);
  const { rule, most } = leaveRule(stream.leave);
  const use = residualAndUsable({ record, rule, ...(most && { most }) }, { onNotice });
  const summary = known && recordSummary({ record, missingShare: missing }, { onNotice });
  const low = summary && lowFlows(record, stream.yearFrom, ledger, onNotice);
  const base = summary && orNothing(() => baseFlowIndex({ record }).index);
  const could = builtFor(survey, use, ledger, onNotice);
  return {
    site: survey.site.name ?? survey.id,
    by: known?.by ?? `${visitsOf(flow).length} visits`,
    ...(summary && { record: summary }),
    ...(known?.carried && { carried: known.carried }),
    duration: summary ? durationOf(record, summary, ledger, onNotice) : [],
    months: monthsOf(record, use, pattern),
    ...(low && { low }),
    ...(base && { baseFlowIndex: base }),
    leave: leaveFacts(stream.leave, record),
    use: { days: use.days, volumes: use.volumes },
    ...(could && { builtFor: could }),
  };
}

function assumePlaceholder(ledger: Ledger): void {
  ledger.assume(
    ["stream", "leave"],
    "share of each day's flow that stays in the stream (a placeholder: the regulator decides)",
    placeholderShare.toString(),
    tennant.at(
      "table, good, April to September, 40 % of the mean annual flow; here of each day's flow",
      "memory",
    ),
  );
}

/** A rule that goes by days is told of, where only months are known. */
function monthsNotices({ leave }: StreamSurvey): Notice[] {
  const byDays =
    leave !== undefined && !isQuantity(leave) && (leave.exceeded ?? leave.exceededByMonth);
  return byDays
    ? [
        {
          code: "months-for-days",
          severity: "caution",
          path: ["stream", "leave by rules"],
          message:
            "A rule goes by the flow that is exceeded for most of the time, and only months are known: single days are lower than the months that they are in, and less would have to stay. Find a gauged stream near by.",
        },
      ]
    : [];
}

/** The caution that a design has too, where nothing is said of what stays. */
function unsetNotices({ stream }: FieldSurvey): Notice[] {
  if (stream.leave !== undefined) return [];
  return cautions()
    .filter(({ code }) => code === "residual-flow-unset")
    .map(({ code, severity, path, text, source }) => ({
      code,
      severity,
      path,
      message: text,
      source,
    }));
}

/** An answer, or nothing where a record is too short or too broken for it. */
function orNothing<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof NonPhysicalError)) throw error;
    return undefined;
  }
}

/** The months of a stream that was only visited. */
function patternOf(
  survey: FieldSurvey,
  flow: Parameters<typeof visitsOf>[0],
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): MonthlyPattern {
  const visits = visitsOf(flow);
  if (visits.length < 3)
    throw new UnbuildableError(
      "year-unknown",
      ["stream"],
      `nothing is known of the stream through the year: there is no record, no gauged stream, and ${visits.length === 1 ? "one measurement on a day that is told" : `${visits.length} measurements on days that are told`}. Give a record, or measure once a month and write the day (on).`,
    );
  const like = "rain and storms, flat country";
  const { source } = twelveVisitSpread.definition;
  const spread = (of: "year" | "month"): string => twelveVisitSpread.get(like, of).toString();
  ledger.assume(
    ["stream", "measured"],
    "how far off a month is that was visited once",
    `as a stream of rain and storms: a standard deviation of ${spread("year")} for a wet or a dry year, and of ${spread("month")} for the month`,
    source.source.at("root mean squares of the logarithm"),
  );
  return monthlyPatternOfVisits(
    { name: `${survey.id}.stream.measured`, visits, like },
    { onNotice },
  );
}

/** A year of days, each with the mean of its month: what can be said where only months are known. */
function dailyOf({ months, meanFlow }: MonthlyPattern): Column<"volume flow"> {
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
  // What the months have wrong is taken to be wrong by the same share on every day.
  const scale = Array.from(meanFlow?.sources() ?? [], ([id, standard]) => {
    return [id, Math.abs(standard["~si"]) / (meanFlow as Quantity<"volume flow">)["~si"]] as const;
  });
  return Column.wrap("volume flow", values, quality, { axis, uncertainty: { scale } });
}

function durationOf(
  record: Column<"volume flow">,
  summary: RecordSummary,
  ledger: Ledger,
  onNotice: (notice: Notice) => void,
): DurationOfStream[] {
  const { table } = flowDuration({ record }, { onNotice });
  if (summary.completeYears < 2) return [...table];
  ledger.assume(
    ["stream"],
    "days that a year may lack and still count as complete",
    `${missing.toString()} of them`,
    commonPractice.at("a year counts as complete with a few days missing", "practice"),
  );
  const { quantiles } = durationConfidence({
    record,
    shares: table.map(({ share }) => share),
    missingShare: missing,
  });
  return table.map((row, i) => {
    const found = quantiles[i];
    if (!found) return row;
    const { flow, low, high } = found;
    return { ...row, ofCompleteYears: { flow, low, high } };
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
  const quiet = (): void => undefined;
  const found = [1, 7, 30].flatMap((days) => {
    const minima = orNothing(() =>
      annualMinima(
        { record, firstMonth, days, missingShare: missing },
        { onNotice: days === 7 ? onNotice : quiet },
      ),
    );
    return minima ? [minima] : [];
  });
  if (found.length === 0) return undefined;
  if (yearFrom === undefined)
    ledger.assume(
      ["stream", "yearFrom"],
      "month that a year of low flows begins with",
      "April: the low season of a northern stream lies inside the year",
      commonPractice.at("the climatic year begins in April", "practice"),
    );
  const seven = found.find(({ days }) => days === 7);
  return {
    yearFrom: firstMonth,
    minima: found.map(({ days, mean, years }) => ({ days, mean, years: years.length })),
    ...(seven && seven.years.length >= yearsForTen && onceInTen(seven, onNotice)),
  };
}

/** The seven days that are as low once in ten years. */
function onceInTen(
  minima: AnnualMinima,
  onNotice: (notice: Notice) => void,
): Pick<LowFlows, "sevenDayTenYear" | "sevenDayTenYearByPosition"> {
  const of = { minima, recurrence: year.of(10) };
  // Years that are all alike, or nearly all dry, have no distribution to fit.
  const fitted = orNothing(() => lowFlowQuantile(of, { onNotice }).flow);
  return {
    ...(fitted && { sevenDayTenYear: fitted }),
    sevenDayTenYearByPosition: lowFlowByPosition(of),
  };
}
