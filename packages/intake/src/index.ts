/**
 * Screen, submergence, air vent, settling, crest and residual flow, headrace, forebay and frost at an intake.
 *
 * @packageDocumentation
 */
export { intakeCautions } from "./caution/intake-cautions.ts";
export type { IntakeFacts } from "./caution/intake-cautions.ts";
export { divideFlow } from "./crest/divide-flow.ts";
export type { DividedFlow, DivideFlowInput } from "./crest/divide-flow.ts";
export { sillOverNotch } from "./crest/sill-over-notch.ts";
export type { FlowOverHead, SillOverNotch, SillOverNotchInput } from "./crest/sill-over-notch.ts";
export { coolingAlongPipe } from "./freezing/cooling-along-pipe.ts";
export { coolingTime } from "./freezing/cooling-time.ts";
export { drainPoints } from "./freezing/drain-points.ts";
export type {
  DrainPoints,
  DrainPointsInput,
  RunPoint,
  TurningPoint,
} from "./freezing/drain-points.ts";
export { freezingTime } from "./freezing/freezing-time.ts";
export { groundResistance } from "./freezing/ground-resistance.ts";
export { insulationResistance } from "./freezing/insulation-resistance.ts";
export { leastFlowAgainstFreezing } from "./freezing/least-flow-against-freezing.ts";
export { surfaceResistance } from "./freezing/surface-resistance.ts";
export {
  btuInchPerHourSquareFootDegree,
  kelvinMetrePerWatt,
  wattPerMetreKelvin,
  wattPerSquareMetreKelvin,
} from "./freezing/thermal-units.ts";
export type {
  PipeResistanceKind,
  SurfaceCoefficientKind,
  ThermalConductivityKind,
} from "./freezing/thermal-units.ts";
export { channelLinings } from "./headrace/channel-linings.ts";
export { checkHeadrace } from "./headrace/check-headrace.ts";
export type { ChannelLining, HeadraceInput } from "./headrace/check-headrace.ts";
export { forebayReserve } from "./headrace/forebay-reserve.ts";
export { forebayVolume } from "./headrace/forebay-volume.ts";
export { freeboard } from "./headrace/freeboard.ts";
export { manningFlow } from "./headrace/manning-flow.ts";
export { normalDepth } from "./headrace/normal-depth.ts";
export type { NoticeOptions } from "./refusal.ts";
export { barRackLoss } from "./screen/bar-rack-loss.ts";
export { barShapes } from "./screen/bar-shapes.ts";
export { blockedShareThatStarves } from "./screen/blocked-share.ts";
export type { BlockedShare, BlockedShareInput } from "./screen/blocked-share.ts";
export {
  californiaApproachVelocities,
  californiaCriterion,
  nmfsApproachVelocities,
  nmfsCriterion,
  nmfsOpenings,
  nmfsOpenShare,
} from "./screen/fish-criteria.ts";
export type { FishCriterion } from "./screen/fish-criteria.ts";
export { fishScreen } from "./screen/fish-screen.ts";
export type { FishScreen, FishScreenInput } from "./screen/fish-screen.ts";
export { perforatedPlateLoss } from "./screen/perforated-plate-loss.ts";
export { roundWireFactors } from "./screen/round-wire-factors.ts";
export { screenArea } from "./screen/screen-area.ts";
export { tiltedWireScreen } from "./screen/tilted-wire-screen.ts";
export { tiltedWireSlot } from "./screen/tilted-wire-slot.ts";
export { wireClothLoss } from "./screen/wire-cloth-loss.ts";
export { grainVelocity } from "./settling/grain-velocity.ts";
export { scourVelocity } from "./settling/scour-velocity.ts";
export { settlingBasin } from "./settling/settling-basin.ts";
export { settlingVelocityLimit } from "./settling/settling-velocity-limit.ts";
export { stokesVelocity } from "./settling/stokes-velocity.ts";
export { trappedGrainSize } from "./settling/trapped-grain-size.ts";
export {
  arcticUtilities,
  ashraeFundamentals,
  awwaM51,
  blevinsGrilles,
  californiaScreens,
  camp,
  chow,
  civilWorksGuidelines,
  fergusonAndChurch,
  gordon,
  hydraulicInstitute,
  idelchikHandbook,
  kirschmer,
  nmfsPumpIntake,
  nmfsSalmonid,
  wahlScreens,
  waterTables,
} from "./sources.ts";
export { froudeSubmergence } from "./submergence/froude-submergence.ts";
export { gordonSubmergence } from "./submergence/gordon-submergence.ts";
export { mouthSubmergence } from "./submergence/mouth-submergence.ts";
export type { MouthSubmergence, MouthSubmergenceInput } from "./submergence/mouth-submergence.ts";
export { airVent } from "./vent/air-vent.ts";
