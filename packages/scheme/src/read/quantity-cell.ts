import { type Point, type Quantity, QuantityError } from "@leat/quantity";
import { read } from "@leat/quantity/text";

import type { ProblemList } from "./problem-list.ts";
import type { Table } from "./table.ts";

/** A column of numbers, and their unit. */
export interface NumberColumn {
  /** Its heading, or its number from 1. */
  readonly column: string | number;
  /** The unit. */
  readonly unit: string;
}

/** A file's name without its folder and its ending. */
export function nameOf(file: string): string {
  return file.replace(/^.*[\\/]/, "").replace(/\.[a-z]{1,5}$/i, "");
}

/** A cell that is read as a quantity: which, and who is told. */
export interface CellOf {
  readonly table: Table<string>;
  readonly row: number;
  /** Begins the name of its source of uncertainty. */
  readonly id: string;
  readonly problems: ProblemList;
  /** Begins the codes of problems. */
  readonly code: string;
}

/** A cell as a quantity or a point, with a ± where one is written; nothing where a problem was told. */
export function readCell(
  of: CellOf,
  key: string,
  unit: string,
  as: "absolute zero",
): Point<"absolute zero"> | undefined;
export function readCell<K extends string>(
  of: CellOf,
  key: string,
  unit: string,
  as: K,
  sign?: "any",
): Quantity<K> | undefined;
export function readCell(
  { table, row, id, problems, code }: CellOf,
  key: string,
  unit: string,
  as: string,
  sign?: "any",
): unknown {
  const cell = table.cells[key]?.[row] ?? "";
  const said = (fault: string): void => {
    problems.add(`${code}/number`, () =>
      table.say(
        row,
        key,
        `${table.headings[key]} ${cell === "" ? "is empty" : `${JSON.stringify(cell.slice(0, 60))} ${fault}`}.`,
      ),
    );
  };
  const spread = /^(.*?) ?(?:±|\+\/-)(.*)$/.exec(cell);
  if (Number.isNaN(table.numberOf((spread?.[1] ?? cell).trim()))) {
    said("is not a number");
    return undefined;
  }
  try {
    const value = read(`${cell} ${unit}`, as, {
      source: `${id}.${row + 1}.${key}`,
      decimalMark: table.decimal === "comma" ? "," : ".",
    });
    if (as !== "absolute zero" && sign !== "any" && value["~si"] < 0) {
      said("is negative");
      return undefined;
    }
    return value;
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    said(`is not read: ${error.message.replace(/\.$/, "")}`);
    return undefined;
  }
}
