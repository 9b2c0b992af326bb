/**
 * Quantities of the trade: kinds, units, points and their uncertainty. Columns are in `@leat/quantity/column`,
 * reading of text and of JSON in `@leat/quantity/text`, so that a page pays for what it uses.
 *
 * @packageDocumentation
 */
export { exponentsOf } from "./kind.ts";
export { QuantityError, type QuantityErrorCode } from "./error.ts";
export { type AnyQuantity, isQuantity, Quantity, type QuantityJson } from "./quantity.ts";
export { type AnyUnit, coherentUnit, Unit, unit } from "./unit.ts";
export {
  type AnyPoint,
  type AnyPointUnit,
  celsius,
  type Difference,
  differenceOf,
  fahrenheit,
  isPoint,
  type Origin,
  Point,
  point,
  type PointJson,
  type PointUnit,
  toAbsolute,
  toGauge,
} from "./point.ts";
export { columnOfPressure, pressureOfColumn, rimSpeed, torque } from "./doors.ts";
export { format, formatFeetAndInches, type FormatOptions } from "./format.ts";
export { currency, exchange, minorUnits, roundMoney, totalMoney } from "./money.ts";
export type { Reading } from "./reading.ts";
export { coverage95, type Sources } from "./sources.ts";
export type { Minus, Plain, Plus, Product, Quotient, Relative, Root } from "./types.ts";
export * from "./generated/units.ts";
