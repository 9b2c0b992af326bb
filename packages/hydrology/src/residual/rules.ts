import { isQuantity, type Quantity, QuantityError } from "@leat/quantity";

import { monthNames } from "../month-names.ts";
import { refusal } from "../record/refusal.ts";
import { type TennantCondition, tennantShares } from "./tennant.ts";

/** The same flow every day. */
export interface FixedFlow {
  /** Tells the rules apart. */
  readonly rule: "fixed flow";
  /** The flow. */
  readonly flow: Quantity<"volume flow">;
}

/** Shares of the mean flow, by month. */
export interface SharesOfMean {
  /** Tells the rules apart. */
  readonly rule: "shares of mean flow";
  /** January first. */
  readonly shares: readonly Quantity<"ratio">[];
  /** The mean flow; that of the record where it is absent. */
  readonly meanFlow: Quantity<"volume flow"> | undefined;
}

/** The flow that is exceeded for a share of the time. */
export interface PercentileFlow {
  /** Tells the rules apart. */
  readonly rule: "percentile flow";
  /** Share of the time that it is equalled or exceeded: 95 % for Q95. */
  readonly exceeded: Quantity<"ratio">;
  /** Of all days, or of the days of each month. */
  readonly of: "year" | "month";
}

/** All of the flow up to one, and a share of what is above it. */
export interface ShareAboveHandsOff {
  /** Tells the rules apart. */
  readonly rule: "share above hands-off flow";
  /** Flow below which nothing is taken. */
  readonly handsOff: Quantity<"volume flow">;
  /** Share of the flow above it that may be taken. */
  readonly share: Quantity<"ratio">;
}

/** A flow for each month, as a licence prints them. */
export interface LicenceFlows {
  /** Tells the rules apart. */
  readonly rule: "licence flows";
  /** January first. */
  readonly flows: readonly Quantity<"volume flow">[];
}

/** A flow on top of another rule's between two dates of every year. */
export interface FishPassage {
  /** Tells the rules apart. */
  readonly rule: "fish passage";
  /** What is left on top. */
  readonly flow: Quantity<"volume flow">;
  /** First day of the season, month and day: `03-15`. */
  readonly from: string;
  /** Last day of the season; before `from` where it lies in the next year. */
  readonly to: string;
  /** What is left all year. */
  readonly over: ResidualRule;
}

/** The greatest of several. */
export interface GreatestOf {
  /** Tells the rules apart. */
  readonly rule: "greatest of";
  /** One or more. */
  readonly rules: readonly ResidualRule[];
}

/**
 * What must stay in the stream: plain data, made by {@link fixedFlow}, {@link shareOfMeanFlow}, {@link seasonalShares},
 * {@link tennantSeasons}, {@link percentileFlow}, {@link monthlyPercentileFlow}, {@link shareAboveHandsOff}, {@link licenceFlows},
 * {@link fishPassage} and {@link allOf}.
 *
 * A rule stands for a decision that is not the designer's. Until there is a licence every one of them is a placeholder: the
 * regulator decides.
 */
export type ResidualRule =
  | FixedFlow
  | SharesOfMean
  | PercentileFlow
  | ShareAboveHandsOff
  | LicenceFlows
  | FishPassage
  | GreatestOf;

/** A season and what stays in it. */
export interface SeasonShare {
  /** Months, 1 to 12. */
  readonly months: readonly number[];
  /** Share of the mean flow that stays. */
  readonly share: Quantity<"ratio">;
}

/**
 * The same flow stays every day. A placeholder: the regulator decides.
 *
 * @param of - The flow.
 * @returns The rule.
 * @throws NonPhysicalError a flow below zero.
 * @throws QuantityError `kind` for what is no flow.
 */
export function fixedFlow({ flow }: { readonly flow: Quantity<"volume flow"> }): FixedFlow {
  requireFlow("fixed-flow", ["flow"], flow);
  return { rule: "fixed flow", flow };
}

/**
 * A share of the mean flow stays. A placeholder: the regulator decides.
 *
 * @param of - The share, and the mean flow of many years; without it the mean of the record is taken, gaps and all.
 * @returns The rule.
 * @throws NonPhysicalError a share that is not from 0 to 100 %, a flow below zero.
 * @throws QuantityError `kind` for what is no share or no flow.
 */
