// What `run.mjs` bundles from the sources: a plain module, as a program that uses the packages would have it.
export { arithmetic } from "./arithmetic.mjs";
export { bodies } from "./bodies.mjs";
export { century } from "./century.mjs";
export { measure, quantile } from "./measure.mjs";
export { text } from "./text.mjs";
export { year } from "./year.mjs";
