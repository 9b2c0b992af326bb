import { type AnyQuantity, type Quantity, QuantityError } from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";

import { bounded, keeps, limitNotice, nameOf } from "./check.ts";
import { type AnyDefinition, type CallOptions, type Formula, outputsOf } from "./definition.ts";
import type { Args, Inputs, Output } from "./input.ts";
import type { Limit } from "./limit.ts";
import { NonPhysicalError, type Notice, OutOfValidityError } from "./notice.ts";
import { type Numbers, resolve, type Resolved } from "./resolve.ts";
import { partial } from "./sensitivity.ts";

type AnyColumn = Column<string>;

/** What a caller passes for a series: a column wherever a quantity is taken. */
export type SeriesArgs<I> = {
  readonly [N in keyof Args<I>]:
    | Args<I>[N]
    | (NonNullable<Args<I>[N]> extends Quantity<infer K> ? Column<K> : never);
};

/**
 * A formula over columns, row by row.
 *
 * The columns are checked against the limits first: rows out of range are counted by limit, flagged in
 * the quality byte of the answer and told of in one notice a limit. Gaps stay gaps. A row that nothing
 * physical can have is an error that names it: flag it as a gap first.
 *
 * @param formula - A formula with one output.
 * @param args - Its inputs, one or more of them columns of one length.
 * @param options - Without `onNotice`, rows out of range are an error.
 * @returns The column of answers, with the offset, scale and noise that its inputs' sources give it.
 * @throws NonPhysicalError, OutOfValidityError, QuantityError `column` for no column or unequal lengths.
 */
export function series<
  I extends Inputs,
  K extends string,
  C extends Readonly<Record<string, AnyQuantity>>,
>(
  formula: Formula<I, Output<K, string>, C, false>,
  args: SeriesArgs<I>,
  options: CallOptions = {},
): Column<K> {
  const definition = formula.definition as unknown as AnyDefinition;
  const columns = new Map<string, AnyColumn>();
  const scalars: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(args as Record<string, unknown>)) {
    if (isColumn(value)) columns.set(name, value);
    else scalars[name] = value;
  }
  const [[driver, first] = [undefined, undefined]] = columns;
  if (!driver || !first)
    throw new QuantityError(
      "column",
      `${definition.id}: no input is a column; call the formula itself.`,
    );
  const { length } = first;
  const quality = first.quality.slice();
  for (const [name, column] of columns) {
    if (column.length !== length) {
      throw new QuantityError(
        "column",
        `${definition.id}: ${name} has ${column.length} rows and ${driver} has ${length}; give columns of one length.`,
      );
    }
    if (column === first) continue;
    for (let i = 0; i < length; i++)
      quality[i] = (quality[i] as number) | (column.quality[i] as number);
  }

  // Scalars are resolved, and columns checked for kind, by the row that is taken as the example.
  const example = quality.findIndex((q) => !(q & Quality.gap));
  const out = new Float64Array(length);
  const kind = outputsOf(definition.output)[0]?.kind as K;
  if (example < 0) return Column.wrap(kind, out, quality, { axis: first.axis });
  const at = (row: number): Record<string, unknown> => ({
    ...scalars,
    ...Object.fromEntries(Array.from(columns, ([name, column]) => [name, column.at(row)])),
  });
  let resolved: Resolved;
  try {
    resolved = resolve(definition, at(example), options);
  } catch (error) {
    // Where it is the columns' rows that no physical number can be, say which and how many.
    if (error instanceof NonPhysicalError)
      checkDomains(definition, columns, suspectsOf(definition, columns, {}), quality);
    throw error;
  }
  const letters: Numbers = { ...resolved.letters };
  const byLetter = Array.from(columns, ([name, { values }]) => ({
    letter: letterOf(definition, name),
    values,
  }));
  const suspects = suspectsOf(definition, columns, letters);
  checkDomains(definition, columns, suspects, quality);
  checkLimits(definition, letters, byLetter, columns, suspects, quality, options);

  const { series: written, body } = definition;
  const plain = columns.size === 1 && written?.over === driver ? written.loop : undefined;
  const values = first.values;
  const gaps = hasGaps(quality);
  for (let from = nextRow(quality, 0); from < length;) {
    let to = gaps ? from + 1 : length;
    while (to < length && !((quality[to] as number) & Quality.gap)) to++;
    if (plain) plain(values, letters as never, out, from, to);
    else {
      for (let i = from; i < to; i++) {
        for (const { letter, values: column } of byLetter) letters[letter] = column[i];
        out[i] = body(letters as never) as number;
      }
    }
    from = nextRow(quality, to);
  }
  const answers = answersOf(definition, kind, out, quality, first.axis);
  const { uncertainty } = uncertaintyOf(definition, columns, out, quality, (row) =>
    resolve(definition, at(row)),
  );
  return uncertainty ? Column.wrap(kind, out, quality, { axis: first.axis, uncertainty }) : answers;
}

