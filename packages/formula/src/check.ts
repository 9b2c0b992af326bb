import type { AnyQuantity } from "@leat/quantity";
import { coherentUnit } from "@leat/quantity";

import type { AnyDefinition, AnyFormula } from "./definition.ts";
import type { Limit } from "./limit.ts";
import type { Notice } from "./notice.ts";
import { type Numbers, resolve, type Resolved } from "./resolve.ts";
import { cite } from "./source.ts";

/** The number that a limit bounds. */
export function bounded(definition: AnyDefinition, limit: Limit, letters: Numbers): number {
  if (limit.of) return limit.of(letters as never);
  const n = letters[letterOf(definition, limit.input)] as number;
  return limit.over === undefined ? n : n / (letters[letterOf(definition, limit.over)] as number);
}

/** Whether a number keeps a limit. */
export function keeps(limit: Limit, n: number): boolean {
  return !(limit.min !== undefined && n < limit.min) && !(limit.max !== undefined && n > limit.max);
}

/** A notice for each limit that the inputs exceed. */
export function exceeded(definition: AnyDefinition, { letters, slots }: Resolved): Notice[] {
  return (definition.limits ?? []).flatMap((limit) => {
    const n = bounded(definition, limit, letters);
    if (keeps(limit, n)) return [];
    const given =
      limit.printed &&
      slots.find(({ path }) => path.length === 1 && path[0] === limit.input)?.given;
    const actual = given ? String(given) : shown(n);
    return [limitNotice(definition, limit, n, actual, `${nameOf(limit)} = ${actual}`)];
  });
}

/**
 * A notice for each limit of a formula that these inputs exceed.
 *
 * @param formula - The formula.
 * @param args - Its inputs, as for a call.
 * @returns The notices; none where all limits are kept.
 * @throws NonPhysicalError, QuantityError as a call does.
 */
export function limitNotices(
  formula: AnyFormula,
  args: Readonly<Record<string, unknown>>,
): Notice[] {
  return exceeded(formula.definition, resolve(formula.definition, args));
}

/** The words of an exceeded limit: where, what, got, whose limit, what to do. */
export function limitNotice(
  definition: AnyDefinition,
  limit: Limit,
  n: number,
  actual: string,
  got: string,
): Notice {
  const low = limit.min !== undefined && n < limit.min;
  const bound = limit.printed?.[low ? "min" : "max"];
  const allowed = bound
    ? printed(bound, actual)
    : shown((low ? limit.min : limit.max) ?? Number.NaN);
  const { source, place } = limit.source;
  return {
    code: `${definition.id}/out-of-range`,
    severity: "caution",
    path: [limit.input],
    message: `${definition.id}: ${got} is ${low ? "below" : "above"} ${allowed}, the range ${source.by} gives (${[source.title, place].filter(Boolean).join(", ")}).`,
    actual,
    limit: `${low ? "at least" : "at most"} ${allowed}`,
    source: limit.source,
  };
}

/** What a limit bounds, as it is written. */
export function nameOf(limit: Limit): string {
  return limit.says ?? (limit.over === undefined ? limit.input : `${limit.input}/${limit.over}`);
}

/**
 * A limit as a line of text: `0.2 ft ≤ head ≤ 1.25 ft (source)`.
 *
 * @param limit - The limit.
 * @returns The line.
 */
export function limitText(limit: Limit): string {
  const side = (which: "min" | "max"): string =>
    limit.printed?.[which]?.toString() ?? (limit[which] === undefined ? "" : shown(limit[which]));
  const [min, max] = [side("min"), side("max")];
  return `${min && `${min} ≤ `}${nameOf(limit)}${max && ` ≤ ${max}`} (${cite(limit.source)})`;
}

/** Four figures, for a message. */
function shown(n: number): string {
  return String(Number(n.toPrecision(4)));
}

/** The bound as its source prints it, and in the coherent unit where the caller wrote another. */
function printed(bound: AnyQuantity, actual: string): string {
  const text = bound.toString();
  const symbol = bound["~unit"]?.symbol;
  if (!symbol || actual.endsWith(` ${symbol}`)) return text;
  const unit = coherentUnit(bound.kind, bound["~currency"]);
  return unit.symbol === symbol ? text : `${text} (${shown(bound["~si"])} ${unit.symbol})`;
}

function letterOf(definition: AnyDefinition, name: string): string {
  return definition.inputs[name]?.letter ?? name;
}
