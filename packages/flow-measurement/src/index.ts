export { vNotchDischarge } from "./weir/v-notch.ts";
