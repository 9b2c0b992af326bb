import type { Convergence, Inputs } from "@leat/formula";
import { type Quantity, coverage95 } from "@leat/quantity";

import { type Found, headFor, inputFor } from "./inverse.ts";
import type { ArgsWithout, FlowFormula, NameOf, SoughtOf, WeirOptions } from "./weir-formula.ts";

/** What a notch that must leave a flow in the stream needs. */
export interface Needed<Q> {
  /** What gives the flow if every figure is right: as likely too small as too large. */
  readonly value: Q;
  /** Greater by the half width of the 95 % interval: it leaves less than the flow once in forty. */
  readonly sure: Q;
  /** How the search ended. */
  readonly convergence: Convergence;
}

function needed({ value, convergence }: Found<unknown>): Needed<unknown> {
  const q = value as Quantity<"length">;
  return { value: q, sure: q.plus(q.standardUncertainty().times(coverage95)), convergence };
}

/**
 * The dimension of a notch that leaves a flow in the stream when the water at the intake is as low as it gets.
 *
 * The notch is cut once and cannot be turned up in a dry summer: build to `sure`, which counts the uncertainty of the
 * equation, of the lowest level and of the flow that is asked for.
 *
 * @param formula - The formula of the notch.
 * @param name - The dimension that is sought: `notchWidth`, or `angle` of a V.
 * @param args - The other inputs; the head is the lowest water level over the sill of the notch.
 * @param flow - The flow that must stay.
 * @param options - Notices, assumptions, the equation's own uncertainty.
 * @returns The dimension, and one that is sure.
 * @throws NonPhysicalError, OutOfValidityError, QuantityError as `inputFor` does.
 * @example
 * ```ts
 * import { kindsvaterCarterDischarge, notchThatLeaves } from "@leat/flow-measurement";
 * import { format, litrePerSecond, metre, millimetre } from "@leat/quantity";
 *
 * // An invented stream: 10 L/s must stay, and the water is never less than 90 mm above the sill, give or take 5.
 * const place = {
 *   head: metre.of(0.09).plusMinus(metre.of(0.005), "lowest level"),
 *   crestHeight: metre.of(0.4),
 *   approachWidth: metre.of(2),
 * };
 * const { value, sure } = notchThatLeaves(
 *   kindsvaterCarterDischarge, "notchWidth", place, litrePerSecond.of(10),
 * );
 * format(value, millimetre, 3); // => "208 mm"
 * format(sure, millimetre, 3); // => "225 mm"
 * ```
 */
export function notchThatLeaves<const I extends Inputs, const N extends NameOf<I>>(
  formula: FlowFormula<I>,
  name: N,
  args: ArgsWithout<I, N>,
  flow: Quantity<"volume flow">,
  options: WeirOptions = {},
): Needed<SoughtOf<I, N>> {
  return needed(inputFor(formula, name, args, flow, options)) as Needed<SoughtOf<I, N>>;
}

/**
 * The water level that an existing notch needs over its sill to leave a flow in the stream.
 *
 * @param formula - The formula of the notch.
 * @param args - Its inputs without the head.
 * @param flow - The flow that must stay.
 * @param options - Notices, assumptions, the equation's own uncertainty.
 * @returns The level over the sill, and one that is sure: shut the intake before the water falls to it.
 * @throws NonPhysicalError, OutOfValidityError, QuantityError as `headFor` does.
 * @example
 * ```ts
 * import { levelThatLeaves, vNotchDischarge } from "@leat/flow-measurement";
 * import { degree, format, litrePerSecond, metre, millimetre } from "@leat/quantity";
 *
 * const notch = { angle: degree.of(90), crestHeight: metre.of(0.5), approachWidth: metre.of(2) };
 * const { value, sure } = levelThatLeaves(vNotchDischarge, notch, litrePerSecond.of(10));
 * format(value, millimetre, 4); // => "139.1 mm"
 * format(sure, millimetre, 4); // => "139.6 mm"
 * ```
 */
export function levelThatLeaves<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: ArgsWithout<I, "head" & NameOf<I>>,
  flow: Quantity<"volume flow">,
  options: WeirOptions = {},
): Needed<Quantity<"length">> {
  return needed(headFor(formula, args, flow, options)) as Needed<Quantity<"length">>;
}
