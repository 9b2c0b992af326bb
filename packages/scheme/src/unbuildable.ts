/** A scheme that cannot be worked out at all, and why. */
export class UnbuildableError extends Error {
  /** Stable code. */
  readonly code: string;
  /** Where in the survey. */
  readonly path: readonly (string | number)[];

  /**
   * @param code - Stable code.
   * @param path - Where in the survey.
   * @param message - What is wrong and what to do.
   */
  constructor(code: string, path: readonly (string | number)[], message: string) {
    super(message);
    this.name = "UnbuildableError";
    this.code = code;
    this.path = path;
  }
}
