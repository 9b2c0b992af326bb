import { digitsOf } from "./digits.ts";
import { QuantityError } from "./error.ts";
import { originTable } from "./generated/kinds.ts";
import type { DifferenceOf } from "./generated/types.ts";
import { kindOf } from "./kind.ts";
import { type AnyQuantity, isQuantity, Quantity, refuseNumber } from "./quantity.ts";
import type { Reading } from "./reading.ts";
import { combineSources, type Sources } from "./sources.ts";
import type { AnyUnit, Unit } from "./unit.ts";

/** Where a scale begins: what a temperature, a pressure, an elevation or a stage is counted from. */
export type Origin = keyof DifferenceOf & string;

/** The kind of a difference of two points. */
export type Difference<O extends Origin> = DifferenceOf[O];

/** A point as plain data, with a version. */
export interface PointJson {
  /** Version of the form. */
  v: 1;
  /** Value over the origin, in the coherent unit. */
  q: number;
  /** Symbol of the coherent unit; checked on reading. */
  u: string;
  /** Origin. */
  o: string;
  /** Instance of the origin: which staff, which datum, which station. */
  i?: string;
  /** Number and unit symbol as it was written, where that is not the coherent unit. */
  w?: [number, string];
  /** The reading that it came from. */
  r?: Reading;
  /** Contribution of each source of uncertainty. */
  s?: [string, number][];
}

/** A unit with a zero of its own, over any origin. */
export interface AnyPointUnit {
  /** The origin that its points are counted from. */
  readonly origin: string;
  /** As it is printed. */
  readonly symbol: string;
  /** The unit of a difference. */
  readonly unit: AnyUnit;
  /** What is added to a number of this unit before it is taken to the coherent unit. */
  readonly offset: number;
}

/** A unit with a zero of its own: degrees Celsius and Fahrenheit. */
export interface PointUnit<O extends Origin> extends AnyPointUnit {
  /** The origin that its points are counted from. */
  readonly origin: O;
  /**
   * The point at so many of this unit.
   *
   * @param value - How many; finite.
   * @returns The point.
   * @throws {@link QuantityError} `not-finite`.
   */
  at(value: number): Point<O>;
}

/** A point of any origin. */
export interface AnyPoint {
  /** Marks a point, of whichever installed copy. */
  readonly "~leat": "point";
  /** Where it is counted from. */
  readonly origin: string;
  /** Which staff, datum or station. */
  readonly instance: string | undefined;
  /** @internal */
  readonly "~si": number;
  /** @internal */
  readonly "~sources": Sources | undefined;
  /** @internal */
  readonly "~unit": { readonly symbol: string } | undefined;
  /** @internal */
  readonly "~reading": Reading | undefined;
  /** The number of a unit; its kind is checked at run time. */
  in(unit: AnyUnit | AnyPointUnit): number;
  /** The reading that it came from. */
  reading(): Reading | undefined;
  /** The difference from the origin itself. */
  overOrigin(): AnyQuantity;
  /** As plain data. */
  toJSON(): PointJson;
  /** Number and unit. */
  toString(): string;
}

/**
 * A place on a scale: a temperature, an absolute or a gauge pressure, an elevation, a stage.
 *
 * Points of one origin and one instance subtract; a point takes a plus or a minus of its difference;
 * points never add, multiply or scale.
 */
export class Point<in out O extends Origin> {
  /** Where it is counted from. */
  readonly origin: O;
  /** Which staff, datum or station, where the origin has instances. */
  readonly instance: string | undefined;
  /** @internal */
  readonly "~si": number;
  /** @internal */
  readonly "~sources": Sources | undefined;
  /** @internal */
  readonly "~number": number;
  /** @internal */
  readonly "~unit": { readonly symbol: string } | undefined;
  /** @internal */
  readonly "~reading": Reading | undefined;

