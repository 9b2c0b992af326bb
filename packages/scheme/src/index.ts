/**
 * From a survey to a scheme: the one place where the domains meet.
 *
 * @packageDocumentation
 */
export { type Account, accountNotice, type Loss, openBy } from "./account.ts";
export { type Assumed, cobbSharp, tennant } from "./assume.ts";
export { type Caution, cautions, type Facts, iec60364, iec61558 } from "./cautions.ts";
export type { Numbers, ReachNumbers } from "./compute.ts";
export {
  type Design,
  type Designed,
  type DesignedReach,
  designScheme,
  type Headline,
  type Narrowing,
} from "./design.ts";
export { type Parameter, type ParameterSpread, type Plan, type PlannedReach } from "./plan.ts";
export { fromPlain, type Plain, toPlain } from "./plain.ts";
export {
  directCurrentPower,
  machineLoss,
  machinePower,
  nozzleHeadLoss,
  wheelLoss,
} from "./power-formulas.ts";
export type * from "./survey.ts";
export type { Spread } from "./uncertainty.ts";
export { UnbuildableError } from "./unbuildable.ts";
