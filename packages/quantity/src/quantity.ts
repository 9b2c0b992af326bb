import { digitsOf, withUnit } from "./digits.ts";
import { QuantityError } from "./error.ts";
import { kindOf, productKind, rootKind, sumKind } from "./kind.ts";
import { mixCurrency } from "./mix-currency.ts";
import type { Reading } from "./reading.ts";
import { combineSources, coverage95, rectangle, type Sources, spreadOf } from "./sources.ts";
import type {
  Minus,
  MinusPartner,
  Plain,
  Plus,
  PlusPartner,
  Product,
  Quotient,
  Relative,
  Root,
} from "./types.ts";
import type { AnyUnit, Unit } from "./unit.ts";

/** A quantity as plain data, with a version. */
export interface QuantityJson {
  /** Version of the form. */
  v: 1;
  /** Value in the coherent unit. */
  q: number;
  /** Symbol of the coherent unit, for a person who reads the file; checked on reading. */
  u: string;
  /** Kind. */
  k: string;
  /** Number and unit symbol as it was written, where that is not the coherent unit. */
  w?: [number, string];
  /** The reading that it came from. */
  r?: Reading;
  /** Contribution of each source of uncertainty. */
  s?: [string, number][];
}

/** A quantity of any kind: what a list of quantities holds. */
export interface AnyQuantity {
  /** Marks a quantity, of whichever installed copy. */
  readonly "~leat": "quantity";
  /** Name of the kind. */
  readonly kind: string;
  /** @internal */
  readonly "~si": number;
  /** @internal */
  readonly "~sources": Sources | undefined;
  /** @internal */
  readonly "~currency": string | undefined;
  /** @internal */
  readonly "~number": number;
  /** @internal */
  readonly "~unit": AnyUnit | undefined;
  /** @internal */
  readonly "~reading": Reading | undefined;
  /** The number of a unit; its kind is checked at run time. */
  in(unit: AnyUnit): number;
  /** The reading that it came from. */
  reading(): Reading | undefined;
  /** As plain data. */
  toJSON(): QuantityJson;
  /** Number and unit. */
  toString(): string;
}

/**
 * A number of one kind: 3 m of pipe, 12 L/s, 0.7 of efficiency.
 *
 * It is made by a unit (`metre.of(3)`), by `read`, by `fromJSON`, or out of other quantities, and
 * left by `in(unit)`. Kinds are checked in the editor and at run time.
 */
export class Quantity<in out K extends string> {
  /** Name of the kind. */
  readonly kind: K;
  /** @internal */
  readonly "~si": number;
  /** @internal */
  readonly "~sources": Sources | undefined;
  /** @internal */
  readonly "~currency": string | undefined;
  /** @internal */
  readonly "~number": number;
  /** @internal */
  readonly "~unit": AnyUnit | undefined;
  /** @internal */
  readonly "~reading": Reading | undefined;

  /** @internal */
  constructor(
    kind: K,
    si: number,
    sources?: Sources,
    currency?: string,
    number = 0,
    unit?: AnyUnit,
    reading?: Reading,
  ) {
    this.kind = kind;
    this["~si"] = si;
    this["~sources"] = sources;
    this["~currency"] = currency;
    this["~number"] = number;
    this["~unit"] = unit;
    this["~reading"] = reading;
  }

  /** Marks a quantity, of whichever installed copy. */
  get "~leat"(): "quantity" {
    return "quantity";
  }

  /**
   * The number of a unit: the one way out.
   *
   * @param unit - A unit of this kind, or of the plain kind that this is a kind of.
   * @returns How many of it; a quantity that was written in this unit comes back as written.
   * @throws {@link QuantityError} `kind` for a unit of another dimension, `currency` for another currency.
   */
  in(unit: Unit<K> | Unit<Plain<K>>): number {
    if (unit.kind !== this.kind && kindOf(unit.kind).packed !== kindOf(this.kind).packed) {
      throw new QuantityError("kind", `${say(this)} has no ${unit.symbol} (${unit.kind})`);
    }
    if (this["~currency"]) mixCurrency(this["~currency"], unit.currency);
    const written = this["~unit"];
    if (written && written.symbol === unit.symbol && written.numerator === unit.numerator) {
      return this["~number"];
    }
    return unit.fromSI(this["~si"]);
  }