export function shareOfMeanFlow(of: {
  readonly share: Quantity<"ratio">;
  readonly meanFlow?: Quantity<"volume flow"> | undefined;
}): SharesOfMean {
  const { share, meanFlow } = of;
  requireShare("share-of-mean-flow", ["share"], share);
  if (meanFlow) requireFlow("share-of-mean-flow", ["meanFlow"], meanFlow);
  return { rule: "shares of mean flow", shares: monthNames.map(() => share), meanFlow };
}

/**
 * Shares of the mean flow stay, by season. A placeholder: the regulator decides.
 *
 * @param of - Seasons that have every month once, and the mean flow of many years.
 * @returns The rule.
 * @throws NonPhysicalError a month that no season has, or two; a share that is not from 0 to 100 %; a flow below zero.
 * @throws QuantityError `kind` for what is no share or no flow.
 * @example
 * ```ts
 * const rule = seasonalShares({
 *   seasons: [
 *     { months: [12, 1, 2, 3, 4], share: percent.of(20) },
 *     { months: [5, 6, 7, 8, 9, 10, 11], share: percent.of(30) },
 *   ],
 * });
 * rule.shares.map((share) => share.in(percent)); // => [20, 20, 20, 20, 30, 30, 30, 30, 30, 30, 30, 20]
 * ```
 */
export function seasonalShares(of: {
  readonly seasons: readonly SeasonShare[];
  readonly meanFlow?: Quantity<"volume flow"> | undefined;
}): SharesOfMean {
  const { seasons, meanFlow } = of;
  if (meanFlow) requireFlow("seasonal-shares", ["meanFlow"], meanFlow);
  const shares: (Quantity<"ratio"> | undefined)[] = monthNames.map(() => undefined);
  const seasonOf = new Map<number, number>();
  for (const [i, { months, share }] of seasons.entries()) {
    requireShare("seasonal-shares", ["seasons", i, "share"], share);
    for (const month of months) {
      requireMonth("seasonal-shares", ["seasons", i, "months"], month);
      const other = seasonOf.get(month);
      if (other !== undefined) {
        throw refusal(
          "residual/month-twice",
          ["seasons", i, "months"],
          `seasonal-shares: ${monthNames[month - 1]} is in season ${other} already. Leave it in one, once.`,
        );
      }
      seasonOf.set(month, i);
      shares[month - 1] = share;
    }
  }
  return {
    rule: "shares of mean flow",
    shares: everyMonth("seasonal-shares", "seasons", shares),
    meanFlow,
  };
}

/**
 * Tennant's shares of the mean annual flow stay, in two seasons ({@link tennantShares}). A placeholder: the regulator decides.
 *
 * Tennant's seasons are October to March, when his streams are low, and April to September. Which months are low here is
 * the caller's to say: it is not a matter of the hemisphere alone.
 *
 * @param of - The condition that the stream is kept in, the months of low flow, and the mean flow of many years.
 * @returns The rule.
 * @throws NonPhysicalError no month of low flow or no other, a month twice; a flow below zero.
 * @throws QuantityError `size` for a condition that has no two seasons.
 * @example
 * ```ts
 * const rule = tennantSeasons({ condition: "good", lowFlowMonths: [10, 11, 12, 1, 2, 3] });
 * rule.shares.map((share) => share.in(percent)); // => [20, 20, 20, 40, 40, 40, 40, 40, 40, 20, 20, 20]
 * ```
 * @see D. L. Tennant, Fisheries 1(4), 1976
 */
