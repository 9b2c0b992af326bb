import { seededRandom } from "@leat/numerics";

import type { Parameter } from "./ledger.ts";
import { UnbuildableError } from "./unbuildable.ts";

/** Half the width of a 95 % interval, over the standard uncertainty of a normal distribution. */
export const k95: number = 1.959963984540054;

/** The spread of a result, and what it is made of. */
export interface Spread {
  /** Half width at 95 %. */
  readonly half: number;
  /** How it was found: by slopes, or by drawing where the two differ by more than a tenth. */
  readonly method: "slopes" | "drawing";
  /** Standard uncertainty by slopes. */
  readonly standard: number;
  /** Half width at 95 % by drawing. */
  readonly drawn: number;
  /** Change of the result with one standard uncertainty of each parameter, by its key. */
  readonly contributions: ReadonlyMap<string, number>;
  /** Draws that were refused because nothing physical could have them, out of those made. */
  readonly refused: number;
  /** Draws made. */
  readonly draws: number;
}

/** Difference for a slope, over the size of the number. */
const step = 1e-5;

/** Draws of a Monte Carlo run. */
const draws = 2000;

/**
 * The spread of a result by slopes, checked by seeded drawing.
 *
 * @param parameters - What it depends on, each with its own spread.
 * @param evaluate - The result for a set of values.
 * @param seed - Seed of the draws.
 * @returns The spread; by drawing where the two differ by more than 10 %.
 */
export function spreadOf(
  parameters: readonly Parameter[],
  evaluate: (values: Readonly<Record<string, number>>) => number,
  seed: string,
): Spread {
  const values = Object.fromEntries(parameters.map(({ key, value }) => [key, value]));
  const uncertain = parameters.filter(({ spread }) => spread !== undefined && spread.standard > 0);
  const contributions = new Map<string, number>();
  let variance = 0;
  for (const { key, value, spread } of uncertain) {
    const u = spread?.standard ?? 0;
    const h = step * (value === 0 ? u : Math.abs(value));
    const slope =
      (evaluate({ ...values, [key]: value + h }) - evaluate({ ...values, [key]: value - h })) /
      (2 * h);
    contributions.set(key, slope * u);
    variance += (slope * u) ** 2;
  }
  const standard = Math.sqrt(variance);
  if (uncertain.length === 0)
    return { half: 0, method: "slopes", standard, drawn: 0, contributions, refused: 0, draws: 0 };

  const random = seededRandom(seed);
  const results: number[] = [];
  let refused = 0;
  for (let i = 0; i < draws; i++) {
    const drawn: Record<string, number> = { ...values };
    for (const { key, value, spread } of uncertain) {
      const u = spread?.standard ?? 0;
      drawn[key] =
        value +
        u *
          (spread?.shape === "rectangle"
            ? Math.sqrt(3) * (2 * random.uniform() - 1)
            : random.normal());
    }
    const result = uncertain.every(({ key, domain }) => admits(domain, drawn[key] as number))
      ? drawnResult(evaluate, drawn)
      : undefined;
    if (result === undefined) refused += 1;
    else results.push(result);
  }
  results.sort((a, b) => a - b);
  const at = (p: number): number => results[Math.round(p * (results.length - 1))] as number;
  const drawnHalf = results.length > 100 ? (at(0.975) - at(0.025)) / 2 : Number.POSITIVE_INFINITY;
  const linear = k95 * standard;
  const agree = Math.abs(drawnHalf - linear) <= 0.1 * drawnHalf;
  return {
    half: agree || !Number.isFinite(drawnHalf) ? linear : drawnHalf,
    method: agree ? "slopes" : "drawing",
    standard,
    drawn: drawnHalf,
    contributions,
    refused,
    draws,
  };
}

function admits(domain: Parameter["domain"], n: number): boolean {
  if (domain === "positive") return n > 0;
  if (domain === "non-negative") return n >= 0;
  return domain === "any" || (n >= 0 && n <= 1);
}

/** The result of a draw, or nothing where no scheme is left. */
function drawnResult(
  evaluate: (values: Readonly<Record<string, number>>) => number,
  drawn: Readonly<Record<string, number>>,
): number | undefined {
  try {
    return evaluate(drawn);
  } catch (error) {
    if (error instanceof UnbuildableError) return undefined;
    throw error;
  }
}
