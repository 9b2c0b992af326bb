import { QuantityError } from "./error.ts";
import { kindOf } from "./kind.ts";
import { mixCurrency } from "./mix-currency.ts";
import { readKind, readList, readNumber, readRecord, readSources } from "./plain-data.ts";
import { Quantity } from "./quantity.ts";
import { combineSources, type Sources } from "./sources.ts";
import { TimeAxis, type TimeAxisJson } from "./time-axis.ts";
import type { Plain, Relative } from "./types.ts";
import type { Unit } from "./unit.ts";

/** Bits of the quality of a sample; a sample may have several. */
export const Quality: {
  /** Nothing was recorded: the value is 0 and means nothing. */
  readonly gap: 1;
  /** Recorded, and doubted. */
  readonly suspect: 2;
  /** Not recorded but estimated. */
  readonly estimated: 4;
  /** Computed from inputs outside the limits of a formula. */
  readonly outOfRange: 8;
  /** Recorded while ice held the water up. */
  readonly ice: 16;
  /** A total or a mean of a step of which a part was recorded. */
  readonly partial: 32;
} = { gap: 1, suspect: 2, estimated: 4, outOfRange: 8, ice: 16, partial: 32 };

/**
 * Where the uncertainty of a column comes from: source ids, as those of a quantity, with the
 * contribution of each as a standard uncertainty. Each source stands once in a list.
 */
export interface ColumnUncertainty {
  /** The same in all rows, in the coherent unit. */
  readonly offset?: readonly SourceOf[];
  /** Shared by all rows, in proportion to the value: a relative standard uncertainty. */
  readonly scale?: readonly SourceOf[];
  /** Of each row its own, in the coherent unit: `[row]` is added to the source id. */
  readonly noise?: readonly SourceOf[];
}

/** A source id and its contribution. */
export type SourceOf = readonly [source: string, standard: number];

/** What goes with the values of a column. */
export interface ColumnOptions {
  /** Times of the rows. */
  readonly axis?: TimeAxis | undefined;
  /** Where the uncertainty comes from. */
  readonly uncertainty?: ColumnUncertainty | undefined;
  /** ISO 4217 code, where there is money in the kind and no unit that says which. */
  readonly currency?: string | undefined;
}

/** A column as plain data, with a version. */
export interface ColumnJson {
  /** Version of the form. */
  v: 1;
  /** Kind. */
  k: string;
  /** Symbol of the coherent unit; checked on reading. */
  u: string;
  /** Values in the coherent unit; null is a gap. */
  n: (number | null)[];
  /** {@link Quality} of each value. */
  f: number[];
  /** Times of the rows. */
  t?: TimeAxisJson;
  /** Where the uncertainty comes from. */
  s?: ColumnUncertainty;
}

/**
 * Many numbers of one kind, as a logger records them: values in the coherent unit and a quality
 * each, 9 bytes a sample.
 *
 * There is no arithmetic on columns: they enter formulas. Columns share their arrays, so the arrays
 * are not to be written to once they are in one: a change is a new column. Rows are counted from 0.
 * A gap is a flag, never a NaN. A column does not remember the unit that it was written in, and
 * a negative zero is stored as zero.
 */
export class Column<in out K extends string> {
  /** Name of the kind. */
  readonly kind: K;
  /** Values in the coherent unit, 0 in a gap. Not to be written to. */
  readonly values: Float64Array;
  /** {@link Quality} of each value. Not to be written to. */
  readonly quality: Uint8Array;
  /** Times of the rows. */
  readonly axis: TimeAxis | undefined;
  /** Where the uncertainty comes from. */
  readonly uncertainty: ColumnUncertainty | undefined;
  /** ISO 4217 code, where there is money in the kind. */
  readonly currency: string | undefined;

  private constructor(kind: K, values: Float64Array, quality: Uint8Array, options: ColumnOptions) {
    const { axis, uncertainty, currency } = options;
    if (kindOf(kind).priced !== (currency !== undefined)) {
      throw new QuantityError(
        "currency",
        `a column of ${kind} ${currency ? `has no ${currency}` : "needs a currency"}`,
      );
    }
    for (const rows of [quality, axis]) {
      if (rows && rows.length !== values.length)
        throw refuse(
          `${values.length} values, but ${rows.length} rows of ${rows === axis ? "time" : "quality"}`,
        );
    }
    const row = firstUnfit(values, quality);
    if (row >= 0) {
      const value = values[row] as number;
      throw refuse(
        Number.isFinite(value)
          ? `row ${row} of ${kind} is a gap and holds ${value}`
          : `row ${row} of ${kind} is not a finite number`,
      );
    }
    this.kind = kind;
    this.values = values;
    this.quality = quality;
    this.axis = axis;
    this.uncertainty = uncertainty && {
      offset: readSources(uncertainty.offset, "an offset"),
      scale: readSources(uncertainty.scale, "a scale"),
      noise: readSources(uncertainty.noise, "noise"),
    };
    this.currency = currency;
  }

