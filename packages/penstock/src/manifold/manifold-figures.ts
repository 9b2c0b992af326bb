import { Quantity } from "@leat/quantity";

import { frictionFactorOf } from "../friction/friction-factor-of.ts";
import { pipeVelocityOf } from "../loss/pipe-velocity.ts";
import { velocityHeadsOf } from "../loss/reach-head-loss.ts";
import { reynoldsNumberOf } from "../loss/reynolds-number.ts";
import { ManifoldPlan } from "./manifold-plan.ts";
import { type Numbers, numbersOf, type Structure } from "./manifold-structure.ts";
import { solveManifoldPlan } from "./solve-manifold-plan.ts";

/** All figures of a solved penstock in one order, and the plan that they come from. */
export interface Figures {
  /** The numbers that went in. */
  readonly numbers: Numbers;
  /** The plan, solved. */
  readonly plan: ManifoldPlan;
  /** Figures in coherent units, in the order in which they are taken out. */
  readonly list: readonly number[];
}

/**
 * Solves a list of numbers and works the figures out from the flows: losses by the bodies that everything else uses, so that the power
 * account is a check on the solver.
 *
 * @param structure - Pipes and jets.
 * @param list - Their numbers.
 * @param open - Jets that are open.
 * @returns The figures; where a jet would draw air, `plan.dry` names it and they are no answer.
 */
export function figuresOf(
  structure: Structure,
  list: ArrayLike<number>,
  open: readonly number[],
): Figures {
  const numbers = numbersOf(structure, list);
  const plan = new ManifoldPlan(numbers);
  plan.open.fill(0);
  for (const j of open) plan.open[j] = 1;
  solveManifoldPlan(plan);
  return { numbers, plan, list: figures(structure, numbers, plan) };
}

function figures({ reaches }: Structure, numbers: Numbers, plan: ManifoldPlan): number[] {
  const { fall, gravity: g, viscosity, density, gaugeHeight } = numbers;
  const specificWeight = density * g;
  const ofPipes: number[] = [];
  const heads: number[] = [];
  const speeds: number[] = [];
  numbers.pipes.forEach(({ above, bore, roughness, length }, i) => {
    const flow = plan.flow[i]!;
    const velocity = pipeVelocityOf(flow, bore);
    const reynolds = reynoldsNumberOf(velocity, bore, viscosity);
    const factor = flow === 0 ? 0 : frictionFactorOf(reynolds, roughness / bore);
    const lost = [(factor * length) / bore, numbers.fittings[i]!, numbers.valves[i]!].map((k) =>
      velocityHeadsOf(k, velocity, g),
    );
    const [friction, fittings, valve] = lost as [number, number, number];
    const head = (above < 0 ? fall : heads[above]!) - friction - fittings - valve;
    heads.push(head);
    speeds.push(velocity);
    ofPipes.push(flow, velocity, reynolds, friction, fittings, valve, head);
    ofPipes.push(...lost.map((h) => specificWeight * flow * h));
  });
  const running = (i: number, height: number): number =>
    specificWeight * (heads[i]! - velocityHeadsOf(1, speeds[i]!, g) - height);

  const ofJets: number[] = [];
  let [weighted, jets] = [0, 0];
  numbers.jets.forEach(({ pipe, diameter, dischargeCoefficient: cd, height }, j) => {
    const flow = plan.jetFlow[j]!;
    const cv = numbers.velocityCoefficients[j]!;
    // What Torricelli's law asks for at this flow, not what the losses leave.
    const head =
      plan.open[j] === 0
        ? heads[pipe]! - height
        : velocityHeadsOf(1, pipeVelocityOf(flow, diameter) / cd, g);
    const velocity = plan.open[j] === 0 ? 0 : cv * Math.sqrt(2 * g * head);
    const power = 0.5 * density * flow * velocity * velocity;
    const taken = (1 - cv * cv) * head;
    weighted += flow * head;
    jets += power;
    ofJets.push(flow, head, velocity, diameter * Math.sqrt(cd / cv), power);
    ofJets.push(specificWeight * (fall - height), running(pipe, height));
    ofJets.push(taken, specificWeight * flow * taken, height, specificWeight * flow * height);
  });
  return [
    fall,
    plan.total,
    plan.total > 0 ? weighted / plan.total : 0,
    specificWeight * (fall - gaugeHeight),
    running(reaches - 1, gaugeHeight),
    specificWeight * plan.total * fall,
    jets,
    ...ofPipes,
    ...ofJets,
  ];
}

/** Contributions of the sources of uncertainty to each figure. */
export type Spreads = readonly ReadonlyMap<string, number>[];

/** Step of a difference, over the size of the number. */
const step = 6e-6;

/**
 * What each source of uncertainty of the input contributes to each figure: by slopes, source by source, so that what shares a source
 * stays correlated.
 *
 * @param structure - Pipes and jets with their quantities.
 * @param list - Their numbers.
 * @param open - Jets that are open.
 * @returns Contributions as standard uncertainties with their signs, for each figure.
 */
export function spreadsOf(
  structure: Structure,
  list: readonly number[],
  open: readonly number[],
): Spreads {
  const totals: Map<string, number>[] = [];
  structure.scalars.forEach((scalar, at) => {
    const sources = scalar["~sources"];
    if (!sources) return;
    const x = list[at]!;
    const h = step * (x === 0 ? Math.max(...Array.from(sources.values(), Math.abs)) : Math.abs(x));
    const moved = (by: number): readonly number[] =>
      figuresOf(
        structure,
        list.map((n, i) => (i === at ? n + by : n)),
        open,
      ).list;
    if (h === 0) return;
    const [above, below] = [moved(h), moved(-h)];
    above.forEach((high, i) => {
      const slope = (high - below[i]!) / (2 * h);
      const total = (totals[i] ??= new Map());
      for (const [id, c] of sources) total.set(id, (total.get(id) ?? 0) + slope * c);
    });
  });
  return totals;
}

/**
 * Takes figures out, one after the other, as quantities.
 *
 * @param list - The figures.
 * @param spreads - What is uncertain about them.
 * @returns Gives the next as a quantity of a kind.
 */
export function takerOf(
  list: readonly number[],
  spreads: Spreads,
): <K extends string>(kind: K) => Quantity<K> {
  let at = 0;
  return (kind) => {
    const i = at;
    at += 1;
    const spread = spreads[i];
    return new Quantity(kind, list[i]!, spread && new Map([...spread].filter(([, c]) => c !== 0)));
  };
}
