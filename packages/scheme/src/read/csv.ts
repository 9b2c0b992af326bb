import Papa from "papaparse";

/** What parts the cells of a line. */
export type Delimiter = "comma" | "semicolon" | "tab";

/** The delimiters as they stand in the text. */
export const delimiterMarks: Readonly<Record<Delimiter, string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
};

/** A place in a text, both from 1. */
export interface Place {
  /** Line. */
  readonly line: number;
  /** Column. */
  readonly column: number;
}

/** A text parted into rows of cells. */
export interface Csv {
  /** The cells of each row, as they were between their delimiters, without their quotes. */
  readonly rows: readonly (readonly string[])[];
  /** The line that each row begins on, from 1. */
  readonly lines: readonly number[];
  /** Where a quote opens that is not closed before a delimiter or the end of the line. */
  readonly quotes: readonly Place[];
}

/**
 * A text without its byte order marks, its lines parted by line feeds alone.
 *
 * @param text - As it was in the file.
 * @returns The text, for {@link partRows}.
 */
export function withPlainLines(text: string): string {
  const start = /^\uFEFF*/.exec(text)?.[0].length ?? 0;
  const rest = start > 0 ? text.slice(start) : text;
  return rest.includes("\r") ? rest.replaceAll(/\r\n?/g, "\n") : rest;
}

/**
 * Parts a text into rows and cells; what stands in quotes may hold delimiters, line feeds and doubled quotes.
 *
 * @param text - From {@link withPlainLines}.
 * @param delimiter - What parts the cells.
 * @param most - Most rows to part; all of them by default.
 * @returns The rows. A text that ends its last line has an empty row after it.
 */
export function partRows(text: string, delimiter: Delimiter, most = 0): Csv {
  const { data, errors } = Papa.parse<string[]>(text, {
    delimiter: delimiterMarks[delimiter],
    newline: "\n",
    preview: most,
  });
  // A cell in quotes may hold lines.
  const quoted = text.includes('"');
  const lines: number[] = [];
  let line = 1;
  for (const row of data) {
    lines.push(line);
    line += 1;
    if (quoted) for (const cell of row) line += feedsIn(cell);
  }
  const opened = new Set(
    errors.filter(({ type }) => type === "Quotes").map(({ index = 1 }) => index - 1),
  );
  return { rows: data, lines, quotes: [...opened].map((offset) => placeOf(text, offset)) };
}

function feedsIn(cell: string): number {
  let count = 0;
  for (let at = cell.indexOf("\n"); at >= 0; at = cell.indexOf("\n", at + 1)) count += 1;
  return count;
}

function placeOf(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  return { line: feedsIn(before) + 1, column: offset - before.lastIndexOf("\n") };
}

/**
 * Where a cell begins: found again when it is asked for, for it seldom is.
 *
 * @param text - From {@link withPlainLines}.
 * @param delimiter - What parts the cells.
 * @param line - The line that the row begins on.
 * @param index - The cell, from 0; where the row has fewer, the end of the row.
 * @returns Line and column.
 */
export function cellPlace(text: string, delimiter: Delimiter, line: number, index: number): Place {
  const mark = delimiterMarks[delimiter];
  let at = 0;
  for (let n = 1; n < line; n += 1) at = text.indexOf("\n", at) + 1;
  let begins = at;
  let quoted = false;
  for (let cell = 0; cell < index && at < text.length; at += 1) {
    const sign = text[at];
    if (quoted) {
      if (sign !== '"') continue;
      // A doubled quote is one of the cell's own.
      if (text[at + 1] === '"') at += 1;
      else quoted = false;
    } else if (sign === '"' && at === begins) quoted = true;
    else if (sign === "\n") break;
    else if (sign === mark) {
      cell += 1;
      begins = at + 1;
    }
  }
  return placeOf(text, at);
}
