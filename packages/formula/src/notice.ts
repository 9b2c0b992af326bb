import type { Citation } from "./source.ts";

/** How much a notice weighs: a stop withholds the result, a caution needs a decision, a note informs. */
export type Severity = "stop" | "caution" | "note";

/** One thing to tell a user, for a file line, a form, a report or a cell to point at. */
export interface Notice {
  /** Stable code. */
  readonly code: string;
  /** How much it weighs. */
  readonly severity: Severity;
  /** Where in the input. */
  readonly path: readonly (string | number)[];
  /** Where, what, got, whose limit, what to do. */
  readonly message: string;
  /** What was got. */
  readonly actual?: string | undefined;
  /** What is allowed. */
  readonly limit?: string | undefined;
  /** Whose limit it is. */
  readonly source?: Citation | undefined;
}

/** An error made of notices: all that is wrong, at once. */
class NoticeError extends Error {
  /** Everything that is wrong. */
  readonly notices: readonly Notice[];

  constructor(name: string, notices: readonly Notice[], advice = "") {
    super(notices.map((notice) => `${notice.message}${advice}`).join("\n"));
    this.name = name;
    this.notices = notices;
  }
}

/** An input that nothing physical can have: negative, not finite, missing. It is never softened. */
export class NonPhysicalError extends NoticeError {
  /** @param notices - Everything that is wrong. */
  constructor(notices: readonly Notice[]) {
    super("NonPhysicalError", notices);
  }
}

/** A limit of the source is exceeded, and the caller did not ask to be told of it in a notice. */
export class OutOfValidityError extends NoticeError {
  /** @param notices - Every limit that is exceeded. */
  constructor(notices: readonly Notice[]) {
    super("OutOfValidityError", notices, " Pass onNotice to accept the extrapolation.");
  }
}
