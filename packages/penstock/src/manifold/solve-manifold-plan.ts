import { NumericsError } from "@leat/numerics";

import {
  colebrookExponentOf,
  colebrookRoot,
  laminarUpTo,
  transitionFactorOf,
  turbulentFrom,
} from "../friction/friction-factor-of.ts";
import type { ManifoldPlan } from "./manifold-plan.ts";

/** What a flow may be off by, over the least flow of an open jet. */
const tolerance = 1e-10;

/** Passes that are never needed: four or five do. */
const mostPasses = 200;

/** What heads may be off by, over the fall, for rounding alone. */
const rounding = 64 * Number.EPSILON;

/** A step that leaves more than this of what the heads were off by is looked at. */
const goodStep = 0.5;

/** Halvings of a step. */
const mostTries = 40;

/**
 * Solves flow and head of every open jet and of every pipe together, in place.
 *
 * Each jet's path must use up the fall: Σ over its pipes (hf + hk) + height + Q²/(2·g·(Cd·A)²) = fall. All losses grow with their
 * flows, so there is one answer, and it is the least of a convex function, whose gradient these equations are. Newton's steps go to
 * it: tangents of all pipes are added up along the tree, in series and in parallel, so that a step costs one pass down and up and no
 * matrix. A step after which the heads are not half as far off is shortened to where the function is least along it, inside a bracket.
 *
 * What the flows can be off by follows from what the heads h are off by, rounding included, whatever the path to them:
 * |ΔQ| ≤ 2·|h|/min(Q/(2·g·(Cd·A)²)).
 * The solver stops where that is 1e-10 of the least jet, or where the heads are off by rounding only.
 *
 * Where an open jet stands higher than the water would reach, air would be drawn in: `dry` then names it, and the other numbers are no
 * answer.
 *
 * @param plan - The penstock; the jets whose `open` is 1 are.
 * @returns Passes that were made. Where no jet is open, heads are those at rest.
 * @throws NumericsError `not-converged` where a number of the plan is none.
 */
export function solveManifoldPlan(plan: ManifoldPlan): number {
  plan.iterations = 0;
  plan.shortened = false;
  if (!guess(plan)) {
    assess(plan);
    return plan.iterations;
  }
  const { jetFlow, step } = plan;
  let wasOff = Number.POSITIVE_INFINITY;
  while (plan.iterations < mostPasses) {
    assess(plan);
    if (settled(plan)) return plan.iterations;
    if (!(plan.residual <= goodStep * wasOff)) {
      shorten(plan);
      if (settled(plan)) return plan.iterations;
    }
    wasOff = plan.residual;
    aim(plan);
    for (let j = 0; j < jetFlow.length; j++) jetFlow[j] = jetFlow[j]! + step[j]!;
  }
  throw new NumericsError(
    "not-converged",
    `manifold: no flows were found in ${mostPasses} passes; heads are off by ${plan.residual}. Check that every number of the plan is one.`,
    { iterations: plan.iterations, residual: plan.residual },
  );
}

/**
 * First flows: friction factors held, so that every loss goes with the square of its flow and the tree has a closed answer, were all
 * jets of one height.
 *
 * @returns Whether any jet is open.
 */
function guess(plan: ManifoldPlan): boolean {
  const { above, jetAt, open, nozzle, height, guessed, guessedRoot, root } = plan;
  const { belowFlow: passing, resistance: share, flow, jetFlow, step } = plan;
  let [many, high] = [0, 0];
  for (let j = 0; j < open.length; j++) {
    jetFlow[j] = 0;
    step[j] = 0;
    if (open[j] === 0) continue;
    many += 1;
    high += height[j]!;
  }
  if (many === 0) return false;
  passing.fill(0);
  for (let i = above.length - 1; i >= 0; i--) {
    root[i] = guessedRoot[i]!;
    const j = jetAt[i]!;
    const passes = passing[i]!;
    let last = 0;
    if (j < 0) last = passes > 0 ? 1 / (passes * passes) : 0;
    else if (open[j] !== 0) last = nozzle[j]!;
    share[i] = last > 0 ? 1 / Math.sqrt(last + guessed[i]!) : 0;
    const p = above[i]!;
    if (p >= 0) passing[p] = passing[p]! + share[i]!;
  }
  const mean = plan.fall - high / many;
  const fall = mean > 0 ? mean : plan.fall;
  for (let i = 0; i < above.length; i++) {
    const p = above[i]!;
    const own = share[i]!;
    if (p < 0) flow[i] = own * Math.sqrt(fall);
    else flow[i] = own > 0 ? (flow[p]! * own) / passing[p]! : 0;
    if (jetAt[i]! >= 0) jetFlow[jetAt[i]!] = flow[i]!;
  }
  return true;
}

