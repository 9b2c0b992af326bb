import { type AnyUnit, type Quantity, QuantityError, type Unit } from "@leat/quantity";

import type { Citation } from "./source.ts";

/** What a table is made of: rows as its one source prints them, a unit for each column of numbers. */
export interface TableDefinition<R extends Row, K extends keyof R & string, U extends Units<R>> {
  /** Stable name, in kebab case. */
  readonly id: string;
  /** Raised when a number changes; 1 at first. */
  readonly revision?: number;
  /** The column that names a row. */
  readonly key: K;
  /** The unit that each column of numbers is printed in. */
  readonly units: U;
  /** The one source of every row. */
  readonly source: Citation;
  /** Rows, as printed. */
  readonly rows: readonly R[];
}

/** A row: words and numbers by column; a number that the source leaves out is absent. */
export type Row = Readonly<Record<string, string | number | undefined>>;

/** Units by column. */
export type Units<R> = { readonly [C in keyof R]?: AnyUnit };

/** A table that can be looked up. */
export interface Table<R extends Row, K extends keyof R & string, U> {
  /** Its definition. */
  readonly definition: {
    readonly id: string;
    readonly revision?: number;
    readonly key: K;
    readonly units: U;
    readonly source: Citation;
    readonly rows: readonly R[];
  };
  /** Names of the rows, in the order of the source. */
  keys(): R[K][];
  /**
   * A row by its exact name: there is no fuzzy look-up.
   *
   * @param key - The name.
   * @returns The row, as printed.
   * @throws QuantityError `size` where there is no such row; the message lists those there are.
   */
  row(key: R[K]): R;
  /**
   * A number of a row with its unit.
   *
   * @param key - Name of the row.
   * @param column - A column with a unit.
   * @returns The quantity.
   * @throws QuantityError `size` where there is no such row or the source leaves it out.
   */
  get<C extends keyof U & keyof R & string>(
    key: R[K],
    column: C,
  ): U[C] extends Unit<infer N> ? Quantity<N> : never;
}

/**
 * Makes a table of rows as a source prints them.
 *
 * @param define - Returns the definition; called once, when the table is first used. Mark the call as pure.
 * @returns The table.
 */
export function table<
  const R extends Row,
  const K extends keyof R & string,
  const U extends Units<R>,
>(define: () => TableDefinition<R, K, U>): Table<R, K, U> {
  let made: TableDefinition<R, K, U> | undefined;
  const byKey = new Map<unknown, R>();
  const definition = (): TableDefinition<R, K, U> => {
    if (!made) {
      made = define();
      for (const row of made.rows) byKey.set(row[made.key], row);
    }
    return made;
  };
  const row = (key: R[K]): R => {
    const { id, key: column, rows } = definition();
    const found = byKey.get(key);
    if (!found) {
      throw new QuantityError(
        "size",
        `${id}: ${String(key).slice(0, 40)} is not in the table; it has ${rows.map((r) => r[column]).join(", ")}.`,
      );
    }
    return found;
  };
  return {
    get definition() {
      return definition();
    },
    keys: () => definition().rows.map((r) => r[definition().key]),
    row,
    get(key, column) {
      const value = row(key)[column];
      const unit = definition().units[column] as unknown as Unit<string> | undefined;
      if (typeof value !== "number" || !unit) {
        throw new QuantityError(
          "size",
          `${definition().id}: the source gives no ${column} for ${String(key)}.`,
        );
      }
      return unit.of(value) as never;
    },
  };
}