/** The answers as a column, which looks at each for itself; here it is said which formula gave it. */
function answersOf<K extends string>(
  definition: AnyDefinition,
  kind: K,
  out: Float64Array,
  quality: Uint8Array,
  axis: AnyColumn["axis"],
): Column<K> {
  try {
    return Column.wrap(kind, out, quality, { axis });
  } catch (error) {
    const row = out.findIndex((n) => !Number.isFinite(n));
    throw row < 0 ? error : notANumber(definition, row);
  }
}

function isColumn(value: unknown): value is AnyColumn {
  return typeof value === "object" && value !== null && (value as AnyColumn)["~leat"] === "column";
}

function letterOf(definition: AnyDefinition, name: string): string {
  const input = definition.inputs[name];
  if (input?.type !== "scalar")
    throw new QuantityError("column", `${definition.id}: ${name} takes no column.`);
  return input.letter;
}

/** Whether any row is a gap: four flags at a time, the array being a fresh copy that starts on a word. */
function hasGaps(quality: Uint8Array): boolean {
  const words = new Uint32Array(quality.buffer, 0, quality.length >> 2);
  let flags = 0;
  for (let i = 0; i < words.length; i++) flags |= words[i] as number;
  for (let i = words.length * 4; i < quality.length; i++) flags |= quality[i] as number;
  return (flags & (Quality.gap * 0x01010101)) !== 0;
}

function nextRow(quality: Uint8Array, from: number): number {
  let row = from;
  while (row < quality.length && (quality[row] as number) & Quality.gap) row++;
  return row;
}

/** Rows of each column that some check may find fault with; every other row passes them all. */
type Suspects = ReadonlyMap<string, readonly number[]>;

/**
 * One pass over each column against the tightest of its bounds, what physics allows included: each check
 * then looks at the few rows that lie beyond. Gaps hold 0 and may be among them.
 */
function suspectsOf(
  definition: AnyDefinition,
  columns: ReadonlyMap<string, AnyColumn>,
  letters: Numbers,
): Suspects {
  const suspects = new Map<string, readonly number[]>();
  for (const [name, { values }] of columns) {
    const input = definition.inputs[name];
    const domain = input?.type === "scalar" ? input.domain : "any";
    let low = domain === "any" ? -Infinity : domain === "positive" ? Number.MIN_VALUE : 0;
    let high = domain === "fraction" ? 1 : Infinity;
    for (const limit of definition.limits ?? []) {
      if (limit.of || limit.input !== name) continue;
      if (limit.over !== undefined && columns.has(limit.over)) continue;
      const scale =
        limit.over === undefined ? 1 : letters[definition.inputs[limit.over]?.letter ?? ""];
      if (typeof scale !== "number") continue;
      low = Math.max(low, (limit.min ?? -Infinity) * scale);
      high = Math.min(high, (limit.max ?? Infinity) * scale);
    }
    suspects.set(name, beyond(values, low, high));
  }
  return suspects;
}