  /**
   * The sum; kinds mix only as the table of kinds says.
   *
   * @param other - What is added.
   * @returns The sum.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  plus<B extends PlusPartner<K>>(other: Quantity<B>): Quantity<NoInfer<Plus<K, B>>> {
    return add(this, other, "+", 1) as Quantity<Plus<K, B>>;
  }

  /**
   * The difference; kinds mix only as the table of kinds says: gross head − head loss is a net head.
   *
   * @param other - What is taken away.
   * @returns The difference.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  minus<B extends MinusPartner<K>>(other: Quantity<B>): Quantity<NoInfer<Minus<K, B>>> {
    return add(this, other, "-", -1) as Quantity<Minus<K, B>>;
  }

  /**
   * The product: by a number the kind stays, by a quantity it is the plain kind of the product.
   *
   * @param other - A number or a quantity.
   * @returns The product.
   * @throws {@link QuantityError} `exponent` beyond ±5, `currency`, `not-finite`.
   */
  times(other: number): Quantity<K>;
  times<B extends string>(other: Quantity<B>): Quantity<NoInfer<Product<K, B>>>;
  times(other: number | AnyQuantity): unknown {
    return multiply(this, other, 1);
  }

  /**
   * The quotient: by a number the kind stays, by a quantity it is the plain kind of the quotient.
   *
   * @param other - A number or a quantity, not zero.
   * @returns The quotient.
   * @throws {@link QuantityError} `exponent` beyond ±5, `currency`, `not-finite`.
   */
  dividedBy(other: number): Quantity<K>;
  dividedBy<B extends string>(other: Quantity<B>): Quantity<NoInfer<Quotient<K, B>>>;
  dividedBy(other: number | AnyQuantity): unknown {
    return multiply(this, other, -1);
  }

  /**
   * The square.
   *
   * @returns The quantity times itself.
   */
  squared(): Quantity<NoInfer<Product<K, K>>> {
    return multiply(this, this, 1) as Quantity<Product<K, K>>;
  }

  /**
   * The square root.
   *
   * @returns The root.
   * @throws {@link QuantityError} `exponent` where it would have quarters, `not-finite` of a negative.
   */
  sqrt(): Quantity<NoInfer<Root<K>>> {
    const { name } = rootKind(this.kind);
    const root = finite(Math.sqrt(this["~si"]), () => `the root of ${say(this)}`);
    const sources = combineSources(this["~sources"], 0.5 / root, undefined, 0);
    return new Quantity(name as Root<K>, root, sources, this["~currency"]);
  }

  /**
   * The same with the other sign.
   *
   * @returns The negative.
   */
  negate(): Quantity<K> {
    return this.times(-1);
  }

  /**
   * The same without its sign.
   *
   * @returns The magnitude.
   */
  abs(): Quantity<K> {
    return this["~si"] < 0 ? this.times(-1) : this;
  }

  /**
   * Whether this is less than another of its kind.
   *
   * @param other - The other.
   * @returns True if less.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  lessThan(other: Quantity<K>): boolean {
    return this["~si"] < same(this, other, "compare", "with");
  }

  /**
   * Whether this is greater than another of its kind.
   *
   * @param other - The other.
   * @returns True if greater.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  greaterThan(other: Quantity<K>): boolean {
    return this["~si"] > same(this, other, "compare", "with");
  }

  /**
   * Whether this is the same value as another of its kind.
   *
   * @param other - The other.
   * @returns True if equal.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  equals(other: Quantity<K>): boolean {
    return this["~si"] === same(this, other, "compare", "with");
  }

  /**
   * The one door between kinds of the same dimension: `length.as("net head")`.
   *
   * @param kind - Name of the other kind.
   * @returns The same value, of that kind.
   * @throws {@link QuantityError} `kind` where the dimension differs.
   */
  as<N extends Relative<K>>(kind: N): Quantity<N> {
    if (kindOf(kind).packed !== kindOf(this.kind).packed) {
      throw new QuantityError("kind", `${say(this)} cannot be taken as ${kind}`);
    }
    return new Quantity(
      kind,
      this["~si"],
      this["~sources"],
      this["~currency"],
      this["~number"],
      this["~unit"],
      this["~reading"],
    );
  }

