import { NumericsError } from "@leat/numerics";

/** Reynolds number up to which flow is laminar. */
export const laminarUpTo = 2000;

/** Reynolds number from which flow is turbulent. */
export const turbulentFrom = 4000;

/** Steps that are never needed: from the guess below, two or three do. */
const mostSteps = 30; // guard: a cap that is never reached

/**
 * The root of the Colebrook–White equation in x = 1/√f.
 *
 * x + 2·log10(r/3.7 + 2.51·x/Re) rises with x and bends downwards, so that Newton's step from anywhere
 * lands at or below the root and the next ones climb to it without passing it.
 *
 * @param reynolds - Reynolds number, above 0.
 * @param relative - Roughness over inside diameter, 0 or more.
 * @param steps - Told how many steps were taken, where that is asked for.
 * @param start - Where to begin: a root of nearly the same pipe and flow saves steps.
 * @returns The root, to the last digits of a double.
 * @throws NumericsError `not-converged` where an argument is not a number or the equation has no root.
 */
export function colebrookRoot(
  reynolds: number,
  relative: number,
  steps?: { taken: number },
  start?: number,
): number {
  const a = relative / 3.7;
  const b = 2.51 / reynolds;
  // guard: a first guess; the root does not depend on it
  let x = start ?? -2 * Math.log10(a + 5.74 / reynolds ** 0.9);
  // guard: counts steps, which a test of the convergence looks at
  for (let taken = 1; taken <= mostSteps; taken += 1) {
    const inner = a + b * x;
    const step = (x + 2 * Math.log10(inner)) / (1 + (2 * b) / (Math.LN10 * inner));
    x -= step;
    // Each step squares the error that is left: after one of 1e-8 nothing is.
    // guard: a tolerance; what is left after it is below the last digit
    if (Math.abs(step) <= 1e-8 * x) {
      if (steps) steps.taken = taken;
      return x;
    }
  }
  throw new NumericsError(
    "not-converged",
    `colebrook: no friction factor was found for a Reynolds number of ${reynolds} and a relative roughness of ${relative}. Check both.`,
    { reynolds, relative, steps: mostSteps },
  );
}

/**
 * What is left of the Colebrook–White equation at x = 1/√f.
 *
 * @param inverseRoot - x.
 * @param reynolds - Reynolds number.
 * @param relative - Roughness over inside diameter.
 * @returns Left side less right side: 0 at the root.
 */
export function colebrookResidual(inverseRoot: number, reynolds: number, relative: number): number {
  return inverseRoot + 2 * Math.log10(relative / 3.7 + (2.51 * inverseRoot) / reynolds);
}

/**
 * The power of the flow that the head lost to a turbulent wall grows with, at one flow: 2 where the wall is rough, less where it is
 * smooth.
 *
 * @param inverseRoot - The root in x = 1/√f.
 * @param reynolds - Reynolds number.
 * @param relative - Roughness over inside diameter.
 * @returns d ln(hf)/d ln(Q), by differentiating the Colebrook–White equation.
 */
export function colebrookExponentOf(
  inverseRoot: number,
  reynolds: number,
  relative: number,
): number {
  const b = 2.51 / reynolds;
  return 2 / (1 + (2 * b) / (Math.LN10 * (relative / 3.7 + b * inverseRoot)));
}

/**
 * Darcy friction factor of turbulent flow, on plain numbers: Colebrook–White.
 *
 * @param reynolds - Reynolds number; the equation is for 4000 and more.
 * @param relative - Roughness over inside diameter.
 * @returns The friction factor.
 * @throws NumericsError `not-converged` where an argument is not a number or the equation has no root.
 */
export function colebrookFactorOf(reynolds: number, relative: number): number {
  const inverseRoot = colebrookRoot(reynolds, relative);
  return 1 / (inverseRoot * inverseRoot);
}

/**
 * Darcy friction factor of any flow, on plain numbers: laminar up to Re = 2000, Colebrook–White from
 * 4000, and the straight line between those two ends in between, where no law holds.
 *
 * For loops: nothing is checked, and nothing tells that flow is in transition.
 *
 * @param reynolds - Reynolds number, above 0.
 * @param relative - Roughness over inside diameter, 0 or more.
 * @returns The friction factor.
 * @throws NumericsError `not-converged` where an argument is not a number.
 */
export function frictionFactorOf(reynolds: number, relative: number): number {
  if (reynolds <= laminarUpTo) return 64 / reynolds;
  if (reynolds >= turbulentFrom) return colebrookFactorOf(reynolds, relative);
  return transitionFactorOf(reynolds, colebrookFactorOf(turbulentFrom, relative));
}

/**
 * Darcy friction factor between laminar and turbulent flow, where no law holds: the straight line between the two ends.
 *
 * @param reynolds - Reynolds number, 2000 to 4000.
 * @param turbulent - Friction factor of the same pipe at 4000.
 * @returns The friction factor.
 */
export function transitionFactorOf(reynolds: number, turbulent: number): number {
  const laminar = 64 / laminarUpTo;
  return (
    laminar + ((reynolds - laminarUpTo) / (turbulentFrom - laminarUpTo)) * (turbulent - laminar)
  );
}
