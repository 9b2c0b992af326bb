import { type AnyUnit, celsius, fahrenheit, kelvin, QuantityError } from "@leat/quantity";
import { read, unitOf } from "@leat/quantity/text";

import type { ProblemList } from "./problem-list.ts";
import { FileError } from "./problem.ts";
import type { Table } from "./table.ts";

/**
 * The unit that a text names, of one kind.
 *
 * @param text - Such as `m3/s`.
 * @param kind - A plain kind, such as `volume flow`.
 * @param example - A unit that would do.
 * @returns The unit.
 * @throws QuantityError `unknown-unit`, `ambiguous`, `kind`, `empty`.
 */
export function unitOfKind(text: string, kind: string, example: string): AnyUnit {
  const unit = unitOf(text);
  if (unit.kind !== kind) {
    throw new QuantityError(
      "kind",
      `${text} is a unit of ${unit.kind}; a unit of ${kind} is needed, such as ${example}`,
    );
  }
  return unit;
}

/** How a number of a unit of temperature becomes kelvins. */
export interface TemperatureScale {
  /** Added to the number. */
  readonly offset: number;
  /** The unit of a difference. */
  readonly unit: AnyUnit;
}

/**
 * The scale that a text names.
 *
 * @param text - `°C`, `degC`, `°F` or `K`.
 * @returns The scale.
 * @throws QuantityError `unknown-unit` where it is none.
 */
export function temperatureScale(text: string): TemperatureScale {
  const symbol = symbolOfPoint(text);
  const scale = [celsius, fahrenheit, { symbol: "K", offset: 0, unit: kelvin }].find(
    (each) => each.symbol === symbol,
  );
  if (!scale) {
    throw new QuantityError(
      "unknown-unit",
      `${text} is not a scale of temperature; write °C, °F or K`,
    );
  }
  return scale;
}

function symbolOfPoint(scale: string): string | undefined {
  try {
    return read(`0 ${scale}`, "absolute zero")["~unit"]?.symbol;
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return undefined;
  }
}

/**
 * What the caller stated of a table, in the words of a problem with its file where it names nothing.
 *
 * @param file - Name of the file.
 * @param code - Code of the problem.
 * @param path - Where it stands in what the caller stated.
 * @param find - Finds what it names.
 * @returns What was found.
 * @throws FileError where there is no such thing.
 */
export function stated<T>(file: string, code: string, path: readonly string[], find: () => T): T {
  try {
    return find();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    const message = `${path.join(" ")}: ${error.message.replace(/\.$/, "")}.`;
    throw new FileError([{ file, line: 1, column: 1, code, path, message }]);
  }
}

/**
 * Refuses a unit that is stated where the heading of its column names another one of the same kind.
 *
 * @param table - The table.
 * @param key - Which column.
 * @param unit - The unit that is stated.
 * @param problems - Who is told.
 * @param code - Code of the problem.
 */
export function refuseOtherHeading<K extends string>(
  table: Table<K>,
  key: K,
  unit: AnyUnit,
  problems: ProblemList,
  code: string,
): void {
  const heading = table.headings[key];
  const written = /[([]([^()[\]]+)[)\]]$/.exec(heading)?.[1];
  if (written === undefined) return;
  let other: AnyUnit;
  try {
    other = unitOf(written);
  } catch (error) {
    // Much stands in brackets that is no unit.
    if (!(error instanceof QuantityError)) throw error;
    return;
  }
  const ratio = other.toSI(1) / unit.toSI(1);
  if (other.kind !== unit.kind || Math.abs(ratio - 1) < 1e-9) return;
  problems.add(code, () => ({
    place: { line: table.headerLine ?? 1, column: 1 },
    path: [key],
    message: `the heading ${JSON.stringify(heading)} names ${other.symbol}, and ${unit.symbol} is stated. Which is it?`,
  }));
}
