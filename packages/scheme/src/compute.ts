import { loopResistance, machineEnd } from "@leat/dc-transmission";
import type { AnyFormula } from "@leat/formula";
import { hydraulicPower, jetPower, shaftPower, wheelSpeed } from "@leat/impulse-turbine";
import { jetFlow, jetVelocity, nozzleDiameter } from "@leat/nozzles";
import { bracketedRoot } from "@leat/numerics";
import { reachHeadLoss } from "@leat/penstock";
import {
  geopotentialHeight,
  kinematicViscosity,
  normalGravity,
  standardAtmosphere,
  waterDensity,
} from "@leat/water";

import type { Plan } from "./plan.ts";
import {
  directCurrentPower,
  machineLoss,
  machinePower,
  nozzleHeadLoss,
  wheelLoss,
} from "./power-formulas.ts";
import type { FieldSurvey } from "./survey.ts";
import { UnbuildableError } from "./unbuildable.ts";

/** Calls the body of a formula on numbers by letter, its constants added. */
export type Use = <F extends AnyFormula>(
  formula: F,
  letters: Omit<Parameters<F["body"]>[0], keyof F["constants"]>,
) => ReturnType<F["body"]>;

const bodies = new WeakMap<
  AnyFormula,
  { body: (letters: never) => unknown; constants: Readonly<Record<string, number>> }
>();

/** Calls bodies and keeps nothing. */
export const useBody: Use = ((formula: AnyFormula, letters: object) => {
  let known = bodies.get(formula);
  if (!known) {
    known = { body: formula.body, constants: formula.constants };
    bodies.set(formula, known);
  }
  return known.body({ ...letters, ...known.constants } as never);
}) as Use;

/** Gravity and air of the site, which are not uncertain enough to matter. */
export interface SiteNumbers {
  /** Gravity, in m/s². */
  readonly gravity: number;
  /** Air pressure, in Pa. */
  readonly atmosphere: number;
}

/** What one reach loses. */
export interface ReachNumbers {
  /** Head lost to friction. */
  readonly friction: number;
  /** Head lost in fittings. */
  readonly fittings: number;
  /** Velocity of the water. */
  readonly velocity: number;
  /** Reynolds number. */
  readonly reynolds: number;
  /** Darcy friction factor. */
  readonly frictionFactor: number;
}

/** Numbers of a scheme, in coherent units. */
export interface Numbers {
  /** Density of the water. */
  readonly density: number;
  /** Kinematic viscosity of the water. */
  readonly viscosity: number;
  /** Flow of the stream. */
  readonly measured: number;
  /** Flow that stays in the stream. */
  readonly left: number;
  /** Flow that may be taken. */
  readonly usable: number;
  /** Intake water level over the nozzles. */
  readonly grossHead: number;
  /** Flow through the nozzles. */
  readonly flow: number;
  /** Head before the nozzles. */
  readonly netHead: number;
  /** What each reach loses. */
  readonly reaches: readonly ReachNumbers[];
  /** Bore of each nozzle. */
  readonly nozzles: readonly number[];
  /** Speed of the jets. */
  readonly jetVelocity: number;
  /** Power of the water over the gross head. */
  readonly gross: number;
  /** Power lost to friction, reach by reach. */
  readonly frictionPower: readonly number[];
  /** Power lost in fittings, reach by reach. */
  readonly fittingsPower: readonly number[];
  /** Power lost in the nozzles. */
  readonly nozzlePower: number;
  /** Power of the jets. */
  readonly jets: number;
  /** Power lost in the wheel. */
  readonly wheelPower: number;
  /** Power at the shaft. */
  readonly shaft: number;
  /** Power lost in the machine. */
  readonly machineLossPower: number;
  /** Direct-current power at the machine's terminals. */
  readonly machine: number;
  /** Resistance of the cable, both ways. */
  readonly loop: number;
  /** Current in the cable. */
  readonly current: number;
  /** Volts at the machine. */
  readonly machineVolts: number;
  /** Power lost in the cable. */
  readonly cablePower: number;
  /** Power at the battery's terminals. */
  readonly delivered: number;
  /** Pressure at the nozzles with the water at rest. */
  readonly staticPressure: number;
  /** Speed of the wheel, where its diameter is known. */
  readonly wheelSpeed: number | undefined;
  /** Steps, residual and bracket of the flow that the jets pass; absent where the flow is the stream's. */
  readonly convergence:
    | {
        readonly iterations: number;
        readonly residual: number;
        readonly bracket: readonly [number, number];
      }
    | undefined;
}

