import {
  type AnyFormula,
  type Convergence,
  firstPrinciples,
  type Inputs,
  limitNotices,
  NonPhysicalError,
} from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";
import {
  type AnyQuantity,
  coherentUnit,
  cubicMetrePerSecond,
  isQuantity,
  one,
  type Quantity,
  QuantityError,
} from "@leat/quantity";

import {
  type ArgsWithout,
  type FlowFormula,
  flowOf,
  type NameOf,
  type SoughtOf,
  type WeirOptions,
  withEquationUncertainty,
} from "./weir-formula.ts";

/** An input that was found from a flow. */
export interface Found<Q> {
  /** What gives the flow, with the uncertainty that comes of the flow, the other inputs and the equation. */
  readonly value: Q;
  /** How the search ended: steps, what is left of the flow in m³/s, and between which two values the answer lies. */
  readonly convergence: Convergence;
}

/** Where the search begins and ends, in coherent units, and how much further each step looks. */
const [smallest, largest, growth] = [1e-6, 1e4, 1.25];

/** An answer this near to a limit, over its size, is on it: the search has no more digits than that. */
const hair = 1e-12;

/** Step of a difference, over the size of the number: the cube root of the last digit. */
const differenceStep = 6e-6;

/** Numbers by letter, as the body takes them, without the one that is sought. */
function lettersOf(formula: AnyFormula, args: object): Record<string, unknown> {
  const letters: Record<string, unknown> = { ...formula.constants };
  for (const [name, input] of Object.entries(formula.definition.inputs)) {
    const given: unknown = (args as Record<string, unknown>)[name] ?? input.default;
    letters[input.letter] = isQuantity(given) ? given.in(coherentUnit(given.kind)) : given;
  }
  return letters;
}

/** Looks for the first value, from small to large, on both sides of which the flow lies. */
function bracketOf(miss: (x: number) => number): readonly [number, number] | undefined {
  let below = smallest;
  let fBelow = miss(below);
  for (let x = smallest * growth; x < largest; x *= growth) {
    const fx = miss(x);
    if (Number.isFinite(fBelow) && Number.isFinite(fx) && fBelow > 0 !== fx > 0) return [below, x];
    below = x;
    fBelow = fx;
  }
  return undefined;
}

/**
 * The input of a weir formula that gives a flow: the head, or a dimension of the notch.
 *
 * The first value that gives it is taken, from small to large: a formula whose flow turns back at a head far
 * beyond its range (Francis with contracted ends) is read on its rising side. The formula's limits are checked at
 * what was found.
 *
 * @param formula - A weir formula.
 * @param name - The input that is sought: `head`, `notchWidth`, `angle`.
 * @param args - The other inputs.
 * @param flow - The flow that it must give.
 * @param options - Notices, assumptions, the equation's own uncertainty.
 * @returns The value and how the search ended.
 * @throws NonPhysicalError for a flow not above zero, or one that no value gives; OutOfValidityError for a limit
 * exceeded where `onNotice` is absent; QuantityError for a wrong kind or a missing input.
 * @example
 * ```ts
 * import { inputFor, vNotchDischarge } from "@leat/flow-measurement";
 * import { degree, format, litrePerSecond, metre, one } from "@leat/quantity";
 *
 * const place = { head: metre.of(0.15), crestHeight: metre.of(0.5), approachWidth: metre.of(1.5) };
 * const { value } = inputFor(vNotchDischarge, "angle", place, litrePerSecond.of(5), {
 *   equationUncertainty: one.of(0),
 * });
 * format(value, degree, 3); // => "44.4°"
 * ```
 */
export function inputFor<const I extends Inputs, const N extends NameOf<I>>(
  formula: FlowFormula<I>,
  name: N,
  args: ArgsWithout<I, N>,
  flow: Quantity<"volume flow">,
  options: WeirOptions = {},
): Found<SoughtOf<I, N>> {
  return search(formula, name, args, flow, options) as unknown as Found<SoughtOf<I, N>>;
}

