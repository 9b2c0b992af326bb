import { QuantityError } from "./error.ts";
import { bases, kindTable, sumTable } from "./generated/kinds.ts";

/** A kind at run time: its exponents, doubled, are packed in base 64, one signed digit a base unit. */
export interface KindInfo {
  /** Name: of the table, or made of base units, such as `m^0.5·s^-1`. */
  readonly name: string;
  /** Symbol of the coherent unit. */
  readonly unit: string;
  /** Packed exponents. */
  readonly packed: number;
  /** The plain kind, for a kind of it; else its own name. */
  readonly plain: string;
  /** Exponent of currency is not zero: a currency goes with it. */
  readonly priced: boolean;
}

const named = /* @__PURE__ */ new Map<string, KindInfo>();
const packedToPlain = /* @__PURE__ */ new Map<number, KindInfo>();

/** Products and quotients that were worked out before, by the names of their kinds. */
const products = /* @__PURE__ */ new Map<string, Map<string, KindInfo>>();
const quotients = /* @__PURE__ */ new Map<string, Map<string, KindInfo>>();

/** Fills the look-ups from the table at the first use, so that importing does nothing. */
function load(): void {
  for (const [name, unit, packed, plain = name] of kindTable) {
    const info = { name, unit, packed, plain, priced: exponents(packed)[5] !== 0 };
    named.set(name, info);
    if (plain === name) packedToPlain.set(packed, info);
  }
}

/** Doubled exponents of a packed number. */
function exponents(packed: number): number[] {
  return bases.map(() => {
    let digit = ((packed % 64) + 64) % 64;
    if (digit >= 32) digit -= 64;
    packed = (packed - digit) / 64;
    return digit;
  });
}

/**
 * A kind by its name.
 *
 * @param name - A name of the table, or base units such as `m^0.5·s^-1`.
 * @returns What is known of it.
 * @throws {@link QuantityError} `kind` where there is no such kind.
 */
export function kindOf(name: string): KindInfo {
  if (named.size === 0) load();
  const known = named.get(name);
  if (known) return known;
  // Untyped code may ask for anything.
  const asked: unknown = name;
  const text = String(asked);
  let packed = 0;
  for (const part of text.split("·")) {
    const [base = "", exponent = "1"] = part.split("^");
    const at = bases.indexOf(base);
    if (at < 0 || !/^-?\d(\.5)?$/.test(exponent)) {
      throw new QuantityError("kind", `${text.slice(0, 60)} is not a kind of quantity`);
    }
    packed += 2 * Number(exponent) * 64 ** at;
  }
  const info = kindOfPacked(packed);
  // One name a kind: m·m would be an area that does not add to areas.
  if (info.name !== name) {
    throw new QuantityError("kind", `${text.slice(0, 60)} is called ${info.name}`);
  }
  return info;
}

/** The plain kind with these exponents, refusing an exponent beyond ±5. */
function kindOfPacked(packed: number): KindInfo {
  const known = packedToPlain.get(packed);
  if (known) return known;
  const digits = exponents(packed);
  const name = digits
    .map((digit, i) =>
      digit === 0 ? "" : digit === 2 ? `${bases[i]}` : `${bases[i]}^${digit / 2}`,
    )
    .filter(Boolean)
    .join("·");
  if (digits.some((digit) => Math.abs(digit) > 10)) {
    throw new QuantityError("exponent", `${name} has an exponent beyond 5`);
  }
  const info = { name, unit: name, packed, plain: name, priced: digits[5] !== 0 };
  named.set(name, info);
  packedToPlain.set(packed, info);
  return info;
}

/**
 * The plain kind of a product.
 *
 * @param a - Name of one kind.
 * @param b - Name of the other.
 * @param sign - 1 to multiply, −1 to divide.
 * @returns The plain kind with the exponents added or subtracted.
 * @throws {@link QuantityError} `exponent` beyond ±5.
 */
export function productKind(a: string, b: string, sign: 1 | -1): KindInfo {
  const memo = sign === 1 ? products : quotients;
  const known = memo.get(a)?.get(b);
  if (known) return known;
  const info = kindOfPacked(kindOf(a).packed + sign * kindOf(b).packed);
  // A caller's words cannot fill the memory: a kind has few names, and few kinds are used.
  if (!memo.has(a)) memo.set(a, new Map());
  memo.get(a)?.set(b, info);
  return info;
}

/**
 * The plain kind of a square root.
 *
 * @param name - Name of a kind.
 * @returns The plain kind with half the exponents.
 * @throws {@link QuantityError} `exponent` where a half would have to be halved.
 */
export function rootKind(name: string): KindInfo {
  const { packed } = kindOf(name);
  if (exponents(packed).some((digit) => digit % 2 !== 0)) {
    throw new QuantityError("exponent", `the root of ${name} has a quarter exponent`);
  }
  return kindOfPacked(packed / 2);
}

/**
 * The kind of a sum or a difference.
 *
 * @param a - Name of the left kind.
 * @param sign - The operation.
 * @param b - Name of the right kind.
 * @returns The name of the result, or nothing where the two do not mix.
 */
export function sumKind(a: string, sign: "+" | "-", b: string): string | undefined {
  if (a === b) return a;
  return sumTable.find((row) => row[0] === a && row[1] === sign && row[2] === b)?.[3];
}

/**
 * Base exponents of a kind: metre, kilogram, second, ampere, kelvin, currency, radian.
 *
 * @param name - Name of the kind.
 * @returns Seven exponents, in halves.
 * @throws {@link QuantityError} `kind` where there is no such kind.
 */
export function exponentsOf(name: string): readonly number[] {
  return exponents(kindOf(name).packed).map((digit) => digit / 2);
}
