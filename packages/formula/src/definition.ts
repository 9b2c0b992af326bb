import type { AnyQuantity, Quantity } from "@leat/quantity";

import type { AnyInput, Args, Inputs, Letters, Output } from "./input.ts";
import type { Limit } from "./limit.ts";
import type { Notice } from "./notice.ts";
import type { Citation } from "./source.ts";

/** One output, or several by their words. */
export type Outputs = Output<string, string> | Readonly<Record<string, Output<string, string>>>;

/** Dimensional constants that reach a body as scaled values: a unit, a radian, a fitted coefficient. */
export type Constants = Readonly<Record<string, AnyQuantity>>;

/** How a solver ended. */
export interface Convergence {
  /** Steps taken. */
  readonly iterations: number;
  /** What is left of the equation that it solved. */
  readonly residual: number;
  /** Where the root lies, where it was bracketed. */
  readonly bracket?: readonly [number, number];
}

/** What a body returns: a number, or numbers by letter, with its convergence where it is a solver. */
export type BodyResult<O, S> = (O extends Output<string, string>
  ? number
  : { readonly [N in keyof O as O[N] extends Output<string, infer L> ? L : never]: number }) &
  (S extends true ? Convergence : unknown);

/** What a body sees: inputs and constants, by letter, in coherent units. */
export type Body<I, O, C, S> = (
  letters: Letters<I> & { readonly [N in keyof C]: number },
) => BodyResult<O, S>;

/** A number on the way, shown in the printed calculation; the body calls the same function. */
export interface Step<I, C> {
  /** Its kind. */
  readonly kind: string;
  /** How it is worked out, in words or as an equation. */
  readonly equation: string;
  /** The number, from the letters. */
  readonly of: (letters: Letters<I> & { readonly [N in keyof C]: number }) => number;
}

/** A loop over one column, written out beside its body so that the two are compiled together. */
export interface Series<I, C> {
  /** The input that is a column. */
  readonly over: keyof I & string;
  /**
   * Fills `out` from `from` up to, not including, `to`.
   *
   * @param column - Numbers of the column, in the coherent unit.
   * @param letters - Everything else.
   * @param out - Where the results go.
   * @param from - First row.
   * @param to - One after the last.
   */
  readonly loop: (
    column: Float64Array,
    letters: Letters<I> & { readonly [N in keyof C]: number },
    out: Float64Array,
    from: number,
    to: number,
  ) => void;
}

/** A formula: one definition, of which everything else is made. */
export interface Definition<
  I extends Inputs,
  O extends Outputs,
  C extends Constants,
  S extends boolean,
> {
  /** Stable name, in kebab case. */
  readonly id: string;
  /** Raised when a number that it gives changes; 1 at first. */
  readonly revision?: number;
  /** The equation, as text that a pocket calculator can follow. */
  readonly equation: string;
  /** Inputs by their words. */
  readonly inputs: I;
  /** One output, or several by their words. */
  readonly output: O;
  /** Dimensional constants, by letter. */
  readonly constants?: C;
  /** Numbers on the way, by letter. */
  readonly steps?: Readonly<Record<string, Step<NoInfer<I>, NoInfer<C>>>>;
  /** Limits, each with its own source. */
  readonly limits?: readonly Limit<NoInfer<keyof I & string>>[];
  /** Where the equation comes from. */
  readonly source: Citation;
  /** True where the body returns its convergence. */
  readonly solver?: S;
  /** Numbers in coherent units in, numbers out, no allocation where there is one output. */
  readonly body: Body<NoInfer<I>, NoInfer<O>, NoInfer<C>, NoInfer<S>>;
  /** The loop over a column, where one is wanted at the speed of a loop by hand. */
  readonly series?: Series<NoInfer<I>, NoInfer<C>>;
}

type One<O> = O extends Output<infer K, string> ? Quantity<K> : never;

/** What a call gives: a quantity, or quantities by their words, with convergence for a solver. */
export type Result<O, S> =
  O extends Output<string, string>
    ? One<O>
    : { readonly [N in keyof O]: One<O[N]> } & (S extends true
        ? { readonly convergence: Convergence }
        : unknown);

