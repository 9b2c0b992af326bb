import { pipeVelocityOf } from "./pipe-velocity.ts";
import { frictionHeadOf, velocityHeadsOf } from "./reach-head-loss.ts";

/**
 * Head lost in a reach of one bore, wall and fittings together, on plain numbers in coherent units; zero at no flow.
 *
 * For loops: nothing is checked, and nothing tells that flow is in transition.
 *
 * @param flow - Volume flow, 0 or more.
 * @param diameter - Inside diameter.
 * @param roughness - Absolute roughness of the wall.
 * @param length - Length along the pipe.
 * @param coefficients - Sum of count × coefficient of the fittings, on the velocity head in this bore.
 * @param viscosity - Kinematic viscosity of the water.
 * @param gravity - Gravity at the site.
 * @returns The head lost.
 */
export function reachLossOf(
  flow: number,
  diameter: number,
  roughness: number,
  length: number,
  coefficients: number,
  viscosity: number,
  gravity: number,
): number {
  return (
    frictionHeadOf(flow, diameter, roughness, length, viscosity, gravity) +
    velocityHeadsOf(coefficients, pipeVelocityOf(flow, diameter), gravity)
  );
}
