/**
 * Quantities, points and sizes from what people type and from stored data.
 *
 * @packageDocumentation
 */
export { fromJSON, pointFromJSON } from "../json.ts";
export { read, type ReadOptions, unitOf } from "../read.ts";
export { readSize, type Size } from "../size.ts";
export { QuantityError, type QuantityErrorCode } from "../error.ts";