/** Rows that do not lie between two bounds; four are looked at at a time. */
function beyond(values: Float64Array, low: number, high: number): number[] {
  const rows: number[] = [];
  const whole = values.length - (values.length % 4);
  for (let i = 0; i < whole; i += 4) {
    const a = values[i] as number;
    const b = values[i + 1] as number;
    const c = values[i + 2] as number;
    const d = values[i + 3] as number;
    if (a >= low && a <= high && b >= low && b <= high) {
      if (c >= low && c <= high && d >= low && d <= high) continue;
    }
    for (let row = i; row < i + 4; row++) if (!inside(values, row, low, high)) rows.push(row);
  }
  for (let row = whole; row < values.length; row++) {
    if (!inside(values, row, low, high)) rows.push(row);
  }
  return rows;
}

function inside(values: Float64Array, row: number, low: number, high: number): boolean {
  const n = values[row] as number;
  return n >= low && n <= high;
}

/** One error for each column that has rows which nothing physical can have. */
function checkDomains(
  definition: AnyDefinition,
  columns: ReadonlyMap<string, AnyColumn>,
  suspects: Suspects,
  quality: Uint8Array,
): void {
  const notices: Notice[] = [];
  for (const [name, { values }] of columns) {
    const input = definition.inputs[name];
    const domain = input?.type === "scalar" ? input.domain : "any";
    if (domain === "any") continue;
    const [min, max] = [0, domain === "fraction" ? 1 : Number.POSITIVE_INFINITY];
    let bad = 0;
    let row = -1;
    for (const i of suspects.get(name) as readonly number[]) {
      const n = values[i] as number;
      if (
        (n < min || n > max || (n === 0 && domain === "positive")) &&
        !((quality[i] as number) & Quality.gap)
      ) {
        if (bad === 0) row = i;
        bad++;
      }
    }
    if (bad > 0) {
      notices.push({
        code: "non-physical",
        severity: "stop",
        path: [name, row],
        message: `${definition.id}: ${name} has ${bad} rows that no physical ${name} can be, the first being row ${row} with ${values[row]} in coherent units. Flag them as gaps, or correct them.`,
        actual: String(values[row]),
        limit: domain,
      });
    }
  }
  if (notices.length > 0) throw new NonPhysicalError(notices);
}

/** Counts and flags rows out of range, limit by limit. */
function checkLimits(
  definition: AnyDefinition,
  letters: Numbers,
  byLetter: readonly { letter: string; values: Float64Array }[],
  columns: ReadonlyMap<string, AnyColumn>,
  suspects: Suspects,
  quality: Uint8Array,
  options: CallOptions,
): void {
  const notices = (definition.limits ?? []).flatMap((limit) => {
    const { count, worst } = countBeyond(
      definition,
      limit,
      letters,
      byLetter,
      columns,
      suspects,
      quality,
    );
    if (count === 0) return [];
    const got = `${nameOf(limit)} = ${Number(worst.toPrecision(4))} at worst, in ${count} of ${quality.length} rows,`;
    return [limitNotice(definition, limit, worst, String(worst), got)];
  });
  if (notices.length > 0 && !options.onNotice) throw new OutOfValidityError(notices);
  for (const notice of notices) options.onNotice?.(notice);
}

function countBeyond(
  definition: AnyDefinition,
  limit: Limit,
  letters: Numbers,
  byLetter: readonly { letter: string; values: Float64Array }[],
  columns: ReadonlyMap<string, AnyColumn>,
  suspects: Suspects,
  quality: Uint8Array,
): { count: number; worst: number } {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limit;
  const over = limit.over === undefined ? 1 : letters[definition.inputs[limit.over]?.letter ?? ""];
  const above = limit.of ? undefined : columns.get(limit.input)?.values;
  if (above && !(limit.over && columns.has(limit.over))) {
    // One column against fixed bounds: the bounds are scaled instead of the rows.
    const rows = suspects.get(limit.input) as readonly number[];
    return scan(above, rows, quality, min, max, over as number);
  }
  if (!limit.of && !columns.has(limit.input) && !(limit.over && columns.has(limit.over))) {
    const n = bounded(definition, limit, letters);
    return keeps(limit, n) ? { count: 0, worst: n } : { count: flagAll(quality), worst: n };
  }
  const row = { ...letters };
  let count = 0;
  let worst = 0;
  for (let i = 0; i < quality.length; i++) {
    if ((quality[i] as number) & Quality.gap) continue;
    for (const { letter, values } of byLetter) row[letter] = values[i];
    const n = bounded(definition, limit, row);
    if (keeps(limit, n)) continue;
    worst = further(worst, n, min, count);
    count++;
    quality[i] = (quality[i] as number) | Quality.outOfRange;
  }
  return { count, worst };
}

