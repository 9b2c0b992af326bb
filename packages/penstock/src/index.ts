/**
 * Friction and fittings of a pressure pipe.
 *
 * @packageDocumentation
 */
export {
  type GreatestPower,
  greatestPowerFlow,
  type GreatestPowerInput,
  type LossAndExponent,
  lossAndExponentOf,
  type PlainReach,
} from "./choice/greatest-power-flow.ts";
export { greatestPowerNozzle } from "./choice/greatest-power-nozzle.ts";
export { greatestPowerShare } from "./choice/greatest-power-share.ts";
export { lostEnergy } from "./choice/lost-energy.ts";
export {
  cheapestPipe,
  type EnergyMoney,
  narrowestPipe,
  pipeCurve,
  type PipeCurve,
  type PipeCurveInput,
  type PipeCurveRow,
  type PipeTrial,
} from "./choice/pipe-curve.ts";
export { presentWorthFactor } from "./choice/present-worth-factor.ts";
export { colebrook } from "./friction/colebrook.ts";
export { frictionExponentOf } from "./friction/friction-exponent-of.ts";
export { frictionFactor } from "./friction/friction-factor.ts";
export { colebrookFactorOf, frictionFactorOf } from "./friction/friction-factor-of.ts";
export { laminarFriction } from "./friction/laminar-friction.ts";
export { roughness } from "./friction/roughness.ts";
export { swameeJain } from "./friction/swamee-jain.ts";
export { airClearingVelocity } from "./grade-line/air-clearing-velocity.ts";
export type {
  AirValve,
  GradeLine,
  GradeLineInput,
  GradePoint,
  ReachLoss,
  ReachPressure,
} from "./grade-line/grade-line.ts";
export { penstockGradeLine } from "./grade-line/penstock-grade-line.ts";
export { beadCoefficient } from "./loss/bead-coefficient.ts";
export { bendCoefficient, bendCoefficientOf } from "./loss/bend-coefficient.ts";
export {
  coefficientInOtherBore,
  coefficientInOtherBoreOf,
} from "./loss/coefficient-in-other-bore.ts";
export { combiningBranchCoefficient } from "./loss/combining-branch-coefficient.ts";
export { combiningRunCoefficient } from "./loss/combining-run-coefficient.ts";
export { contractionCoefficient } from "./loss/contraction-coefficient.ts";
export { dividingBranchCoefficient } from "./loss/dividing-branch-coefficient.ts";
export { dividingRunCoefficient } from "./loss/dividing-run-coefficient.ts";
export { entranceCoefficients } from "./loss/entrance-coefficients.ts";
export { expansionCoefficient } from "./loss/expansion-coefficient.ts";
export { fittingCoefficients } from "./loss/fittings.ts";
export { hazenWilliams } from "./loss/hazen-williams.ts";
export {
  hazenWilliamsCoefficients,
  polyethyleneFlowCoefficients,
} from "./loss/hazen-williams-coefficients.ts";
export { mitreCoefficient } from "./loss/mitre-coefficient.ts";
export { pipeVelocity, pipeVelocityOf } from "./loss/pipe-velocity.ts";
export { frictionHeadOf, reachHeadLoss, velocityHeadsOf } from "./loss/reach-head-loss.ts";
export { reachLossOf } from "./loss/reach-loss-of.ts";
export { reynoldsNumber, reynoldsNumberOf } from "./loss/reynolds-number.ts";
export { roundedEntranceCoefficient } from "./loss/rounded-entrance-coefficient.ts";
export { screenCoefficient } from "./loss/screen-coefficient.ts";
export { type SpreadPipe, spreadOfFittings, spreadOfPipe } from "./loss/spread-of-pipe.ts";
export {
  branchTwist,
  combiningBranchOf,
  combiningRunOf,
  dividingBranchOf,
  dividingRunOf,
} from "./loss/tees.ts";
export { valveCoefficients } from "./loss/valve-coefficients.ts";
export { penstockProfile } from "./profile/penstock-profile.ts";
export type {
  FittingInput,
  Profile,
  ProfileFitting,
  ProfileInput,
  ProfileReach,
  ProfileStation,
  ProfileStretch,
  ReachInput,
  StationInput,
  StretchInput,
} from "./profile/profile.ts";
export { slopeLength } from "./profile/slope-length.ts";
export { type TurningPoints, turningPointsOf } from "./profile/turning-points.ts";
export {
  colebrookPaper,
  craneTp410,
  entranceTables,
  epanetManual,
  idelchikHandbook,
  liouHazenWilliams,
  moodyPaper,
  munsonFluids,
  perryFittings,
  rennelsHudson,
  roughnessTables,
  siphonNotes,
  swameeJainPaper,
  swameeSharma,
  wisnerAir,
} from "./sources.ts";
