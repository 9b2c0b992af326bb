// Viscosity in µPa·s over temperature and density, both over their critical values (R12-08, eqs 10 to 12 and
// tables 1 and 2). The factor for the neighbourhood of the critical point is 1, as the release has it for
// industrial use.

import { kelvin, kilogramPerCubicMetre, pascalSecond } from "@leat/quantity";

/** What makes temperature and density plain numbers, and the unit of the fit. */
export const viscosityConstants = /* @__PURE__ */ (() => ({
  Tc: kelvin.of(647.096),
  ρc: kilogramPerCubicMetre.of(322),
  μ1: pascalSecond.of(1e-6),
}))();

/** Terms of the residual: power of 1/Tr − 1, power of ρr − 1, coefficient. */
const residual: readonly (readonly [number, number, number])[] = [
  [0, 0, 0.520094],
  [1, 0, 0.0850895],
  [2, 0, -1.08374],
  [3, 0, -0.289555],
  [0, 1, 0.222531],
  [1, 1, 0.999115],
  [2, 1, 1.88797],
  [3, 1, 1.26613],
  [5, 1, 0.120573],
  [0, 2, -0.281378],
  [1, 2, -0.906851],
  [2, 2, -0.772479],
  [3, 2, -0.489837],
  [4, 2, -0.25704],
  [0, 3, 0.161913],
  [1, 3, 0.257399],
  [0, 4, -0.0325372],
  [3, 4, 0.0698452],
  [4, 5, 0.00872102],
  [3, 6, -0.00435673],
  [5, 6, -0.000593264],
];

/** At no density. */
export function dilute(Tr: number): number {
  const x = 1 / Tr;
  return (100 * Math.sqrt(Tr)) / (1.67752 + x * (2.20462 + x * (0.6366564 - x * 0.241605)));
}

/** What density makes of it. */
export function crowding(Tr: number, ρr: number): number {
  const a = 1 / Tr - 1;
  const b = ρr - 1;
  let sum = 0;
  for (const [i, j, H] of residual) sum += H * Math.pow(a, i) * Math.pow(b, j);
  return Math.exp(ρr * sum);
}
