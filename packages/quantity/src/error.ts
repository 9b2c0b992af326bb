/** What went wrong with a quantity, for a program to act on. */
export type QuantityErrorCode =
  | "kind"
  | "exponent"
  | "currency"
  | "origin"
  | "not-finite"
  | "number"
  | "empty"
  | "too-long"
  | "no-number"
  | "no-unit"
  | "unknown-unit"
  | "ambiguous"
  | "size"
  | "json"
  | "column"
  | "time";

/**
 * The one error that this package throws: a code for a program, a sentence for a person.
 */
export class QuantityError extends Error {
  /** What went wrong, for a program. */
  readonly code: QuantityErrorCode;

  /**
   * @param code - What went wrong.
   * @param message - The same for a person, on one line.
   */
  constructor(code: QuantityErrorCode, message: string) {
    super(message);
    this.name = "QuantityError";
    this.code = code;
  }
}
