/**
 * What will flow: daily records, flow duration, low flows, transfer from a gauged stream, what must stay.
 *
 * @packageDocumentation
 */
export {
  type DesignFlow,
  designFlows,
  type DesignFlows,
  type DesignFlowsInput,
  type WaterAccount,
  type YearSpread,
} from "./design/design-flows.ts";
export { cunnanePosition } from "./duration/cunnane-position.ts";
export {
  type AnnualDurations,
  annualDurations,
  type AnnualDurationsInput,
  type DurationByPeriodInput,
  monthlyDurations,
} from "./duration/duration-by-period.ts";
export {
  type ConfidentFlow,
  durationConfidence,
  type DurationConfidence,
  type DurationConfidenceInput,
} from "./duration/duration-confidence.ts";
export {
  type DurationRow,
  flowDuration,
  type FlowDuration,
  type FlowDurationInput,
  flowExceeded,
} from "./duration/flow-duration.ts";
export { gringortenPosition } from "./duration/gringorten-position.ts";
export { hazenPosition } from "./duration/hazen-position.ts";
export { monthlyFlows, type MonthlySummary } from "./duration/monthly-flows.ts";
export type { PlottingPosition } from "./duration/plotting-position.ts";
export { weibullPosition } from "./duration/weibull-position.ts";
export {
  type AnnualMinima,
  annualMinima,
  type AnnualMinimaInput,
  type AnnualMinimum,
} from "./low-flow/annual-minima.ts";
export type { BaseFlow } from "./low-flow/base-flow.ts";
export { baseFlowIndex } from "./low-flow/base-flow-index.ts";
export { filteredBaseFlow, type FilteredBaseFlowInput } from "./low-flow/filtered-base-flow.ts";
export {
  type LowFlow,
  lowFlowByPosition,
  type LowFlowInput,
  lowFlowQuantile,
} from "./low-flow/low-flow-quantile.ts";
export { logMoments } from "./low-flow/log-moments.ts";
export { logPearsonQuantile } from "./low-flow/log-pearson-quantile.ts";
export { nonZeroProbability } from "./low-flow/non-zero-probability.ts";
export { pearsonFrequencyFactor } from "./low-flow/pearson-frequency-factor.ts";
export { pearsonFrequencyFactorOf } from "./low-flow/pearson-frequency-factor-of.ts";
export { recurrenceInterval } from "./low-flow/recurrence-interval.ts";
export { wilsonHilfertyFactor } from "./low-flow/wilson-hilferty-factor.ts";
export { dailyCalendar, type DailyCalendar, yearName } from "./record/calendar.ts";
export type { DailyRecord, DayCounts } from "./record/daily-flows.ts";
export {
  type NoticeOptions,
  type RecordSummary,
  recordSummary,
  type RecordSummaryInput,
  type RunOfDays,
  type YearOfRecord,
} from "./record/record-summary.ts";
export {
  type DaysOfUse,
  type MonthOfUse,
  residualAndUsable,
  type ResidualAndUsable,
  type ResidualAndUsableInput,
  type VolumesOfUse,
} from "./residual/residual-and-usable.ts";
export {
  allOf,
  fishPassage,
  type FishPassage,
  type FixedFlow,
  fixedFlow,
  type GreatestOf,
  licenceFlows,
  type LicenceFlows,
  monthlyPercentileFlow,
  percentileFlow,
  type PercentileFlow,
  type ResidualRule,
  type SeasonShare,
  seasonalShares,
  shareAboveHandsOff,
  type ShareAboveHandsOff,
  shareOfMeanFlow,
  type SharesOfMean,
  tennantSeasons,
} from "./residual/rules.ts";
export { type TennantCondition, tennantShares } from "./residual/tennant.ts";
export { areaRatioTransfer } from "./transfer/area-ratio.ts";
export {
  type LineFit,
  type LineFormula,
  lineThroughVisits,
  type LineThroughVisitsInput,
} from "./transfer/line-through-visits.ts";
export { meanOfRatios } from "./transfer/mean-of-ratios.ts";
export {
  type MonthOfPattern,
  type MonthlyPattern,
  monthlyPatternOfNeighbour,
  monthlyPatternOfRecord,
  monthlyPatternOfVisits,
  type PatternOfNeighbour,
  type PatternOfVisitsInput,
} from "./transfer/monthly-pattern.ts";
export { organicLine } from "./transfer/organic-line.ts";
export { ratioOfSums } from "./transfer/ratio-of-sums.ts";
export { regressionLine } from "./transfer/regression-line.ts";
export { runoffRatioTransfer } from "./transfer/runoff-ratio.ts";
export {
  type RatioFormula,
  scaleByVisits,
  type ScaleByVisitsInput,
} from "./transfer/scale-by-visits.ts";
export { areaTransferSpread } from "./transfer/spread.ts";
export {
  transferRecord,
  type TransferRecordInput,
  type TransferredRecord,
} from "./transfer/transfer-record.ts";
export {
  areaTransfer,
  type AreaTransferInput,
  type FactorTransfer,
  type LineTransfer,
  runoffTransfer,
  type RunoffTransferInput,
  type SeenFlows,
  type Transfer,
} from "./transfer/transfer.ts";
export { twelveVisitSpread } from "./transfer/twelve-visits.ts";
export type { VisitFit, VisitResidual } from "./transfer/visit-fit.ts";
export {
  type PairedVisit,
  type PairedVisits,
  pairVisits,
  type UnpairedVisit,
  type Visit,
  type VisitsInput,
} from "./transfer/visits.ts";
export { weightedRatio } from "./transfer/weighted-ratio.ts";
export { monthNames } from "./month-names.ts";
export { tennant } from "./residual/sources.ts";
