/*
 * Numbers are scaled by powers of two, which is exact: the same problem in another unit that differs by a
 * power of two gives the same digits.
 */
const bits: DataView = /* @__PURE__ */ new DataView(/* @__PURE__ */ new ArrayBuffer(8));

/**
 * The exponent e for which |x| is from 2^e up to, and not including, 2^(e + 1), read from the number's bits.
 *
 * @param x - A finite number.
 * @returns The exponent; -1023 for zero and for subnormal numbers.
 */
export function binaryExponent(x: number): number {
  bits.setFloat64(0, x);
  return ((bits.getUint32(0) >>> 20) & 0x7ff) - 1023;
}

/**
 * The number m of x = m 2^e for which |m| is from 1 up to, and not including, 2.
 *
 * @param x - A finite number that is neither zero nor subnormal.
 * @returns The significand, with the sign of x.
 */
export function significand(x: number): number {
  bits.setFloat64(0, x);
  bits.setUint32(0, (bits.getUint32(0) & 0x800fffff) | 0x3ff00000);
  return bits.getFloat64(0);
}