  /**
   * The same with an uncertainty: a 95 % interval of a normal distribution.
   *
   * @param half - Half the width of the interval.
   * @param source - Names what is uncertain; values that share it are correlated by it.
   * @returns The quantity, with the source added to those that it has.
   * @throws {@link QuantityError} `kind`, `not-finite` for a negative half.
   */
  plusMinus(half: Quantity<NoInfer<K>> | Quantity<NoInfer<Plain<K>>>, source: string): Quantity<K> {
    return spread(this, half, coverage95, source);
  }

  /**
   * The same with an uncertainty: anywhere within a limit, equally likely (a rectangle).
   *
   * @param half - The limit, either way.
   * @param source - Names what is uncertain; values that share it are correlated by it.
   * @returns The quantity, with the source added to those that it has.
   * @throws {@link QuantityError} `kind`, `not-finite` for a negative half.
   */
  within(half: Quantity<NoInfer<K>> | Quantity<NoInfer<Plain<K>>>, source: string): Quantity<K> {
    return spread(this, half, rectangle, source);
  }

  /**
   * The standard uncertainty (k = 1) of all sources together.
   *
   * @returns It, zero where nothing is known to be uncertain.
   */
  standardUncertainty(): Quantity<K> {
    return new Quantity(this.kind, spreadOf(this["~sources"]), undefined, this["~currency"]);
  }

  /**
   * Contribution of each source, as a standard uncertainty with its sign.
   *
   * @returns Source ids with their contributions.
   */
  sources(): ReadonlyMap<string, Quantity<K>> {
    return new Map(
      Array.from(this["~sources"] ?? [], ([id, c]) => [
        id,
        new Quantity(this.kind, c, undefined, this["~currency"]),
      ]),
    );
  }

  /**
   * The reading that it came from.
   *
   * @returns Text, resolution and open questions, or nothing where it was not read.
   */
  reading(): Reading | undefined {
    return this["~reading"];
  }

  /**
   * The same reading, with the smallest division of the instrument that it was read on.
   *
   * @param step - The division.
   * @returns The quantity, its resolution no longer assumed from the digits that were written.
   * @throws {@link QuantityError} `kind`, `not-finite` for a division that is not above zero.
   */
  readTo(step: Quantity<NoInfer<K>> | Quantity<NoInfer<Plain<K>>>): Quantity<K> {
    if (!isQuantity(step) || kindOf(step.kind).packed !== kindOf(this.kind).packed) {
      throw new QuantityError("kind", `${say(this)} cannot be read to ${say(step)}`);
    }
    const resolution = this["~unit"]?.fromSI(step["~si"]) ?? step["~si"];
    if (!(resolution > 0))
      throw new QuantityError("not-finite", `a division of ${say(step)} is not above zero`);
    const reading = {
      ...(this["~reading"] ?? { text: this.toString() }),
      resolution,
      assumed: false,
    };
    return new Quantity(
      this.kind,
      this["~si"],
      this["~sources"],
      this["~currency"],
      this["~number"],
      this["~unit"],
      reading,
    );
  }

  /**
   * The ISO 4217 code of its currency.
   *
   * @returns The code, or nothing where there is no money in it.
   */
  currency(): string | undefined {
    return this["~currency"];
  }

  /**
   * As plain data.
   *
   * @returns The versioned form that `fromJSON` reads.
   */
  toJSON(): QuantityJson {
    const written = this["~unit"];
    const unit = kindOf(this.kind).unit.replace("¤", this["~currency"] ?? "¤");
    return {
      v: 1,
      q: this["~si"],
      u: unit,
      k: this.kind,
      ...(written && written.symbol !== unit && { w: [this["~number"], written.symbol] }),
      ...(this["~reading"] && { r: this["~reading"] }),
      ...(this["~sources"] && { s: [...this["~sources"]] }),
    };
  }

  /**
   * As it was written, or in the coherent unit.
   *
   * @returns Number and unit.
   */
  toString(): string {
    const written = this["~unit"];
    return written
      ? withUnit(digitsOf(this["~number"]), written.symbol)
      : withUnit(
          digitsOf(this["~si"]),
          kindOf(this.kind).unit.replace("¤", this["~currency"] ?? "¤"),
        );
  }

  /** @internal */
  [Symbol.toPrimitive](hint: string): string {
    if (hint === "number") refuseNumber(this);
    return this.toString();
  }