/** Losses and their tangents at the flows of the jets, heads, and what each jet's path is off by. */
function assess(plan: ManifoldPlan): void {
  const { above, jetAt, relative, reynoldsPerFlow, wall, local, atTurbulent, root } = plan;
  const { open, nozzle, height, jetFlow, netHead, miss, fall } = plan;
  const { flow, friction, fittings, head, slope, resistance, belowFlow, conductance } = plan;
  plan.iterations += 1;
  belowFlow.fill(0);
  conductance.fill(0);
  let total = 0;
  for (let i = above.length - 1; i >= 0; i--) {
    const j = jetAt[i]!;
    let q = 0;
    let r = 0;
    if (j < 0) {
      q = belowFlow[i]!;
      r = conductance[i]! > 0 ? 1 / conductance[i]! : 0;
    } else if (open[j] === 0) netHead[j] = 0;
    else {
      q = jetFlow[j]!;
      const half = nozzle[j]! * Math.abs(q);
      netHead[j] = half * q;
      // At no flow the tangent is level, and a step along it would have no end.
      r = half > 0 ? 2 * half : Math.sqrt(nozzle[j]! * fall);
    }
    if (r === 0) {
      flow[i] = 0;
      friction[i] = 0;
      fittings[i] = 0;
      resistance[i] = 0;
      continue;
    }
    const size = Math.abs(q);
    const reynolds = reynoldsPerFlow[i]! * size;
    let perFlow: number;
    let power: number;
    if (reynolds >= turbulentFrom) {
      const x = colebrookRoot(reynolds, relative[i]!, undefined, root[i]!);
      root[i] = x;
      perFlow = (wall[i]! * size) / (x * x);
      power = colebrookExponentOf(x, reynolds, relative[i]!);
    } else if (reynolds > laminarUpTo) {
      const factor = transitionFactorOf(reynolds, atTurbulent[i]!);
      perFlow = wall[i]! * size * factor;
      // A straight line: its rise over its height, from where it stands at a Reynolds number of zero.
      power = 3 - transitionFactorOf(0, atTurbulent[i]!) / factor;
    } else {
      perFlow = (64 * wall[i]!) / reynoldsPerFlow[i]!;
      power = 1;
    }
    const localPerFlow = local[i]! * size;
    const tangent = perFlow * power + 2 * localPerFlow;
    flow[i] = q;
    friction[i] = perFlow * q;
    fittings[i] = localPerFlow * q;
    slope[i] = tangent;
    resistance[i] = r + tangent;
    const p = above[i]!;
    if (p < 0) total += q;
    else {
      belowFlow[p] = belowFlow[p]! + q;
      conductance[p] = conductance[p]! + 1 / (r + tangent);
    }
  }
  plan.total = total;

  let off = 0;
  let squares = 0;
  let least = Number.POSITIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  let stiffness = Number.POSITIVE_INFINITY;
  let dry = -1;
  for (let i = 0; i < above.length; i++) {
    const p = above[i]!;
    const at = (p < 0 ? fall : head[p]!) - (friction[i]! + fittings[i]!);
    head[i] = at;
    const j = jetAt[i]!;
    if (j < 0 || open[j] === 0) continue;
    const missed = at - height[j]! - netHead[j]!;
    const q = jetFlow[j]!;
    const size = Math.abs(q);
    miss[j] = missed;
    if (q < lowest) {
      lowest = q;
      dry = j;
    }
    off = Math.max(off, Math.abs(missed));
    squares += missed * missed;
    least = Math.min(least, size);
    stiffness = Math.min(stiffness, nozzle[j]! * size);
  }
  plan.residual = off;
  plan.least = least;
  plan.within = (2 * (Math.sqrt(squares) + rounding * fall)) / stiffness;
  plan.lowest = lowest;
  plan.dry = lowest > 0 ? -1 : dry;
}

/** Newton's step of each jet: what the tangents say the paths need to be off by nothing. */
function aim(plan: ManifoldPlan): void {
  const { above, jetAt, miss, resistance, conductance, slope, lift, drawn, step } = plan;
  drawn.fill(0);
  for (let i = above.length - 1; i >= 0; i--) {
    const r = resistance[i]!;
    if (r === 0) continue;
    const j = jetAt[i]!;
    const own = j >= 0 ? -miss[j]! : drawn[i]! / conductance[i]!;
    lift[i] = own;
    const p = above[i]!;
    if (p >= 0) drawn[p] = drawn[p]! + own / r;
  }
  for (let i = 0; i < above.length; i++) {
    const r = resistance[i]!;
    if (r === 0) continue;
    const p = above[i]!;
    // From here on `drawn` is the change of head at the lower end.
    const from = p < 0 ? 0 : drawn[p]!;
    const more = (from - lift[i]!) / r;
    drawn[i] = from - slope[i]! * more;
    const j = jetAt[i]!;
    if (j >= 0) step[j] = more;
  }
}

/** Whether flows are known well enough, or as well as numbers of this size allow, or a jet is proven to draw air. */
function settled({ within, least, lowest, residual, fall }: ManifoldPlan): boolean {
  return within <= tolerance * least || residual <= rounding * fall || lowest < -within;
}

/** Goes back along the last step to where the function that has its least at the answer is least. */
function shorten(plan: ManifoldPlan): void {
  const { jetFlow, before, miss, open, step } = plan;
  // The slope of that function along the step, the other way round: above zero where the step begins, and falling all along.
  if (along(miss, step, open) >= 0) return;
  plan.shortened = true;
  for (let j = 0; j < step.length; j++) before[j] = jetFlow[j]! - step[j]!;
  let [low, high] = [0, 1];
  for (let tries = 0; tries < mostTries && high - low > 1e-3 * high; tries++) {
    const middle = 0.5 * (low + high);
    for (let j = 0; j < step.length; j++) jetFlow[j] = before[j]! + middle * step[j]!;
    assess(plan);
    if (along(miss, step, open) >= 0) low = middle;
    else high = middle;
  }
}

function along(miss: Float64Array, step: Float64Array, open: Uint8Array): number {
  let sum = 0;
  for (let j = 0; j < step.length; j++) if (open[j] !== 0) sum += miss[j]! * step[j]!;
  return sum;
}
