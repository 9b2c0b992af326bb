import type { Citation } from "@leat/formula";
import { type AnyUnit, type Point, type Quantity, QuantityError } from "@leat/quantity";

/** A family of pipe whose sizes a standard prints, or a pipe of one's own. */
export type PipeSeries = "PE IPS" | "PE ISO" | "PVC schedule" | "PVC SDR" | "own";

/** A figure that is known as a range. */
export interface RoughnessRange {
  /** Smoothest that tables give. */
  readonly low: Quantity<"length">;
  /** Taken for a pipe in good condition. */
  readonly typical: Quantity<"length">;
  /** Roughest that tables give. */
  readonly high: Quantity<"length">;
}

/** A pipe: what it is called, how it is made, what it carries. */
export interface Pipe {
  /** As people write it, such as `4 in PE4710 DR 11`; {@link readPipe} reads it back. */
  readonly name: string;
  /** The family that it belongs to. */
  readonly series: PipeSeries;
  /** What it is made of, as the standard calls it. */
  readonly material: string;
  /** Outside diameter, as printed: for metric pipe the nominal size, which is the least. */
  readonly outsideDiameter: Quantity<"length">;
  /** Least wall that the standard admits: what strength is worked out with. */
  readonly minimumWall: Quantity<"length">;
  /** Wall that pipe is made with on average: what friction is worked out with. */
  readonly averageWall: Quantity<"length">;
  /** Bore: over the average wall, which is the one to work out friction with, and over the least wall, which is the widest. */
  readonly insideDiameter: {
    readonly average: Quantity<"length">;
    readonly minimumWall: Quantity<"length">;
  };
  /** Pressure that it carries for its life at {@link ratedAt}; absent for a pipe of one's own whose maker states none. */
  readonly pressureRating: Quantity<"pressure"> | undefined;
  /** Temperature of the water that the rating is for: 73 °F or 20 °C. Warmer pipe carries less. */
  readonly ratedAt: Point<"absolute zero"> | undefined;
  /** Absolute roughness of the wall. */
  readonly roughness: RoughnessRange;
  /** Where the sizes come from. */
  readonly source: Citation | undefined;
  /** Whose rule or table gives the average wall. */
  readonly averageWallSource: Citation | undefined;
}

/** Which wall a bore is taken over. */
export type WallChoice = "average" | "minimum";

/**
 * The bore of a pipe, over the wall that it is made with on average unless another is asked for.
 *
 * The two differ by 1 to 2 % and head loss by 5 to 8 %: the least wall flatters a scheme.
 *
 * @param pipe - The pipe.
 * @param wall - `average`, or `minimum` for the widest bore that the standard admits.
 * @returns The inside diameter.
 */
export function boreOf(pipe: Pipe, wall: WallChoice = "average"): Quantity<"length"> {
  return wall === "average" ? pipe.insideDiameter.average : pipe.insideDiameter.minimumWall;
}

/** A row of sizes, as a series looks at it. */
export type SizeRow = Readonly<Record<string, string | number | undefined>>;

/** A table of sizes, as a series looks at it. */
export interface SizeTable {
  readonly definition: {
    readonly units: Readonly<Record<string, AnyUnit | undefined>>;
    readonly rows: readonly SizeRow[];
  };
}

/**
 * The numbers of one pipe, or a refusal that lists what there is.
 *
 * @param table - Sizes of the series.
 * @param family - The series as a message names it, such as `PE in iron pipe sizes`.
 * @param unit - What the size is written with, `in` or `mm`.
 * @param size - Nominal size.
 * @param column - Column of the wall, such as `DR 11`.
 * @returns Outside diameter and wall in the unit of the table, and the row.
 * @throws QuantityError `size` where the standard prints no such pipe.
 */
export function printed(
  table: SizeTable,
  family: string,
  unit: string,
  size: string | number,
  column: string,
): { outside: number; wall: number; row: SizeRow } {
  const { rows } = table.definition;
  const row = rows.find((one) => one["size"] === size);
  if (!row) {
    throw new QuantityError(
      "size",
      `${family}: there is no size of ${String(size).slice(0, 40)} ${unit}; sizes are ${rows.map((one) => one["size"]).join(", ")} ${unit}.`,
    );
  }
  const wall = row[column];
  if (typeof wall !== "number") {
    throw new QuantityError(
      "size",
      `${family}: ${size} ${unit} is not made in ${column.slice(0, 40)}; it is made in ${wallColumns(row).join(", ")}.`,
    );
  }
  return { outside: row["outsideDiameter"] as number, wall, row };
}

/** Columns of walls that a row fills in. */
function wallColumns(row: SizeRow): string[] {
  return Object.keys(row).filter(
    (column) => /^(S?DR|Sch) /.test(column) && row[column] !== undefined,
  );
}

/** A number as tables of pipe print it, to so many parts of a unit. */
export function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