  /** @internal */
  constructor(
    origin: O,
    si: number,
    instance?: string,
    sources?: Sources,
    number = 0,
    unit?: { readonly symbol: string },
    reading?: Reading,
  ) {
    if (!Number.isFinite(si))
      throw new QuantityError("not-finite", `a ${origin} point is not finite`);
    if ((origin === "absolute zero" || origin === "vacuum") && si < 0) {
      throw new QuantityError(
        "not-finite",
        `${digitsOf(si)} ${kindOf(originTable[origin]?.[0] ?? "").unit} is below ${origin}`,
      );
    }
    this.origin = origin;
    this.instance = instance;
    this["~si"] = si;
    this["~sources"] = sources;
    this["~number"] = number;
    this["~unit"] = unit;
    this["~reading"] = reading;
  }

  /** Marks a point, of whichever installed copy. */
  get "~leat"(): "point" {
    return "point";
  }

  /**
   * The number of a unit over the origin: the one way out.
   *
   * @param unit - A unit of the difference, or one with a zero of its own, such as `celsius`.
   * @returns How many of it; a point that was written in this unit comes back as written.
   * @throws {@link QuantityError} `kind` for a unit of another dimension, `origin` for another origin.
   */
  in(unit: Unit<Difference<O>> | PointUnit<O>): number {
    const [scale, offset] = "unit" in unit ? [unit.unit, unit.offset] : [unit as AnyUnit, 0];
    if ("unit" in unit ? unit.origin !== this.origin : unit.kind !== differenceOf(this.origin)) {
      throw new QuantityError("kind", `${sayPoint(this)} has no ${unit.symbol}`);
    }
    if (this["~unit"]?.symbol === unit.symbol) return this["~number"];
    return scale.fromSI(this["~si"]) - offset;
  }

  /**
   * The point so much higher.
   *
   * @param by - A difference.
   * @returns The other point.
   * @throws {@link QuantityError} `kind`; also where a second point is added.
   */
  plus(by: Quantity<Difference<O>>): Point<O> {
    return move(this, by, 1);
  }

  /**
   * The difference to another point, or the point so much lower.
   *
   * @param other - A point of this origin and instance, or a difference.
   * @returns The difference, or the other point.
   * @throws {@link QuantityError} `origin` for another origin or instance, `kind`.
   */
  minus(other: Point<O>): Quantity<Difference<O>>;
  minus(other: Quantity<Difference<O>>): Point<O>;
  minus(other: AnyPoint | AnyQuantity): unknown {
    if (!isPoint(other)) return move(this, other, -1);
    sameOrigin(this, other, "subtract");
    return new Quantity(
      differenceOf(this.origin),
      this["~si"] - other["~si"],
      combineSources(this["~sources"], 1, other["~sources"], -1),
    );
  }

  /**
   * Whether this lies below another point of its origin and instance.
   *
   * @param other - The other.
   * @returns True if it is lower.
   * @throws {@link QuantityError} `origin`.
   */
  lessThan(other: Point<O>): boolean {
    sameOrigin(this, other, "compare");
    return this["~si"] < other["~si"];
  }

  /**
   * Whether this lies above another point of its origin and instance.
   *
   * @param other - The other.
   * @returns True if it is higher.
   * @throws {@link QuantityError} `origin`.
   */
  greaterThan(other: Point<O>): boolean {
    sameOrigin(this, other, "compare");
    return this["~si"] > other["~si"];
  }

  /**
   * The difference from the origin itself: a gauge pressure as pressure, an absolute temperature in kelvin.
   *
   * @returns The difference.
   */
  overOrigin(): Quantity<Difference<O>> {
    const kind = differenceOf(this.origin) as Difference<O>;
    const unit = this["~unit"];
    // A scale with a zero of its own, such as °C, is not a unit of the difference.
    return unit && "numerator" in unit
      ? new Quantity(
          kind,
          this["~si"],
          this["~sources"],
          undefined,
          this["~number"],
          unit as AnyUnit,
          this["~reading"],
        )
      : new Quantity(kind, this["~si"], this["~sources"]);
  }

  /**
   * The standard uncertainty (k = 1) of all sources together.
   *
   * @returns It, zero where nothing is known to be uncertain.
   */
  standardUncertainty(): Quantity<Difference<O>> {
    return this.overOrigin().standardUncertainty();
  }

