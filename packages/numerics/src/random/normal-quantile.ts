import { NumericsError } from "../numerics-error.ts";
import { exactLog } from "./exact-log.ts";

/*
 * Coefficients of M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution,
 * Applied Statistics 37 (1988) 477-484, routine PPND16, each rounded to the nearest number
 * that can be held. Numerators and denominators, highest power first.
 */
const centreNumerator: readonly number[] = [
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
  1971.5909503065513, 133.14166789178438, 3.3871328727963665,
];
const centreDenominator: readonly number[] = [
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
  687.1870074920579, 42.31333070160091, 1,
];
const middleNumerator: readonly number[] = [
  0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
  3.6478483247632045, 5.769497221460691, 4.630337846156546, 1.4234371107496835,
];
const middleDenominator: readonly number[] = [
  1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
  0.6897673349851, 1.6763848301838038, 2.053191626637759, 1,
];
const tailNumerator: readonly number[] = [
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
  0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
];
const tailDenominator: readonly number[] = [
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
  0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
];

/**
 * The standard normal quantile: the z below which a fraction p of a normal distribution lies.
 *
 * To about sixteen digits, and to the same digits in every JavaScript engine: only arithmetic and square roots
 * are used.
 *
 * @param p - Above 0 and below 1; at least the smallest normal number, 2.3e-308.
 * @returns z, in standard deviations.
 * @throws {@link NumericsError} `bad-argument`: p is not between 0 and 1.
 * @example
 * ```ts
 * import { normalQuantile } from "@leat/numerics";
 *
 * normalQuantile(0.975).toFixed(6); // => "1.959964"
 * normalQuantile(0.5); // => 0
 * ```
 */
export function normalQuantile(p: number): number {
  if (!(p >= 2.2250738585072014e-308 && p < 1)) {
    throw new NumericsError(
      "bad-argument",
      `normalQuantile: p = ${p} is not a probability between 0 and 1. Both ends are infinite.`,
      { where: "normalQuantile", p },
    );
  }
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(centreNumerator, r)) / polynomial(centreDenominator, r);
  }
  const tail = q < 0 ? p : 1 - p;
  const r = Math.sqrt(-exactLog(tail));
  const size =
    r <= 5
      ? polynomial(middleNumerator, r - 1.6) / polynomial(middleDenominator, r - 1.6)
      : polynomial(tailNumerator, r - 5) / polynomial(tailDenominator, r - 5);
  return q < 0 ? -size : size;
}

// A polynomial, highest power first.
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i++) sum = sum * x + coefficients[i]!;
  return sum;
}