/** Values by the key of their parameter. */
export type Values = Readonly<Record<string, number>>;

/** Gravity and air at the site: by place where it is given, else the standard. */
export function siteOf(plan: { readonly survey: FieldSurvey }, use: Use): SiteNumbers {
  const { latitude, elevation } = plan.survey.site;
  const z = elevation?.["~si"] ?? 0;
  const gravity = latitude ? use(normalGravity, { φ: latitude["~si"], h: z }) : 9.80665;
  const atmosphere = elevation
    ? use(standardAtmosphere, { H: use(geopotentialHeight, { z }) }).p
    : 101_325;
  return { gravity, atmosphere };
}

/** Properties of the water. */
export function waterOf(
  values: Values,
  site: SiteNumbers,
  use: Use,
): { density: number; viscosity: number } {
  const at = { T: values["site.waterTemperature"] as number, p: site.atmosphere };
  return { density: use(waterDensity, at), viscosity: use(kinematicViscosity, at) };
}

/** The flow of the stream, what stays and what may be taken. */
export function streamOf(
  plan: Pick<Plan, "leaveBy">,
  values: Values,
): { measured: number; left: number; usable: number } {
  const measured = values["stream.flow"] as number;
  const leave = values["stream.leave"] as number;
  const left = plan.leaveBy === "flow" ? leave : leave * measured;
  return { measured, left, usable: measured - left };
}

/** What each reach loses at a flow. */
function reachesAt(
  plan: Plan,
  values: Values,
  flow: number,
  viscosity: number,
  g: number,
  use: Use,
): ReachNumbers[] {
  return plan.reaches.map(({ fittings }, i) => {
    const key = `reaches.${i + 1}`;
    const scale = values[`${key}.fittings`] ?? 1;
    const D = values[`${key}.bore`] as number;
    const ε = values[`${key}.roughness`] as number;
    if (ε >= D) {
      throw new UnbuildableError(
        "rougher-than-wide",
        ["reaches", i],
        `reach ${i + 1} would be rougher (${(ε * 1000).toPrecision(3)} mm) than it is wide (${(D * 1000).toPrecision(3)} mm): no water passes. Check the unit of its bore and of its roughness.`,
      );
    }
    const { hf, hk, V, Re, f } = use(reachHeadLoss, {
      Q: flow,
      D,
      ε,
      L: values[`${key}.length`] as number,
      ν: viscosity,
      fittings: fittings.map(({ coefficient, count }) => ({ K: coefficient * scale, n: count })),
      g,
    });
    return { friction: hf, fittings: hk, velocity: V, reynolds: Re, frictionFactor: f };
  });
}

function totalLoss(reaches: readonly ReachNumbers[]): number {
  let sum = 0;
  for (const { friction, fittings } of reaches) sum += friction + fittings;
  return sum;
}

/**
 * A scheme from its numbers: the one chain, from water to battery, that everything else looks at.
 *
 * @param plan - What is decided.
 * @param values - Every parameter by its key.
 * @param use - Calls bodies; one that also records makes the calculation sheet.
 * @returns The numbers.
 * @throws {@link UnbuildableError} where there is no fall, nothing may be taken, or the pipe cannot
 *   carry the flow.
 */
