import type { Delimiter } from "./csv.ts";
import type { ProblemList, Said } from "./problem-list.ts";

/** What stands before the decimals of a number. */
export type DecimalMark = "point" | "comma";

/**
 * Makes the reader of the numbers of a table.
 *
 * @param decimal - The decimal mark.
 * @param grouped - Whether the other mark, a space or an apostrophe may stand between groups of three digits.
 * @returns The number of a trimmed cell; NaN where it is none, which the caller must say.
 */
export function numberReader(decimal: DecimalMark, grouped: boolean): (cell: string) => number {
  const [mark, other] = decimal === "point" ? ["\\.", ","] : [",", "\\."];
  const plain = new RegExp(`^[-+\u2212]?(?:\\d+${mark}?\\d*|${mark}\\d+)(?:[eE][-+]?\\d{1,3})?$`);
  const groups = new RegExp(
    `^[-+\u2212]?\\d{1,3}(?:(${other}|[ \u00A0\u2009\u202F'\u2019])\\d{3})(?:\\1\\d{3})*(?:${mark}\\d*)?$`,
  );
  return (cell) => {
    let written = cell;
    if (!plain.test(cell)) {
      const group = grouped ? groups.exec(cell)?.[1] : undefined;
      if (group === undefined) return NaN;
      written = cell.replaceAll(group, "");
    }
    if (decimal === "comma") written = written.replace(",", ".");
    const number = Number(written.replace("\u2212", "-"));
    // Beyond, a unit could take it past what a number holds.
    return Math.abs(number) < 1e100 ? number : NaN;
  };
}

/** The first cell that shows something, by its row and column. */
interface Shown {
  readonly row: number;
  readonly column: number;
  readonly cell: string;
}

/**
 * Finds the decimal mark of the numbers of a table, or asks for it.
 *
 * Nothing is guessed: `1,5` has a decimal comma because a comma groups three digits, and `1,234` alone could be
 * either. Where commas part the cells, or tabs do, a point is a decimal point.
 *
 * @param about - What is stated, what parts the cells, the columns of numbers, and who is told.
 * @returns The mark, with a note where it is a comma that nobody stated.
 */
export function findDecimalMark(about: {
  readonly stated: DecimalMark | undefined;
  readonly delimiter: Delimiter;
  readonly columns: readonly (readonly string[])[];
  readonly say: (row: number, column: number, message: string) => Said;
  readonly problems: ProblemList;
}): { decimal: DecimalMark; note: Said | undefined } {
  const { stated, delimiter, columns, say, problems } = about;
  if (stated) return { decimal: stated, note: undefined };
  let grouped: Shown | undefined;
  const first: Record<"," | ".", Shown | undefined> = { ",": undefined, ".": undefined };
  const sure = { ",": false, ".": false };
  for (const [column, cells] of columns.entries()) {
    for (const [row, cell] of cells.entries()) {
      // A number may have a spread, and that a per cent sign.
      for (const number of /[±+]/.test(cell) ? cell.split(/ ?(?:±|\+\/-) ?/) : [cell]) {
        const [, marked = ""] =
          /^[-+\u2212]?([\d.,]*[.,][\d.,]*)(?:[eE][-+]?\d+| ?%)?$/.exec(number) ?? [];
        if (!/\d/.test(marked)) continue;
        const at = marked.search(/[.,]/);
        const mark = marked[at] as "," | ".";
        if (/[.,]/.test(marked.slice(at + 1))) grouped ??= { row, column, cell };
        first[mark] ??= { row, column, cell };
        sure[mark] ||= !/^[1-9]\d{0,2}[.,]\d{3}$/.test(marked);
      }
    }
  }
  const ask = ({ row, column, cell }: Shown, fault: string): void => {
    problems.add("file/decimal", () =>
      say(
        row,
        column,
        `${JSON.stringify(cell)} ${fault}. State the decimal mark: decimal: point or decimal: comma.`,
      ),
    );
  };
  const { ",": comma, ".": point } = first;
  if (grouped) ask(grouped, "has marks between groups of digits");
  else if (comma && point)
    ask(comma, `has a comma, and ${JSON.stringify(point.cell)} elsewhere has a point`);
  else if (comma && !sure[","])
    ask(comma, "could be thousands or decimals, and no other number tells which");
  else if (point && !sure["."] && delimiter === "semicolon")
    ask(point, "could be thousands or decimals, and no other number tells which");
  return {
    decimal: comma ? "comma" : "point",
    note:
      comma &&
      say(
        comma.row,
        comma.column,
        `${JSON.stringify(comma.cell)} and the numbers like it are read with a decimal comma, for no comma groups so many digits.`,
      ),
  };
}
