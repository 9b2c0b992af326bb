import type { AnyPoint, AnyQuantity, Origin, Point, Quantity } from "@leat/quantity";

import type { Citation } from "./source.ts";

/** What physics allows a number to be. */
export type Domain = "positive" | "non-negative" | "fraction" | "any";

/** What is known of an input besides its kind and letter. */
export interface InputOptions<D> {
  /** What physics allows; `non-negative` by default. */
  readonly domain?: Domain;
  /** Taken where the caller gives nothing, and reported as assumed. */
  readonly default?: D;
  /** Why that default. */
  readonly because?: Citation;
}

interface Base<L extends string, Optional extends boolean> {
  /** The book's letter, by which the body knows it. */
  readonly letter: L;
  /** Whether a default stands in for it; for the types. */
  readonly optional: Optional;
  /** Why that default. */
  readonly because: Citation | undefined;
}

/** A quantity of one kind, or of one of a listed set. */
export interface ScalarInput<
  K extends string,
  L extends string,
  Optional extends boolean,
> extends Base<L, Optional> {
  /** Tells the sorts of input apart. */
  readonly type: "scalar";
  /** The kinds that it takes; the first is the one it is shown in. */
  readonly kinds: readonly K[];
  /** What physics allows. */
  readonly domain: Domain;
  /** Taken where the caller gives nothing. */
  readonly default: AnyQuantity | undefined;
}

/** A point: a temperature, a pressure, an elevation, a stage. The body sees it over its origin. */
export interface PointInput<
  O extends Origin,
  L extends string,
  Optional extends boolean,
> extends Base<L, Optional> {
  /** Tells the sorts of input apart. */
  readonly type: "point";
  /** Where it is counted from. */
  readonly origin: O;
  /** Taken where the caller gives nothing. */
  readonly default: AnyPoint | undefined;
}

/** One of a list of words. */
export interface ChoiceInput<
  W extends string,
  L extends string,
  Optional extends boolean,
> extends Base<L, Optional> {
  /** Tells the sorts of input apart. */
  readonly type: "choice";
  /** The words. */
  readonly words: readonly W[];
  /** Taken where the caller gives nothing. */
  readonly default: W | undefined;
}

/** A list of records of scalars, such as the fittings of a reach. */
export interface ListInput<
  R extends Scalars,
  L extends string,
  Optional extends boolean,
> extends Base<L, Optional> {
  /** Tells the sorts of input apart. */
  readonly type: "list";
  /** Each record's inputs. */
  readonly record: R;
  /** Taken where the caller gives nothing: an empty list. */
  readonly default: readonly never[] | undefined;
}

/** A curve of one kind over another, interpolated monotonically; extrapolation is refused. */
export interface CurveInput<X extends string, Y extends string, L extends string> extends Base<
  L,
  false
> {
  /** Tells the sorts of input apart. */
  readonly type: "curve";
  /** Kind of the abscissa. */
  readonly x: X;
  /** Kind of the ordinate. */
  readonly y: Y;
  /** Draws the curve through its points; it refuses to extrapolate. */
  readonly through: (x: Float64Array, y: Float64Array) => (x: number) => number;
  /** A curve has no default. */
  readonly default: undefined;
}

/** The scalars of a record. */
export type Scalars = Readonly<Record<string, ScalarInput<string, string, boolean>>>;

/** Any input. */
export type AnyInput =
  | ScalarInput<string, string, boolean>
  | PointInput<Origin, string, boolean>
  | ChoiceInput<string, string, boolean>
  | ListInput<Scalars, string, boolean>
  | CurveInput<string, string, string>;

/** The inputs of a formula, by their words. */
export type Inputs = Readonly<Record<string, AnyInput>>;

/** A curve as a caller gives it: two lists of quantities, the abscissa rising. */
export interface CurvePoints<X extends string, Y extends string> {
  /** Abscissa, strictly rising. */
  readonly x: readonly Quantity<X>[];
  /** Ordinate, as many. */
  readonly y: readonly Quantity<Y>[];
}

type QuantityOf<K extends string> = K extends string ? Quantity<K> : never;

/** What a caller passes for an input. */
export type Given<I> =
  I extends ScalarInput<infer K, string, boolean>
    ? QuantityOf<K>
    : I extends PointInput<infer O, string, boolean>
      ? Point<O>
      : I extends ChoiceInput<infer W, string, boolean>
        ? W
        : I extends ListInput<infer R, string, boolean>
          ? readonly Args<R>[]
          : I extends CurveInput<infer X, infer Y, string>
            ? CurvePoints<X, Y>
            : never;

/** What a caller passes: required inputs, and those with a default. */
export type Args<I> = {
  readonly [N in keyof I as I[N] extends { optional: true } ? never : N]: Given<I[N]>;
} & {
  readonly [N in keyof I as I[N] extends { optional: true } ? N : never]?:
    | Given<I[N]>
    | null
    | undefined;
};

