import {
  type Citation,
  commonPractice,
  limitNotices,
  type Notice,
  OutOfValidityError,
} from "@leat/formula";
import {
  cubicMetrePerSecond,
  one,
  type Quantity,
  QuantityError,
  year as yearUnit,
} from "@leat/quantity";

import { type PlottingPosition, sharesOf, valueAtShare } from "../duration/plotting-position.ts";
import { weibullPosition } from "../duration/weibull-position.ts";
import type { NoticeOptions } from "../record/record-summary.ts";
import { refusal } from "../record/refusal.ts";
import type { AnnualMinima } from "./annual-minima.ts";
import { logMoments } from "./log-moments.ts";
import { logPearsonQuantile } from "./log-pearson-quantile.ts";
import { nonZeroProbability } from "./non-zero-probability.ts";
import { usgsLowFlow } from "./sources.ts";

/** What is asked of a low flow. */
export interface LowFlowInput {
  /** Minima of the years. */
  readonly minima: Pick<AnnualMinima, "years" | "days">;
  /** Mean time between years that fall as low or lower: 10 years for 7Q10. Above one year. */
  readonly recurrence: Quantity<"time">;
}

/** A low flow of a stated recurrence. */
export interface LowFlow {
  /** The flow. */
  readonly flow: Quantity<"volume flow">;
  /** Probability that a year falls as low or lower. */
  readonly probability: Quantity<"ratio">;
  /** Years that it rests on. */
  readonly years: number;
  /** Those that ran dry. */
  readonly zeroYears: number;
  /** Moments of the others; absent where the flow is zero because so many years ran dry. */
  readonly moments:
    | {
        readonly geometricMean: Quantity<"volume flow">;
        readonly logDeviation: Quantity<"ratio">;
        readonly skew: Quantity<"ratio">;
      }
    | undefined;
  /** Whose practice it is. */
  readonly source: Citation;
}

/**
 * The low flow of a recurrence by a log-Pearson III distribution: 7Q10 of 7-day minima at ten years.
 *
 * The logarithms of the minima give the moments ({@link logMoments}, station skew alone), the distribution the quantile
 * ({@link logPearsonQuantile}). Years that ran dry have no logarithm: the distribution is that of the others, asked
 * at the probability of {@link nonZeroProbability}; where dry years alone are as many as the recurrence asks for,
 * the flow is zero.
 *
 * @param input - The minima and the recurrence.
 * @param options - Without `onNotice`, fewer than ten years, or a recurrence longer than the record bears, are errors.
 * @returns The flow, its probability and the moments.
 * @throws OutOfValidityError fewer than ten years with flow; a recurrence beyond the years on record plus one.
 * @throws NonPhysicalError fewer than three years with flow; minima that are all alike.
 * @throws QuantityError a recurrence that is no time above one year.
 * @example
 * ```ts
 * import { annualMinima, lowFlowQuantile } from "@leat/hydrology";
 * import { day, format, litrePerSecond, year } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // Twelve invented years from April, each with a low season of its own.
 * const axis = TimeAxis.regular({ start: "2010-04-01", step: day.of(1), count: 4383, utcOffset: "+00:00" });
 * const lows = [12, 8, 16, 10, 11, 7, 20, 13, 11, 6, 9, 14];
 * const flows = Array.from({ length: 4383 }, (_, row) => (row % 365 === 170 ? 60 : 0) + lows[Math.min(11, Math.floor(row / 365.25))]);
 * const minima = annualMinima({ record: Column.of(litrePerSecond, flows, { axis }) });
 * const { flow } = lowFlowQuantile({ minima, recurrence: year.of(10) });
 * format(flow, litrePerSecond, 2); // => "6.9 L/s"
 * ```
 * @see USGS, Low-flow investigations, TWRI book 4, ch. B1; Bulletin 17B, app. 5, for dry years
 */
export function lowFlowQuantile(input: LowFlowInput, { onNotice }: NoticeOptions = {}): LowFlow {
  const { years } = input.minima;
  const recurrence = yearsOf("low-flow-quantile", input.recurrence);
  const p = 1 / recurrence;
  const withFlow = years.filter(({ flow }) => flow["~si"] > 0).map(({ flow }) => ({ flow }));
  const zeroYears = years.length - withFlow.length;
  const about = { probability: one.of(p), years: years.length, zeroYears, source: practice() };
  const zeroShare = zeroYears / years.length;
  if (zeroShare >= p) {
    onNotice?.(dryYears(zeroYears, years.length, input.recurrence));
    return { ...about, flow: cubicMetrePerSecond.of(0), moments: undefined };
  }
  const notices = [
    ...limitNotices(logMoments, { flows: withFlow }),
    ...(recurrence > years.length + 1 ? [tooRare(input.recurrence, years.length)] : []),
  ];
  if (notices.length > 0 && !onNotice) throw new OutOfValidityError(notices);
  for (const notice of notices) onNotice?.(notice);
  const accepted = { onNotice: () => {} };
  const moments = logMoments({ flows: withFlow }, accepted);
  const probability =
    zeroYears === 0
      ? one.of(p)
      : nonZeroProbability({ probability: one.of(p), zeroShare: one.of(zeroShare) });
  const flow = logPearsonQuantile({ ...moments, probability }, onNotice ? { onNotice } : {});
  return { ...about, flow, moments };
}