/** An input that the caller left out, and what was taken for it. */
export interface Assumption {
  /** Id of the formula. */
  readonly formula: string;
  /** The input. */
  readonly input: string;
  /** What was taken. */
  readonly value: string;
  /** Why. */
  readonly because: Citation | undefined;
}

/** What a caller may ask for besides the answer. */
export interface CallOptions {
  /** Told of each exceeded limit; without it a limit is an error. */
  readonly onNotice?: ((notice: Notice) => void) | undefined;
  /** Told of each input that was left out. */
  readonly onAssumed?: ((assumption: Assumption) => void) | undefined;
}

/** A formula that can be called. */
export interface Formula<
  I extends Inputs,
  O extends Outputs,
  C extends Constants,
  S extends boolean,
> {
  /**
   * The answer, as quantities.
   *
   * @param args - Inputs by their words.
   * @param options - Notices and assumptions.
   * @returns The output or outputs, with the uncertainty that comes of the inputs.
   * @throws NonPhysicalError for a number that nothing physical can have; OutOfValidityError for a limit
   * exceeded where `onNotice` is absent; QuantityError for a wrong kind or a missing input.
   */
  (args: Args<I>, options?: CallOptions): Result<O, S>;
  /** Stable name. */
  readonly id: string;
  /** The definition. */
  readonly definition: Definition<I, O, C, S>;
  /** The body: numbers in coherent units. Loops call this. */
  readonly body: Body<I, O, C, S>;
  /** Constants in coherent units, to spread into a call of the body. */
  readonly constants: { readonly [N in keyof C]: number };
}

/** Any formula, for lists of them. */
export interface AnyFormula {
  (args: never, options?: CallOptions): unknown;
  /** Stable name. */
  readonly id: string;
  /** The definition, its types forgotten. */
  readonly definition: AnyDefinition;
  /** The body, its types forgotten. */
  readonly body: (letters: never) => unknown;
  /** Constants in coherent units. */
  readonly constants: Readonly<Record<string, number>>;
}

/** A definition with its types forgotten. */
export interface AnyDefinition {
  /** Stable name. */
  readonly id: string;
  /** Raised when a number that it gives changes. */
  readonly revision?: number;
  /** The equation. */
  readonly equation: string;
  /** Inputs by their words. */
  readonly inputs: Readonly<Record<string, AnyInput>>;
  /** One output, or several by their words. */
  readonly output: Outputs;
  /** Dimensional constants, by letter. */
  readonly constants?: Constants;
  /** Numbers on the way, by letter. */
  readonly steps?: Readonly<Record<string, AnyStep>>;
  /** Limits. */
  readonly limits?: readonly Limit[];
  /** Where the equation comes from. */
  readonly source: Citation;
  /** True where the body returns its convergence. */
  readonly solver?: boolean;
  /** The body. */
  readonly body: (letters: never) => unknown;
  /** The loop over a column. */
  readonly series?: AnySeries;
}

/** A step with its types forgotten. */
export interface AnyStep {
  /** Its kind. */
  readonly kind: string;
  /** How it is worked out. */
  readonly equation: string;
  /** The number, from the letters. */
  readonly of: (letters: never) => number;
}

/** A loop with its types forgotten. */
export interface AnySeries {
  /** The input that is a column. */
  readonly over: string;
  /** Fills the results from one row up to another. */
  readonly loop: (
    column: Float64Array,
    letters: never,
    out: Float64Array,
    from: number,
    to: number,
  ) => void;
}

/**
 * The outputs of a definition as a list of word, kind and letter; one output has no word.
 *
 * @param outputs - One output, or several by their words.
 * @returns The list, in the order of the definition.
 */
export function outputsOf(
  outputs: Outputs,
): readonly { word: string | undefined; kind: string; letter: string }[] {
  return isOne(outputs)
    ? [{ word: undefined, kind: outputs.kind, letter: outputs.letter }]
    : Object.entries(outputs).map(([word, { kind, letter }]) => ({ word, kind, letter }));
}

function isOne(outputs: Outputs): outputs is Output<string, string> {
  return typeof (outputs as Output<string, string>).letter === "string";
}
