// The table of kinds and units with its types: it is plain JavaScript, so that the generator needs no build.

/** A row of the table of kinds. */
export interface KindRow {
  name: string;
  unit: string;
  dim?: Record<string, number>;
  of?: string;
}

/** What the table exports. */
export interface Table {
  bases: string[];
  kinds: KindRow[];
  sums: [left: string, sign: "+" | "-", right: string, result: string][];
  origins: { name: string; difference: string; instance?: true }[];
  units: [
    name: string,
    kind: string,
    symbol: string,
    factor: string,
    also: string[],
    us?: boolean,
  ][];
}

const path = "../../packages/quantity/kinds.mjs";

/** The table from which the types and the run-time tables are generated. */
export const table: Table = (await import(/* @vite-ignore */ path)) as Table;

/** A row's exponents in the order of the bases. */
export function exponentsIn({ dim, of }: KindRow): number[] {
  const own = dim ?? table.kinds.find(({ name }) => name === of)?.dim ?? {};
  return table.bases.map((base) => own[base] ?? 0);
}