/**
 * The low flow of a recurrence by the positions of the minima themselves, no distribution: a check on
 * {@link lowFlowQuantile}, and what is left where the minima are all alike or ran dry.
 *
 * @param input - The minima, the recurrence, and the formula for positions: Weibull's by default.
 * @returns The flow, on a straight line between the two nearest years.
 * @throws NonPhysicalError a recurrence that the positions of the years do not reach: it is not extrapolated.
 * @throws QuantityError a recurrence that is no time above one year.
 * @example
 * ```ts
 * import { lowFlowByPosition } from "@leat/hydrology";
 * import { litrePerSecond, year } from "@leat/quantity";
 *
 * // Minima of nine invented years; the lowest of them has the position 1/10.
 * const at = { row: 0, from: "2001-09-01", days: 7 };
 * const years = [12, 8, 16, 10, 11, 7, 20, 13, 6].map((flow, n) => {
 *   return { name: String(2001 + n), flow: litrePerSecond.of(flow), at, missing: 0 };
 * });
 * const minima = { days: 7, years };
 * lowFlowByPosition({ minima, recurrence: year.of(10) }).in(litrePerSecond); // => 6
 * lowFlowByPosition({ minima, recurrence: year.of(4) }).in(litrePerSecond); // => 7.5
 * ```
 */
export function lowFlowByPosition(
  input: LowFlowInput & { readonly position?: PlottingPosition | undefined },
): Quantity<"volume flow"> {
  const { years } = input.minima;
  const p = 1 / yearsOf("low-flow-by-position", input.recurrence);
  const ranked = years.map(({ flow }) => flow).toSorted((a, b) => a["~si"] - b["~si"]);
  const shares = sharesOf(input.position ?? weibullPosition, ranked.length);
  const place = valueAtShare(
    shares,
    Array.from(ranked, (_, rank) => rank),
    p,
  );
  if (place === undefined) {
    const [least, most] = [shares.at(-1) as number, shares[0] as number].map(
      (share) => `${Number((1 / share).toPrecision(4))} yr`,
    );
    throw refusal(
      "low-flow/recurrence-beyond-record",
      ["recurrence"],
      `low-flow-by-position: recurrence = ${String(input.recurrence)} is outside ${least} to ${most}, the positions of ${years.length} years. Find a longer record near by, or fit a distribution.`,
      {
        actual: String(input.recurrence),
        limit: `${least} to ${most}`,
        source: commonPractice.at("no extrapolation beyond the plotting positions", "practice"),
      },
    );
  }
  const low = Math.floor(place);
  const lower = ranked[low] as Quantity<"volume flow">;
  const upper = ranked[low + 1];
  return upper ? lower.plus(upper.minus(lower).times(place - low)) : lower;
}

function practice(): Citation {
  return usgsLowFlow.at("log-Pearson III frequency of annual minima", "memory");
}

/** Years of a recurrence. */
function yearsOf(where: string, recurrence: Quantity<"time">): number {
  const given = recurrence as Quantity<string> | undefined;
  const years = given?.kind === "time" ? recurrence.in(yearUnit) : Number.NaN;
  if (years > 1) return years;
  throw new QuantityError(
    "time",
    `${where}: recurrence = ${String(recurrence)} is not above one year; give a time, such as 10 yr`,
  );
}

function tooRare(recurrence: Quantity<"time">, years: number): Notice {
  return {
    code: "low-flow/recurrence-beyond-record",
    severity: "caution",
    path: ["recurrence"],
    message: `low-flow: recurrence = ${String(recurrence)} is beyond ${years + 1} yr, what ${years} years of minima bear. Ask for a shorter one.`,
    actual: String(recurrence),
    limit: `at most ${years + 1} yr`,
    source: commonPractice.at("no extrapolation beyond the plotting positions", "practice"),
  };
}

function dryYears(zeroYears: number, years: number, recurrence: Quantity<"time">): Notice {
  return {
    code: "low-flow/dry-years",
    severity: "caution",
    path: ["minima"],
    message: `low-flow: ${zeroYears} of ${years} years ran dry, so that the flow of a recurrence of ${String(recurrence)} is zero. Plan for months without water.`,
    actual: String(zeroYears),
  };
}
