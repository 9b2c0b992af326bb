import { QuantityError } from "@leat/quantity";

/** Code and message of what a call throws; an error of another class goes on. */
export function thrown(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (error instanceof QuantityError) return `${error.code}: ${error.message}`;
    throw error;
  }
  return "nothing was thrown";
}

/** A value as untyped code passes it. */
export function untyped(value: unknown): never {
  return value as never;
}
