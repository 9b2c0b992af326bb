import type { AnyQuantity } from "@leat/quantity";

import type { Citation } from "./source.ts";

/** A bound on one input, on a ratio of two, or on a number worked out of all. */
export interface Limit<N extends string = string> {
  /** The input that is bounded, or that the bound is reported at. */
  readonly input: N;
  /** The input below the line, for a ratio. */
  readonly over?: N;
  /** What is bounded, in words, for a number worked out of all inputs. */
  readonly says?: string;
  /** That number, from the letters. */
  readonly of?: (letters: never) => number;
  /** Least value. */
  readonly min?: number | undefined;
  /** Greatest value. */
  readonly max?: number | undefined;
  /** The bounds as the source prints them, for a bound with a unit. */
  readonly printed?: { readonly min?: AnyQuantity; readonly max?: AnyQuantity };
  /** Whose limit it is. */
  readonly source: Citation;
}

/** Bounds with a unit. */
export interface Bounds {
  /** Least value. */
  readonly min?: AnyQuantity;
  /** Greatest value. */
  readonly max?: AnyQuantity;
}

/**
 * Bounds one input.
 *
 * @param name - The input.
 * @param bounds - Least and greatest, in the unit that the source prints.
 * @param source - Whose limit it is.
 * @returns The limit.
 */
export function range<const N extends string>(name: N, bounds: Bounds, source: Citation): Limit<N> {
  return {
    input: name,
    min: bounds.min?.["~si"],
    max: bounds.max?.["~si"],
    printed: bounds,
    source,
  };
}

/**
 * Bounds the ratio of two inputs.
 *
 * @param name - The input above the line.
 * @param over - The input below it.
 * @param bounds - Least and greatest.
 * @param source - Whose limit it is.
 * @returns The limit.
 */
export function ratio<const N extends string>(
  name: N,
  over: N,
  bounds: { readonly min?: number; readonly max?: number },
  source: Citation,
): Limit<N> {
  return { input: name, over, ...bounds, source };
}

/**
 * Bounds a pure number that is worked out of the inputs, such as a Reynolds number.
 *
 * @param name - The input that it is reported at.
 * @param says - What it is, in words.
 * @param of - The number, from the letters.
 * @param bounds - Least and greatest.
 * @param source - Whose limit it is.
 * @returns The limit.
 */
export function bound<const N extends string, L>(
  name: N,
  says: string,
  of: (letters: L) => number,
  bounds: { readonly min?: number; readonly max?: number },
  source: Citation,
): Limit<N> {
  return { input: name, says, of: of, ...bounds, source };
}
