/**
 * Pipe series as printed in their standards, with bores and pressure ratings.
 *
 * @packageDocumentation
 */
export { pipe, type PipeChoice, type PipeClass, pipesOf } from "./any-pipe.ts";
export { insertFittingBores, insertFittingCoefficient } from "./fitting/insert-fittings.ts";
export { pipeMassPerLength } from "./mass/pipe-mass-per-length.ts";
export { peDesignStress, peRequiredStrength } from "./material/design-stress.ts";
export {
  elasticModulus,
  type ModulusOf,
  peModulus,
  peModulusFactors,
  pvcModulus,
  pvcModulusFactors,
  surgeModulus,
} from "./material/elastic-modulus.ts";
export { pipeDensity, type PipeMaterial } from "./material/pipe-density.ts";
export { plasticRoughness } from "./material/plastic-roughness.ts";
export { steelRoughness } from "./material/steel-roughness.ts";
export {
  peIsoTemperatureFactors,
  peTemperatureFactors,
  pvcIsoTemperatureFactors,
  pvcTemperatureFactors,
  steelTemperatureFactors,
} from "./material/temperature-factors.ts";
export { metalExpansion, pipeExpansion, plasticExpansion } from "./material/thermal-expansion.ts";
export {
  boreOf,
  type Pipe,
  type PipeSeries,
  type RoughnessRange,
  type WallChoice,
} from "./pipe.ts";
export { isoPressureRating } from "./rating/iso-pressure-rating.ts";
export { hoopPressureOf, pePressureRating } from "./rating/pe-pressure-rating.ts";
export { insideHoopPressureOf, peSidrPressureRating } from "./rating/pe-sidr-pressure-rating.ts";
export {
  pressureRatingAt,
  type TemperatureFactor,
  temperatureFactorOf,
} from "./rating/pressure-rating-at.ts";
export { pvcIsoPressureRating } from "./rating/pvc-iso-pressure-rating.ts";
export { pvcPressureRating } from "./rating/pvc-pressure-rating.ts";
export { steelPressureRating } from "./rating/steel-pressure-rating.ts";
export { pipesLike, readPipe } from "./read-pipe.ts";
export { type OwnPipe, ownPipe } from "./series/own-pipe.ts";
export { peIpsBetweenSizes } from "./series/pe-ips-between.ts";
export {
  type PeIpsMaterial,
  type PeIpsRatio,
  type PeIpsSize,
  pePipeIPS,
} from "./series/pe-ips-pipe.ts";
export { peIpsSizes } from "./series/pe-ips.ts";
export {
  greatestWallMm,
  peIsoNominalPressure,
  type PeIsoMaterial,
  type PeIsoRatio,
  peIsoRatioOf,
  type PeIsoSize,
  pePipeISO,
} from "./series/pe-iso-pipe.ts";
export { peIsoThinSizes } from "./series/pe-iso-thin.ts";
export { peIsoSizes } from "./series/pe-iso.ts";
export { pePipeSIDR, type PeSidrRatio, type PeSidrSize } from "./series/pe-sidr-pipe.ts";
export { peSidrSizes } from "./series/pe-sidr.ts";
export {
  greatestPvcWallMm,
  pvcIsoNominalPressure,
  type PvcIsoPressure,
  pvcIsoPressureOf,
  type PvcIsoSize,
  pvcPipeISO,
} from "./series/pvc-iso-pipe.ts";
export { pvcIsoSizes } from "./series/pvc-iso.ts";
export {
  pvcPipeSchedule,
  type PvcSchedule,
  type PvcScheduleSize,
} from "./series/pvc-schedule-pipe.ts";
export { pvcScheduleSizes } from "./series/pvc-schedule.ts";
export {
  pvcPipeSDR,
  pvcSdrRatings,
  type PvcSdrRatio,
  type PvcSdrSize,
} from "./series/pvc-sdr-pipe.ts";
export { pvcSdrSizes } from "./series/pvc-sdr.ts";
export {
  type SteelFinish,
  steelPipe,
  type SteelSchedule,
  type SteelSize,
} from "./series/steel-pipe.ts";
export { steelSizes } from "./series/steel.ts";
export {
  asmeB319,
  asmeB3610,
  astmA53,
  astmPePipe,
  astmPvcSchedule,
  astmPvcSdr,
  astmSidrPipe,
  atvA127,
  awwaM11,
  awwaM55,
  din8074,
  expansionTables,
  iso11922,
  iso1452,
  iso4427,
  machinerysHandbook,
  pipeMassLists,
  plasticRoughnessTables,
  ppiHandbook,
  ppiTr4,
  pvcManuals,
  steelRoughnessTables,
  surgeTables,
} from "./sources.ts";
export {
  type StockLength,
  stockLengthsFeet,
  stockLengthsMetres,
  stockLengthsOf,
} from "./stock-lengths.ts";
