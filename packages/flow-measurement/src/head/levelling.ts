import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import { type AnyQuantity, coverage95, one, type Point, type Quantity } from "@leat/quantity";

import { isLength, refuseIf, fault } from "../refusal.ts";
import { allowedClosingError, closingErrors } from "./closing-error.ts";
import { type Allowance, type Closure, type Leg, type Mark, workRun } from "./closing.ts";
import { curvatureAndRefraction } from "./curvature-and-refraction.ts";
import { type LevelInstrument, levelSpreads } from "./level-spreads.ts";
import { inUnitOf } from "./spread.ts";

/** One standing of the instrument: a reading on the mark behind, and one on the mark ahead. */
export interface Setup {
  /** Rod reading on the mark behind. */
  readonly back: Quantity<"length">;
  /** Rod reading on the mark ahead. */
  readonly fore: Quantity<"length">;
  /** Length of the sight behind. */
  readonly backDistance?: Quantity<"length"> | undefined;
  /** Length of the sight ahead. */
  readonly foreDistance?: Quantity<"length"> | undefined;
  /** Length of both sights together, where they were not measured apart. */
  readonly distance?: Quantity<"length"> | undefined;
  /** What the mark ahead is called. */
  readonly at?: string | undefined;
}

/** How fine a line of levels is to close. */
export type ClosingGrade = ReturnType<typeof closingErrors.keys>[number];

/** A line of levels as it was booked. */
export interface LevellingInput {
  /** Set-ups from the first mark to the last. */
  readonly setups: readonly Setup[];
  /** Set-ups from the last mark back to the first, by the same way or another. */
  readonly returning?: readonly Setup[] | undefined;
  /** What it was levelled with. */
  readonly instrument: LevelInstrument;
  /** Half of the 95 % interval of one set-up; by default as `levelSpreads` has it for the instrument. */
  readonly setupSpread?: Quantity<"length"> | undefined;
  /**
   * What it may close within: a grade, for which the sights must be known, or a length; by default what so many
   * set-ups of the instrument scatter, at 95 %.
   */
  readonly closing?: ClosingGrade | Quantity<"length"> | undefined;
  /** Length of the whole way, out and back, where sights were not measured. */
  readonly length?: Quantity<"length"> | undefined;
  /** Length of the rod: no reading can be longer. */
  readonly rodLength?: Quantity<"length"> | undefined;
  /** How much too high the level reads over the length of a sight, from a two-peg test. */
  readonly collimation?: Quantity<"ratio"> | undefined;
  /** How wrong the rod may be over its length: joints, wear, leaning; 0.1 % by default. */
  readonly rodError?: Quantity<"ratio"> | undefined;
  /** Level of the first mark, where it has one. */
  readonly from?: Point<"site datum"> | undefined;
  /** Names the sources of uncertainty: two runs with one name are taken for one. `levelling` by default. */
  readonly name?: string | undefined;
}

/** A mark of the line, with its level where the first mark has one. */
export interface LevelledMark extends Mark {
  /** Its level. */
  readonly level?: Point<"site datum">;
}

