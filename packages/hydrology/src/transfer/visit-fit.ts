import { commonPractice, type Notice } from "@leat/formula";
import { studentQuantile } from "@leat/numerics";
import { coverage95, one, type Quantity } from "@leat/quantity";

import type { Transfer } from "./transfer.ts";
import type { PairedVisit, UnpairedVisit } from "./visits.ts";

/** A visit and what the transfer makes of the gauge on that day. */
export interface VisitResidual extends PairedVisit {
  /** Flow at the site by the transfer. */
  readonly expected: Quantity<"volume flow">;
  /** How much more was measured, as a share of what was expected; negative for less. */
  readonly departure: Quantity<"ratio">;
}

/** A transfer made from visits, and how well they agree with it. */
export interface VisitFit<T extends Transfer> {
  /** For `transferRecord`. */
  readonly transfer: T;
  /** Id of the formula that it was made with. */
  readonly by: string;
  /** Each visit that was used. */
  readonly residuals: readonly VisitResidual[];
  /** Row, in the list of visits, of the one that lies farthest from what the others say; absent below three. */
  readonly farthest: number | undefined;
  /** Visits that were not used, and why. */
  readonly unpaired: readonly UnpairedVisit[];
  /** Standard deviation of a single day about the transfer, as a share of its flow; absent where nothing is left to see it by. */
  readonly scatter: Quantity<"ratio"> | undefined;
  /** All that is out of the ordinary, once more for those who took no `onNotice`. */
  readonly notices: readonly Notice[];
}

/** Contribution of each source, in coherent units. */
export type Contributions = ReadonlyMap<string, number>;

/**
 * Contributions of the sources of a quantity, as plain numbers.
 *
 * @param quantity - The quantity.
 * @param per - What they are divided by.
 * @returns By source id.
 */
export function contributionsOf<K extends string>(
  quantity: Quantity<K>,
  per: number,
): Contributions {
  const found = new Map<string, number>();
  for (const [id, { "~si": size }] of quantity.sources()) found.set(id, size / per);
  return found;
}

/**
 * The sources that only one visit has: what an average of visits makes smaller.
 *
 * @param pairs - The visits.
 * @returns Their ids.
 */
export function ownSources(pairs: readonly PairedVisit[]): ReadonlySet<string> {
  const seen = new Map<string, number>();
  for (const { flow, gaugedFlow } of pairs) {
    for (const id of new Set([...flow.sources().keys(), ...gaugedFlow.sources().keys()])) {
      seen.set(id, (seen.get(id) ?? 0) + 1);
    }
  }
  return new Set([...seen].filter(([, times]) => times === 1).map(([id]) => id));
}

/** Root of the sum of squares of the contributions that `keep` names. */
export function sizeOf(contributions: Contributions, keep: ReadonlySet<string>): number {
  let squares = 0;
  for (const [id, c] of contributions) if (keep.has(id)) squares += c * c;
  return Math.sqrt(squares);
}

/** A standard uncertainty twice over: as the visits say of themselves, and as they scatter. */
export interface Spreads {
  /** From what the visits say of themselves, source by source. */
  readonly own: number;
  /** The same, as the method's model has it. */
  readonly model: number;
  /** From how they scatter. */
  readonly scatter: number;
  /** Visits less the numbers fitted to them. */
  readonly freedom: number;
}

/**
 * What scatter adds to what the visits say of themselves.
 *
 * Visits that scatter no more than they say leave it at that. Where they scatter more, it is the scatter that counts (as the
 * Particle Data Group widens a mean by √(χ²/(n − 1)) where that is above 1), with Student's factor for the few that there are: so
 * that ± printed with k = 1.96 does hold 95 %.
 *
 * @param spreads - Both.
 * @returns A further standard uncertainty, to be added in squares; zero where there is none.
 */
export function excessOf({ own, model, scatter, freedom }: Spreads): number {
  if (freedom < 1 || scatter <= model) return 0;
  const widened = (scatter * studentQuantile(0.975, freedom)) / coverage95;
  return widened > own ? Math.sqrt(widened * widened - own * own) : 0;
}