  /** @internal */
  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return `${this.toString()} (${this.kind})`;
  }
}

/** Refuses `+` and `<` on anything with a unit. */
export function refuseNumber(what: { toString(): string }): never {
  throw new QuantityError(
    "kind",
    `${what.toString()} is not a plain number: use in(unit), plus or lessThan`,
  );
}

/**
 * Whether a value is a quantity, of this or another installed copy.
 *
 * @param value - Anything.
 * @returns True for a quantity.
 */
export function isQuantity(value: unknown): value is AnyQuantity {
  return (
    typeof value === "object" && value !== null && (value as AnyQuantity)["~leat"] === "quantity"
  );
}

function say(value: unknown): string {
  return isQuantity(value)
    ? `${value.toString()} (${value.kind})`
    : `${String(value)} (not a quantity)`;
}

function finite(value: number, what: () => string): number {
  if (!Number.isFinite(value)) throw new QuantityError("not-finite", `${what()} is not finite`);
  return value;
}

function add(a: AnyQuantity, b: AnyQuantity, sign: "+" | "-", y: number): AnyQuantity {
  const kind = isQuantity(b) ? sumKind(a.kind, sign, b.kind) : undefined;
  if (kind === undefined) {
    throw new QuantityError(
      "kind",
      sign === "+"
        ? `cannot add ${say(b)} to ${say(a)}`
        : `cannot subtract ${say(b)} from ${say(a)}`,
    );
  }
  const currency = mixCurrency(a["~currency"], b["~currency"]);
  const sum = finite(a["~si"] + y * b["~si"], () => `${say(a)} ${sign} ${say(b)}`);
  return new Quantity(kind, sum, combineSources(a["~sources"], 1, b["~sources"], y), currency);
}

function same(a: AnyQuantity, b: AnyQuantity, verb: string, joint: string): number {
  if (!isQuantity(b) || a.kind !== b.kind) {
    throw new QuantityError("kind", `cannot ${verb} ${say(a)} ${joint} ${say(b)}`);
  }
  mixCurrency(a["~currency"], b["~currency"]);
  return b["~si"];
}

function multiply(a: AnyQuantity, b: number | AnyQuantity, sign: 1 | -1): AnyQuantity {
  const what = () => `${say(a)} ${sign === 1 ? "×" : "÷"} ${typeof b === "number" ? b : say(b)}`;
  if (typeof b === "number") {
    const factor = sign === 1 ? b : 1 / b;
    const value = finite(sign === 1 ? a["~si"] * b : a["~si"] / b, what);
    return new Quantity(
      a.kind,
      value,
      combineSources(a["~sources"], factor, undefined, 0),
      a["~currency"],
    );
  }
  if (!isQuantity(b)) {
    throw new QuantityError(
      "kind",
      `cannot ${sign === 1 ? "multiply" : "divide"} ${say(a)} by ${say(b)}`,
    );
  }
  const { name, priced } = productKind(a.kind, b.kind, sign);
  const x = a["~si"];
  const y = b["~si"];
  const value = finite(sign === 1 ? x * y : x / y, what);
  // Written so that x ÷ x has no uncertainty, to the last digit.
  const sources =
    sign === 1
      ? combineSources(a["~sources"], y, b["~sources"], x)
      : combineSources(
          combineSources(a["~sources"], 1, b["~sources"], -value),
          1 / y,
          undefined,
          0,
        );
  const currency = mixCurrency(a["~currency"], b["~currency"]);
  return new Quantity(name, value, sources, priced ? currency : undefined);
}

function spread<K extends string>(
  of: Quantity<K>,
  half: AnyQuantity,
  coverage: number,
  source: string,
): Quantity<K> {
  if (!isQuantity(half) || kindOf(half.kind).packed !== kindOf(of.kind).packed) {
    throw new QuantityError("kind", `cannot spread ${say(of)} by ${say(half)}`);
  }
  mixCurrency(of["~currency"], half["~currency"]);
  if (!(half["~si"] >= 0)) throw new QuantityError("not-finite", `± ${say(half)} is negative`);
  const sources = combineSources(of["~sources"], 1, new Map([[source, half["~si"] / coverage]]), 1);
  return new Quantity(
    of.kind,
    of["~si"],
    sources,
    of["~currency"],
    of["~number"],
    of["~unit"],
    of["~reading"],
  );
}