  /**
   * A column of numbers of a unit.
   *
   * @param unit - The unit.
   * @param numbers - How many of it in each row; null and undefined are gaps.
   * @param options - Times and uncertainty.
   * @returns The column.
   * @throws {@link QuantityError} `column` for NaN, infinity or anything but a number, with its row.
   */
  static of<K extends string>(
    unit: Unit<K>,
    numbers: ArrayLike<number | null | undefined>,
    options: ColumnOptions = {},
  ): Column<K> {
    const { numerator, denominator } = unit;
    const values = new Float64Array(numbers.length);
    const quality = new Uint8Array(numbers.length);
    for (let row = 0; row < values.length; row += 1) {
      const n = numbers[row];
      if (n === null || n === undefined) quality[row] = Quality.gap;
      // What is no number is refused below. Adding zero makes a negative zero a zero.
      else values[row] = typeof n === "number" ? (n * numerator) / denominator + 0 : NaN;
    }
    return new Column(unit.kind, values, quality, {
      ...options,
      currency: mixCurrency(unit.currency, options.currency),
    });
  }

  /**
   * A column round arrays that are there already, without a copy: for formula bodies.
   *
   * @param kind - Name of the kind.
   * @param values - Values in the coherent unit, finite, 0 in a gap; not to be written to afterwards.
   * @param quality - {@link Quality} of each; not to be written to afterwards.
   * @param options - Times, uncertainty and currency.
   * @returns The column.
   * @throws {@link QuantityError} `column`, `kind`, `currency`.
   */
  static wrap<K extends string>(
    kind: K,
    values: Float64Array,
    quality: Uint8Array,
    options: ColumnOptions = {},
  ): Column<K> {
    return new Column(kind, values, quality, options);
  }

  /** Marks a column, of whichever installed copy. */
  get "~leat"(): "column" {
    return "column";
  }

  /** Number of rows. */
  get length(): number {
    return this.values.length;
  }

  /**
   * The numbers of a unit.
   *
   * @param unit - A unit of this kind, or of the plain kind that this is a kind of.
   * @returns How many of it in each row, 0 in a gap: an array of the caller's own.
   * @throws {@link QuantityError} `kind`, `currency`.
   */
  in(unit: Unit<K> | Unit<Plain<K>>): Float64Array {
    if (kindOf(unit.kind).packed !== kindOf(this.kind).packed) {
      throw new QuantityError(
        "kind",
        `a column of ${this.kind} has no ${unit.symbol} (${unit.kind})`,
      );
    }
    mixCurrency(this.currency, unit.currency);
    const { numerator, denominator } = unit;
    return this.values.map((value) => (value * denominator) / numerator);
  }

  /**
   * One sample, with its uncertainty.
   *
   * @param row - The row, from 0.
   * @returns The quantity, or nothing for a gap.
   * @throws {@link QuantityError} `column` where there is no such row.
   */
  at(row: number): Quantity<K> | undefined {
    const value = valueAt(this.values, row);
    if ((this.quality[row] as number) & Quality.gap) return undefined;
    const { offset = [], scale = [], noise = [] } = this.uncertainty ?? {};
    let sources: Sources | undefined;
    for (const [source, standard] of [
      ...offset,
      ...scale.map(([id, relative]) => [id, relative * value] as const),
      ...noise.map(([id, own]) => [`${id}[${row}]`, own] as const),
    ]) {
      sources = combineSources(sources, 1, new Map([[source, standard]]), 1);
    }
    return new Quantity(this.kind, value, sources, this.currency);
  }

  /**
   * The same values as another kind of the same dimension.
   *
   * @param kind - Name of the other kind.
   * @returns A column that shares the arrays.
   * @throws {@link QuantityError} `kind` where the dimension differs.
   */
  as<N extends Relative<K>>(kind: N): Column<N> {
    if (kindOf(kind).packed !== kindOf(this.kind).packed) {
      throw new QuantityError("kind", `a column of ${this.kind} cannot be taken as ${kind}`);
    }
    return new Column(kind, this.values, this.quality, this);
  }