export function compute(plan: Plan, values: Values, use: Use): Numbers {
  const site = siteOf(plan, use);
  const g = site.gravity;
  const { density, viscosity } = waterOf(values, site, use);
  const { measured, left, usable } = streamOf(plan, values);
  const grossHead = values["fall.gross"] as number;
  if (!(grossHead > 0)) {
    throw new UnbuildableError(
      "no-fall",
      ["fall"],
      `the fall comes out as ${grossHead.toFixed(1)} m: the water must stand above the nozzles. Check the reading, and whether the gauge lies above or below them.`,
    );
  }
  if (!plan.nozzlesGiven && !(usable > 0)) {
    throw new UnbuildableError(
      "nothing-to-take",
      ["stream", "leave"],
      `what must stay (${(left * 1000).toFixed(1)} L/s) is all that was measured (${(measured * 1000).toFixed(1)} L/s): nothing may be taken. Measure in another season, or ask the regulator.`,
    );
  }
  const Cd = values["jets.coefficient"] as number;
  const Cv = values["jets.velocityCoefficient"] as number;

  const given = plan.nozzlesGiven
    ? Array.from({ length: plan.jets }, (_, i) => values[`jets.nozzles.${i + 1}`] as number)
    : undefined;
  const passed = given && flowThrough(plan, values, given, Cd, grossHead, viscosity, g);
  const flow = passed ? passed.flow : usable;
  const reaches = reachesAt(plan, values, flow, viscosity, g, use);
  const netHead = grossHead - totalLoss(reaches);
  if (!(netHead > 0)) {
    throw new UnbuildableError(
      "pipe-cannot-carry",
      ["reaches"],
      given
        ? `the pipe takes all of the ${grossHead.toFixed(1)} m of fall before the nozzles pass any water: nothing is left for the jets. Name a wider pipe.`
        : `the pipe would lose ${totalLoss(reaches).toFixed(1)} m of the ${grossHead.toFixed(1)} m of fall at the ${(flow * 1000).toFixed(1)} L/s that may be taken: nothing is left for the jets. Name a wider pipe, leave more in the stream, or give the nozzles.`,
    );
  }
  const bore = given ? undefined : use(nozzleDiameter, { Q: flow / plan.jets, H: netHead, Cd, g });
  const nozzles = given ?? Array.from({ length: plan.jets }, () => bore as number);
  if (given) for (const d of given) use(jetFlow, { H: netHead, d, Cd, g });

  const power = (h: number): number => use(hydraulicPower, { ρ: density, g, Q: flow, h });
  const gross = power(grossHead);
  const frictionPower = reaches.map(({ friction }) => power(friction));
  const fittingsPower = reaches.map(({ fittings }) => power(fittings));
  const nozzlePower = power(use(nozzleHeadLoss, { H: netHead, Cv }));
  const velocity = use(jetVelocity, { H: netHead, Cv, g });
  const jets = use(jetPower, { ρ: density, Q: flow, V: velocity });
  const η = values["wheel.efficiency"] as number;
  const wheelPower = use(wheelLoss, { P: jets, η });
  const shaft = use(shaftPower, { P: jets, η });
  const machineEfficiency = values["machine.efficiency"] as number;
  const machineLossPower = use(machineLoss, { Ps: shaft, η: machineEfficiency });
  const machine = use(machinePower, { Ps: shaft, η: machineEfficiency });

  const { conductor } = plan;
  const loop = use(loopResistance, {
    L: values["cable.length"] as number,
    r: conductor.resistancePerLength["~si"],
    t1: conductor.at["~si"],
    α: conductor.temperatureCoefficient["~si"],
    t2: values["cable.temperature"] as number,
  });
  const V = values["bank.charging"] as number;
  const { I, Vm, Pl } = use(machineEnd, { P: machine, V, R: loop });
  const D = values["wheel.diameter"];
  return {
    density,
    viscosity,
    measured,
    left,
    usable,
    grossHead,
    flow,
    netHead,
    reaches,
    nozzles,
    jetVelocity: velocity,
    gross,
    frictionPower,
    fittingsPower,
    nozzlePower,
    jets,
    wheelPower,
    shaft,
    machineLossPower,
    machine,
    loop,
    current: I,
    machineVolts: Vm,
    cablePower: Pl,
    delivered: use(directCurrentPower, { V, I }),
    staticPressure: density * g * grossHead,
    wheelSpeed:
      D === undefined
        ? undefined
        : use(wheelSpeed, { h: netHead, D, φ: values["wheel.speedRatio"] as number, Cv, g }),
    convergence: passed?.convergence,
  };
}

/** The flow at which the head that is left drives just that flow through the nozzles. */
function flowThrough(
  plan: Plan,
  values: Values,
  nozzles: readonly number[],
  Cd: number,
  grossHead: number,
  viscosity: number,
  g: number,
): { flow: number; convergence: NonNullable<Numbers["convergence"]> } {
  const flowAt = (head: number): number => {
    let sum = 0;
    for (const d of nozzles) sum += useBody(jetFlow, { H: head, d, Cd, g });
    return sum;
  };
  const miss = (head: number): number =>
    head === 0
      ? -grossHead
      : head + totalLoss(reachesAt(plan, values, flowAt(head), viscosity, g, useBody)) - grossHead;
  const { root, iterations, residual, bracket } = bracketedRoot(miss, 0, grossHead);
  return { flow: flowAt(root), convergence: { iterations, residual, bracket } };
}
