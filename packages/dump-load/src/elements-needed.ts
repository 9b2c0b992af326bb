import { type Quantity, QuantityError } from "@leat/quantity";

import { elementPower } from "./element-power.ts";

/**
 * How many like elements in parallel take at least a power at a voltage. A thousand-millionth of an element is
 * taken as rounding and not as one element more.
 *
 * @param needed - Power to be taken, the elements' rating, and the voltage across them.
 * @returns A whole number of elements.
 * @throws NonPhysicalError as {@link elementPower} does.
 * @throws QuantityError `number` where there is no voltage across them, or power below zero.
 * @example
 * ```ts
 * elementsNeeded({
 *   power: watt.of(1200), ratedPower: watt.of(4500), ratedVoltage: volt.of(240), voltage: volt.of(56.4),
 * });
 * // => 5
 * ```
 */
export function elementsNeeded(needed: {
  /** Power that must be taken. */
  readonly power: Quantity<"electric power"> | Quantity<"power">;
  /** Power of one element at its rated voltage. */
  readonly ratedPower: Quantity<"electric power"> | Quantity<"power">;
  /** Voltage that an element is rated for. */
  readonly ratedVoltage: Quantity<"voltage">;
  /** Voltage across the elements. */
  readonly voltage: Quantity<"voltage">;
}): number {
  const { power, ...element } = needed;
  const each = elementPower(element)["~si"];
  const wanted = power["~si"];
  if (!(each > 0) || !(wanted >= 0)) {
    throw new QuantityError(
      "number",
      `no number of elements of ${each} W each takes ${wanted} W. Check the voltage and the power.`,
    );
  }
  return Math.ceil((wanted / each) * (1 - 1e-9));
}
