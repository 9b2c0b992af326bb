import { QuantityError } from "./error.ts";
import { kindOf, productKind } from "./kind.ts";
import { mixCurrency } from "./mix-currency.ts";
import { Quantity } from "./quantity.ts";
import type { Product, Quotient } from "./types.ts";

/** A unit of any kind: what a list of units holds. */
export interface AnyUnit {
  /** Kind of the quantities that it measures. */
  readonly kind: string;
  /** As it is printed, such as `gal/min`. */
  readonly symbol: string;
  /** Numerator of the factor to the coherent unit. */
  readonly numerator: number;
  /** Denominator of the factor. */
  readonly denominator: number;
  /** The ISO 4217 code, where money is in the unit. */
  readonly currency: string | undefined;
  /** The number of coherent units in so many of this. */
  toSI(value: number): number;
  /** The number of this unit in so many coherent units. */
  fromSI(value: number): number;
}

/**
 * A unit of measure: a symbol and an exact factor to the coherent unit of its kind.
 *
 * Factors are kept as a numerator and a denominator, so that 200 mm is 0.2 m to the last digit.
 */
export class Unit<in out K extends string> {
  /** Kind of the quantities that it measures. */
  readonly kind: K;
  /** As it is printed, such as `gal/min`. */
  readonly symbol: string;
  /** Numerator of the factor to the coherent unit. */
  readonly numerator: number;
  /** Denominator of the factor. */
  readonly denominator: number;
  /** The ISO 4217 code, where money is in the unit. */
  readonly currency: string | undefined;

  /**
   * @param kind - Kind of quantity.
   * @param symbol - As it is printed.
   * @param numerator - Numerator of the factor to the coherent unit.
   * @param denominator - Denominator of the factor.
   * @param currency - ISO 4217 code, where money is in the unit.
   */
  constructor(kind: K, symbol: string, numerator: number, denominator: number, currency?: string) {
    this.kind = kind;
    this.symbol = symbol;
    this.numerator = numerator;
    this.denominator = denominator;
    this.currency = currency;
  }

  /**
   * A quantity of so many of this unit.
   *
   * @param value - How many; finite.
   * @returns The quantity, which remembers how it was written.
   * @throws {@link QuantityError} `not-finite` for NaN, infinity or anything but a number.
   */
  of(value: number): Quantity<K> {
    if (typeof value !== "number" || !Number.isFinite(value)) {
      throw new QuantityError(
        "not-finite",
        `${String(value)} ${this.symbol} is not a finite number`,
      );
    }
    return new Quantity(this.kind, this.toSI(value), undefined, this.currency, value, this);
  }

  /**
   * The number of coherent units in so many of this.
   *
   * @param value - How many of this unit.
   * @returns How many coherent units.
   */
  toSI(value: number): number {
    return (value * this.numerator) / this.denominator;
  }

  /**
   * The number of this unit in so many coherent units.
   *
   * @param value - How many coherent units.
   * @returns How many of this unit.
   */
  fromSI(value: number): number {
    return (value * this.denominator) / this.numerator;
  }

  /**
   * This unit over another: `currency("USD").per(foot)`.
   *
   * @param other - The unit below the line.
   * @returns The compound unit.
   */
  per<B extends string>(other: Unit<B>): Unit<Quotient<K, B>> {
    return combine(this, other, -1) as AnyUnit as Unit<Quotient<K, B>>;
  }

  /**
   * This unit times another: `kilowatt.times(hour)`.
   *
   * @param other - The other unit.
   * @returns The compound unit.
   */
  times<B extends string>(other: Unit<B>): Unit<Product<K, B>> {
    return combine(this, other, 1) as AnyUnit as Unit<Product<K, B>>;
  }

  /**
   * The symbol.
   *
   * @returns The symbol.
   */
  toString(): string {
    return this.symbol;
  }
}

/**
 * Makes a unit of one's own.
 *
 * @param kind - Kind of quantity that it measures.
 * @param symbol - As it is printed.
 * @param numerator - How many coherent units it is, or the numerator of that.
 * @param denominator - The denominator, 1 by default.
 * @param currency - ISO 4217 code, where money is in it.
 * @returns The unit.
 */
export function unit<K extends string>(
  kind: K,
  symbol: string,
  numerator: number,
  denominator = 1,
  currency?: string,
): Unit<K> {
  return new Unit<K>(kind, symbol, numerator, denominator, currency);
}

/**
 * The coherent unit of a kind: the one that formula bodies compute in.
 *
 * @param kind - Name of the kind.
 * @param currency - ISO 4217 code, where money is in the kind.
 * @returns The unit.
 * @throws {@link QuantityError} `kind` where there is no such kind, `currency` where one is missing.
 */
export function coherentUnit<K extends string>(kind: K, currency?: string): Unit<K> {
  const info = kindOf(kind);
  if (info.priced && !currency) {
    throw new QuantityError("currency", `${kind} needs a currency, such as USD`);
  }
  return new Unit<K>(kind, info.unit.replace("¤", currency ?? ""), 1, 1, currency);
}

/** Product (sign 1) or quotient (sign −1) of two units, of any kinds. */
export function combine(a: AnyUnit, b: AnyUnit, sign: 1 | -1): Unit<string> {
  const { name, priced } = productKind(a.kind, b.kind, sign);
  const [above, below] = sign === 1 ? [b.numerator, b.denominator] : [b.denominator, b.numerator];
  const currency = mixCurrency(a.currency, b.currency);
  return new Unit(
    name,
    sign === 1
      ? `${apart(a.symbol, /\//)}·${apart(b.symbol, /\//)}`
      : `${apart(a.symbol, /\//)}/${apart(b.symbol, /[·/]/)}`,
    a.numerator * above,
    a.denominator * below,
    priced ? currency : undefined,
  );
}

/** In parentheses where the symbol would run together with its neighbour: J/(kg·K). */
function apart(symbol: string, operator: RegExp): string {
  return operator.test(symbol) ? `(${symbol})` : symbol;
}