export function tennantSeasons(of: {
  readonly condition: TennantCondition;
  readonly lowFlowMonths: readonly number[];
  readonly meanFlow?: Quantity<"volume flow"> | undefined;
}): SharesOfMean {
  const { condition, lowFlowMonths, meanFlow } = of;
  const others = monthNames.map((_, i) => i + 1).filter((month) => !lowFlowMonths.includes(month));
  if (lowFlowMonths.length === 0 || others.length === 0) {
    throw refusal(
      "residual/no-season",
      ["lowFlowMonths"],
      `tennant-seasons: lowFlowMonths has ${lowFlowMonths.length} months, and there are two seasons. State the months in which the stream is low; Tennant's are six.`,
      { actual: String(lowFlowMonths.length), limit: "1 to 11" },
    );
  }
  return seasonalShares({
    seasons: [
      { months: lowFlowMonths, share: tennantShares.get(condition, "octoberToMarch") },
      { months: others, share: tennantShares.get(condition, "aprilToSeptember") },
    ],
    meanFlow,
  });
}

/**
 * The flow stays that is exceeded for a share of all days: Q95 at 95 %. A placeholder: the regulator decides.
 *
 * It is taken from the record, by Weibull's positions.
 *
 * @param of - Share of the time that the flow is equalled or exceeded.
 * @returns The rule.
 * @throws NonPhysicalError a share that is not from 0 to 100 %.
 * @throws QuantityError `kind` for what is no share.
 */
export function percentileFlow({
  exceeded,
}: {
  readonly exceeded: Quantity<"ratio">;
}): PercentileFlow {
  requireShare("percentile-flow", ["exceeded"], exceeded);
  return { rule: "percentile flow", exceeded, of: "year" };
}

/**
 * The flow stays that is exceeded for a share of the days of each month. A placeholder: the regulator decides.
 *
 * It is taken from the record, by Weibull's positions among all days of that month in all years.
 *
 * @param of - Share of the time that the flow is equalled or exceeded.
 * @returns The rule.
 * @throws NonPhysicalError a share that is not from 0 to 100 %.
 * @throws QuantityError `kind` for what is no share.
 */
export function monthlyPercentileFlow({
  exceeded,
}: {
  readonly exceeded: Quantity<"ratio">;
}): PercentileFlow {
  requireShare("monthly-percentile-flow", ["exceeded"], exceeded);
  return { rule: "percentile flow", exceeded, of: "month" };
}

/**
 * All of the flow stays up to a hands-off flow, and of what is above it all but a share. A placeholder: the regulator decides.
 *
 * @param of - The hands-off flow, and the share above it that may be taken.
 * @returns The rule.
 * @throws NonPhysicalError a share that is not from 0 to 100 %, a flow below zero.
 * @throws QuantityError `kind` for what is no share or no flow.
 * @see Environment Agency, Hydroelectric power water abstraction levels, 2024
 */
export function shareAboveHandsOff(of: {
  readonly handsOff: Quantity<"volume flow">;
  readonly share: Quantity<"ratio">;
}): ShareAboveHandsOff {
  const { handsOff, share } = of;
  requireFlow("share-above-hands-off", ["handsOff"], handsOff);
  requireShare("share-above-hands-off", ["share"], share);
  return { rule: "share above hands-off flow", handsOff, share };
}

/**
 * A flow for each month stays, as a licence prints them. Without the licence it is a placeholder: the regulator decides.
 *
 * @param of - Twelve flows, January first.
 * @returns The rule.
 * @throws NonPhysicalError a month without a flow, or too many of them; a flow below zero.
 * @throws QuantityError `kind` for what is no flow.
 */
export function licenceFlows({
  flows,
}: {
  readonly flows: readonly (Quantity<"volume flow"> | null | undefined)[];
}): LicenceFlows {
  if (flows.length > 12) {
    throw refusal(
      "residual/too-many-months",
      ["flows"],
      `licence-flows: flows has ${flows.length} of them, and a year has twelve months. Give one for each, January first.`,
      { actual: String(flows.length), limit: "12" },
    );
  }
  const given = everyMonth(
    "licence-flows",
    "flows",
    monthNames.map((_, i) => flows[i] ?? undefined),
  );
  for (const [i, flow] of given.entries()) requireFlow("licence-flows", ["flows", i], flow);
  return { rule: "licence flows", flows: given };
}

/**
 * On top of another rule a flow stays between two dates of every year, for fish to pass. A placeholder: the regulator decides.
 *
 * @param of - The flow on top, the first and the last day of the season, and what stays all year.
 * @returns The rule.
 * @throws NonPhysicalError a date that is none, a flow below zero.
 * @throws QuantityError `kind` for what is no flow.
 */
