import type { Quantity } from "@leat/quantity";

import { flowOf } from "../record/flow-of.ts";
import { type DurationByPeriodInput, monthlyDurations } from "./duration-by-period.ts";
import { flowAt } from "./flow-duration.ts";

/** What flows in one month of the calendar, all years together. */
export interface MonthlySummary {
  /** 1 to 12. */
  readonly month: number;
  /** Days that it rests on. */
  readonly days: number;
  /** Years that have such a day. */
  readonly years: number;
  /** Mean of the days. */
  readonly mean: Quantity<"volume flow">;
  /** Flow that is exceeded on half of the days. */
  readonly median: Quantity<"volume flow"> | undefined;
  /** Flow that is equalled or exceeded on four days of five; absent where there are too few days to say. */
  readonly q80: Quantity<"volume flow"> | undefined;
  /** Flow that is equalled or exceeded on 19 days of 20; absent where there are too few days to say. */
  readonly q95: Quantity<"volume flow"> | undefined;
}

/**
 * Mean, median, Q80 and Q95 of each month of the calendar.
 *
 * The numbers of days are part of the answer: a month that is often missing is known from its good years only.
 *
 * @param input - The record, and what of it is taken.
 * @returns One for each month of which there is a day, in the order of the calendar.
 * @throws NonPhysicalError a record that is not daily, a negative flow, no flow at all.
 * @throws QuantityError a column of another kind.
 * @example
 * ```ts
 * import { monthlyFlows } from "@leat/hydrology";
 * import { day, litrePerSecond } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-01-01", step: day.of(1), count: 60, utcOffset: "+10:00" });
 * const flows = Array.from({ length: 60 }, (_, row) => (row < 31 ? 12 : 30));
 * const [january, february] = monthlyFlows({ record: Column.of(litrePerSecond, flows, { axis }) });
 * [january.days, february.days]; // => [31, 29]
 * february.median?.in(litrePerSecond); // => 30
 * ```
 */
export function monthlyFlows(input: DurationByPeriodInput): readonly MonthlySummary[] {
  return monthlyDurations(input).map(({ month, duration }) => {
    const { values } = duration.flows;
    const mean = values.reduce((sum, flow) => sum + flow, 0) / values.length;
    const at = (share: number): Quantity<"volume flow"> | undefined => {
      const flow = flowAt(duration, share);
      return flow === undefined ? undefined : flowOf(duration.flows, flow);
    };
    return {
      month,
      days: values.length,
      years: duration.years,
      mean: flowOf(input.record, mean, { name: `month ${month}`, days: values.length }),
      median: at(0.5),
      q80: at(0.8),
      q95: at(0.95),
    };
  });
}
