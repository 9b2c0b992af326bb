/**
 * Reads survey files: YAML in the units that people write, every problem with its line and column.
 *
 * @packageDocumentation
 */
export { FileError, type Problem, problemText } from "./problem.ts";
export {
  type Place,
  type ReadFieldSurvey,
  readFieldSurvey,
  type ReadSurvey,
  readSurvey,
} from "./survey.ts";
export { surveyJsonSchema } from "./schema.ts";
export { OpenError, type OpenFile } from "./tables.ts";