export function fishPassage(of: {
  readonly flow: Quantity<"volume flow">;
  readonly from: string;
  readonly to: string;
  readonly over: ResidualRule;
}): FishPassage {
  const { flow, from, to, over } = of;
  requireFlow("fish-passage", ["flow"], flow);
  for (const [name, text] of Object.entries({ from, to })) {
    if (Number.isNaN(monthAndDay(text))) {
      throw refusal(
        "residual/no-date",
        [name],
        `fish-passage: ${name} = ${text.slice(0, 40)} is no day of a year. Give month and day, such as 03-15.`,
        { actual: text.slice(0, 40) },
      );
    }
  }
  return { rule: "fish passage", flow, from, to, over };
}

/**
 * The greatest of several rules, day by day: each of them is kept.
 *
 * @param rules - One or more.
 * @returns The rule.
 * @throws NonPhysicalError no rule.
 */
export function allOf(...rules: readonly ResidualRule[]): GreatestOf {
  if (rules.length === 0) {
    throw refusal(
      "residual/no-rule",
      ["rules"],
      "all-of: there is no rule. Give one, or fixedFlow of nothing where nothing must stay.",
    );
  }
  return { rule: "greatest of", rules };
}

/** Days of the months of a leap year. */
const longest = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * A day of the year that months and days can be compared by.
 *
 * @param text - Month and day, `03-15`.
 * @returns A hundred times the month and the day; NaN for a day that is none.
 */
export function monthAndDay(text: string): number {
  const [, month = 0, day = 0] = /^(\d\d)-(\d\d)$/u.exec(text)?.map(Number) ?? [];
  return day >= 1 && day <= (longest[month - 1] ?? 0) ? month * 100 + day : Number.NaN;
}

function everyMonth<T>(where: string, path: string, of: readonly (T | undefined)[]): readonly T[] {
  const missing = monthNames.filter((_, i) => of[i] === undefined);
  if (missing.length === 0) return of as readonly T[];
  const row = of.indexOf(undefined);
  throw refusal(
    "residual/month-missing",
    [path, row],
    `${where}: ${path} has nothing for ${missing.join(", ")} (row ${row}${missing.length > 1 ? " and others" : ""}). Give every month, January first; a month in which nothing must stay has a zero.`,
    { actual: `${12 - missing.length} months`, limit: "12 months" },
  );
}

function requireMonth(where: string, path: readonly (string | number)[], month: number): void {
  if (Number.isInteger(month) && month >= 1 && month <= 12) return;
  throw refusal(
    "residual/no-month",
    path,
    `${where}: month ${month} is none. Give numbers from 1, January, to 12.`,
    { actual: String(month), limit: "1 to 12" },
  );
}

function requireFlow(
  where: string,
  path: readonly (string | number)[],
  flow: Quantity<"volume flow">,
): void {
  requireKind(where, path, flow, "volume flow", "1 L/s");
  if (flow["~si"] >= 0) return;
  throw refusal(
    "residual/below-zero",
    path,
    `${where}: ${path.join(".")} = ${flow.toString()} is below zero. Check its sign.`,
    { actual: flow.toString(), limit: "at least 0" },
  );
}

function requireShare(
  where: string,
  path: readonly (string | number)[],
  share: Quantity<"ratio">,
): void {
  requireKind(where, path, share, "ratio", "20 %");
  if (share["~si"] >= 0 && share["~si"] <= 1) return;
  throw refusal(
    "residual/no-share",
    path,
    `${where}: ${path.join(".")} = ${share.toString()} is not from 0 to 100 %. Give a share, such as 20 %.`,
    { actual: share.toString(), limit: "0 to 100 %" },
  );
}

function requireKind(
  where: string,
  path: readonly (string | number)[],
  value: { readonly kind: string; toString(): string },
  kind: string,
  example: string,
): void {
  if (isQuantity(value) && value.kind === kind) return;
  throw new QuantityError(
    "kind",
    `${where}: ${path.join(".")} = ${String(value)} is refused: give a ${kind} (such as ${example})`,
  );
}
