/**
 * Checks of a formula against the world: reference rows and homogeneity.
 *
 * @packageDocumentation
 */
export { homogeneityProblems } from "./homogeneity.ts";
export {
  argsOf,
  checkRows,
  type ReferenceRow,
  type RowKind,
  type RowReport,
  type RowResult,
  type RowStanding,
} from "./rows.ts";
