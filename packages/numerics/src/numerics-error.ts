/**
 * Why a numerical method refused or gave up.
 *
 * - `"bad-argument"`: an option, interval or size that makes no sense.
 * - `"non-finite"`: an argument, a function value or a result is NaN or infinite.
 * - `"no-sign-change"`: the ends of the interval do not bracket a root.
 * - `"pole"`: the function changes sign by jumping over zero, not by passing through it.
 * - `"not-converged"`: the cap on iterations, subdivisions or steps was reached.
 * - `"step-underflow"`: the step became too small to advance the independent variable.
 * - `"extrapolation"`: a curve was asked outside its samples.
 * - `"not-increasing"`: abscissae are not strictly increasing.
 * - `"not-monotone"`: an inverse was asked of samples that neither only rise nor only fall.
 * - `"singular"`: the equations are dependent to working precision.
 * - `"not-symmetric"`, `"not-positive-definite"`: the matrix is not one that Cholesky factorises.
 */
export type NumericsErrorCode =
  | "bad-argument"
  | "non-finite"
  | "no-sign-change"
  | "pole"
  | "not-converged"
  | "step-underflow"
  | "extrapolation"
  | "not-increasing"
  | "not-monotone"
  | "singular"
  | "not-symmetric"
  | "not-positive-definite";

/** The facts behind a {@link NumericsError}, by name, for programs rather than people. */
export type NumericsErrorDetails = Readonly<Record<string, unknown>>;

/**
 * The one error thrown by this package: a code for programs, a message for people, the facts behind both.
 *
 * @example
 * ```ts
 * import { bracketedRoot, NumericsError } from "@leat/numerics";
 *
 * let code = "";
 * try {
 *   bracketedRoot((x) => x * x + 1, 0, 2);
 * } catch (error) {
 *   if (error instanceof NumericsError) code = error.code;
 * }
 * code; // => "no-sign-change"
 * ```
 */
export class NumericsError extends Error {
  /** Names the class. */
  override readonly name: string = "NumericsError";
  /** Why the method refused or gave up. */
  readonly code: NumericsErrorCode;
  /** The numbers behind the message; after `"not-converged"`, the best report so far. */
  readonly details: NumericsErrorDetails;

  /**
   * @param code - Why the method refused or gave up.
   * @param message - Where, what was got, and what to do about it.
   * @param details - The same facts by name.
   */
  constructor(code: NumericsErrorCode, message: string, details: NumericsErrorDetails) {
    super(message);
    this.code = code;
    this.details = details;
  }
}
