import { type CallOptions, firstPrinciples, type Notice } from "@leat/formula";
import { boreOf, type Pipe, pressureRatingAt } from "@leat/pipe-sizes";
import {
  metre,
  one,
  type Point,
  pressureOfColumn,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import { kinematicViscosity, waterDensity } from "@leat/water";

import { lossOfReach } from "../grade-line/reach-losses.ts";
import type { Profile } from "../profile/profile.ts";
import { fault, refuseIf } from "../refusal.ts";
import { gravityOr } from "../standard-gravity.ts";
import { lossAndExponentOf, plainReaches } from "./greatest-power-flow.ts";
import { greatestPowerShare } from "./greatest-power-share.ts";
import { lostEnergy } from "./lost-energy.ts";
import { presentWorthFactor } from "./present-worth-factor.ts";

/** A pipe to try. */
export interface PipeTrial {
  /** The pipe. */
  readonly pipe: Pipe;
  /** What it costs, laid or as bought, the same for all that are tried. */
  readonly price?: Quantity<"price per length"> | undefined;
}

/** What head is worth. */
export interface EnergyMoney {
  /** What energy is worth where it is used. */
  readonly energyPrice: Quantity<"price per energy">;
  /** How long it runs in a year at this flow. */
  readonly runningTime: Quantity<"time">;
  /** From the water before the nozzle to what is paid for. */
  readonly efficiency: Quantity<"efficiency">;
  /** Years that the pipe is reckoned on for. */
  readonly years: Quantity<"count">;
  /** What money is worth in a year, over one; 0 by default. */
  readonly interest?: Quantity<"ratio"> | undefined;
}

/** What pipes are compared for. */
export interface PipeCurveInput {
  /** The ground, with its fittings; each trial takes the place of all its pipe. */
  readonly profile: Profile;
  /** Water level at the intake, over the datum of the profile. */
  readonly water: Point<"site datum">;
  /** Flow that it is to carry. */
  readonly flow: Quantity<"volume flow">;
  /** Temperature of the water, and of the pipe. */
  readonly temperature: Point<"absolute zero">;
  /** Pipes to try, in any order: `pipesOf` of the package pipe-sizes lists a class. */
  readonly trials: readonly PipeTrial[];
  /** What head is worth; each trial then needs a price. */
  readonly money?: EnergyMoney | undefined;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
}

/** What one pipe would do. */
export interface PipeCurveRow {
  /** The pipe. */
  readonly pipe: Pipe;
  /** Its bore. */
  readonly insideDiameter: Quantity<"length">;
  /** Mean velocity. */
  readonly velocity: Quantity<"velocity">;
  /** Head lost in all of it. */
  readonly lost: Quantity<"head loss">;
  /** Share of the gross head that is lost. */
  readonly share: Quantity<"ratio">;
  /** Share beyond which more water gives less power: 1/(1 + n) at this flow. */
  readonly mostShare: Quantity<"ratio">;
  /** Head that is left; below 0 where the flow does not pass. */
  readonly netHead: Quantity<"net head">;
  /** Greatest pressure over that of the air, at rest. */
  readonly atRest: Quantity<"pressure">;
  /** What the pipe carries at the temperature; absent where nobody says. */
  readonly rating: Quantity<"pressure"> | undefined;
  /** Whether it is known to carry the pressure at rest. */
  readonly holds: boolean;
  /** Price of the pipe. */
  readonly price: Quantity<"money"> | undefined;
  /** Worth today of the energy that is lost. */
  readonly energyWorth: Quantity<"money"> | undefined;
  /** Both together. */
  readonly cost: Quantity<"money"> | undefined;
}

/** Pipes side by side. */
export interface PipeCurve {
  /** From the narrowest bore to the widest. */
  readonly rows: readonly PipeCurveRow[];
  /** Water at the intake above the end of the pipe. */
  readonly grossHead: Quantity<"gross head">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "pipe-curve";

/**
 * What each of a list of pipes would lose, hold and cost at one flow: the curve of loss and money by bore.
 *
 * A trial takes the place of all pipe of the profile; lengths and fittings stay. Money is price × length and, where it is told what
 * energy is worth, the worth today of the energy that the pipe takes: flow and running time are taken as given, every year alike. The
 * rows have the uncertainty of bore, roughness and fittings under `reaches.0.bore` and so on.
 *
 * @param input - Ground, water, flow, pipes, money.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Rows by rising bore.
 * @throws NonPhysicalError no pipe, no flow, a pipe without a price where money is asked for, an end that is not below the water.
 * @example
 * ```ts
 * import { narrowestPipe, penstockProfile, pipeCurve } from "@leat/penstock";
 * import { pipesOf } from "@leat/pipe-sizes";
 * import { celsius, litrePerSecond, metre, one, point } from "@leat/quantity";
 *
 * const at = (chainage: number, height: number) => ({
 *   chainage: metre.of(chainage),
 *   elevation: point("site datum", metre.of(height), "nozzle"),
 * });
 * const pipes = pipesOf({ series: "PE ISO", sdr: 17 });
 * const curve = pipeCurve({
 *   profile: penstockProfile({
 *     stations: [at(0, 49), at(320, 0)],
 *     measured: "along the slope",
 *     reaches: [{ pipe: pipes[0]! }],
 *   }),
 *   water: point("site datum", metre.of(50), "nozzle"),
 *   flow: litrePerSecond.of(12),
 *   temperature: celsius.at(8),
 *   trials: pipes.map((pipe) => ({ pipe })),
 * });
 * narrowestPipe(curve, one.of(0.1))?.pipe.name; // => "125 mm PE100 SDR 17"
 * ```
 */
export function pipeCurve(input: PipeCurveInput, options: CallOptions = {}): PipeCurve {
  const { profile, water, trials } = input;
  const end = profile.stations.at(-1);
  const grossHead = water.minus((end as Profile["stations"][number]).elevation).as("gross head");
  refuseIf(problemsOf(input, grossHead));
  const gravity = gravityOr(input.gravity, what, options);
  const rows = trials
    .toSorted((a, b) => boreOf(a.pipe)["~si"] - boreOf(b.pipe)["~si"])
    .map((trial) => rowOf(input, trial, grossHead, gravity, options));
  const notices = noticesOf(rows, input);
  for (const notice of notices) options.onNotice?.(notice);
  return { rows, grossHead, notices };
}

/**
 * The narrowest pipe of a curve that holds the pressure at rest and loses no more than a share of the gross head.
 *
 * @param curve - The curve.
 * @param share - Greatest share; a tenth is ordinary.
 * @returns Its row, or nothing where no pipe does.
 */
export function narrowestPipe(
  { rows }: PipeCurve,
  share: Quantity<"ratio">,
): PipeCurveRow | undefined {
  return rows.find((row) => row.holds && row.share["~si"] <= share["~si"]);
}

/**
 * The pipe of a curve that holds the pressure at rest, lets the flow through and costs least over the years, lost energy counted in.
 *
 * @param curve - A curve with money.
 * @returns Its row, or nothing where no pipe does or no money was given.
 */
export function cheapestPipe({ rows }: PipeCurve): PipeCurveRow | undefined {
  let best: PipeCurveRow | undefined;
  for (const row of rows) {
    if (!row.holds || !row.cost || !(row.netHead["~si"] > 0)) continue;
    if (!best?.cost || row.cost["~si"] < best.cost["~si"]) best = row;
  }
  return best;
}

function problemsOf(
  { flow, trials, money }: PipeCurveInput,
  grossHead: Quantity<"gross head">,
): Notice[] {
  const problems: Notice[] = [];
  if (trials.length === 0)
    problems.push(fault(what, ["trials"], "trials is empty. Give one pipe or more."));
  if (!(flow["~si"] > 0))
    problems.push(
      fault(
        what,
        ["flow"],
        `flow = ${flow.toString()} is not above zero. Give the flow that the pipe is to carry.`,
      ),
    );
  if (!(grossHead["~si"] > 0))
    problems.push(
      fault(
        what,
        ["water"],
        `the water does not stand above the end of the pipe, but ${grossHead.toString()} above it. Check the two levels.`,
      ),
    );
  trials.forEach(({ pipe, price }, i) => {
    if (money && !price)
      problems.push(
        fault(
          what,
          ["trials", i, "price"],
          `trials.${i}.price of ${pipe.name} is missing. Give what a length of it costs, or leave money out.`,
        ),
      );
  });
  return problems;
}

function rowOf(
  { profile, water, flow, temperature, money }: PipeCurveInput,
  { pipe, price }: PipeTrial,
  grossHead: Quantity<"gross head">,
  gravity: Quantity<"acceleration">,
  options: CallOptions,
): PipeCurveRow {
  const density = waterDensity({ temperature });
  const viscosity = kinematicViscosity({ temperature });
  const tried = { ...profile, reaches: profile.reaches.map((reach) => ({ ...reach, pipe })) };
  // One pipe, one bore: all reaches share the sources of the first.
  const losses = tried.reaches.map(
    (reach) =>
      lossOfReach(reach, 0, { flow, kinematicViscosity: viscosity, gravity }, () => {}, options)
        .loss,
  );
  const lost = losses.reduce(
    (sum, { friction, fittings }) => sum.plus(friction).plus(fittings),
    metre.of(0).as("head loss"),
  );
  const { exponent } = lossAndExponentOf(
    plainReaches(tried),
    flow["~si"],
    viscosity["~si"],
    gravity["~si"],
  );
  const lowest = profile.stations.reduce((low, next) =>
    next.elevation["~si"] < low.elevation["~si"] ? next : low,
  );
  const atRest = pressureOfColumn(water.minus(lowest.elevation), density, gravity);
  const rating = ratingOf(pipe, temperature);
  const paid = price?.times(profile.length).as("money");
  const energyWorth =
    money &&
    lostEnergy({
      flow,
      headLoss: lost,
      efficiency: money.efficiency,
      runningTime: money.runningTime,
      density,
      gravity,
    })
      .times(money.energyPrice)
      .times(presentWorthFactor({ interest: money.interest ?? one.of(0), years: money.years }));
  return {
    pipe,
    insideDiameter: boreOf(pipe),
    velocity: (losses[0] as (typeof losses)[number]).velocity,
    lost,
    share: lost.as("length").dividedBy(grossHead.as("length")),
    mostShare: greatestPowerShare({ lossExponent: one.of(exponent) }),
    netHead: grossHead.minus(lost),
    atRest,
    rating,
    holds: rating !== undefined && atRest["~si"] <= rating["~si"],
    price: paid,
    energyWorth,
    cost: energyWorth && paid?.plus(energyWorth),
  };
}

function ratingOf(
  pipe: Pipe,
  temperature: Point<"absolute zero">,
): Quantity<"pressure"> | undefined {
  try {
    return pressureRatingAt(pipe, temperature);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

/** Pipes that are no choice, and why. */
function noticesOf(rows: readonly PipeCurveRow[], { flow }: PipeCurveInput): Notice[] {
  const told: Notice[] = [];
  const names = (of: (row: PipeCurveRow) => boolean): string =>
    rows
      .filter(of)
      .map(({ pipe }) => pipe.name)
      .join(", ");
  const past = names((row) => row.share["~si"] > row.mostShare["~si"]);
  if (past) {
    told.push({
      code: `${what}/past-greatest-power`,
      severity: "note",
      path: ["flow"],
      message: `${what}: ${flow.toString()} is past the flow of greatest power of ${past}: less water would give more power there. Take a wider pipe.`,
      limit: "at most 1/(1 + n) of the gross head",
      source: firstPrinciples.at("greatest Q·(H − h) with h rising as Qⁿ"),
    });
  }
  const weak = names((row) => !row.holds);
  if (weak) {
    told.push({
      code: `${what}/does-not-hold`,
      severity: "note",
      path: ["trials"],
      message: `${what}: not known to carry the pressure at rest: ${weak}. They are not chosen; take a stronger class for the lower part at least.`,
      source: firstPrinciples.at("pressure of a column of water"),
    });
  }
  return told;
}
