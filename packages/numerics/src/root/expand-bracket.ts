import { NumericsError } from "../numerics-error.ts";
import { nonFiniteValue, requireCount, requireInterval } from "../requirement.ts";

const where = "expandBracket";

/** How far a bracket may grow. */
export interface ExpandOptions {
  /** Each expansion makes the interval this many times as wide. Default 2; must be above 1. */
  readonly factor?: number;
  /** No point below this is tried. Default: no limit. */
  readonly least?: number;
  /** No point above this is tried. Default: no limit. */
  readonly most?: number;
  /** The cap on expansions. Default 50. */
  readonly maxExpansions?: number;
}

/** An interval on which f changes sign. */
export interface ExpandedBracket {
  /** The lower end. */
  readonly lo: number;
  /** The upper end. */
  readonly hi: number;
  /** f at the lower end. */
  readonly fLo: number;
  /** f at the upper end. */
  readonly fHi: number;
  /** How often the interval grew. */
  readonly expansions: number;
  /** Always true: an interval without a change of sign is thrown, never returned. */
  readonly converged: true;
}

/**
 * Widens an interval until f changes sign on it.
 *
 * The end where |f| is smaller moves outward, as the root is more likely there. An end that has reached its
 * limit stays, and the other moves. A zero of f at an end counts as a change of sign.
 *
 * @param f - The function; finite wherever the interval may reach.
 * @param lo - The lower end to start from.
 * @param hi - The upper end to start from, above `lo`.
 * @param options - Growth, limits and cap.
 * @returns The bracket.
 * @throws {@link NumericsError} `no-sign-change` at the cap or the limits, `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { expandBracket } from "@leat/numerics";
 *
 * const { lo, hi } = expandBracket((x) => x - 10, 0, 1);
 * [lo, hi]; // => [0, 16]
 * ```
 */
export function expandBracket(
  f: (x: number) => number,
  lo: number,
  hi: number,
  options: ExpandOptions = {},
): ExpandedBracket {
  const { factor = 2, least = -Infinity, most = Infinity, maxExpansions = 50 } = options;
  requireInterval(where, lo, hi);
  requireCount(where, "maxExpansions", maxExpansions);
  if (!(factor > 1 && factor < Infinity)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: factor = ${factor} does not widen. Pass a finite number above 1.`,
      { where, factor },
    );
  }
  if (!(least <= lo && most >= hi)) {
    throw new NumericsError(
      "bad-argument",
      `${where}: [${lo}, ${hi}] is not within least = ${least} and most = ${most}. Start inside the limits.`,
      { where, lo, hi, least, most },
    );
  }
  let a = lo;
  let b = hi;
  let fa = f(a);
  if (!Number.isFinite(fa)) throw nonFiniteValue(where, "f", a, fa);
  let fb = f(b);
  if (!Number.isFinite(fb)) throw nonFiniteValue(where, "f", b, fb);
  for (let expansions = 0; expansions <= maxExpansions; expansions++) {
    if (fa === 0 || fb === 0 || fa > 0 !== fb > 0) {
      return { lo: a, hi: b, fLo: fa, fHi: fb, expansions, converged: true };
    }
    const growth = (factor - 1) * (b - a);
    const lowerEnd = b === most || (a !== least && Math.abs(fa) < Math.abs(fb));
    const next = lowerEnd ? Math.max(a - growth, least) : Math.min(b + growth, most);
    if (expansions === maxExpansions || !Number.isFinite(next) || (lowerEnd && a === least)) break;
    const fNext = f(next);
    if (!Number.isFinite(fNext)) throw nonFiniteValue(where, "f", next, fNext);
    if (lowerEnd) {
      a = next;
      fa = fNext;
    } else {
      b = next;
      fb = fNext;
    }
  }
  throw new NumericsError(
    "no-sign-change",
    `${where}: f has one sign from f(${a}) = ${fa} to f(${b}) = ${fb}. ` +
      "Start elsewhere, raise maxExpansions or move a limit.",
    { where, lo: a, fLo: fa, hi: b, fHi: fb, least, most },
  );
}
