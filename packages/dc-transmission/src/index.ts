/**
 * Drop and loss of a direct-current loop, and what they leave at its two ends.
 *
 * @packageDocumentation
 */
export { continuousRating } from "./continuous-rating.ts";
export { dropShare, type RecommendedDrop, recommendedDrops } from "./drop-share.ts";
export { loopDrop } from "./loop-drop.ts";
export { loopLoss } from "./loop-loss.ts";
export { loopResistance } from "./loop-resistance.ts";
export { machineEnd, sendingCurrent } from "./machine-end.ts";
