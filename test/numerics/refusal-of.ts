import { NumericsError } from "@leat/numerics";

/** The error a call is refused with; a call that returns, or throws anything else, fails the test. */
export function refusalOf(call: () => unknown): NumericsError {
  let returned: unknown;
  try {
    returned = call();
  } catch (error) {
    if (error instanceof NumericsError) return error;
    throw error;
  }
  throw new Error(`not refused, returned ${JSON.stringify(returned)}`);
}
