import type { Quantity } from "@leat/quantity";
import { percent } from "@leat/quantity";

import { dailyFlows, type DailyRecord, firstMonthOf } from "../record/daily-flows.ts";
import { yearsOf } from "../record/record-summary.ts";
import { type FlowDuration, flowDuration } from "./flow-duration.ts";
import type { PlottingPosition } from "./plotting-position.ts";

/** What is asked of the curves by month and by year. */
export interface DurationByPeriodInput extends DailyRecord {
  /** Formula for the share of a ranked flow; Weibull's by default. */
  readonly position?: PlottingPosition | undefined;
}

/** What is asked of the curves by year. */
export interface AnnualDurationsInput extends DurationByPeriodInput {
  /** Share of a year's days that may be missing. None by default. */
  readonly missingShare?: Quantity<"ratio"> | undefined;
}

/** The curves of a record's complete years. */
export interface AnnualDurations {
  /** One for each complete year, in order. */
  readonly years: readonly { readonly name: string; readonly duration: FlowDuration }[];
  /** Years that are not complete, and how many of their days are missing. */
  readonly excluded: readonly { readonly name: string; readonly missing: number }[];
}

/**
 * The flow-duration curve of each month of the calendar, all years together.
 *
 * @param input - The record, and what of it is taken.
 * @returns One for each month of which there is a day, with its number, 1 to 12.
 * @throws As {@link flowDuration} does.
 */
export function monthlyDurations(
  input: DurationByPeriodInput,
): readonly { readonly month: number; readonly duration: FlowDuration }[] {
  const { record, unusable, calendar } = dailyFlows(input, firstMonthOf(input.record));
  const inMonth = new Uint32Array(13);
  for (let row = 0; row < record.length; row++) {
    if (((record.quality[row] as number) & unusable) !== 0) continue;
    const month = calendar.months[row] as number;
    inMonth[month] = (inMonth[month] as number) + 1;
  }
  return Array.from({ length: 12 }, (_, index) => index + 1)
    .filter((month) => (inMonth[month] as number) > 0)
    .map((month) => ({ month, duration: flowDuration({ ...input, months: [month] }) }));
}

/**
 * The flow-duration curve of each complete year: how far the years differ, which a curve of all years hides.
 *
 * @param input - The record, what of it is taken, and how many days a year may lack.
 * @returns The curves, and the years that are left out.
 * @throws As {@link flowDuration} does.
 * @example
 * ```ts
 * import { annualDurations, flowExceeded } from "@leat/hydrology";
 * import { day, litrePerSecond, percent } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * // Two invented years, one of 10 and one of 30 L/s, and the first days of a third.
 * const axis = TimeAxis.regular({ start: "2022-01-01", step: day.of(1), count: 760, utcOffset: "+10:00" });
 * const flows = Array.from({ length: 760 }, (_, row) => (row < 365 ? 10 : 30));
 * const { years, excluded } = annualDurations({ record: Column.of(litrePerSecond, flows, { axis }) });
 * years.map(({ name, duration }) => {
 *   return `${name}: ${flowExceeded({ duration, share: percent.of(95) })}`;
 * });
 * // => ["2022: 0.01 m³/s", "2023: 0.03 m³/s"]
 * excluded; // => [{ name: "2024", missing: 336 }]
 * ```
 */
export function annualDurations(input: AnnualDurationsInput): AnnualDurations {
  const daily = dailyFlows(input, firstMonthOf(input.record));
  const { beginsIn } = daily.calendar;
  const all = yearsOf(daily, input.missingShare ?? percent.of(0));
  return {
    years: all.flatMap(({ name, complete }, year) =>
      complete
        ? [{ name, duration: flowDuration({ ...input, years: [beginsIn[year] as number] }) }]
        : [],
    ),
    excluded: all
      .filter(({ complete }) => !complete)
      .map(({ name, missing }) => ({ name, missing })),
  };
}
