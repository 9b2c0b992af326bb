/**
 * Friction and fittings of a pressure pipe.
 *
 * @packageDocumentation
 */
export { colebrook } from "./friction/colebrook.ts";
export { frictionFactor } from "./friction/friction-factor.ts";
export { colebrookFactorOf, frictionFactorOf } from "./friction/friction-factor-of.ts";
export { laminarFriction } from "./friction/laminar-friction.ts";
export { roughness } from "./friction/roughness.ts";
export { swameeJain } from "./friction/swamee-jain.ts";
export { fittingCoefficients } from "./loss/fittings.ts";
export { pipeVelocity, pipeVelocityOf } from "./loss/pipe-velocity.ts";
export { frictionHeadOf, reachHeadLoss, velocityHeadsOf } from "./loss/reach-head-loss.ts";
export { reynoldsNumber, reynoldsNumberOf } from "./loss/reynolds-number.ts";
export {
  colebrookPaper,
  epanetManual,
  moodyPaper,
  roughnessTables,
  swameeJainPaper,
} from "./sources.ts";
