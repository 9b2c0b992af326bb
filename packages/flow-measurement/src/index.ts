/**
 * What flows in the stream and how far it falls: weirs, velocities, salt, rating curves, levels and gauges.
 *
 * @packageDocumentation
 */
export {
  combine,
  type Combination,
  type Measurement,
  type MeasurementPair,
} from "./combine/combine.ts";
export { grubbsCriterion } from "./combine/scatter.ts";
export {
  staffReadings,
  type StaffReadingsInput,
  type StaffReadingsResult,
} from "./combine/staff-readings.ts";
export { airVapourPressure } from "./head/air-vapour-pressure.ts";
export {
  type AltimeterInput,
  type AltimeterReading,
  altimeterHead,
} from "./head/altimeter-head.ts";
export { altimeterHeight } from "./head/altimeter-height.ts";
export {
  type AirBetween,
  type AirHead,
  barometerHead,
  type BarometerInput,
  type BarometerReading,
} from "./head/barometer-head.ts";
export { barometricHeight } from "./head/barometric-height.ts";
export { allowedClosingError, closingErrors } from "./head/closing-error.ts";
export type { Closure, Mark } from "./head/closing.ts";
export { contourHeight } from "./head/contour-height.ts";
export { curvatureAndRefraction } from "./head/curvature-and-refraction.ts";
export { type Fall, fallBetween, type FallInput } from "./head/fall-between.ts";
export { type GaugeAccuracy, gaugeClasses, gaugeGrades } from "./head/gauge-accuracy.ts";
export { type GaugeHead, gaugeHead, type GaugeHeadInput } from "./head/gauge-head.ts";
export { hoseAndGaugeHead } from "./head/hose-and-gauge.ts";
export { type LevelInstrument, levelSpreads, stepSpreads } from "./head/level-spreads.ts";
export {
  type ClosingGrade,
  type LevelledMark,
  levelling,
  type Levelling,
  type LevellingInput,
  type Setup,
} from "./head/levelling.ts";
export { type MapHead, mapHead, type MapInput } from "./head/map-head.ts";
export { type SatelliteHead, satelliteHead, type SatelliteInput } from "./head/satellite-head.ts";
export { type SatelliteReceiver, satelliteReceivers } from "./head/satellite-receivers.ts";
export {
  hoseLevelling,
  plankLevelling,
  type FallStep,
  type Stepping,
  type SteppingInput,
} from "./head/stepping.ts";
export { waterToNozzleHead } from "./head/water-to-nozzle.ts";
export type { RatingFit } from "./rating/fit-power-law.ts";
export type { Gauging } from "./rating/gauging.ts";
export type { SegmentParameters } from "./rating/rated-segments.ts";
export {
  type BandOptions,
  type RatedGauging,
  type RatingBreak,
  ratingCurve,
  type RatingCurve,
  type RatingCurveInput,
  type RatingOptions,
  type RatingSegment,
  type RatingStatistics,
} from "./rating/rating-curve.ts";
export { ratingDischarge } from "./rating/rating-discharge.ts";
export { ratingExponents } from "./rating/rating-exponents.ts";
export { ratingStage } from "./rating/rating-stage.ts";
export {
  type CalibrationReading,
  type NoticeOptions,
  saltCalibration,
  type SaltCalibration,
  type SaltCalibrationInput,
} from "./salt/calibration.ts";
export {
  ccmeChlorideGuidelines,
  chlorideAtPeak,
  chlorideNotices,
  epaChlorideCriteria,
} from "./salt/chloride.ts";
export { compareProbes, type ProbeComparison } from "./salt/compare-probes.ts";
export { saltConstantRateDischarge } from "./salt/constant-rate-discharge.ts";
export { saltMixingLength } from "./salt/mixing-length.ts";
export { saltPlateau, type SaltPlateau, type SaltPlateauInput } from "./salt/plateau.ts";
export type { LoggedConductivity, ReadingFaults } from "./salt/readings.ts";
export { saltRecovery } from "./salt/recovery.ts";
export { saltNeeded } from "./salt/salt-needed.ts";
export { saltSlugDischarge } from "./salt/slug-discharge.ts";
export type { SlugGiven, TimeSpan } from "./salt/slug-plan.ts";
export { saltSlug, type SaltSlug, type SaltSlugInput } from "./salt/slug.ts";
export {
  specificConductivity,
  streamTemperatureCoefficient,
} from "./salt/specific-conductivity.ts";
export { saltFactors, standardSaltFactor } from "./salt/standard-factor.ts";
export type { ConductivityBasis, WaterTemperature } from "./salt/temperature.ts";
export { belowSurfaceVelocity } from "./velocity/below-surface.ts";
export { floatCoefficient } from "./velocity/float-coefficient.ts";
export {
  floatCoefficientsByBed,
  floatCoefficientsByDepth,
  floatCoefficientsOfVolunteers,
} from "./velocity/float-coefficients.ts";
export { floatDischarge } from "./velocity/float-discharge.ts";
export {
  type FloatBed,
  floatGauging,
  type FloatGaugingInput,
  type FloatGaugingResult,
  type FloatSection,
} from "./velocity/float-gauging.ts";
export {
  exposureUncertainty,
  meterUncertainty,
  pointsUncertainty,
  verticalsByWidth,
  verticalsUncertainty,
} from "./velocity/iso-748.ts";
export { midSectionDischarge } from "./velocity/mid-section.ts";
export { sixTenthsVelocity } from "./velocity/six-tenths.ts";
export { soundedArea } from "./velocity/sounded-area.ts";
export { threePointVelocity } from "./velocity/three-point.ts";
export { twoPointVelocity } from "./velocity/two-point.ts";
export {
  type GaugedEdge,
  type GaugedSection,
  type GaugedVertical,
  type PointVelocities,
  velocityArea,
  type VelocityAreaInput,
  type VelocityAreaResult,
} from "./velocity/velocity-area.ts";
export {
  type Filling,
  timedVolume,
  type TimedVolumeInput,
  type TimedVolumeResult,
} from "./volume/fillings.ts";
export { timedVolumeFlow } from "./volume/timed-volume.ts";
export { broadCrestedDischarge } from "./weir/broad-crested.ts";
export { broadCrestedCoefficients } from "./weir/broad-crested-coefficients.ts";
export { cipollettiDischarge } from "./weir/cipolletti.ts";
export { type EquationUncertainty, weirEquationUncertainty } from "./weir/equation-uncertainty.ts";
export { flowWithLeakage, leakageBetween } from "./weir/flow-with-leakage.ts";
export { francisApproachDischarge } from "./weir/francis-approach.ts";
export { francisContractedDischarge } from "./weir/francis-contracted.ts";
export { francisSuppressedDischarge } from "./weir/francis-suppressed.ts";
export { fullWidthDrownedFactor } from "./weir/full-width-drowned-factor.ts";
export { type Found, headFor, inputFor } from "./weir/inverse.ts";
export { kindsvaterCarterDischarge } from "./weir/kindsvater-carter.ts";
export {
  kindsvaterCarterCoefficients,
  kindsvaterCarterWidthCorrection,
} from "./weir/kindsvater-carter-coefficients.ts";
export { likelySlip } from "./weir/likely-slip.ts";
export { broadCrestedModularLimit } from "./weir/modular-limit.ts";
export { levelThatLeaves, type Needed, notchThatLeaves } from "./weir/notch-that-leaves.ts";
export { partlyContractedCoefficients } from "./weir/partly-contracted-coefficients.ts";
export { partlyContractedVNotchDischarge } from "./weir/partly-contracted-v-notch.ts";
export { type RatingLine, ratingTable, type Ruler } from "./weir/rating-table.ts";
export { rehbockDischarge } from "./weir/rehbock.ts";
export { weirRelativeUncertainty } from "./weir/relative-uncertainty.ts";
export { vNotchDischarge } from "./weir/v-notch.ts";
export { villemonteFactor } from "./weir/villemonte-factor.ts";
export { weirFlow } from "./weir/weir-flow.ts";
export type { FlowFormula, WeirOptions } from "./weir/weir-formula.ts";
