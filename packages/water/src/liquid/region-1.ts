// Liquid water in the Industrial Formulation: the Gibbs energy as a polynomial in pressure and inverse
// temperature, γ = Σ n·(7.1 − π)^I·(τ − 1.222)^J with π = p/16.53 MPa and τ = 1386 K/T (R7-97(2012),
// eq. 7 and table 2). Terms 3 and 4, J = 0 and 1 at I = 0, are left out: they set the zero of enthalpy and
// entropy and vanish from every derivative that is taken here.

import { joulePerKilogramKelvin, kelvin, megapascal } from "@leat/quantity";

/** What makes pressure and temperature plain numbers, and the gas constant of water. */
export const region1Constants = /* @__PURE__ */ (() => ({
  p1: megapascal.of(16.53),
  T1: kelvin.of(1386),
  R: joulePerKilogramKelvin.of(461.526),
}))();

const powers: readonly number[] = [
  0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 8, 8, 21, 23, 29, 30, 31,
  32,
];

const inversePowers: readonly number[] = [
  -2, -1, 2, 3, 4, 5, -9, -7, -1, 0, 1, 3, -3, 0, 1, 3, 17, -4, 0, 6, -5, -2, 10, -8, -11, -6, -29,
  -31, -38, -39, -40, -41,
];

const coefficients: readonly number[] = [
  0.14632971213167, -0.84548187169114, -0.95791963387872, 0.15772038513228, -0.16616417199501e-1,
  0.81214629983568e-3, 0.28319080123804e-3, -0.60706301565874e-3, -0.18990068218419e-1,
  -0.32529748770505e-1, -0.21841717175414e-1, -0.5283835796993e-4, -0.47184321073267e-3,
  -0.30001780793026e-3, 0.47661393906987e-4, -0.44141845330846e-5, -0.72694996297594e-15,
  -0.31679644845054e-4, -0.28270797985312e-5, -0.85205128120103e-9, -0.22425281908e-5,
  -0.65171222895601e-6, -0.14341729937924e-12, -0.40516996860117e-6, -0.12734301741641e-8,
  -0.17424871230634e-9, -0.68762131295531e-18, 0.14478307828521e-19, 0.26335781662795e-22,
  -0.11947622640071e-22, 0.18228094581404e-23, -0.93537087292458e-25,
];

/** ∂γ/∂π. */
export function byPressure(π: number, τ: number): number {
  return -sum(π, τ, 1, 0);
}

/** ∂²γ/∂π². */
export function byPressureTwice(π: number, τ: number): number {
  return sum(π, τ, 2, 0);
}

/** ∂²γ/∂τ². */
export function byTemperatureTwice(π: number, τ: number): number {
  return sum(π, τ, 0, 2);
}

/** ∂²γ/∂π∂τ. */
export function byBoth(π: number, τ: number): number {
  return -sum(π, τ, 1, 1);
}

/** Σ n·(7.1 − π)^I·(τ − 1.222)^J, differentiated so many times by its two brackets. */
function sum(π: number, τ: number, first: 0 | 1 | 2, second: 0 | 1 | 2): number {
  const a = 7.1 - π;
  const b = τ - 1.222;
  let total = 0;
  for (let k = 0; k < coefficients.length; k++) {
    const i = powers[k] as number;
    const j = inversePowers[k] as number;
    const factor = falling(i, first) * falling(j, second);
    if (factor !== 0)
      total +=
        (coefficients[k] as number) * factor * Math.pow(a, i - first) * Math.pow(b, j - second);
  }
  return total;
}

/** The factor that differentiating a power brings down. */
function falling(power: number, times: 0 | 1 | 2): number {
  return times === 0 ? 1 : times === 1 ? power : power * (power - 1);
}

/** Density from the letters that every formula of region 1 has. */
export function densityOf(T: number, p: number, p1: number, T1: number, R: number): number {
  return p1 / (R * T * byPressure(p / p1, T1 / T));
}

/** Speed of sound from the same letters. */
export function soundSpeedOf(T: number, p: number, p1: number, T1: number, R: number): number {
  const π = p / p1;
  const τ = T1 / T;
  const gp = byPressure(π, τ);
  const slope = gp - τ * byBoth(π, τ);
  return Math.sqrt(
    (R * T * gp * gp) /
      ((slope * slope) / (τ * τ * byTemperatureTwice(π, τ)) - byPressureTwice(π, τ)),
  );
}