function scan(
  values: Float64Array,
  rows: readonly number[],
  quality: Uint8Array,
  min: number,
  max: number,
  over: number,
): { count: number; worst: number } {
  const [lo, hi] = [min * over, max * over];
  let count = 0;
  let worst = 0;
  for (const i of rows) {
    const n = values[i] as number;
    if (n >= lo && n <= hi) continue;
    if ((quality[i] as number) & Quality.gap) continue;
    worst = further(worst, n / over, min, count);
    count++;
    quality[i] = (quality[i] as number) | Quality.outOfRange;
  }
  return { count, worst };
}

function flagAll(quality: Uint8Array): number {
  let count = 0;
  for (let i = 0; i < quality.length; i++) {
    if ((quality[i] as number) & Quality.gap) continue;
    quality[i] = (quality[i] as number) | Quality.outOfRange;
    count++;
  }
  return count;
}

/** The value that lies further out, of those beyond one side first met. */
function further(worst: number, n: number, min: number, count: number): number {
  if (count === 0) return n;
  return n < min ? Math.min(worst, n) : Math.max(worst, n);
}

function notANumber(definition: AnyDefinition, row: number): NonPhysicalError {
  return new NonPhysicalError([
    {
      code: "non-physical",
      severity: "stop",
      path: [row],
      message: `${definition.id}: row ${row} is not a number. Check its inputs against the equation ${definition.equation}.`,
    },
  ]);
}

/**
 * Uncertainty of the answers. A column carries one figure a source for all its rows, so it is worked out
 * at the row whose answer is the median: offsets and scales of the inputs become a scale of the answers,
 * noise stays noise.
 */
function uncertaintyOf(
  definition: AnyDefinition,
  columns: ReadonlyMap<string, AnyColumn>,
  out: Float64Array,
  quality: Uint8Array,
  resolveRow: (row: number) => Resolved,
): {
  uncertainty?: { scale: (readonly [string, number])[]; noise: (readonly [string, number])[] };
} {
  if (!resolveRow(nextRow(quality, 0)).slots.some(({ given }) => given["~sources"])) return {};
  const good = out.filter((_, row) => !((quality[row] as number) & Quality.gap)).toSorted();
  const y = good[good.length >> 1] as number;
  if (y === 0) return {};
  const example = out.indexOf(y);
  const resolved = resolveRow(example);
  const scale = new Map<string, number>();
  const noise = new Map<string, number>();
  for (const slot of resolved.slots) {
    const sources = slot.given["~sources"];
    if (!sources) continue;
    const largest = Math.max(...Array.from(sources.values(), Math.abs));
    const [slope = 0] = partial(definition, resolved, slot, largest);
    const own = new Set(
      (columns.get(String(slot.path[0]))?.uncertainty?.noise ?? []).map(
        ([id]) => `${id}[${example}]`,
      ),
    );
    for (const [id, c] of sources) {
      const [to, name] = own.has(id) ? [noise, id.slice(0, id.lastIndexOf("["))] : [scale, id];
      to.set(name, (to.get(name) ?? 0) + (own.has(id) ? slope * c : (slope * c) / y));
    }
  }
  if (scale.size + noise.size === 0) return {};
  const list = (map: Map<string, number>): (readonly [string, number])[] =>
    Array.from(map, ([id, c]) => [id, Math.abs(c)] as const);
  return { uncertainty: { scale: list(scale), noise: list(noise) } };
}
