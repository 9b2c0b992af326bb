/**
 * What flows in the stream and how far it falls: notches, timed volume, hose and gauge.
 *
 * @packageDocumentation
 */
export { hoseAndGaugeHead } from "./head/hose-and-gauge.ts";
export { timedVolumeFlow } from "./volume/timed-volume.ts";
export { francisContractedDischarge } from "./weir/francis-contracted.ts";
export { francisSuppressedDischarge } from "./weir/francis-suppressed.ts";
export { kindsvaterCarterDischarge } from "./weir/kindsvater-carter.ts";
export {
  kindsvaterCarterCoefficients,
  kindsvaterCarterWidthCorrection,
} from "./weir/kindsvater-carter-coefficients.ts";
export { vNotchDischarge } from "./weir/v-notch.ts";
