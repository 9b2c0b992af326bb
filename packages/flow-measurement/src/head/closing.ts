import type { Citation, Notice } from "@leat/formula";
import { type AnyQuantity, metre, type Quantity } from "@leat/quantity";

import { inUnitOf, standardSpread } from "./spread.ts";

/** A piece of a run: from one mark to the next. */
export interface Leg {
  /** How much higher the mark ahead is. */
  readonly rise: Quantity<"length">;
  /** Share of a misclosure that it takes: its length, or 1 where lengths are not known. */
  readonly weight: number;
  /** What the mark ahead is called. */
  readonly at: string;
  /** Where it stands in the input. */
  readonly path: readonly (string | number)[];
}

/** A mark of a run, its share of the misclosure taken off. */
export interface Mark {
  /** What it is called. */
  readonly at: string;
  /** How much higher than the first mark it is; lower where negative. */
  readonly rise: Quantity<"length">;
}

/** How a run closed. */
export interface Closure {
  /** What the way out and the way back leave over. */
  readonly misclosure: Quantity<"length">;
  /** What may be left over. */
  readonly allowed: Quantity<"length">;
  /** Whether it is within that. */
  readonly closes: boolean;
}

/** A run of legs, worked out. */
export interface Run {
  /** How much higher the last mark is than the first. */
  readonly rise: Quantity<"length">;
  /** Marks of the way out, the last one included. */
  readonly marks: readonly Mark[];
  /** How it closed, where it was run twice. */
  readonly closure: Closure | undefined;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

/** What may be left over, and who says so. */
export interface Allowance {
  /** In metres. */
  readonly value: number;
  /** Whose it is, in words. */
  readonly of: string;
  /** Where it comes from. */
  readonly source?: Citation;
}

/** What a run is worked out of. */
export interface Runs {
  /** Name of the function, for messages. */
  readonly what: string;
  /** Names the sources of uncertainty. */
  readonly name: string;
  /** From the first mark to the last. */
  readonly out: readonly Leg[];
  /** From the last mark to the first; empty where it was run once. */
  readonly back: readonly Leg[];
  /** Standard uncertainty of a leg, in metres. */
  readonly standard: number;
  /** What may be left over. */
  readonly allowed: Allowance;
  /** A reading, in whose unit messages are written. */
  readonly like: AnyQuantity;
}

/**
 * Works a run out: sums, shares the misclosure among the legs in proportion, and says how sure the end is.
 *
 * Each leg is taken with its own chance error; what is wrong alike in all of them comes with the rises.
 */
export function workRun(runs: Runs): Run {
  const { what, name, out, back, standard, allowed } = runs;
  const legs = [...out, ...back];
  const total = sum(legs.map(({ weight }) => weight));
  const left = risen(legs);
  const off = back.length > 0 ? left["~si"] : 0;
  const closes = Math.abs(off) <= allowed.value;

  /** The mark after so many legs: less its share of what was left over. */
  const markAfter = (count: number, source: string): Quantity<"length"> => {
    const share =
      back.length > 0 ? sum(out.slice(0, count).map(({ weight }) => weight)) / total : 0;
    const rise = risen(out.slice(0, count)).minus(left.times(share));
    const legsSeen = count * (1 - share) * (1 - share) + (legs.length - count) * share * share;
    const seen = rise.plusMinus(standardSpread(standard * Math.sqrt(legsSeen)), source);
    // One of the two ways is wrong, and it is not known which: the end may lie at either.
    return closes
      ? seen
      : seen.within(metre.of(Math.max(share, 1 - share) * Math.abs(off)), `${name}.misclosure`);
  };

  const last = out.length;
  const rise = markAfter(last, `${name}.readings`);
  const marks = out.map(({ at }, i) => ({
    at,
    rise: i + 1 === last ? rise : markAfter(i + 1, `${name}.readings.${i + 1}`),
  }));
  if (back.length === 0) return { rise, marks, closure: undefined, notices: [onceOnly(what)] };
  const closure = { misclosure: metre.of(off), allowed: metre.of(allowed.value), closes };
  return { rise, marks, closure, notices: closes ? [] : [leftOver(runs, legs, off)] };
}

function risen(legs: readonly Leg[]): Quantity<"length"> {
  let total = metre.of(0);
  for (const { rise } of legs) total = total.plus(rise);
  return total;
}

function sum(numbers: readonly number[]): number {
  let total = 0;
  for (const n of numbers) total += n;
  return total;
}

/** A run that nothing checks. */
function onceOnly(what: string): Notice {
  return {
    code: `${what}/not-closed`,
    severity: "caution",
    path: [],
    message: `${what}: run once, with nothing to check it. Run it back to the first mark, by another way if there is one: a whole foot misread would not show.`,
  };
}

function leftOver({ what, allowed, like }: Runs, legs: readonly Leg[], off: number): Notice {
  const got = inUnitOf(like, Math.abs(off));
  const limit = inUnitOf(like, allowed.value);
  return {
    code: `${what}/does-not-close`,
    severity: "caution",
    path: [],
    message: [
      `${what}: out and back are ${got} apart, more than the ${limit} allowed (${allowed.of}). Run it again before leaving the site.`,
      ...hints(what, legs, off, allowed.value),
    ].join(" "),
    actual: got,
    limit: `at most ${limit}`,
    ...(allowed.source && { source: allowed.source }),
  };
}

/** Misreadings that leave a whole mark of the rod over. */
const slips: readonly (readonly [string, number])[] = [
  ["1 m", 1],
  ["1 ft", 0.3048],
  ["0.1 m", 0.1],
  ["0.1 ft", 0.03048],
];

/** What a misclosure of this size looks like. A hint is given only where the run is good enough to tell. */
function hints(what: string, legs: readonly Leg[], off: number, allowed: number): string[] {
  const telling = (size: number): boolean => allowed <= size / 3;
  const near = slips
    .filter(([, size]) => telling(size) && Math.abs(Math.abs(off) - size) <= allowed)
    .map(([words]) => `That is ${words}, as near as this run can tell: look for one misread.`);
  const turned = legs
    .filter(({ rise }) => telling(2 * Math.abs(rise["~si"])))
    .filter(({ rise }) => Math.abs(off - 2 * rise["~si"]) <= allowed)
    .map(
      ({ path }) =>
        `That is twice the difference of ${path.join(".")}: see whether ${what === "levelling" ? "its back and fore are exchanged" : "its sign is wrong"}.`,
    );
  return [...near, ...turned];
}