  /**
   * The same with flags added to some rows; those that become gaps lose their values.
   *
   * @param flags - Bits of {@link Quality}.
   * @param rows - The rows, from 0.
   * @returns Another column.
   * @throws {@link QuantityError} `column` where there is no such row.
   */
  withQuality(flags: number, rows: Iterable<number>): Column<K> {
    const quality = this.quality.slice();
    const values = flags & Quality.gap ? this.values.slice() : this.values;
    for (const row of rows) {
      valueAt(values, row);
      quality[row] = (quality[row] as number) | flags;
      if (flags & Quality.gap) values[row] = 0;
    }
    return new Column(this.kind, values, quality, this);
  }

  /**
   * As plain data.
   *
   * @returns The versioned form that {@link Column.fromJSON} reads.
   */
  toJSON(): ColumnJson {
    return {
      v: 1,
      k: this.kind,
      u: kindOf(this.kind).unit.replace("¤", this.currency ?? "¤"),
      n: Array.from(this.values, (value, row) =>
        (this.quality[row] as number) & Quality.gap ? null : value,
      ),
      f: [...this.quality],
      ...(this.axis && { t: this.axis.toJSON() }),
      ...(this.uncertainty && { s: this.uncertainty }),
    };
  }

  /**
   * Reads what {@link Column.toJSON} wrote.
   *
   * @param json - Parsed JSON, or an object.
   * @param kind - The kind that is asked for; another is refused.
   * @returns The column.
   * @throws {@link QuantityError} `kind`, `json`, `column`, `time`.
   */
  static fromJSON<K extends string>(json: unknown, kind: K): Column<K> {
    const field = readRecord(json, "a column");
    const currency = readKind(kind, field("k"), field("u"));
    const numbers = readList(field("n"), "the numbers of a column");
    const flags = readList(field("f"), "the quality of a column");
    const quality = Uint8Array.from(flags as number[]);
    const values = Float64Array.from(numbers, (n, row) => {
      if (quality[row] !== flags[row]) throw refuse(`row ${row} of ${kind} has no quality`);
      return n === null && (quality[row] as number) & Quality.gap
        ? 0
        : readNumber(n, `row ${row} of ${kind}`);
    });
    const axis = field("t");
    return new Column(kind, values, quality, {
      axis: axis === undefined ? undefined : TimeAxis.fromJSON(axis),
      uncertainty: field("s") as ColumnUncertainty | undefined,
      currency,
    });
  }
}

/**
 * The first row that is no number, or a gap that holds one; −1 where there is none. A loop of its own, with
 * one way out: in the constructor it took twice as long over a year of minutes, and nine times with entries().
 */
function firstUnfit(values: Float64Array, quality: Uint8Array): number {
  if (!hasGaps(quality) && allFinite(values)) return -1;
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] as number;
    if (!Number.isFinite(value) || (value !== 0 && ((quality[row] as number) & Quality.gap) !== 0))
      return row;
  }
  return -1;
}

/** Whether any row is a gap: four flags at a time where the array starts on a word. */
function hasGaps(quality: Uint8Array): boolean {
  const whole = quality.byteOffset % 4 === 0 ? quality.length >> 2 : 0;
  const words = new Uint32Array(quality.buffer, whole && quality.byteOffset, whole);
  let flags = 0;
  for (let word = 0; word < whole; word += 1) flags |= words[word] as number;
  for (let row = 4 * whole; row < quality.length; row += 1) flags |= quality[row] as number;
  return (flags & (Quality.gap * 0x01010101)) !== 0;
}

/** What is finite less itself is zero, and what is not is not: four sums, so that none waits for another. */
function allFinite(values: Float64Array): boolean {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  const whole = values.length - (values.length % 4);
  for (let row = 0; row < whole; row += 4) {
    a += (values[row] as number) - (values[row] as number);
    b += (values[row + 1] as number) - (values[row + 1] as number);
    c += (values[row + 2] as number) - (values[row + 2] as number);
    d += (values[row + 3] as number) - (values[row + 3] as number);
  }
  for (let row = whole; row < values.length; row += 1) {
    a += (values[row] as number) - (values[row] as number);
  }
  return a + b + c + d === 0;
}

function refuse(message: string): QuantityError {
  return new QuantityError("column", message);
}

function valueAt(values: Float64Array, row: number): number {
  const value = values[row];
  if (value === undefined) throw refuse(`row ${row} is not in a column of ${values.length}`);
  return value;
}
