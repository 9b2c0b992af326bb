import {
  colebrookExponentOf,
  colebrookFactorOf,
  colebrookRoot,
  laminarUpTo,
  transitionFactorOf,
  turbulentFrom,
} from "./friction-factor-of.ts";

/**
 * The power of the flow that the head lost to a wall grows with, at one flow, on plain numbers: 1 in laminar flow, 2 on a rough wall,
 * about 1.8 in smooth plastic.
 *
 * @param reynolds - Reynolds number, above 0.
 * @param relative - Roughness over inside diameter, 0 or more.
 * @returns d ln(hf)/d ln(Q).
 * @throws NumericsError `not-converged` where an argument is not a number.
 */
export function frictionExponentOf(reynolds: number, relative: number): number {
  if (reynolds <= laminarUpTo) return 1;
  if (reynolds >= turbulentFrom)
    return colebrookExponentOf(colebrookRoot(reynolds, relative), reynolds, relative);
  // On the straight line f = a + b·Re of the transition: 2 + b·Re/f.
  const turbulent = colebrookFactorOf(turbulentFrom, relative);
  const slope = (turbulent - 64 / laminarUpTo) / (turbulentFrom - laminarUpTo);
  return 2 + (slope * reynolds) / transitionFactorOf(reynolds, turbulent);
}