/** What a body sees of an input: numbers in coherent units. */
export type Seen<I> =
  I extends ScalarInput<string, string, boolean>
    ? number
    : I extends PointInput<Origin, string, boolean>
      ? number
      : I extends ChoiceInput<infer W, string, boolean>
        ? W
        : I extends ListInput<infer R, string, boolean>
          ? readonly Letters<R>[]
          : I extends CurveInput<string, string, string>
            ? (x: number) => number
            : never;

type LetterOf<I> = I extends { letter: infer L extends string } ? L : never;

/** What a body sees, by letter. */
export type Letters<I> = { readonly [N in keyof I as LetterOf<I[N]>]: Seen<I[N]> };

/**
 * A scalar input.
 *
 * @param kind - Its kind, or a list of the kinds that it takes.
 * @param letter - The book's letter.
 * @param options - Domain and default.
 * @returns The input.
 */
export function input<const K extends string, const L extends string>(
  kind: K | readonly K[],
  letter: L,
  options: InputOptions<QuantityOf<NoInfer<K>>> & { readonly default: QuantityOf<NoInfer<K>> },
): ScalarInput<K, L, true>;
export function input<const K extends string, const L extends string>(
  kind: K | readonly K[],
  letter: L,
  options?: { readonly domain?: Domain },
): ScalarInput<K, L, false>;
export function input<const K extends string, const L extends string>(
  kind: K | readonly K[],
  letter: L,
  options: InputOptions<Quantity<K>> = {},
): ScalarInput<K, L, boolean> {
  return {
    type: "scalar",
    kinds: typeof kind === "string" ? [kind] : kind,
    letter,
    domain: options.domain ?? "non-negative",
    optional: options.default !== undefined,
    default: options.default,
    because: options.because,
  };
}

/**
 * A point input; the body sees its distance from the origin.
 *
 * @param origin - What it is counted from.
 * @param letter - The book's letter.
 * @param options - Default.
 * @returns The input.
 */
export function pointInput<const O extends Origin, const L extends string>(
  origin: O,
  letter: L,
  options: { readonly default: Point<NoInfer<O>>; readonly because?: Citation },
): PointInput<O, L, true>;
export function pointInput<const O extends Origin, const L extends string>(
  origin: O,
  letter: L,
): PointInput<O, L, false>;
export function pointInput<const O extends Origin, const L extends string>(
  origin: O,
  letter: L,
  options: { readonly default?: Point<O>; readonly because?: Citation } = {},
): PointInput<O, L, boolean> {
  return {
    type: "point",
    origin,
    letter,
    optional: options.default !== undefined,
    default: options.default,
    because: options.because,
  };
}

/**
 * A choice of words.
 *
 * @param words - What may be chosen.
 * @param letter - The name by which the body knows it.
 * @param options - Default.
 * @returns The input.
 */
export function choice<const W extends string, const L extends string>(
  words: readonly W[],
  letter: L,
  options: { readonly default: NoInfer<W>; readonly because?: Citation },
): ChoiceInput<W, L, true>;
export function choice<const W extends string, const L extends string>(
  words: readonly W[],
  letter: L,
): ChoiceInput<W, L, false>;
export function choice<const W extends string, const L extends string>(
  words: readonly W[],
  letter: L,
  options: { readonly default?: W; readonly because?: Citation } = {},
): ChoiceInput<W, L, boolean> {
  return {
    type: "choice",
    words,
    letter,
    optional: options.default !== undefined,
    default: options.default,
    because: options.because,
  };
}

/**
 * A list of records of scalars.
 *
 * @param record - Each record's inputs.
 * @param letter - The name by which the body knows the list.
 * @param options - `default: []` where the list may be left out.
 * @returns The input.
 */
export function list<const R extends Scalars, const L extends string>(
  record: R,
  letter: L,
  options: { readonly default: readonly never[] },
): ListInput<R, L, true>;
export function list<const R extends Scalars, const L extends string>(
  record: R,
  letter: L,
): ListInput<R, L, false>;
export function list<const R extends Scalars, const L extends string>(
  record: R,
  letter: L,
  options: { readonly default?: readonly never[] } = {},
): ListInput<R, L, boolean> {
  return {
    type: "list",
    record,
    letter,
    optional: options.default !== undefined,
    default: options.default,
    because: undefined,
  };
}

/** An output: its kind and the book's letter. */
export interface Output<K extends string, L extends string> {
  /** Kind. */
  readonly kind: K;
  /** The book's letter. */
  readonly letter: L;
}

/**
 * An output.
 *
 * @param kind - Its kind.
 * @param letter - The book's letter.
 * @returns The output.
 */
export function output<const K extends string, const L extends string>(
  kind: K,
  letter: L,
): Output<K, L> {
  return { kind, letter };
}
