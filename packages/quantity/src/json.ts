import { QuantityError } from "./error.ts";
import { kindOf } from "./kind.ts";
import {
  brief,
  type Fields,
  readFields,
  readKind,
  readList,
  readNumber,
  readRecord,
  readSources,
  wrong,
} from "./plain-data.ts";
import { celsius, differenceOf, fahrenheit, type Origin, Point, type PointUnit } from "./point.ts";
import { Quantity } from "./quantity.ts";
import { unitOf } from "./read.ts";
import type { Reading } from "./reading.ts";
import type { Sources } from "./sources.ts";
import type { AnyUnit } from "./unit.ts";

/**
 * Reads a quantity that `toJSON` wrote.
 *
 * A unit of one's own is not known to a file: what was written in one comes back in the coherent
 * unit, with the same value.
 *
 * @param json - Parsed JSON, or an object.
 * @param kind - The kind that is asked for; another is refused, also one of the same dimension.
 * @returns The quantity, with its sources, as it was written and as it was read.
 * @throws {@link QuantityError} `kind` for another kind, `json` for anything that is not a quantity.
 */
export function fromJSON<K extends string>(json: unknown, kind: K): Quantity<K> {
  const field = readRecord(json, "a quantity");
  const currency = readKind(kind, field("k"), field("u"));
  const si = readNumber(field("q"), `a ${kind}`);
  const [number, unit] = readWritten(field("w"), field("u") as string, kind, si, currency);
  return new Quantity(kind, si, readSpread(field), currency, number, unit, readReading(field("r")));
}

/**
 * Reads a point that `toJSON` wrote.
 *
 * @param json - Parsed JSON, or an object.
 * @param origin - The origin that is asked for; another is refused.
 * @param instance - Which staff, datum or station is asked for; without it, whichever is stored.
 * @returns The point, with its sources, as it was written and as it was read.
 * @throws {@link QuantityError} `origin` for another origin or instance, `json` for anything that is not a point.
 */
export function pointFromJSON<O extends Origin>(
  json: unknown,
  origin: O,
  instance?: string,
): Point<O> {
  const field = readRecord(json, "a point");
  const kind = differenceOf(origin);
  const [o, i] = [field("o"), field("i")];
  if (o !== origin || (instance !== undefined && i !== instance)) {
    throw new QuantityError(
      "origin",
      `asked for a point over ${say(origin, instance)}, and this is stored over ${say(o, i)}`,
    );
  }
  if (i !== undefined && typeof i !== "string") throw wrong("an instance", i);
  readKind(kind, kind, field("u"));
  const si = readNumber(field("q"), "a point");
  const scales = origin === "absolute zero" ? [celsius, fahrenheit] : [];
  const [number, unit, scale] = readWritten(
    field("w"),
    field("u") as string,
    kind,
    si,
    undefined,
    scales,
  );
  return new Point(
    origin,
    si,
    i,
    readSpread(field),
    number,
    scale ?? unit,
    readReading(field("r")),
  );
}

/** An origin in a message, with its instance. */
function say(origin: unknown, instance: unknown): string {
  return brief(origin) + (instance === undefined ? "" : ` (${brief(instance)})`);
}

/** A unit with a zero of its own. */
type Scale = Pick<PointUnit<"absolute zero">, "symbol" | "unit" | "offset">;

/** Number and unit as written, in a unit that this package knows. */
function readWritten(
  json: unknown,
  coherent: string,
  kind: string,
  si: number,
  currency: string | undefined,
  scales: readonly Scale[] = [],
): [number, AnyUnit, Scale | undefined] | [] {
  if (json === undefined) return [];
  const [n, symbol, ...rest] = readList(json, "what was written");
  const number = readNumber(n, "a written number");
  if (typeof symbol !== "string" || rest.length > 0 || symbol === coherent)
    throw wrong("a written unit", symbol);
  const scale = scales.find((one) => one.symbol === symbol);
  const unit = scale?.unit ?? knownUnit(symbol);
  if (!unit) return [];
  const value = unit.toSI(number + (scale?.offset ?? 0));
  if (
    kindOf(unit.kind).packed !== kindOf(kind).packed ||
    unit.currency !== currency ||
    !(Math.abs(value - si) <= 1e-9 * Math.abs(si))
  ) {
    throw new QuantityError(
      "json",
      `${number} ${symbol} was not written for ${si} ${coherent} of ${kind}`,
    );
  }
  return [number, unit, scale];
}

/** The unit of a symbol, or nothing where it is of somebody's own making. */
function knownUnit(symbol: string): AnyUnit | undefined {
  try {
    const unit = unitOf(symbol);
    return unit.symbol === symbol ? unit : undefined;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function readSpread(field: Fields): Sources | undefined {
  const pairs = readSources(field("s"), "a source");
  return pairs.length > 0 ? new Map(pairs) : undefined;
}

function readReading(json: unknown): Reading | undefined {
  if (json === undefined) return undefined;
  const field = readFields(json, "a reading");
  const [text, assumed, question, spread] = ["text", "assumed", "question", "spread"].map(field);
  if (typeof text !== "string") throw wrong("the text of a reading", text);
  if (typeof assumed !== "boolean") throw wrong("the assumption of a reading", assumed);
  if (question !== undefined && question !== "gauge or absolute?")
    throw wrong("the question of a reading", question);
  return {
    text,
    resolution: readNumber(field("resolution"), "the resolution of a reading"),
    assumed,
    ...(spread !== undefined && { spread: readHalf(spread) }),
    ...(question && { question }),
  };
}

function readHalf(json: unknown): NonNullable<Reading["spread"]> {
  const field = readFields(json, "the spread of a reading");
  const shape = field("shape");
  if (shape !== "normal" && shape !== "rectangle") throw wrong("the shape of a spread", shape);
  return { half: readNumber(field("half"), "half a spread"), shape };
}
