import { QuantityError } from "./error.ts";
import { kindOf } from "./kind.ts";

// What every reader of stored data shares: the version, own fields only, checked values.

/** Gives a stored field by its key; what a prototype holds is not data. */
export type Fields = (key: string) => unknown;

/**
 * The fields of a stored record.
 *
 * @param json - Parsed JSON, or an object.
 * @param what - What it should be, for the message.
 * @returns The fields.
 * @throws {@link QuantityError} `json` for anything but an object.
 */
export function readFields(json: unknown, what: string): Fields {
  if (typeof json !== "object" || json === null) throw wrong(what, json);
  return (key) => (Object.hasOwn(json, key) ? (json as Record<string, unknown>)[key] : undefined);
}

/**
 * The fields of a stored record that has a version.
 *
 * @param json - Parsed JSON, or an object.
 * @param what - What it should be, for the message.
 * @returns The fields.
 * @throws {@link QuantityError} `json` for anything but an object of version 1.
 */
export function readRecord(json: unknown, what: string): Fields {
  const field = readFields(json, what);
  const version = field("v");
  if (version !== 1)
    throw new QuantityError(
      "json",
      `${what} of version ${brief(version)} is not read, only version 1`,
    );
  return field;
}

/**
 * The error for a stored value that is not what it should be.
 *
 * @param what - What it should be.
 * @param value - What is there.
 * @returns The error, to be thrown.
 */
export function wrong(what: string, value: unknown): QuantityError {
  return new QuantityError("json", `${what} cannot be ${brief(value)}`);
}

/**
 * A stored number.
 *
 * @param value - What is there.
 * @param what - What it should be.
 * @returns The number.
 * @throws {@link QuantityError} `json` for anything but a finite number.
 */
export function readNumber(value: unknown, what: string): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw wrong(what, value);
  return value;
}

/**
 * A stored list.
 *
 * @param value - What is there; nothing is an empty list.
 * @param what - What it should be.
 * @returns The list.
 * @throws {@link QuantityError} `json` for anything but an array.
 */
export function readList(value: unknown, what: string): readonly unknown[] {
  if (!Array.isArray(value ?? [])) throw wrong(what, value);
  return (value ?? []) as unknown[];
}

/**
 * Stored contributions of sources of uncertainty.
 *
 * @param value - Pairs of a source id and a number, or nothing.
 * @param what - What they are.
 * @returns The pairs.
 * @throws {@link QuantityError} `json` for anything else, or for a source named twice.
 */
export function readSources(value: unknown, what: string): [string, number][] {
  const seen = new Set<unknown>();
  return readList(value, what).map((pair) => {
    const [id, c, ...rest] = readList(pair, what);
    if (typeof id !== "string" || seen.has(id) || rest.length > 0) throw wrong(what, id);
    seen.add(id);
    return [id, readNumber(c, what)];
  });
}

/**
 * Checks the kind and the unit symbol of stored data.
 *
 * @param kind - The kind that is asked for.
 * @param stored - The kind that is stored.
 * @param symbol - The unit symbol that is stored.
 * @returns The currency in the symbol, where there is money in the kind.
 * @throws {@link QuantityError} `kind` for another kind, `json` for another symbol.
 */
export function readKind(kind: string, stored: unknown, symbol: unknown): string | undefined {
  if (stored !== kind) {
    throw new QuantityError("kind", `asked for ${kind}, and this is stored as ${brief(stored)}`);
  }
  const { unit, priced } = kindOf(kind);
  const at = unit.indexOf("¤");
  const code = priced && typeof symbol === "string" ? symbol.slice(at, at + 3) : undefined;
  if (
    symbol !== unit.replace("¤", code ?? "¤") ||
    (code !== undefined && !/^[A-Z]{3}$/.test(code))
  ) {
    throw wrong(`the unit of a stored ${kind}, ${unit},`, symbol);
  }
  return code;
}

/**
 * A value in a message: short, whatever it is.
 *
 * @param value - Anything.
 * @returns Up to 60 characters of it.
 */
export function brief(value: unknown): string {
  return typeof value === "object" && value ? "an object" : String(value).slice(0, 60);
}
