import type { AnyFormula, Args, CallOptions, Given, Inputs, Output } from "@leat/formula";
import { QuantityError, type Quantity } from "@leat/quantity";

import { weirEquationUncertainty } from "./equation-uncertainty.ts";

/** A formula that gives a flow: every weir of this package, and a caller's own. */
export type FlowFormula<I extends Inputs> = AnyFormula & {
  /** The definition: inputs, and one output that is a flow. */
  readonly definition: { readonly inputs: I; readonly output: Output<"volume flow", string> };
};

/** Names of inputs. */
export type NameOf<I> = keyof I & string;

/** The arguments of a formula without one of them. */
export type ArgsWithout<I, N extends NameOf<I>> = Args<Omit<I, N>>;

/** What stands in for one input: a quantity of its kind. */
export type SoughtOf<I, N extends NameOf<I>> = Given<I[N]>;

/** What a caller may ask for besides the answer. */
export interface WeirOptions extends CallOptions {
  /**
   * The equation's own uncertainty, half its 95 % interval over the flow. Left out, it is that of
   * `weirEquationUncertainty`; give zero to leave it out of the answer.
   */
  readonly equationUncertainty?: Quantity<"ratio"> | undefined;
}

/** Calls a formula whose types are forgotten. */
export function flowOf(
  formula: AnyFormula,
  args: object,
  options: CallOptions,
): Quantity<"volume flow"> {
  return formula(args as never, options) as Quantity<"volume flow">;
}

/**
 * Adds the equation's own uncertainty to a flow, as a source of its own.
 *
 * @param id - Id of the formula that gave the flow.
 * @param flow - The flow.
 * @param given - Half the 95 % interval over the flow, where the caller has a figure.
 * @returns The flow, with the source added.
 * @throws QuantityError `size` for a formula that `weirEquationUncertainty` does not know and no figure.
 */
export function withEquationUncertainty(
  id: string,
  flow: Quantity<"volume flow">,
  given: Quantity<"ratio"> | undefined,
): Quantity<"volume flow"> {
  const relative = given ?? weirEquationUncertainty[id]?.relative;
  if (!relative) {
    throw new QuantityError(
      "size",
      `${id}: nothing is known of the equation's own uncertainty. Give equationUncertainty, a share of the flow at 95 %.`,
    );
  }
  // A flow that the formula puts below zero has no interval: its limits have said so.
  return flow.plusMinus(flow.abs().times(relative), `equation ${id}`);
}
