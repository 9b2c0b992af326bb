import { firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";
import { type AnyQuantity, coherentUnit, type Quantity } from "@leat/quantity";

import { fault } from "../refusal.ts";
import { figuresOf, spreadsOf, takerOf } from "./manifold-figures.ts";
import { ManifoldPlan } from "./manifold-plan.ts";
import { type Numbers, type Structure, what } from "./manifold-structure.ts";
import { solveManifoldPlan } from "./solve-manifold-plan.ts";

/** A set of open jets on plain numbers. */
export interface PlainSet {
  /** Jets that are open. */
  readonly open: readonly number[];
  /** All flow. */
  readonly flow: number;
  /** Power of all jets. */
  readonly power: number;
}

/** A set of open jets. */
export interface JetSet {
  /** Jets that are open, by their place in the order of the tree, from 0. */
  readonly open: readonly number[];
  /** All flow. */
  readonly flow: Quantity<"volume flow">;
  /** Power of all jets. */
  readonly power: Quantity<"hydraulic power">;
  /** Net head of the jets, each weighted with its flow. */
  readonly netHead: Quantity<"net head">;
  /** What the gauge before the branches reads while they run, over the air there. */
  readonly runningPressure: Quantity<"pressure">;
}

/** More jets than this have too many sets to look at each of them. */
const mostJets = 16;

/**
 * Power of all jets of a solved plan: Σ 1/2·ρ·Q·V², V = Cv·√(2·g·H).
 *
 * @param plan - The plan, solved.
 * @param density - Density of the water.
 * @param velocityCoefficients - Of each jet.
 * @returns The power.
 */
export function jetsPowerOf(
  { jetFlow, netHead, gravity }: ManifoldPlan,
  density: number,
  velocityCoefficients: ArrayLike<number>,
): number {
  let power = 0;
  for (let j = 0; j < jetFlow.length; j++) {
    const cv = velocityCoefficients[j]!;
    power += density * gravity * jetFlow[j]! * cv * cv * netHead[j]!;
  }
  return power;
}

/**
 * Every set of the jets that no shut valve closes.
 *
 * @param structure - Pipes and jets.
 * @param numbers - Their numbers.
 * @returns The sets that run, and how many hold a jet that would draw air.
 * @throws NonPhysicalError more than 16 jets, or all of them behind shut valves.
 */
export function setsOf(structure: Structure, numbers: Numbers): { sets: PlainSet[]; dry: number } {
  const { jets, pipes } = structure;
  const usable = jets.map((_, j) => j).filter((j) => !pipes[jets[j]!.pipe]!.shut);
  if (usable.length === 0 || usable.length > mostJets) {
    throw new NonPhysicalError([
      fault(
        what,
        ["branches"],
        usable.length === 0
          ? "every jet is behind a shut valve: there is no set to open."
          : `${usable.length} jets have ${2 ** usable.length - 1} sets, too many to look at each. Give at most ${mostJets}.`,
      ),
    ]);
  }
  const plan = new ManifoldPlan(numbers);
  const sets: PlainSet[] = [];
  let dry = 0;
  for (let mask = 1; mask < 2 ** usable.length; mask++) {
    plan.open.fill(0);
    const open = usable.filter((_, k) => ((mask >> k) & 1) === 1);
    for (const j of open) plan.open[j] = 1;
    solveManifoldPlan(plan);
    if (plan.dry >= 0) {
      dry += 1;
      continue;
    }
    const power = jetsPowerOf(plan, numbers.density, numbers.velocityCoefficients);
    sets.push({ open, flow: plan.total, power });
  }
  return { sets, dry };
}

/** A set with its quantities. */
export function jetSetOf(
  structure: Structure,
  list: readonly number[],
  open: readonly number[],
): JetSet {
  const take = takerOf(figuresOf(structure, list, open).list, spreadsOf(structure, list, open));
  take("gross head");
  const flow = take("volume flow");
  const netHead = take("net head");
  take("pressure");
  const runningPressure = take("pressure");
  take("hydraulic power");
  return { open, flow, power: take("hydraulic power"), netHead, runningPressure };
}

/**
 * Greatest power first; of two that give the same to rounding, as jets that are alike do, the one that passes less, then the one that was
 * found first.
 */
export function byPower(a: PlainSet, b: PlainSet): number {
  return b.power - a.power || a.flow - b.flow;
}

/** Jets by name, as a message lists them. */
export function namesOf({ jets }: Structure, open: readonly number[]): string {
  return open.map((j) => jets[j]!.name).join(", ");
}

/** A number as a message shows it, in the unit that the caller wrote another in. */
export function shownLike(like: AnyQuantity, si: number): string {
  const unit = like["~unit"] ?? coherentUnit(like.kind);
  return `${Number(unit.fromSI(si).toPrecision(3))} ${unit.symbol}`;
}

/**
 * The stop of jets that would pass more than the stream gives.
 *
 * @param structure - Pipes and jets.
 * @param passed - What they would pass.
 * @param usable - What may be taken.
 * @param best - The set of the greatest power that is held up, if one is.
 * @returns The notice.
 */
export function shortOfWater(
  structure: Structure,
  passed: number,
  usable: Quantity<"volume flow">,
  best: PlainSet | undefined,
): Notice {
  const instead = best
    ? `Open ${namesOf(structure, best.open)} instead, ${shownLike(usable, best.flow)} and ${Number(best.power.toPrecision(3))} W in the jets`
    : "No set of them passes so little: fit a smaller nozzle, or wait for water";
  return {
    code: `${what}/short-of-water`,
    severity: "stop",
    path: ["usable"],
    message: `${what}: the open jets would pass ${shownLike(usable, passed)} of the ${usable.toString()} that may be taken: the pipe would not stay full, and air would come in. ${instead}.`,
    actual: shownLike(usable, passed),
    limit: `at most ${usable.toString()}`,
    source: firstPrinciples.at("what comes in goes out"),
  };
}
