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
export { Column, type ColumnJson, type ColumnOptions, type ColumnUncertainty, Quality } from "./column.ts";
export {
  type CivilTime,
  type RegularTimes,
  TimeAxis,
  type TimeAxisJson,
  type TimeAxisOptions,
} from "./time-axis.ts";
export { columnOfPressure, pressureOfColumn, rimSpeed, torque } from "./doors.ts";
export type { Reading } from "./reading.ts";
export type { Sources } from "./sources.ts";
export type { Minus, Plain, Plus, Product, Quotient, Relative, Root } from "./types.ts";
export * from "./generated/units.ts";