/**
 * The head that gives a flow over a weir: `inputFor` with `head` sought.
 *
 * @param formula - A weir formula.
 * @param args - Its inputs without the head.
 * @param flow - The flow that it must give.
 * @param options - Notices, assumptions, the equation's own uncertainty.
 * @returns The head and how the search ended.
 * @throws NonPhysicalError, OutOfValidityError, QuantityError as `inputFor` does.
 * @example
 * ```ts
 * import { headFor, rehbockDischarge } from "@leat/flow-measurement";
 * import { format, litrePerSecond, metre, millimetre } from "@leat/quantity";
 *
 * const weir = { notchWidth: metre.of(1), crestHeight: metre.of(0.4) };
 * const flow = litrePerSecond.of(100).plusMinus(litrePerSecond.of(2), "what the wheel needs");
 * const { value, convergence } = headFor(rehbockDischarge, weir, flow);
 * format(value, millimetre, { plusMinus: true }); // => "141.1 ± 2.3 mm (k = 1.96)"
 * Math.abs(convergence.residual) < 1e-15; // => true
 * ```
 */
export function headFor<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: ArgsWithout<I, "head" & NameOf<I>>,
  flow: Quantity<"volume flow">,
  options: WeirOptions = {},
): Found<Quantity<"length">> {
  return search(formula, "head", args, flow, options) as unknown as Found<Quantity<"length">>;
}

function search(
  formula: AnyFormula,
  name: string,
  args: object,
  flow: Quantity<"volume flow">,
  options: WeirOptions,
): Found<AnyQuantity> {
  const { id, definition } = formula;
  const input = definition.inputs[name];
  if (input?.type !== "scalar") {
    throw new QuantityError(
      "kind",
      `${id}: ${name} cannot be sought: it is no number among the inputs.`,
    );
  }
  if ((args as Record<string, unknown>)[name] !== undefined) {
    throw new QuantityError("kind", `${id}: ${name} is what is sought: leave it out.`);
  }
  const unit = coherentUnit(input.kinds[0] as string);
  // Asks the formula what it thinks of the other inputs: kinds, missing ones, what nothing physical can have.
  limitNotices(formula, { ...args, [name]: unit.of(1) });
  const wanted = flow.in(cubicMetrePerSecond);
  if (!(wanted > 0)) refuse(id, name, `flow = ${String(flow)} is not above zero`, flow);
  const letters = lettersOf(formula, args);
  const body = formula.body as (letters: object) => number;
  const flowAt = (x: number): number => body({ ...letters, [input.letter]: x });
  const miss = (x: number): number => flowAt(x) - wanted;

  const ends = bracketOf(miss);
  if (!ends) {
    const side = miss(smallest) > 0 ? "above" : "below";
    refuse(
      id,
      name,
      `no ${name} gives a flow of ${String(flow)}: from ${unit.of(smallest).toString()} to ${unit.of(largest).toString()} the formula stays ${side} it`,
      flow,
    );
  }
  const { root, residual, iterations, bracket } = bracketedRoot(miss, ...ends);

  const found = unit.of(
    [root, root * (1 + hair), root * (1 - hair)].find(
      (x) => limitNotices(formula, { ...args, [name]: unit.of(x) }).length === 0,
    ) ?? root,
  ) as Quantity<"length">;
  const given = withEquationUncertainty(
    id,
    flowOf(formula, { ...args, [name]: found }, options),
    options.equationUncertainty,
  );
  const dx = differenceStep * root;
  const slope = (flowAt(root + dx) - flowAt(root - dx)) / (2 * dx);
  // One more step of Newton, taken with quantities: it brings the uncertainties along, source by source. The step
  // itself is rounding and is taken off again.
  const step = flow.minus(given).dividedBy(cubicMetrePerSecond.of(slope));
  const spread = step.minus(one.of(step.in(one)));
  return {
    value: found.plus((unit.of(1) as Quantity<"length">).times(spread)),
    convergence: { iterations, residual, bracket },
  };
}

function refuse(id: string, name: string, what: string, flow: AnyQuantity): never {
  throw new NonPhysicalError([
    {
      code: "non-physical",
      severity: "stop",
      path: ["flow"],
      message: `${id}: ${what}. Check the flow, its unit and the inputs besides ${name}.`,
      actual: String(flow),
      source: firstPrinciples.at("the formula has one flow for each value"),
    },
  ]);
}