/** A line of levels, worked out. */
export interface Levelling {
  /** Height between the first mark and the last, whichever is higher. */
  readonly head: Quantity<"gross head">;
  /** How much higher the last mark is than the first; lower where negative. */
  readonly rise: Quantity<"length">;
  /** Every mark, less its share of the misclosure. Take no difference of two: their spreads are not shared. */
  readonly marks: readonly LevelledMark[];
  /** How it closed, where it was levelled back. */
  readonly closure: Closure | undefined;
  /** Length of the whole way, where it is known. */
  readonly length: Quantity<"length"> | undefined;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "levelling";

/**
 * Level and rod in steps: the rise is the sum of back sights less fore sights.
 *
 *     rise = Σ(back − fore)
 *
 * Levelled back to the first mark, what is left over is checked against what is allowed, and shared among the
 * set-ups in proportion to their sights, or equally where sights are not known. A run that does not close is
 * widened to reach what either way says. Where both sights of a set-up are known, curvature and refraction are
 * taken off, and so is a collimation error that is given; one that is not counts as uncertain by what an untested
 * instrument may be off.
 *
 * The spread of a set-up is common practice by instrument. The rod may be wrong by 0.1 %, the same in every reading.
 *
 * @param input - The line as it was booked.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head, rise, marks and how it closed.
 * @throws NonPhysicalError a set-up without a reading, a reading below zero or beyond the rod, a sight that is not
 * above zero, a grade without lengths; all of them at once.
 * @example
 * ```ts
 * const { head, closure } = levelling({
 *   instrument: "automatic level",
 *   setups: [
 *     { back: foot.of(1.21), fore: foot.of(11.87), at: "peg 1" },
 *     { back: foot.of(0.84), fore: foot.of(12.05), at: "nozzle" },
 *   ],
 *   returning: [
 *     { back: foot.of(12.44), fore: foot.of(0.66), at: "peg 2" },
 *     { back: foot.of(11.2), fore: foot.of(1.1), at: "intake" },
 *   ],
 * });
 * format(head, foot, { plusMinus: true }); // => "21.875 ± 0.028 ft (k = 1.96)"
 * closure?.misclosure.in(foot).toFixed(2); // => "0.01"
 * ```
 */
export function levelling(input: LevellingInput, options: CallOptions = {}): Levelling {
  const { setups, returning, name = what, from } = input;
  refuseIf(problemsOf(input));
  const ways = [...setups, ...(returning ?? [])];
  const like = (setups[0] as Setup).back;
  const spread = levelSpreads.get(input.instrument, "typical");
  const standard = input.setupSpread ? input.setupSpread["~si"] / coverage95 : spread["~si"];
  if (!input.setupSpread) {
    assume(options, "setupSpread", `${spread.toString()} standard`, levelSpreads.definition.source);
  }
  const length = lengthOf(ways) ?? input.length;
  const legs = legsOf(input, options);
  const run = workRun({
    what,
    name,
    out: legs.slice(0, setups.length),
    back: legs.slice(setups.length),
    standard,
    allowed: allowanceOf(input, length, standard, ways.length),
    like,
  });
  const rod = rodErrorOf(input, options);
  const rise = run.rise.plus(run.rise.times(rod));
  const notices = [...run.notices, ...sightsUnknown(input.instrument, ways)];
  for (const notice of notices) options.onNotice?.(notice);
  return {
    head: rise.abs().as("gross head"),
    rise,
    marks: run.marks.map(({ at, rise: bare }) => {
      const above = bare.plus(bare.times(rod));
      return { at, rise: above, ...(from && { level: from.plus(above) }) };
    }),
    closure: run.closure,
    length,
    notices,
  };
}

/** Differences of the set-ups, less what the sights put into them. */
function legsOf(
  { setups, returning = [], instrument, collimation, name = what }: LevellingInput,
  options: CallOptions,
): Leg[] {
  const ways = [...setups, ...returning];
  const known = ways.every((setup) => lengthOf([setup]) !== undefined);
  const untested = levelSpreads.get(instrument, "collimation");
  const tilt = collimation ?? one.of(0).within(untested, `${name}.collimation`);
  if (!collimation && ways.some(sightsKnown)) {
    assume(options, "collimation", `within ${untested.toString()}`, levelSpreads.definition.source);
  }
  return ways.map((setup, i) => {
    const { back, fore, backDistance, foreDistance, at } = setup;
    const out = i < setups.length;
    const place = out ? i : i - setups.length;
    let rise = back.minus(fore);
    if (backDistance && foreDistance) {
      const longer = backDistance.minus(foreDistance);
      const bent = curvatureAndRefraction({ sight: backDistance }).minus(
        curvatureAndRefraction({ sight: foreDistance }),
      );
      rise = rise.minus(longer.times(tilt)).minus(bent);
    }
    return {
      rise,
      weight: known ? (lengthOf([setup]) as Quantity<"length">)["~si"] : 1,
      at: at ?? `${out ? "mark" : "mark back"} ${place + 1}`,
      path: [out ? "setups" : "returning", place],
    };
  });
}

function rodErrorOf(
  { rodError, name = what }: LevellingInput,
  options: CallOptions,
): Quantity<"ratio"> {
  const off = rodError ?? one.of(0.001);
  if (!rodError) {
    const practice = commonPractice.at("a jointed rod held by hand", "practice");
    assume(options, "rodError", "0.1 %", practice);
  }
  return one.of(0).within(off, `${name}.rod`);
}

/** What may be left over: as given, by grade, or by what the instrument scatters. */
function allowanceOf(
  { closing, instrument }: LevellingInput,
  levelled: Quantity<"length"> | undefined,
  standard: number,
  count: number,
): Allowance {
  if (closing === undefined) {
    return {
      value: coverage95 * standard * Math.sqrt(count),
      of: `what ${count} set-ups of this ${instrument} scatter, at 95 %`,
      source: levelSpreads.definition.source,
    };
  }
  if (typeof closing !== "string") return { value: closing["~si"], of: "as given" };
  const way = levelled as Quantity<"length">;
  const rate = closingErrors.get(closing, "rate");
  return {
    value: allowedClosingError({ rate, levelled: way })["~si"],
    of: `${closing} levelling over ${inUnitOf(way, way["~si"])}`,
    source: closingErrors.definition.source,
  };
}

const sightsKnown = ({ backDistance, foreDistance }: Setup): boolean =>
  backDistance !== undefined && foreDistance !== undefined;

/** Length of all the sights, or nothing where one is not known. */
function lengthOf(setups: readonly Setup[]): Quantity<"length"> | undefined {
  const each = setups.map(({ distance, backDistance, foreDistance }) =>
    backDistance && foreDistance ? backDistance.plus(foreDistance) : distance,
  );
  const [first, ...rest] = each;
  return rest.reduce((total, next) => (total && next ? total.plus(next) : undefined), first);
}

function sightsUnknown(instrument: LevelInstrument, ways: readonly Setup[]): Notice[] {
  if (ways.every(sightsKnown)) return [];
  const source = levelSpreads.definition.source;
  const tilt = levelSpreads.row(instrument).collimation;
  return [
    {
      code: `${what}/sights-unknown`,
      severity: "note",
      path: [],
      message: `${what}: sights behind and ahead are not given for every set-up, and are taken as equally long. Pace them: an untested ${instrument} may put ${tilt} mm into the fall for each metre that one is longer.`,
      source,
    },
  ];
}

function assume(
  options: CallOptions,
  input: string,
  value: string,
  because: ReturnType<typeof commonPractice.at>,
): void {
  options.onAssumed?.({ formula: what, input, value, because });
}

/** All that is wrong with a line as it was booked. */
function problemsOf({ setups, returning, rodLength, closing, length }: LevellingInput): Notice[] {
  const ways = [
    ...setups.map((setup, i) => ({ setup, path: ["setups", i] as const })),
    ...(returning ?? []).map((setup, i) => ({ setup, path: ["returning", i] as const })),
  ];
  const problems: Notice[] = [];
  if (setups.length === 0)
    problems.push(fault(what, ["setups"], "setups is empty. Give one set-up or more."));
  if (returning?.length === 0)
    problems.push(
      fault(
        what,
        ["returning"],
        "returning is empty. Leave it out where nothing was levelled back.",
      ),
    );
  for (const { setup, path } of ways) problems.push(...setupProblems(setup, path, rodLength));
  if (typeof closing === "string" && !length && problems.length === 0) {
    for (const { setup, path } of ways) {
      if (lengthOf([setup])) continue;
      problems.push(
        fault(
          what,
          [...path, "distance"],
          `${path.join(".")} has no length of sights, by which ${closing} levelling is allowed to close. Give distance, or the length of the whole way, or what is allowed.`,
        ),
      );
    }
  }
  return problems;
}

const readings = { back: "the mark behind", fore: "the mark ahead" } as const;
const distances = ["backDistance", "foreDistance", "distance"] as const;

function setupProblems(
  setup: Setup,
  path: readonly [string, number],
  rodLength: Quantity<"length"> | undefined,
): Notice[] {
  const problems: Notice[] = [];
  const put = (key: string, message: string, facts: { actual?: string; limit?: string } = {}) =>
    problems.push(fault(what, [...path, key], `${path.join(".")}.${key} ${message}`, facts));
  for (const key of ["back", "fore"] as const) {
    const reading = setup[key] as AnyQuantity | undefined;
    if (!isLength(reading)) {
      put(key, `is missing. Give the rod reading on ${readings[key]}, a length.`);
    } else if ((reading as AnyQuantity)["~si"] < 0) {
      put(key, `= ${String(reading)} is below the foot of the rod. Check its sign.`);
    } else if (rodLength && (reading as AnyQuantity)["~si"] > rodLength["~si"]) {
      put(
        key,
        `= ${String(reading)} is beyond the end of a rod of ${String(rodLength)}. Check the reading and its unit: feet and inches, or feet and tenths?`,
        { actual: String(reading), limit: `at most ${String(rodLength)}` },
      );
    }
  }
  for (const key of distances) {
    const distance = setup[key] as AnyQuantity | undefined;
    if (distance !== undefined && !(isLength(distance) && distance["~si"] > 0))
      put(
        key,
        `= ${String(distance)} is not a length above zero. Leave it out where it was not measured.`,
      );
  }
  const { backDistance, foreDistance, distance } = setup;
  if ((backDistance === undefined) !== (foreDistance === undefined)) {
    const alone = backDistance === undefined ? "foreDistance" : "backDistance";
    put(alone, "stands alone. Give the other sight too, or distance for both together.");
  } else if (backDistance !== undefined && distance !== undefined) {
    put("distance", "stands beside the two sights that it is made of. Give one or the other.");
  }
  return problems;
}
