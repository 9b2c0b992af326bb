/**
 * Conductor sizes, resistance at temperature and ampacity, as their tables print them.
 *
 * @packageDocumentation
 */
export { awgDiameter, gaugeNumber } from "./awg-diameter.ts";
export { circularMil } from "./circular-mil.ts";
export {
  type Ampacity,
  type Conductor,
  conductor,
  type ConductorForm,
  type ConductorMaterial,
  type ConductorOptions,
  conductorsOf,
} from "./conductor.ts";
export { conductorResistance } from "./conductor-resistance.ts";
export { iecConductors } from "./iec-conductors.ts";
export { necAmpacities } from "./nec-ampacities.ts";
export { necConductors } from "./nec-conductors.ts";
export {
  resistanceAtTemperature,
  straightLine,
  temperatureFactor,
} from "./resistance-at-temperature.ts";
export * from "./sources.ts";
