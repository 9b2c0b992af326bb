import { type AnyQuantity, coherentUnit, isQuantity } from "@leat/quantity";
import { read } from "@leat/quantity/text";

import type { AnyDefinition, AnyFormula } from "../definition.ts";
import { outputsOf } from "../definition.ts";
import type { AnyInput, ScalarInput } from "../input.ts";

/** Where the expected value of a row comes from. */
export type RowKind =
  /** Typed from the page; never passed through our code. */
  | "printed"
  /** Measured by somebody. */
  | "measured"
  /** Worked out by another equation, another program or by hand. */
  | "second-equation"
  /** Worked out by us: it shows a change, it proves nothing. */
  | "regression";

/** How sure we are of a row. */
export type RowStanding = "read" | "secondary" | "memory" | "derived" | "practice";

/** A row that a formula is checked against: data, kept beside its test. */
export interface ReferenceRow {
  /** Where the expected value comes from. */
  readonly kind: RowKind;
  /** The source and the place in it. */
  readonly source: string;
  /** How sure we are: `memory` is to be confirmed, `practice` has no source. */
  readonly standing: RowStanding;
  /** Inputs by their words, as field text; lists as lists of records. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** The expected value as printed, with its unit; by word where there are several outputs. */
  readonly expected: string | Readonly<Record<string, string>>;
  /** As `0.1 %` or with a unit; half of the last printed digit where it is absent. */
  readonly tolerance?: string;
  /** True where the row lies beyond the formula's limits on purpose. */
  readonly beyond?: boolean;
  /** Anything to add. */
  readonly note?: string;
}

/** One expected value against what the formula gives. */
export interface RowResult {
  /** The row. */
  readonly row: ReferenceRow;
  /** Output, where there are several. */
  readonly word: string | undefined;
  /** What the formula gives, in the unit of the expected value. */
  readonly got: string;
  /** Distance over tolerance: at most 1 to pass. */
  readonly miss: number;
}

/** What a set of rows says of a formula. */
export interface RowReport {
  /** Every expected value. */
  readonly results: readonly RowResult[];
  /** What is wrong, in words; empty where all rows hold and there are enough independent ones. */
  readonly problems: readonly string[];
}

/** Independent rows that each formula needs. */
const enough = 3;

/**
 * Checks a formula against its rows. A formula with only `regression` rows is refused, and so is one
 * with fewer than three independent rows.
 *
 * @param formula - The formula.
 * @param rows - Its rows.
 * @returns Every comparison, and what is wrong.
 */
export function checkRows(formula: AnyFormula, rows: readonly ReferenceRow[]): RowReport {
  const { definition } = formula;
  const problems: string[] = [];
  const independent = rows.filter((row) => row.kind !== "regression").length;
  if (rows.length > 0 && independent === 0) {
    problems.push(
      `${definition.id}: only regression rows: they are our own output and prove nothing. Add rows from outside.`,
    );
  } else if (independent < enough) {
    problems.push(`${definition.id}: ${independent} independent rows, ${enough} are needed.`);
  }
  const results = rows.flatMap((row, i): RowResult[] => {
    const where = `${definition.id}, row ${i + 1} (${row.source})`;
    try {
      if (!row.source.trim()) throw new Error("no source is named");
      const found = checkRow(formula, row);
      for (const { miss, got, word } of found) {
        if (!(miss <= 1)) {
          problems.push(
            `${where}: ${word ? `${word} = ` : ""}${got}, expected ${word ? (row.expected as Record<string, string>)[word] : String(row.expected)} ± ${row.tolerance ?? "half of the last digit"}`,
          );
        }
      }
      return found;
    } catch (error) {
      problems.push(`${where}: ${error instanceof Error ? error.message : String(error)}`);
      return [];
    }
  });
  return { results, problems };
}

function checkRow(formula: AnyFormula, row: ReferenceRow): RowResult[] {
  const { definition } = formula;
  const args = argsOf(definition, row.inputs);
  let told = 0;
  const options = row.beyond ? { onNotice: () => (told += 1) } : {};
  const answer = formula(args as never, options) as AnyQuantity | Record<string, AnyQuantity>;
  if (row.beyond && told === 0) throw new Error("marked as beyond the limits, but within them");
  const expectations = typeof row.expected === "string" ? { "": row.expected } : row.expected;
  return Object.entries(expectations).map(([word, text]) => {
    const output = outputsOf(definition.output).find((o) => (o.word ?? "") === word);
    if (!output) throw new Error(`there is no output ${word}`);
    const expected = read(text, output.kind) as AnyQuantity;
    const got = (isQuantity(answer) ? answer : answer[word]) as AnyQuantity;
    const tolerance = toleranceOf(row, expected, output.kind);
    const unit = expected["~unit"] ?? coherentUnit(output.kind, "USD");
    return {
      row,
      word: output.word,
      got: `${Number(unit.fromSI(got["~si"]).toPrecision(7))} ${unit.symbol}`,
      // A hair for the rounding of the tolerance itself: 0.5 of the last digit is seldom a double.
      miss: Math.abs(got["~si"] - expected["~si"]) / (tolerance * (1 + 1e-9)),
    };
  });
}

function toleranceOf(row: ReferenceRow, expected: AnyQuantity, kind: string): number {
  if (row.tolerance?.endsWith("%"))
    return (Math.abs(expected["~si"]) * Number.parseFloat(row.tolerance)) / 100;
  if (row.tolerance) return (read(row.tolerance, kind) as AnyQuantity)["~si"];
  const reading = expected["~reading"];
  const unit = expected["~unit"];
  if (!reading || !unit) throw new Error("the expected value is not a reading");
  return unit.toSI(reading.resolution) / 2;
}

/**
 * Arguments of a formula from field text.
 *
 * @param definition - The formula's definition.
 * @param inputs - Text by word; lists as lists of records.
 * @returns Arguments for a call.
 * @throws QuantityError for text that cannot be read as the input's kind.
 */
export function argsOf(
  definition: AnyDefinition,
  inputs: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(inputs).map(([name, value]) => {
      const input = definition.inputs[name];
      if (!input) throw new Error(`${name} is not an input of ${definition.id}`);
      return [name, argument(input, value)];
    }),
  );
}

function argument(input: AnyInput, value: unknown): unknown {
  switch (input.type) {
    case "scalar":
      return scalar(input, String(value));
    case "point":
      return read(String(value), input.origin) as unknown;
    case "choice":
      return value;
    case "list":
      return (value as Record<string, unknown>[]).map((row) =>
        Object.fromEntries(
          Object.entries(row).map(([name, text]) => {
            const field = input.record[name];
            if (!field) throw new Error(`${name} is not in the record`);
            return [name, scalar(field, String(text))];
          }),
        ),
      );
    case "curve": {
      const { x, y } = value as { x: string[]; y: string[] };
      return { x: x.map((text) => read(text, input.x)), y: y.map((text) => read(text, input.y)) };
    }
  }
}

/** Read as the first kind that takes it. */
function scalar({ kinds }: ScalarInput<string, string, boolean>, text: string): AnyQuantity {
  let last: unknown;
  for (const kind of kinds) {
    try {
      return read(text, kind) as AnyQuantity;
    } catch (error) {
      last = error;
    }
  }
  throw last;
}