/** A visit's place in a fit, for the search for the one that stands out. */
export interface Residual {
  /** Row in the list of visits. */
  readonly visit: number;
  /** When it was. */
  readonly at: string;
  /** Residual, over its expected standard deviation up to a factor shared by all. */
  readonly size: number;
  /** How much the fit follows this visit alone, 0 to 1. */
  readonly leverage: number;
  /** Measured over expected, less 1. */
  readonly departure: number;
}

/** Departures below this are no news, however well the other visits agree. */
const notable = 0.1;

/** A scatter of single visits above this is no relation to build on. */
const loose = 0.5;

/** Twice the probability of calling out a visit among visits that are all well. */
const alarm = 0.05;

/**
 * The visit that the others contradict the most: by its residual over the standard deviation that they have without it.
 *
 * @param residuals - All of them.
 * @param fitted - How many numbers were fitted to them.
 * @returns Which one, and notices where it stands out or all of them disagree.
 */
export function judge(
  residuals: readonly Residual[],
  fitted: number,
): { readonly farthest: number | undefined; readonly notices: readonly Notice[] } {
  const n = residuals.length;
  const freedom = n - fitted - 1;
  const notices: Notice[] = [];
  const wild = residuals.filter(({ departure }) => Math.abs(departure) > loose);
  let squares = 0;
  let departures = 0;
  for (const { size, departure } of residuals) {
    squares += size * size;
    departures += departure * departure;
  }
  let farthest: Residual | undefined;
  let most = -1;
  if (freedom > 0) {
    for (const residual of residuals) {
      const left = 1 - residual.leverage;
      // A visit that the fit goes through says nothing of itself.
      if (!(left > 1e-9)) continue;
      const own = (residual.size * residual.size) / left;
      const others = Math.max(squares - own, squares * 1e-15) / freedom;
      const t = others > 0 ? Math.sqrt(own / others) : 0;
      if (t > most) [most, farthest] = [t, residual];
    }
  }
  if (farthest && Math.abs(farthest.departure) > notable) {
    const limit = studentQuantile(1 - alarm / 2 / n, freedom);
    if (most > limit) {
      notices.push({
        code: "visits/stands-out",
        severity: "caution",
        path: ["visits", farthest.visit],
        message: `visits: visit ${farthest.visit}, ${farthest.at}, is ${percents(farthest.departure)} of what the others lead to expect, ${most > 1e3 ? "more than 1000" : most.toPrecision(3)} of their standard deviations away; ${limit.toPrecision(3)} would be chance among ${n}. Look for a reason at that visit; leave it out only for one.`,
        actual: percents(farthest.departure),
        source: commonPractice.at("Student's test of the largest residual of n", "practice"),
      });
    }
  }
  if (n > 1 && Math.sqrt(departures / (n - 1)) > loose) {
    notices.push({
      code: "visits/disagree",
      severity: "caution",
      path: ["visits"],
      message: `visits: the visits scatter by ${Math.round(Math.sqrt(departures / (n - 1)) * 100)} % of the flow about what the transfer makes of the gauge${wild.length > 0 ? `, worst ${wild.map(({ visit, at, departure }) => `visit ${visit}, ${at} (${percents(departure)})`).join("; ")}` : ""}. The two streams do not go together: choose another gauge, or do without one.`,
      actual: `${Math.round(Math.sqrt(departures / (n - 1)) * 100)} %`,
      limit: `at most ${loose * 100} %`,
      source: commonPractice.at("half of the flow is no relation", "practice"),
    });
  }
  return { farthest: farthest?.visit, notices };
}

function percents(departure: number): string {
  return `${Math.round((1 + departure) * 100)} %`;
}

/** Adds a standard uncertainty of a new source, nothing where it is zero. */
export function withSpread<K extends string>(
  quantity: Quantity<K>,
  relative: number,
  source: string,
): Quantity<K> {
  if (!(relative > 0)) return quantity;
  return quantity.plusMinus(quantity.abs().times(relative * coverage95), source);
}

/** A share, as a quantity. */
export function share(number: number): Quantity<"ratio"> {
  return one.of(number);
}
