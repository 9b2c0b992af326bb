/**
 * The grammar that all formulas speak: definition, source, limits, notices, calculation sheet.
 *
 * @packageDocumentation
 */
export { curve } from "./curve.ts";
export type {
  AnyDefinition,
  AnyFormula,
  AnySeries,
  AnyStep,
  Assumption,
  Body,
  BodyResult,
  CallOptions,
  Constants,
  Convergence,
  Definition,
  Formula,
  Outputs,
  Result,
  Series,
  Step,
} from "./definition.ts";
export { outputsOf } from "./definition.ts";
export { formula, isFormula } from "./formula.ts";
export {
  type AnyInput,
  type Args,
  choice,
  type ChoiceInput,
  type CurveInput,
  type CurvePoints,
  type Domain,
  type Given,
  input,
  type InputOptions,
  type Inputs,
  type Letters,
  list,
  type ListInput,
  output,
  type Output,
  pointInput,
  type PointInput,
  type Scalars,
  type ScalarInput,
  type Seen,
} from "./input.ts";
export { bound, type Bounds, type Limit, range, ratio } from "./limit.ts";
export { limitNotices, limitText } from "./check.ts";
export { type Notice, NonPhysicalError, OutOfValidityError, type Severity } from "./notice.ts";
export {
  cite,
  type Citation,
  commonPractice,
  firstPrinciples,
  source,
  type Source,
  type Standing,
} from "./source.ts";
export { type Row, table, type Table, type TableDefinition, type Units } from "./table.ts";
export { series, type SeriesArgs } from "./series.ts";
export { working, type Working, type WorkingLine, workingText } from "./working.ts";
