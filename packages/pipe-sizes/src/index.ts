/**
 * Pipe series as printed in their standards, with bores and pressure ratings.
 *
 * @packageDocumentation
 */
export { pipe, type PipeChoice, type PipeClass, pipesOf } from "./any-pipe.ts";
export { peDesignStress, peRequiredStrength } from "./material/design-stress.ts";
export { plasticRoughness } from "./material/plastic-roughness.ts";
export {
  peIsoTemperatureFactors,
  peTemperatureFactors,
  pvcTemperatureFactors,
} from "./material/temperature-factors.ts";
export {
  boreOf,
  type Pipe,
  type PipeSeries,
  type RoughnessRange,
  type WallChoice,
} from "./pipe.ts";
export { isoPressureRating } from "./rating/iso-pressure-rating.ts";
export { hoopPressureOf, pePressureRating } from "./rating/pe-pressure-rating.ts";
export { pvcPressureRating } from "./rating/pvc-pressure-rating.ts";
export { pipesLike, readPipe } from "./read-pipe.ts";
export { type OwnPipe, ownPipe } from "./series/own-pipe.ts";
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
  type PeIsoSize,
  pePipeISO,
} from "./series/pe-iso-pipe.ts";
export { peIsoSizes } from "./series/pe-iso.ts";
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
  astmPePipe,
  astmPvcSchedule,
  astmPvcSdr,
  awwaM55,
  iso11922,
  iso4427,
  machinerysHandbook,
  plasticRoughnessTables,
  ppiHandbook,
  ppiTr4,
} from "./sources.ts";
