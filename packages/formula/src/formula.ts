import { type AnyQuantity, coherentUnit, Quantity } from "@leat/quantity";

import { exceeded } from "./check.ts";
import {
  type AnyDefinition,
  type AnyFormula,
  type CallOptions,
  type Constants,
  type Convergence,
  type Definition,
  type Formula,
  type Outputs,
  outputsOf,
} from "./definition.ts";
import type { Inputs } from "./input.ts";
import { NonPhysicalError, OutOfValidityError } from "./notice.ts";
import { constantsOf, type Resolved, resolve, sourcesOf } from "./resolve.ts";
import { numbersOf, partial } from "./sensitivity.ts";

/**
 * Makes a formula of its definition.
 *
 * The definition is given as a function so that importing a formula costs nothing and a bundler drops
 * those that are not used: mark the call as pure.
 *
 * @param define - Returns the definition; called once, when the formula is first used.
 * @returns The typed, checked function, with the definition and the body beside it.
 */
export function formula<
  I extends Inputs,
  O extends Outputs,
  C extends Constants = Record<never, never>,
  S extends boolean = false,
>(define: () => Definition<I, O, C, S>): Formula<I, O, C, S> {
  let made: Definition<I, O, C, S> | undefined;
  const definition = (): Definition<I, O, C, S> => (made ??= define());
  const call = (args: object, options?: CallOptions): unknown =>
    answer(definition(), args as Record<string, unknown>, options);
  Object.defineProperties(call, {
    id: { get: () => definition().id },
    definition: { get: definition },
    body: { get: () => definition().body },
    constants: { get: () => constantsOf(definition() as unknown as AnyDefinition) },
  });
  return call as unknown as Formula<I, O, C, S>;
}

/**
 * Whether a value is a formula.
 *
 * @param value - Anything.
 * @returns True for a formula.
 */
export function isFormula(value: unknown): value is AnyFormula {
  return (
    typeof value === "function" &&
    typeof (value as Partial<AnyFormula>).definition?.body === "function"
  );
}

/** Inputs resolved, limits told or refused. */
function admit(
  definition: AnyDefinition,
  args: Readonly<Record<string, unknown>>,
  options: CallOptions = {},
): Resolved {
  const resolved = resolve(definition, args, options);
  const notices = exceeded(definition, resolved);
  if (notices.length > 0 && !options.onNotice) throw new OutOfValidityError(notices);
  for (const notice of notices) options.onNotice?.(notice);
  return resolved;
}

/** Runs a body on resolved inputs, and refuses what is not a number. */
export function run(
  definition: AnyDefinition,
  resolved: Resolved,
): { values: number[]; result: unknown } {
  const result = definition.body(resolved.letters as never);
  const values = numbersOf(definition, result);
  outputsOf(definition.output).forEach(({ word, letter }, i) => {
    if (!Number.isFinite(values[i])) {
      const message = `${definition.id}: ${word ?? letter} is not a number for these inputs. Check them against the equation ${definition.equation}.`;
      throw new NonPhysicalError([{ code: "non-physical", severity: "stop", path: [], message }]);
    }
  });
  return { values, result };
}

function answer(
  definition: AnyDefinition,
  args: Readonly<Record<string, unknown>>,
  options?: CallOptions,
): unknown {
  const resolved = admit(definition, args, options);
  const { values, result } = run(definition, resolved);
  const spreads = propagate(definition, resolved);
  const currency = resolved.slots
    .map(({ given }) => (given as AnyQuantity)["~currency"])
    .find(Boolean);
  const made = outputsOf(definition.output).map(({ word, kind }, i) => {
    const unit = coherentUnit(kind, currency);
    return [word, new Quantity(kind, values[i] as number, spreads?.[i], unit.currency)] as const;
  });
  const [first] = made;
  if (first && first[0] === undefined) return first[1];
  const { iterations, residual, bracket } = result as Convergence;
  return {
    ...Object.fromEntries(made),
    ...(definition.solver && {
      convergence: { iterations, residual, ...(bracket && { bracket }) },
    }),
  };
}

/** Contribution of each source to each output, or nothing where no input has one. */
function propagate(
  definition: AnyDefinition,
  resolved: Resolved,
): (Map<string, number> | undefined)[] | undefined {
  const uncertain = resolved.slots.filter((slot) => sourcesOf(slot));
  if (uncertain.length === 0) return undefined;
  const totals = outputsOf(definition.output).map(() => new Map<string, number>());
  for (const slot of uncertain) {
    const sources = sourcesOf(slot) as ReadonlyMap<string, number>;
    const scale = Math.max(...Array.from(sources.values(), Math.abs));
    partial(definition, resolved, slot, scale).forEach((slope, i) => {
      const total = totals[i] as Map<string, number>;
      for (const [id, c] of sources) total.set(id, (total.get(id) ?? 0) + slope * c);
    });
  }
  return totals;
}
