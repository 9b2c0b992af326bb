/**
 * Properties of water by temperature, the atmosphere by elevation and gravity by place.
 *
 * @packageDocumentation
 */
export { bulkModulus } from "./liquid/bulk-modulus.ts";
export { waterDensity } from "./liquid/density.ts";
export { kinematicViscosity } from "./liquid/kinematic-viscosity.ts";
export { soundSpeed } from "./liquid/sound-speed.ts";
export { waterSpecificHeat } from "./liquid/specific-heat.ts";
export { vapourPressure } from "./liquid/vapour-pressure.ts";
export { waterViscosity } from "./liquid/viscosity.ts";
export { waterViscosityAtDensity } from "./liquid/viscosity-at-density.ts";
export { geopotentialHeight } from "./site/geopotential-height.ts";
export { normalGravity } from "./site/normal-gravity.ts";
export { standardAtmosphere } from "./site/standard-atmosphere.ts";
