import { NumericsError } from "./numerics-error.ts";

/**
 * Refuses NaN and infinities, and, from untyped callers, anything that is not a number.
 *
 * @param where - The public function that asks.
 * @param name - The argument's name.
 * @param value - The argument.
 */
export function requireFinite(where: string, name: string, value: number): void {
  if (!Number.isFinite(value)) {
    throw new NumericsError(
      "non-finite",
      `${where}: ${name} = ${value} is not finite. Pass a finite number.`,
      { where, name, value },
    );
  }
}

/**
 * Refuses a tolerance that is negative or not finite.
 *
 * @param where - The public function that asks.
 * @param name - The option's name.
 * @param value - The option.
 */
export function requireTolerance(where: string, name: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${name} = ${value} is not a tolerance. Pass a finite number, 0 or more.`,
      { where, name, value },
    );
  }
}

/**
 * Refuses a size or step that is zero, negative or not finite.
 *
 * @param where - The public function that asks.
 * @param name - The option's name.
 * @param value - The option.
 */
export function requirePositive(where: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${name} = ${value} is not above zero. Pass a positive, finite number.`,
      { where, name, value },
    );
  }
}

/**
 * Refuses what is not a probability above 0 and below 1.
 *
 * @param where - The public function that asks.
 * @param p - The probability.
 */
export function requireProbability(where: string, p: number): void {
  if (!(p >= 2.2250738585072014e-308 && p < 1)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: p = ${p} is not a probability above 0 and below 1. Pass the part of the distribution that lies below.`,
      { where, p },
    );
  }
}

/**
 * Refuses a count that is not a whole number of 1 or more: every loop has a cap that can be reached.
 *
 * @param where - The public function that asks.
 * @param name - The option's name.
 * @param value - The option.
 */
export function requireCount(where: string, name: string, value: number): void {
  if (!(Number.isSafeInteger(value) && value >= 1)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${name} = ${value} is not a count. Pass a whole number, 1 or more.`,
      { where, name, value },
    );
  }
}

/**
 * Refuses an interval whose ends are not finite, not in order, or too far apart to subtract.
 *
 * @param where - The public function that asks.
 * @param lo - The lower end.
 * @param hi - The upper end.
 */
export function requireInterval(where: string, lo: number, hi: number): void {
  requireFinite(where, "lo", lo);
  requireFinite(where, "hi", hi);
  if (!(lo < hi) || hi - lo === Infinity) {
    throw new NumericsError(
      "bad-argument",
      `${where}: [${lo}, ${hi}] is not an interval. Pass lo below hi, with a finite width.`,
      { where, lo, hi },
    );
  }
}

/**
 * The error for a function that returned NaN or an infinity; built only when it is thrown, so that loops make no text.
 *
 * @param where - The public function that called it.
 * @param name - The name of the function that was called.
 * @param x - Where it was called.
 * @param value - What it returned.
 * @returns The error, to be thrown.
 */
export function nonFiniteValue(
  where: string,
  name: string,
  x: number,
  value: number,
): NumericsError {
  return new NumericsError(
    "non-finite",
    `${where}: ${name}(${x}) = ${value} is not finite. Keep the search where ${name} is defined.`,
    { where, name, x, value },
  );
}