  /**
   * The same with an uncertainty: a 95 % interval of a normal distribution.
   *
   * @param half - Half the width of the interval.
   * @param source - Names what is uncertain.
   * @returns The point, with the source added.
   */
  plusMinus(half: Quantity<Difference<O>>, source: string): Point<O> {
    return this.withSources(this.overOrigin().plusMinus(half, source)["~sources"]);
  }

  /**
   * The same with an uncertainty: anywhere within a limit, equally likely.
   *
   * @param half - The limit, either way.
   * @param source - Names what is uncertain.
   * @returns The point, with the source added.
   */
  within(half: Quantity<Difference<O>>, source: string): Point<O> {
    return this.withSources(this.overOrigin().within(half, source)["~sources"]);
  }

  /** @internal */
  withSources(sources: Sources | undefined): Point<O> {
    return new Point(
      this.origin,
      this["~si"],
      this.instance,
      sources,
      this["~number"],
      this["~unit"],
      this["~reading"],
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
   * As plain data.
   *
   * @returns The versioned form that `pointFromJSON` reads.
   */
  toJSON(): PointJson {
    const { unit } = kindOf(differenceOf(this.origin));
    const written = this["~unit"];
    return {
      v: 1,
      q: this["~si"],
      u: unit,
      o: this.origin,
      ...(this.instance !== undefined && { i: this.instance }),
      ...(written && written.symbol !== unit && { w: [this["~number"], written.symbol] }),
      ...(this["~reading"] && { r: this["~reading"] }),
      ...(this["~sources"] && { s: [...this["~sources"]] }),
    };
  }

  /**
   * As it was written, or in the coherent unit, over its origin.
   *
   * @returns Number, unit and origin.
   */
  toString(): string {
    const written = this["~unit"];
    const [n, symbol] = written
      ? [this["~number"], written.symbol]
      : [this["~si"], kindOf(differenceOf(this.origin)).unit];
    const over = this.origin === "absolute zero" ? "" : ` over ${this.instance ?? this.origin}`;
    return `${digitsOf(n)} ${symbol}${over}`;
  }

  /** @internal */
  [Symbol.toPrimitive](hint: string): string {
    if (hint === "number") refuseNumber(this);
    return this.toString();
  }

  /** @internal */
  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }
}

/**
 * Whether a value is a point, of this or another installed copy.
 *
 * @param value - Anything.
 * @returns True for a point.
 */
export function isPoint(value: unknown): value is AnyPoint {
  return typeof value === "object" && value !== null && (value as AnyPoint)["~leat"] === "point";
}

/**
 * A point so far over an origin: `point("site datum", metre.of(12), "peg 1")`.
 *
 * @param origin - Where it is counted from.
 * @param over - How far over it.
 * @param instance - Which staff, datum or station; needed before two such points may be compared.
 * @returns The point.
 * @throws {@link QuantityError} `kind`, `origin`, `not-finite` below absolute zero or vacuum.
 */
export function point<O extends Origin>(
  origin: O,
  over: Quantity<Difference<O>>,
  instance?: string,
): Point<O> {
  const kind = differenceOf(origin);
  if (!isQuantity(over) || over.kind !== kind) {
    throw new QuantityError("kind", `a ${origin} point needs a ${kind}, not ${String(over)}`);
  }
  const { "~si": si, "~sources": sources, "~number": n, "~unit": unit } = over as AnyQuantity;
  return new Point(origin, si, instance, sources, n, unit, (over as AnyQuantity)["~reading"]);
}

/** A unit with a zero of its own. */
function pointUnit<O extends Origin>(
  origin: O,
  symbol: string,
  unit: AnyUnit,
  offset: number,
): PointUnit<O> {
  const scale: PointUnit<O> = {
    origin,
    symbol,
    unit,
    offset,
    at(value) {
      if (typeof value !== "number" || !Number.isFinite(value)) {
        throw new QuantityError("not-finite", `${String(value)} ${symbol} is not a finite number`);
      }
      return new Point(origin, unit.toSI(value + offset), undefined, undefined, value, scale);
    },
  };
  return scale;
}

/**
 * A gauge pressure at the atmosphere of its own site: there is no hidden 101 325 Pa.
 *
 * @param gauge - What the gauge reads.
 * @param atmosphere - Pressure of the air at the gauge.
 * @returns The absolute pressure.
 * @throws {@link QuantityError} `origin`.
 */
export function toAbsolute(
  gauge: Point<"local atmosphere">,
  atmosphere: Point<"vacuum">,
): Point<"vacuum"> {
  mustStandOn("local atmosphere", gauge);
  mustStandOn("vacuum", atmosphere);
  return atmosphere.plus(gauge.overOrigin());
}

/**
 * An absolute pressure as a gauge at a station reads it, under the atmosphere of the site.
 *
 * @param absolute - The absolute pressure.
 * @param atmosphere - Pressure of the air at the gauge.
 * @param station - Names the gauge's station.
 * @returns What the gauge reads.
 * @throws {@link QuantityError} `origin`, `kind`.
 */
export function toGauge(
  absolute: Point<"vacuum">,
  atmosphere: Point<"vacuum">,
  station: string,
): Point<"local atmosphere"> {
  mustStandOn("vacuum", absolute);
  return point("local atmosphere", absolute.minus(atmosphere), station);
}

function mustStandOn(origin: Origin, value: AnyPoint): void {
  if (!isPoint(value) || value.origin !== origin) {
    throw new QuantityError("origin", `a point over ${origin} is needed, not ${String(value)}`);
  }
}

const scaleOf = (numerator: number, denominator: number): AnyUnit => ({
  kind: "temperature difference",
  symbol: "K",
  numerator,
  denominator,
  currency: undefined,
  toSI: (value) => (value * numerator) / denominator,
  fromSI: (value) => (value * denominator) / numerator,
});

/** Degrees Celsius: t/°C = T/K − 273.15. */
export const celsius: PointUnit<"absolute zero"> = /* @__PURE__ */ pointUnit(
  "absolute zero",
  "°C",
  /* @__PURE__ */ scaleOf(1, 1),
  273.15,
);

/** Degrees Fahrenheit: t/°F = 9/5 · T/K − 459.67. */
export const fahrenheit: PointUnit<"absolute zero"> = /* @__PURE__ */ pointUnit(
  "absolute zero",
  "°F",
  /* @__PURE__ */ scaleOf(5, 9),
  459.67,
);

/**
 * The kind of the differences of an origin.
 *
 * @param origin - Name of the origin.
 * @returns Name of the kind.
 * @throws {@link QuantityError} `origin` where there is no such origin.
 */
export function differenceOf(origin: string): string {
  const entry = Object.hasOwn(originTable, origin) ? originTable[origin] : undefined;
  if (!entry) throw new QuantityError("origin", `${origin.slice(0, 60)} is not an origin`);
  return entry[0];
}

function sayPoint(value: AnyPoint): string {
  return `${value.toString()} (a point over ${value.origin})`;
}

function sameOrigin(a: AnyPoint, b: AnyPoint, verb: string): void {
  const needed = originTable[a.origin]?.[1];
  if (!isPoint(b) || a.origin !== b.origin || a.instance !== b.instance) {
    throw new QuantityError(
      "origin",
      `cannot ${verb} ${sayPoint(a)} and ${String(b)}: two origins`,
    );
  }
  if (needed && a.instance === undefined && a !== b) {
    throw new QuantityError(
      "origin",
      `cannot ${verb} ${sayPoint(a)} and ${String(b)}: name the instance of the origin`,
    );
  }
}

function move<O extends Origin>(from: Point<O>, by: AnyQuantity, sign: 1 | -1): Point<O> {
  if (!isQuantity(by) || by.kind !== differenceOf(from.origin)) {
    throw new QuantityError("kind", `cannot move ${sayPoint(from)} by ${String(by)}`);
  }
  return new Point(
    from.origin,
    from["~si"] + sign * by["~si"],
    from.instance,
    combineSources(from["~sources"], 1, by["~sources"], sign),
  );
}
