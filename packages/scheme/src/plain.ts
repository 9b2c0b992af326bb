import { type Origin, type PointJson, type QuantityJson } from "@leat/quantity";
import { fromJSON, pointFromJSON } from "@leat/quantity/text";

/** What a result is of. */
export type Result = "design" | "measurements" | "stream";

/** A result as plain data, with the version of its form. */
export interface Plain {
  /** Version of the form. */
  readonly leat: 1;
  /** What it is. */
  readonly is: Result;
  /** The result; quantities and points are in their own versioned form. */
  readonly result: unknown;
}

/**
 * A result as plain data: for JSON, files, workers and a second installed copy.
 *
 * @param result - What `designScheme`, `measureSurvey` or `streamYear` gave.
 * @param is - What it is.
 * @returns Plain data, sharing nothing with the result.
 */
export function toPlain(result: object, is: Result = "design"): Plain {
  return { leat: 1, is, result: JSON.parse(JSON.stringify(result)) as unknown };
}

const results: readonly Result[] = ["design", "measurements", "stream"];

/**
 * A result from its plain form: quantities and points are quantities and points again.
 *
 * @param plain - What `toPlain` gave, as it is or through JSON.
 * @returns The result; what was a function (a source's `at`) is gone.
 * @throws Error for another version or another form.
 */
export function fromPlain(plain: unknown): unknown {
  const { leat, is, result } = (plain ?? {}) as Partial<Plain>;
  if (leat !== 1 || !results.some((each) => each === is)) {
    throw new Error(
      `this is not a result of version 1 (${results.join(", ")}): leat = ${String(leat)}, is = ${String(is)}. It may come from a later version.`,
    );
  }
  return revive(result);
}

function revive(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(revive);
  if (typeof value !== "object" || value === null) return value;
  const { v, q, k, o } = value as Partial<QuantityJson & PointJson>;
  if (v === 1 && typeof q === "number") {
    if (typeof k === "string") return fromJSON(value, k);
    if (typeof o === "string") return pointFromJSON(value, o as Origin);
  }
  return Object.fromEntries(Object.entries(value).map(([key, child]) => [key, revive(child)]));
}
