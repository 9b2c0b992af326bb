import { QuantityError } from "./error.ts";

/**
 * The currency of a result.
 *
 * @param a - Currency of one side, if any.
 * @param b - Currency of the other, if any.
 * @returns The one there is.
 * @throws {@link QuantityError} `currency` where there are two: there is no hidden exchange rate.
 */
export function mixCurrency(a: string | undefined, b: string | undefined): string | undefined {
  if (a && b && a !== b) {
    throw new QuantityError("currency", `${a} and ${b} do not combine: exchange one first`);
  }
  return a ?? b;
}
