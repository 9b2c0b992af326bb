/**
 * The flow of a jet and the jet of a flow.
 *
 * @packageDocumentation
 */
export { approachFactor } from "./approach-factor.ts";
export { bellmouthCoefficients, mouthpieceCoefficients, nozzleSpread } from "./coefficients.ts";
export { jetDiameter } from "./jet-diameter.ts";
export { jetFlow } from "./jet-flow.ts";
export { jetFlowWithApproach } from "./jet-flow-with-approach.ts";
export { jetsFlowFromGauge } from "./jets-flow-from-gauge.ts";
export { jetVelocity } from "./jet-velocity.ts";
export { nozzleDiameter } from "./nozzle-diameter.ts";
