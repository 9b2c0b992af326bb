// The line between liquid and vapour (R7-97(2012), eqs 28 to 30 and table 34). Every coefficient is a pure
// number once temperature is in kelvin and pressure in megapascal.

/** Temperature in kelvin, shifted so that the line is a quadratic in it. */
export function shifted(kelvins: number): number {
  return kelvins - 0.23855557567849 / (kelvins - 0.65017534844798e3);
}

/** The quadratic's coefficients: of β², β and 1, where β is the fourth root of the pressure in megapascal. */
export function quadraticA(ϑ: number): number {
  return ϑ * ϑ + 0.11670521452767e4 * ϑ - 0.72421316703206e6;
}

/** Coefficient of β. */
export function quadraticB(ϑ: number): number {
  return -0.17073846940092e2 * ϑ * ϑ + 0.1202082470247e5 * ϑ - 0.32325550322333e7;
}

/** Coefficient of 1. */
export function quadraticC(ϑ: number): number {
  return 0.1491510861353e2 * ϑ * ϑ - 0.48232657361591e4 * ϑ + 0.40511340542057e6;
}

/** Vapour pressure in megapascal at a temperature in kelvin. */
export function saturationMegapascals(kelvins: number): number {
  const ϑ = shifted(kelvins);
  const B = quadraticB(ϑ);
  const C = quadraticC(ϑ);
  const β = (2 * C) / (-B + Math.sqrt(B * B - 4 * quadraticA(ϑ) * C));
  return β * β * β * β;
}
