import { QuantityError } from "./error.ts";

/**
 * Where an uncertainty comes from: for each named source, the change of the value, in coherent
 * units, when the source moves by one standard uncertainty. Values that share a source are
 * correlated by it, so that `y − y` has none.
 */
export type Sources = ReadonlyMap<string, number>;

/** `x·a + y·b`, source by source; nothing where all of it cancels. */
export function combineSources(
  a: Sources | undefined,
  x: number,
  b: Sources | undefined,
  y: number,
): Sources | undefined {
  if (!a && !b) return undefined;
  const sum = new Map<string, number>();
  if (a) for (const [id, c] of a) sum.set(id, c * x);
  if (b) for (const [id, c] of b) sum.set(id, (sum.get(id) ?? 0) + c * y);
  for (const [id, c] of sum) {
    if (!Number.isFinite(c))
      throw new QuantityError("not-finite", `the uncertainty from ${id} is not finite`);
    if (c === 0) sum.delete(id);
  }
  return sum.size > 0 ? sum : undefined;
}

/** Root of the sum of squares: the standard uncertainty in coherent units. */
export function spreadOf(sources: Sources | undefined): number {
  let sum = 0;
  if (sources) for (const c of sources.values()) sum = Math.hypot(sum, c);
  return sum;
}

/** Half the width of a 95 % interval, over the standard uncertainty of a normal distribution. */
export const coverage95: number = 1.959963984540054;

/** Half the width of a rectangle, over its standard uncertainty. */
export const rectangle: number = /* @__PURE__ */ Math.sqrt(3);
