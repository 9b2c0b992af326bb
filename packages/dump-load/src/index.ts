/**
 * Elements, the power that must go somewhere, and the water it heats.
 *
 * @packageDocumentation
 */
export { divertedPower } from "./diverted-power.ts";
export { elementPower } from "./element-power.ts";
export { elementsNeeded } from "./elements-needed.ts";
export { heatingRate } from "./heating-rate.ts";
export { heatingTime } from "./heating-time.ts";
export * from "./sources.ts";
