import { coverage95, cubicMetrePerSecond, type Quantity } from "@leat/quantity";
import type { Column, ColumnUncertainty } from "@leat/quantity/column";

/**
 * The uncertainty of a record that all of its days share: what is left when its days lose their order.
 *
 * @param record - The record.
 * @returns Its offsets and scales, without its noise; nothing where there are none.
 */
export function sharedBy(record: Column<"volume flow">): ColumnUncertainty | undefined {
  const { offset, scale } = record.uncertainty ?? {};
  return (offset ?? scale) && { ...(offset && { offset }), ...(scale && { scale }) };
}

/**
 * A flow read off a record, with the uncertainty that all days of the record share: its offsets as they are, its
 * scales in proportion. Noise, of each day its own, goes into means of days, divided by the root of their number.
 *
 * @param column - The record, or what was made of it.
 * @param flow - The flow, in m³/s.
 * @param mean - Names the days whose mean it is, and how many they are; absent for a quantile of many days.
 * @returns The flow as a quantity.
 */
export function flowOf(
  column: Column<"volume flow">,
  flow: number,
  mean?: { readonly name: string; readonly days: number },
): Quantity<"volume flow"> {
  let quantity = cubicMetrePerSecond.of(flow);
  if (!column.uncertainty) return quantity;
  const { offset = [], scale = [], noise = [] } = column.uncertainty;
  const add = (source: string, standard: number): void => {
    quantity = quantity.plusMinus(cubicMetrePerSecond.of(coverage95 * standard), source);
  };
  for (const [source, standard] of offset) add(source, standard);
  for (const [source, relative] of scale) add(source, relative * flow);
  if (mean) {
    for (const [source, standard] of noise) {
      add(`${source}[${mean.name}]`, standard / Math.sqrt(mean.days));
    }
  }
  return quantity;
}
