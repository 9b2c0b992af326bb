import { type Citation, firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";

/** What a refusal or a notice says besides its words. */
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
 * What is wrong with one part of the input, as a notice.
 *
 * @param id - Who says so.
 * @param path - Where it stands.
 * @param what - Where, got, what to do; without the id.
 * @param facts - What was got and what is allowed.
 * @returns The notice.
 */
export function fault(id: string, path: Notice["path"], what: string, facts: Facts = {}): Notice {
  const { code = "non-physical", actual, limit, source } = facts;
  return {
    code,
    severity: "stop",
    path,
    message: `${id}: ${what}`,
    ...(actual !== undefined && { actual }),
    ...(limit !== undefined && { limit }),
    source: source ?? firstPrinciples.at("meaning of the input"),
  };
}

/** Throws all that is wrong at once, or does nothing where nothing is. */
export function refuseIf(faults: readonly Notice[]): void {
  if (faults.length > 0) throw new NonPhysicalError(faults);
}
