import { type CallOptions, limitNotices, NonPhysicalError, type Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { reachHeadLoss } from "../loss/reach-head-loss.ts";
import { fault, refuseIf } from "../refusal.ts";
import { byPower, setsOf, shortOfWater } from "./jet-sets.ts";
import { type Figures, figuresOf, type Spreads, spreadsOf, takerOf } from "./manifold-figures.ts";
import {
  metres,
  numbersOf,
  requireQuantity,
  type Structure,
  structureOf,
  what,
} from "./manifold-structure.ts";
import type {
  GaugeReading,
  JetState,
  ManifoldInput,
  ManifoldState,
  NamedLoss,
  PipeState,
} from "./manifold.ts";

/**
 * A penstock and every jet on its branches, solved together: flows, heads and pressures that fit each other for the jets that are open.
 *
 *     for each open jet:  fall = Σ over its pipes (f·L/D + K)·V²/(2·g) + height + (Q/(Cd·A))²/(2·g)
 *
 * Losses are those of `reachHeadLoss`: Colebrook's friction where flow is turbulent, laminar and in transition as there; fittings and
 * valves take so many velocity heads of their own pipe, whatever share turns off. Heads are total heads: where pipes meet, all have the
 * same, and what a change of velocity there takes is for the fittings to say. A gauge does not see the velocity head of its pipe.
 *
 * Bore, roughness and fittings are taken with what they may be off by, as `spreadOfPipe` and `spreadOfFittings` have it, under
 * `reaches.0.bore` or `branches.1.fittings`; a hose, a length, a level, a nozzle and its coefficients bring their own.
 *
 * Limits of the laws of friction never stop it: what is exceeded stands among the notices. A stop does where the jets would pass more
 * than `usable`: the pipe would not stay full, air would come in, and the figures are not what would happen. It names the jets that can
 * be held up instead.
 *
 * @param input - Levels, reaches, branches with their nozzles, which are open, what may be taken.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Every pipe, every jet, the gauge, the power account, how well it is solved.
 * @throws NonPhysicalError no fall, a nozzle wider than its hose, every jet closed, a jet that would draw air; with the path of each.
 * @throws QuantityError another kind, or levels over two datums.
 * @example
 * ```ts
 * import { solveManifold } from "@leat/penstock";
 * import { readPipe } from "@leat/pipe-sizes";
 * import { bar, celsius, format, litrePerSecond, metre, millimetre, one, point, watt } from "@leat/quantity";
 *
 * const level = (height: number) => point("site datum", metre.of(height), "tail water");
 * const hose = { insideDiameter: millimetre.of(38), roughness: millimetre.of(0.01) };
 * const jet = (length: number, diameter: number) => ({
 *   pipe: hose,
 *   length: metre.of(length).as("pipe length"),
 *   fittings: [{ coefficient: one.of(1.8).as("coefficient") }],
 *   nozzle: {
 *     diameter: millimetre.of(diameter),
 *     dischargeCoefficient: one.of(0.95).as("coefficient"),
 *     velocityCoefficient: one.of(0.97).as("coefficient"),
 *     elevation: level(0.6),
 *   },
 * });
 * const { flow, netHead, gauge, jets, account } = solveManifold({
 *   water: level(41),
 *   tailWater: level(0),
 *   reaches: [{ pipe: readPipe("110 mm PE100 SDR 17"), length: metre.of(260).as("pipe length") }],
 *   branches: [jet(1, 16), jet(1.5, 12)],
 *   temperature: celsius.at(10),
 * });
 * format(flow, litrePerSecond, { plusMinus: true }); // => "8.38 ± 0.05 L/s (k = 1.96)"
 * jets.map((each) => each.netHead.in(metre).toFixed(2)); // => ["35.97", "36.84"]
 * [netHead.in(metre).toFixed(2), gauge.running.in(bar).toFixed(2)]; // => ["36.28", "3.71"]
 * account.jets.in(watt).toFixed(0); // => "2804"
 * ```
 */
export function solveManifold(input: ManifoldInput, options: CallOptions = {}): ManifoldState {
  const structure = structureOf(input, options);
  const open = openOf(structure, input.open);
  const list = structure.scalars.map((each) => each["~si"]);
  const figures = figuresOf(structure, list, open);
  refuseDry(structure, figures);
  const state = stateOf(structure, figures, spreadsOf(structure, list, open), open);
  const notices = [
    ...shortNotices(input, structure, state),
    ...frictionNotices(structure, state, input),
  ];
  for (const notice of notices) options.onNotice?.(notice);
  return { ...state, notices };
}

/** The jets that are open, or a refusal. */
export function openOf({ jets, pipes }: Structure, asked: readonly number[] | undefined): number[] {
  const shut = (j: number): boolean => pipes[jets[j]!.pipe]!.shut;
  const open = [...(asked ?? jets.map((_, j) => j).filter((j) => !shut(j)))];
  const problems: Notice[] = [];
  open.forEach((j, i) => {
    const path = ["open", i];
    const known = jets[j];
    if (!known) {
      problems.push(
        fault(what, path, `open.${i} = ${j} is none of the jets, 0 to ${jets.length - 1}.`),
      );
    } else if (open.indexOf(j) < i) {
      problems.push(fault(what, path, `open.${i}: ${known.name} is named twice.`));
    } else if (shut(j)) {
      problems.push(
        fault(what, path, `open.${i}: ${known.name} is behind a valve that is shut. Open it.`),
      );
    }
  });
  if (open.length === 0) {
    problems.push(
      fault(
        what,
        ["open"],
        "every jet is closed: nothing runs, and all that a gauge shows is the fall. Open one.",
      ),
    );
  }
  refuseIf(problems);
  return open;
}

/** Refuses what a jet would draw air into. */
export function refuseDry({ jets }: Structure, { plan, numbers }: Figures): void {
  const jet = jets[plan.dry];
  if (!jet) return;
  const height = metres(numbers.jets[plan.dry]!.height);
  throw new NonPhysicalError([
    fault(
      what,
      [...jet.path, "elevation"],
      `${jet.path.join(".")}: ${jet.name} stands ${height} above the tail water, and with the jets that are open the water does not come so high there: air would be drawn in. Close it, or set it lower.`,
      { code: `${what}/draws-air` },
    ),
  ]);
}

/** Figures as quantities, in the order in which they were put in. */
function stateOf(
  structure: Structure,
  figures: Figures,
  spreads: Spreads,
  open: readonly number[],
): Omit<ManifoldState, "notices"> {
  const { numbers, plan } = figures;
  const take = takerOf(figures.list, spreads);
  const gaugeReading = (): GaugeReading => ({
    static: take("pressure"),
    running: take("pressure"),
  });
  const grossHead = take("gross head");
  const flow = take("volume flow");
  const netHead = take("net head");
  const gauge = gaugeReading();
  const gross = take("hydraulic power");
  const delivered = take("hydraulic power");
  const losses: NamedLoss[] = [];
  const pipes = structure.pipes.map(({ path }, i): PipeState => {
    const state = {
      path,
      flow: take("volume flow"),
      velocity: take("velocity"),
      reynolds: take("ratio"),
      friction: take("head loss"),
      fittings: take("head loss"),
      valve: take("head loss"),
      totalHead: take("length"),
    };
    const there = {
      friction: numbers.pipes[i]!.length,
      fittings: numbers.fittings[i]!,
      valve: numbers.valves[i]!,
    };
    for (const name of ["friction", "fittings", "valve"] as const) {
      const power = take("hydraulic power");
      if (there[name] !== 0 && plan.flow[i] !== 0)
        losses.push({ name, path, head: state[name], power });
    }
    return state;
  });
  const jets = structure.jets.map(({ path, pipe }, j): JetState => {
    const state = {
      path,
      open: open.includes(j),
      pipes: wayTo(structure, pipe),
      flow: take("volume flow"),
      netHead: take("net head"),
      velocity: take("velocity"),
      diameter: take("length"),
      power: take("hydraulic power"),
      gauge: gaugeReading(),
    };
    const nozzle = { head: take("head loss"), power: take("hydraulic power") };
    const height = { head: take("head loss"), power: take("hydraulic power") };
    if (state.open) {
      losses.push({ name: "nozzle", path, ...nozzle });
      if (numbers.jets[j]!.height > 0)
        losses.push({ name: "height above tail water", path, ...height });
    }
    return state;
  });
  const half = Math.sqrt(open.length) * plan.within;
  return {
    grossHead,
    flow,
    netHead,
    gauge,
    pipes,
    jets,
    account: { gross, losses, jets: delivered },
    convergence: {
      iterations: plan.iterations,
      residual: plan.residual,
      bracket: [plan.total - half, plan.total + half],
    },
  };
}

/** Pipes from the intake to one, itself the last. */
function wayTo({ pipes }: Structure, last: number): number[] {
  const way: number[] = [];
  for (let i = last; i >= 0; i = pipes[i]!.above) way.unshift(i);
  return way;
}

/** A stop where the jets would pass more than there is. */
function shortNotices(
  { usable }: ManifoldInput,
  structure: Structure,
  { flow }: Pick<ManifoldState, "flow">,
): Notice[] {
  if (!usable) return [];
  const there = requireQuantity(usable, ["usable"], ["volume flow"]);
  if (flow["~si"] <= there) return [];
  const numbers = numbersOf(
    structure,
    structure.scalars.map((each) => each["~si"]),
  );
  const [best] = setsOf(structure, numbers)
    .sets.filter((set) => set.flow <= there)
    .toSorted(byPower);
  return [shortOfWater(structure, flow["~si"], usable, best)];
}

/** What the laws of friction do not cover, pipe by pipe. */
function frictionNotices(
  structure: Structure,
  state: Pick<ManifoldState, "pipes">,
  { gravity }: ManifoldInput,
): Notice[] {
  return structure.pipes.flatMap(({ path }, i) => {
    const { flow } = state.pipes[i]!;
    if (flow["~si"] === 0) return [];
    const [insideDiameter, roughness, length] = structure.scalars.slice(5 + 5 * i);
    return limitNotices(reachHeadLoss, {
      flow,
      insideDiameter,
      roughness,
      length: (length as Quantity<"pipe length">).as("pipe length"),
      kinematicViscosity: structure.scalars[3],
      gravity,
    }).map((notice) => ({
      ...notice,
      path: [...path, ...notice.path],
      message: `${path.join(".")}: ${notice.message}`,
    }));
  });
}
