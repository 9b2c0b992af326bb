import { type Citation, NonPhysicalError, type Notice } from "@leat/formula";

/** What a refusal says besides its words. */
export interface RefusalFacts {
  /** What was got. */
  readonly actual?: string | undefined;
  /** What is allowed. */
  readonly limit?: string | undefined;
  /** Whose limit it is. */
  readonly source?: Citation | undefined;
}

/**
 * The error for what no analysis can be made of.
 *
 * @param code - Stable code.
 * @param path - Where in the input; a row is its number.
 * @param message - Where, what, got, what to do.
 * @param facts - What was got and what is allowed.
 * @returns The error, to be thrown.
 */
export function refusal(
  code: string,
  path: Notice["path"],
  message: string,
  facts: RefusalFacts = {},
): NonPhysicalError {
  return new NonPhysicalError([{ code, severity: "stop", path, message, ...facts }]);
}
