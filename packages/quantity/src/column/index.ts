/**
 * Columns of one kind, and the times that their rows stand for.
 *
 * @packageDocumentation
 */
export {
  Column,
  type ColumnJson,
  type ColumnOptions,
  type ColumnUncertainty,
  Quality,
  type SourceOf,
} from "../column.ts";
export {
  type CivilTime,
  type RegularTimes,
  TimeAxis,
  type TimeAxisJson,
  type TimeAxisOptions,
} from "../time-axis.ts";
export { QuantityError, type QuantityErrorCode } from "../error.ts";
