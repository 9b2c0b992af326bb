/**
 * Quantities of the trade: kinds, units, points, columns, readings and uncertainty.
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
export {
  Column,
  type ColumnJson,
  type ColumnOptions,
  type ColumnUncertainty,
  Quality,
  type SourceOf,
} from "./column.ts";
export {
  type CivilTime,
  type RegularTimes,
  TimeAxis,
  type TimeAxisJson,
  type TimeAxisOptions,
} from "./time-axis.ts";
export { columnOfPressure, pressureOfColumn, rimSpeed, torque } from "./doors.ts";
export { fromJSON, pointFromJSON } from "./json.ts";
export { format, formatFeetAndInches, type FormatOptions } from "./format.ts";
export { currency, exchange, minorUnits, roundMoney, totalMoney } from "./money.ts";
export { read, type ReadOptions, unitOf } from "./read.ts";
export type { Reading } from "./reading.ts";
export { readSize, type Size } from "./size.ts";
export type { Sources } from "./sources.ts";
export type { Minus, Plain, Plus, Product, Quotient, Relative, Root } from "./types.ts";
export * from "./generated/units.ts";
