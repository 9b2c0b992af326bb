import { type Citation, firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";
import { isQuantity } from "@leat/quantity";

/** What a refusal says besides its words. */
export interface Facts {
  /** Stable code; `non-physical` where absent. */
  readonly code?: string | undefined;
  /** What was got. */
  readonly actual?: string | undefined;
  /** What is allowed. */
  readonly limit?: string | undefined;
  /** Whose limit it is; the meaning of the input where absent. */
  readonly source?: Citation | undefined;
}

/**
 * What is wrong with one number of the input, as a notice.
 *
 * @param id - Who says so.
 * @param path - Where it stands.
 * @param what - Where, got, what to do; without the id.
 * @param facts - What was got and what is allowed.
 * @returns The notice.
 */
export function fault(id: string, path: Notice["path"], what: string, facts: Facts = {}): Notice {
  return told(path, `${id}: ${what}`, facts);
}

/**
 * The refusal of an input by its faults, all at once.
 *
 * @param faults - What is wrong.
 * @returns The error, to be thrown.
 */
export function refusal(faults: readonly Notice[]): NonPhysicalError {
  return new NonPhysicalError(faults);
}

/**
 * The refusal of an input that no answer comes of.
 *
 * @param path - Where in the input.
 * @param message - Where, what, got, what to do.
 * @param facts - What was got and what is allowed.
 * @returns The error, to be thrown.
 */
export function refused(
  path: Notice["path"],
  message: string,
  facts: Facts = {},
): NonPhysicalError {
  return refusal([told(path, message, facts)]);
}

/** Throws all that is wrong at once, or does nothing where nothing is. */
export function refuseIf(faults: readonly Notice[]): void {
  if (faults.length > 0) throw refusal(faults);
}

/** Whether something is a length: callers without types pass what they like. */
export function isLength(value: unknown): boolean {
  return isQuantity(value) && value.kind === "length";
}

function told(
  path: Notice["path"],
  message: string,
  { code = "non-physical", actual, limit, source }: Facts,
): Notice {
  return {
    code,
    severity: "stop",
    path,
    message,
    ...(actual !== undefined && { actual }),
    ...(limit !== undefined && { limit }),
    source: source ?? firstPrinciples.at("meaning of the input"),
  };
}
