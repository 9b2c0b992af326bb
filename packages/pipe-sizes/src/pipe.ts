import type { Citation } from "@leat/formula";
import { type AnyUnit, type Point, type Quantity, QuantityError } from "@leat/quantity";

/** A family of pipe whose sizes a standard prints, or a pipe of one's own. */
export type PipeSeries =
  | "PE IPS"
  | "PE SIDR"
  | "PE ISO"
  | "PVC schedule"
  | "PVC SDR"
  | "PVC ISO"
  | "steel"
  | "own";

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
  /**
   * Outside diameter, as printed: for metric pipe the nominal size, which is the least. Pipe that is sized by its inside
   * has none printed: it is the inside with two average walls.
   */
  readonly outsideDiameter: Quantity<"length">;
  /** Least wall that the standard admits: what strength is worked out with. */
  readonly minimumWall: Quantity<"length">;
  /** Wall that pipe is made with on average: what friction and weight are worked out with. */
  readonly averageWall: Quantity<"length">;
  /**
   * Bore: over the average wall, which is the one to work out friction with, and over the least wall, which is the widest.
   * Pipe that is sized by its inside has the printed inside, and the widest that its tolerance admits.
   */
  readonly insideDiameter: {
    readonly average: Quantity<"length">;
    readonly minimumWall: Quantity<"length">;
  };
  /** Weight of the empty pipe, over the average wall; absent for a pipe of one's own of unknown density. */
  readonly massPerLength: Quantity<"mass per length"> | undefined;
  /** Pressure that it carries for its life at {@link ratedAt}; absent for a pipe of one's own whose maker states none. */
  readonly pressureRating: Quantity<"pressure"> | undefined;
  /** Temperature of the water that the rating is for: 73 °F or 20 °C. Warmer plastic carries less. */
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
 * @param tables - Sizes of the series: the first holds every size, the others more walls of some.
 * @param family - The series as a message names it, such as `PE in iron pipe sizes`.
 * @param unit - What the size is written with, `in` or `mm`.
 * @param size - Nominal size.
 * @param column - Column of the wall, such as `DR 11`.
 * @returns The diameter that the standard controls and the wall, in the unit of the table, and the row.
 * @throws QuantityError `size` where the standard prints no such pipe.
 */
export function printed(
  tables: readonly SizeTable[],
  family: string,
  unit: string,
  size: string | number,
  column: string,
): { diameter: number; wall: number; row: SizeRow } {
  const row = rowOf(tables, family, unit, size);
  const wall = row[column];
  if (typeof wall !== "number") {
    throw new QuantityError(
      "size",
      `${family}: ${size} ${unit} is not made in ${column.slice(0, 40)}; it is made in ${wallColumns(row).join(", ")}.`,
    );
  }
  return { diameter: (row["outsideDiameter"] ?? row["insideDiameter"]) as number, wall, row };
}

/**
 * All that is printed of one size, or a refusal that lists the sizes.
 *
 * @param tables - Sizes of the series.
 * @param family - The series as a message names it.
 * @param unit - What the size is written with.
 * @param size - Nominal size.
 * @returns The rows of all tables in one.
 * @throws QuantityError `size` where there is no such size.
 */
export function rowOf(
  tables: readonly SizeTable[],
  family: string,
  unit: string,
  size: string | number,
): SizeRow {
  const [sizes] = tables as readonly [SizeTable];
  const found = tables.flatMap(({ definition }) =>
    definition.rows.filter((one) => one["size"] === size),
  );
  if (found.length === 0) {
    throw new QuantityError(
      "size",
      `${family}: there is no size of ${String(size).slice(0, 40)} ${unit}; sizes are ${sizes.definition.rows.map((one) => one["size"]).join(", ")} ${unit}.`,
    );
  }
  return Object.assign({}, ...found) as SizeRow;
}

/** Columns of walls that a row fills in, by rising ratio or schedule. */
function wallColumns(row: SizeRow): string[] {
  const ratio = (column: string): number => Number(/[\d.]+$/.exec(column)?.[0] ?? Infinity);
  return Object.keys(row)
    .filter((column) => /^(S?I?DR|Sch) |^STD$/.test(column) && row[column] !== undefined)
    .toSorted((a, b) => ratio(a) - ratio(b));
}

/** A number as tables of pipe print it, to so many parts of a unit. */
export function rounded(value: number, parts: number): number {
  return Math.round(value * parts) / parts;
}
