/**
 * Power of a jet, shaft power and the speed of a wheel.
 *
 * @packageDocumentation
 */
export { hydraulicPower, hydraulicPowerOf } from "./hydraulic-power.ts";
export { jetPower, jetPowerOf } from "./jet-power.ts";
export { shaftPower, shaftPowerOf } from "./shaft-power.ts";
export { rotatingMachineryPaper } from "./sources.ts";
export { pitchCircleSpeedOf } from "./wheel.ts";
export { wheelDiameter } from "./wheel-diameter.ts";
export { wheelSpeed } from "./wheel-speed.ts";
