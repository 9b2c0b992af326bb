import type { CallOptions } from "@leat/formula";
import { bracketedRoot, expandBracket } from "@leat/numerics";
import { boreOf } from "@leat/pipe-sizes";
import {
  coherentUnit,
  cubicMetrePerSecond,
  metre,
  one,
  type Point,
  type Quantity,
} from "@leat/quantity";
import { kinematicViscosity, waterDensity } from "@leat/water";

import { frictionExponentOf } from "../friction/friction-exponent-of.ts";
import { pipeVelocityOf } from "../loss/pipe-velocity.ts";
import { frictionHeadOf, velocityHeadsOf } from "../loss/reach-head-loss.ts";
import { reynoldsNumberOf } from "../loss/reynolds-number.ts";
import type { Profile } from "../profile/profile.ts";
import { fault, refuseIf } from "../refusal.ts";
import { gravityOr } from "../standard-gravity.ts";

/** A reach on plain numbers in coherent units. */
export interface PlainReach {
  /** Inside diameter. */
  readonly bore: number;
  /** Absolute roughness of the wall. */
  readonly roughness: number;
  /** Length along the pipe. */
  readonly length: number;
  /** Sum of the coefficients of its fittings. */
  readonly coefficient: number;
}

/** What a pipe loses at a flow. */
export interface LossAndExponent {
  /** Head lost. */
  readonly loss: number;
  /** The power of the flow that it rises with, there; 0 where nothing is lost. */
  readonly exponent: number;
}

/**
 * Head lost by reaches in series and the power of the flow that it rises with there, on plain numbers in coherent units.
 *
 * @param reaches - The reaches.
 * @param flow - Volume flow, above 0.
 * @param viscosity - Kinematic viscosity of the water.
 * @param gravity - Gravity at the site.
 * @returns Loss and exponent.
 */
export function lossAndExponentOf(
  reaches: readonly PlainReach[],
  flow: number,
  viscosity: number,
  gravity: number,
): LossAndExponent {
  let loss = 0;
  let rise = 0;
  for (const { bore, roughness, length, coefficient } of reaches) {
    const velocity = pipeVelocityOf(flow, bore);
    const wall = frictionHeadOf(flow, bore, roughness, length, viscosity, gravity);
    const fittings = velocityHeadsOf(coefficient, velocity, gravity);
    const reynolds = reynoldsNumberOf(velocity, bore, viscosity);
    loss += wall + fittings;
    rise += frictionExponentOf(reynolds, roughness / bore) * wall + 2 * fittings;
  }
  return { loss, exponent: loss > 0 ? rise / loss : 0 };
}

/** What the flow of greatest power is looked for in. */
export interface GreatestPowerInput {
  /** The pipe. */
  readonly profile: Profile;
  /** Water level at the intake, over the datum of the profile. */
  readonly water: Point<"site datum">;
  /** Temperature of the water. */
  readonly temperature: Point<"absolute zero">;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
}

/** The flow beyond which more water gives less power. */
export interface GreatestPower {
  /** The flow. */
  readonly flow: Quantity<"volume flow">;
  /** Share of the gross head that the pipe takes there, 1/(1 + n). */
  readonly share: Quantity<"ratio">;
  /** n, the power of the flow that the loss rises with there. */
  readonly lossExponent: Quantity<"ratio">;
  /** Head that is left. */
  readonly netHead: Quantity<"net head">;
  /** Power of the water before the nozzle. */
  readonly power: Quantity<"hydraulic power">;
}

/**
 * The flow of greatest power of a pipe: where d(Q·(H − h))/dQ = 0, h·(1 + n) = H.
 *
 * It is a limit to stay well below, for beyond it more water gives less power; it is no aim. A third of the head is lost there where all
 * loss goes with the square of the flow, some 0.36 of it in smooth plastic. Middle figures are taken for bore, wall and fittings, so
 * that it has no uncertainty.
 *
 * @param input - Pipe, water.
 * @param options - What is assumed.
 * @returns Flow, share, exponent, head and power.
 * @throws NonPhysicalError a pipe that does not end below the water.
 * @throws NumericsError where no flow is found.
 */
export function greatestPowerFlow(
  input: GreatestPowerInput,
  options: CallOptions = {},
): GreatestPower {
  const { profile, water, temperature } = input;
  const gravity = gravityOr(input.gravity, "greatest-power-flow", options)["~si"];
  const viscosity = kinematicViscosity({ temperature })["~si"];
  const end = profile.stations.at(-1);
  const head = end ? water.minus(end.elevation)["~si"] : 0;
  if (!(head > 0)) {
    refuseIf([
      fault(
        "greatest-power-flow",
        ["water"],
        `water = ${water.toString()} does not stand above the end of the pipe. Check the two levels.`,
      ),
    ]);
  }
  const reaches = plainReaches(profile);
  const miss = (flow: number): number => {
    if (flow === 0) return -head;
    const { loss, exponent } = lossAndExponentOf(reaches, flow, viscosity, gravity);
    return loss * (1 + exponent) - head;
  };
  // guard: where the search begins, at 1 m/s or so: the flow does not depend on it
  const start = Math.min(...reaches.map(({ bore }) => bore * bore));
  const { lo, hi } = expandBracket(miss, 0, start, { least: 0 });
  const flow = bracketedRoot(miss, lo, hi).root;
  const { loss, exponent } = lossAndExponentOf(reaches, flow, viscosity, gravity);
  const density = waterDensity({ temperature })["~si"];
  return {
    flow: cubicMetrePerSecond.of(flow),
    share: one.of(loss / head),
    lossExponent: one.of(exponent),
    netHead: metre.of(head - loss).as("net head"),
    power: coherentUnit("hydraulic power").of(density * gravity * flow * (head - loss)),
  };
}

/** Reaches of a profile on plain numbers: middle figures. */
export function plainReaches({ reaches }: Profile): PlainReach[] {
  return reaches.map(({ pipe, length, fittings }) => ({
    bore: boreOf(pipe)["~si"],
    roughness: pipe.roughness.typical["~si"],
    length: length["~si"],
    coefficient: fittings.reduce((sum, { coefficient }) => sum + coefficient["~si"], 0),
  }));
}
