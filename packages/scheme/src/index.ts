/**
 * From a survey to a scheme: the one place where the domains meet.
 *
 * @packageDocumentation
 */
export { type Account, accountNotice, type Loss, openBy } from "./account.ts";
export { type Assumed, cobbSharp } from "./assume.ts";
export {
  type Caution,
  cautions,
  type Facts,
  type FieldCaution,
  fieldCautions,
  iec60364,
  iec61558,
} from "./cautions.ts";
export type { Numbers, ReachNumbers } from "./compute.ts";
export { isCustomary } from "./customary.ts";
export {
  type Design,
  type Designed,
  type DesignedReach,
  designScheme,
  type Headline,
  type Narrowing,
} from "./design.ts";
export type { Parameter, ParameterSpread, Part } from "./ledger.ts";
export { measureSurvey, type Measurements } from "./measure/measure-survey.ts";
export type { Combined, Measured } from "./measure/measured.ts";
export type { Board } from "./measure/weir.ts";
export type { Fact, Measurement } from "./measure/measurement.ts";
export type { Plan, PlannedReach } from "./plan.ts";
export { fromPlain, type Plain, type Result, toPlain } from "./plain.ts";
export {
  directCurrentPower,
  machineLoss,
  machinePower,
  nozzleHeadLoss,
  wheelLoss,
} from "./power-formulas.ts";
export type * from "./survey.ts";
export { k95, type Spread } from "./uncertainty.ts";
export { UnbuildableError } from "./unbuildable.ts";
export type { BuiltFor, PipeTried } from "./stream/built-for.ts";
export {
  type DurationOfStream,
  type LowFlows,
  type MonthOfStream,
  streamYear,
  type StreamYear,
} from "./stream/stream-year.ts";
export type { Carried } from "./stream/site-record.ts";
