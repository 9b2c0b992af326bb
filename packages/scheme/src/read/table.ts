import { closest, distance } from "fastest-levenshtein";

import {
  cellPlace,
  type Csv,
  type Delimiter,
  delimiterMarks,
  partRows,
  type Place,
  withPlainLines,
} from "./csv.ts";
import { type DecimalMark, findDecimalMark, numberReader } from "./number-cell.ts";
import { ProblemList, type Said } from "./problem-list.ts";
import type { Problem } from "./problem.ts";

/** Largest text that is parted, in characters: a day of seconds is some three million. */
const largestText: number = 32 * 1024 * 1024;

/** The row of headings is looked for in so many rows. */
const rowsSought = 100;

/** How a table is written, where that is known; what is not is found, or asked for where it could be two things. */
export interface TableForm {
  /** What parts the cells. */
  readonly delimiter?: Delimiter | undefined;
  /** The decimal mark. The other mark, and spaces, may group thousands only where it is stated. */
  readonly decimal?: DecimalMark | undefined;
  /** Line of the row of headings, from 1. */
  readonly header?: number | undefined;
  /** Line that the rows begin on, from 1, where it is not the one after the headings: loggers put a line of units between. */
  readonly firstRow?: number | undefined;
}

/** A column that is wanted. */
export interface WantedColumn {
  /** Its heading, or its number from 1; text such as `column 3` is a number. */
  readonly column: string | number;
  /** What its cells are. */
  readonly reads: "text" | "number";
}

/** What is wanted of a table. */
export interface WantedTable<K extends string> extends TableForm {
  /** The columns, by what they are for. */
  readonly columns: Readonly<Record<K, WantedColumn>>;
}

/** What was passed over in a table. */
export interface TableCounts {
  /** Lines before the headings, or before the first row where there are none. */
  readonly linesBefore: number;
  /** Rows between the headings and the first row that was stated. */
  readonly rowsSkipped: number;
  /** Empty rows between others; those at the end are not counted. */
  readonly rowsEmpty: number;
  /** Rows with nothing in any column that is wanted, but something in another. */
  readonly rowsElsewhere: number;
  /** Rows that end early, with every column that is wanted. */
  readonly rowsShort: number;
}

/** The columns that were wanted, as text. */
export interface Table<K extends string> {
  /** Name of the file. */
  readonly file: string;
  /** What parts its cells. */
  readonly delimiter: Delimiter;
  /** The decimal mark of its numbers. */
  readonly decimal: DecimalMark;
  /** Line of the headings, where there are any. */
  readonly headerLine: number | undefined;
  /** The heading of each column that is wanted, or `column 3`. */
  readonly headings: Readonly<Record<K, string>>;
  /** The cells of each, trimmed; one for each row. */
  readonly cells: Readonly<Record<K, readonly string[]>>;
  /** The line that each row begins on, from 1. */
  readonly lines: readonly number[];
  /** What was passed over. */
  readonly counts: TableCounts;
  /** What is worth knowing and stops nothing. */
  readonly notes: readonly Problem[];
  /** The number of a cell; NaN where it is none, which the caller must say. */
  numberOf(cell: string): number;
  /** What is to be said of a cell. */
  say(row: number, key: K, message: string): Said;
}

/**
 * Reads the columns that are wanted of a table of cells parted by commas, semicolons or tabs.
 *
 * The headings are the first row that has all the names that are wanted; what stands above them is counted. Names
 * are compared trimmed, each run of spaces as one, case kept. Where columns are wanted by number alone there are no
 * headings, unless their line is stated. A row with too many cells, or without a cell that is wanted, is refused:
 * a decimal comma between commas would otherwise cut a number in two.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @param wanted - What is wanted of it.
 * @returns The columns.
 * @throws FileError with every problem, each with its line and column.
 */
export function readTable<K extends string>(
  text: string,
  file: string,
  wanted: WantedTable<K>,
): Table<K> {
  const problems = new ProblemList(file);
  const plain = checkedText(text, problems);
  const columns = Object.entries<WantedColumn>(wanted.columns).map(([key, { column, reads }]) => ({
    key: key as K,
    reads,
    column: numbered(column),
  }));
  const { delimiter, headerLine } = findHeadings(plain, columns, wanted, problems);

  const csv = partRows(plain, delimiter);
  for (const place of csv.quotes) {
    problems.add("file/quote", () => ({
      place,
      path: [],
      message: `a quote opens this cell and is not closed before a ${delimiter} or the end of the line. Close it, or write a quote inside quotes twice.`,
    }));
  }
  problems.throwIfAny();

  const headingRow =
    headerLine === undefined ? undefined : csv.rows[csv.lines.indexOf(headerLine)]?.map(tidy);
  const first = firstRowOf(csv, headerLine, wanted.firstRow, problems);
  const width = (headingRow ?? csv.rows[first] ?? []).length;
  const places = new Map<K, number>();
  for (const { key, column } of columns) {
    const index = indexOf(column, headingRow, width, headerLine ?? csv.lines[first] ?? 1, problems);
    places.set(key, index);
  }
  problems.throwIfAny();

  const taken = takeRows({ csv, first, width, columns, places, plain, delimiter, file, problems });
  const say = (row: number, key: K, message: string): Said => ({
    place: cellPlace(plain, delimiter, taken.lines[row] as number, places.get(key) as number),
    path: [row, key],
    message,
  });
  const numeric = columns.filter(({ reads }) => reads === "number").map(({ key }) => key);
  const { decimal, note } = findDecimalMark({
    stated: wanted.decimal,
    delimiter,
    columns: numeric.map((key) => taken.cells[key]),
    say: (row, column, message) => say(row, numeric[column] as K, message),
    problems,
  });
  problems.throwIfAny();
  return {
    file,
    delimiter,
    decimal,
    headerLine,
    headings: record(columns, ({ column }) =>
      typeof column === "number" ? (headingRow?.[column - 1] ?? `column ${column}`) : column,
    ),
    cells: taken.cells,
    lines: taken.lines,
    counts: {
      ...taken.counts,
      linesBefore: (headerLine ?? csv.lines[first] ?? 1) - 1,
      rowsSkipped: headerLine === undefined ? 0 : first - csv.lines.indexOf(headerLine) - 1,
    },
    notes: [
      ...taken.notes,
      ...(note
        ? [{ file, ...note.place, code: "file/decimal", path: note.path, message: note.message }]
        : []),
    ],
    numberOf: numberReader(decimal, wanted.decimal !== undefined),
    say,
  };
}

interface Column<K extends string> {
  readonly key: K;
  readonly column: string | number;
  readonly reads: "text" | "number";
}

const start: Place = { line: 1, column: 1 };

function record<K extends string, T>(
  columns: readonly Column<K>[],
  value: (column: Column<K>) => T,
): Record<K, T> {
  return Object.fromEntries(columns.map((column) => [column.key, value(column)])) as Record<K, T>;
}

/** Trimmed, each run of white space one space. */
function tidy(name: string): string {
  return name.trim().replaceAll(/\s+/g, " ");
}

/** `column 3` is a number. */
function numbered(column: string | number): string | number {
  if (typeof column === "number") return column;
  const number = /^column ([1-9]\d{0,3})$/.exec(tidy(column))?.[1];
  return number === undefined ? tidy(column) : Number(number);
}

function checkedText(text: string, problems: ProblemList): string {
  const refuse = (code: string, message: string): void => {
    problems.add(code, () => ({ place: start, path: [], message }));
  };
  if (text.length > largestText) {
    refuse(
      "file/too-large",
      `the file has ${text.length} characters, and a table at most ${largestText}. Is it the right file?`,
    );
  } else if (text.includes("\0")) {
    refuse("file/encoding", "the file is not UTF-8 text. Save it again as UTF-8.");
  }
  problems.throwIfAny();
  const plain = withPlainLines(text);
  if (plain.trim() === "") refuse("file/empty", "the file is empty. Is it the right file?");
  problems.throwIfAny();
  return plain;
}

/** A row that may hold the headings, parted in one of the ways. */
interface Candidate {
  readonly delimiter: Delimiter;
  readonly line: number;
  readonly names: readonly string[];
  /** How many of the names that are wanted it has. */
  readonly has: number;
}

/** What parts the cells, and the line of the headings. */
function findHeadings(
  text: string,
  columns: readonly Column<string>[],
  { delimiter, header, firstRow }: TableForm,
  problems: ProblemList,
): { delimiter: Delimiter; headerLine: number | undefined } {
  const ways = (delimiter ? [delimiter] : Object.keys(delimiterMarks)) as Delimiter[];
  const names = columns.map(({ column }) => column).filter((column) => typeof column === "string");
  const parted = ways.map((way) => ({
    way,
    csv: partRows(text, way, Math.max(rowsSought, header ?? 0)),
  }));
  const candidates = parted.flatMap(({ way, csv }) =>
    csv.rows.flatMap((row, i): Candidate[] => {
      const line = csv.lines[i] as number;
      if (header !== undefined && line !== header) return [];
      const cells = row.map(tidy);
      const has = names.filter((name) => cells.includes(name)).length;
      return [{ delimiter: way, line, names: cells, has }];
    }),
  );
  if (header !== undefined && candidates.length === 0) {
    problems.add("file/header", () => ({
      place: start,
      path: [],
      message: `no row begins on line ${header}, which is stated as that of the headings (header).`,
    }));
    problems.throwIfAny();
  }
  if (names.length === 0) {
    const from = firstRow ?? header ?? 1;
    const way = delimiter ?? onlyWay(parted, columns, from, problems);
    return { delimiter: way, headerLine: header };
  }
  const whole = candidates.filter(({ has }) => has === names.length);
  if (whole.length === 0) refuseHeadings(candidates, names, header, problems);
  // The first such row of each way.
  const firsts = ways.flatMap((way) => whole.find((each) => each.delimiter === way) ?? []);
  const several = firsts.filter((each) => each.names.length > 1);
  const [found] = several.length > 0 ? several : firsts;
  // A single column is not parted, whatever the delimiter, unless one of them stands in it.
  const alone = several.length === 0 && !/[,;\t]/.test(text);
  if (firsts.length > 1 && several.length !== 1 && !alone) askForDelimiter(found?.line, problems);
  problems.throwIfAny();
  const { delimiter: way, line } = found as Candidate;
  return { delimiter: way, headerLine: line };
}

function askForDelimiter(line: number | undefined, problems: ProblemList): void {
  problems.add("file/delimiter", () => ({
    place: { line: line ?? 1, column: 1 },
    path: [],
    message:
      "the cells can be parted in more ways than one. State what parts them, such as delimiter: semicolon.",
  }));
}

/** The one way of parting that gives most rows the cells that are wanted by number. */
function onlyWay(
  parted: readonly { way: Delimiter; csv: Csv }[],
  columns: readonly Column<string>[],
  from: number,
  problems: ProblemList,
): Delimiter {
  const cells = Math.max(2, ...columns.map(({ column }) => Number(column)));
  const fit = parted.filter(({ csv }) => {
    const full = csv.rows.filter(
      (row, i) => (csv.lines[i] as number) >= from && row.some((cell) => cell.trim() !== ""),
    );
    return 2 * full.filter((row) => row.length >= cells).length >= full.length;
  });
  if (fit.length === 0) {
    problems.add("file/delimiter", () => ({
      place: { line: from, column: 1 },
      path: [],
      message: `neither commas nor semicolons nor tabs part most rows into ${cells} cells. Is it the right file, and are the numbers of its columns right?`,
    }));
  } else if (fit.length > 1) askForDelimiter(from, problems);
  problems.throwIfAny();
  return (fit[0] as { way: Delimiter }).way;
}

/** Says which names are missing from the row that is most like the headings. */
function refuseHeadings(
  candidates: readonly Candidate[],
  names: readonly string[],
  header: number | undefined,
  problems: ProblemList,
): void {
  const apart = ({ names: cells }: Candidate): number =>
    names.reduce(
      (sum, name) =>
        sum + Math.min(...cells.map((cell) => distance(name, cell.slice(0, 200)) / name.length)),
      0,
    );
  const best = candidates
    .map((each) => ({ ...each, apart: apart(each) }))
    .reduce((a, b) => (b.has > a.has || (b.has === a.has && b.apart < a.apart) ? b : a));
  const known = best.names.filter((name) => name !== "");
  const listed = known.slice(0, 30).map((name) => name.slice(0, 60));
  const unlike = header === undefined && best.has === 0 && best.apart > 0.5 * names.length;
  const where =
    header === undefined
      ? unlike
        ? `in the first ${rowsSought} rows`
        : `in line ${best.line}, which is most like the headings`
      : `in line ${header}, which is stated as that of the headings`;
  for (const name of names) {
    if (best.names.includes(name)) continue;
    const others = known.filter((cell) => !names.includes(cell)).map((cell) => cell.slice(0, 200));
    const near = others.length > 0 ? closest(name, others) : "";
    // With more than half of its letters wrong it is another name.
    const nearly = 2 * distance(name, near) <= name.length;
    const unread = best.names.some((cell) => cell.includes("\uFFFD"));
    problems.add("file/column", () => ({
      place: { line: unlike ? 1 : best.line, column: 1 },
      path: [name],
      message: unlike
        ? `there is no column ${JSON.stringify(name)} ${where}. Write the headings as they stand in the file, or the line that they stand on (header).`
        : [
            `there is no column ${JSON.stringify(name)} ${where}`,
            nearly ? `; is it ${JSON.stringify(near)}?` : ".",
            ` Its columns are ${listed.join(", ")}${known.length > listed.length ? " and more" : ""}.`,
            unread ? " Some letters could not be read: save the file again as UTF-8." : "",
          ].join(""),
    }));
  }
  problems.throwIfAny();
}

/** The row, from 0, that the table begins with. */
function firstRowOf(
  { rows, lines }: Csv,
  headerLine: number | undefined,
  stated: number | undefined,
  problems: ProblemList,
): number {
  const after = headerLine === undefined ? 0 : lines.indexOf(headerLine) + 1;
  if (stated === undefined) {
    if (headerLine !== undefined) return after;
    const first = rows.findIndex((row) => row.some((cell) => cell.trim() !== ""));
    return Math.max(first, 0);
  }
  const index = lines.indexOf(stated);
  if (index < after) {
    problems.add("file/first-row", () => ({
      place: { line: headerLine ?? 1, column: 1 },
      path: [],
      message:
        index < 0
          ? `no row begins on line ${stated}, which is stated as the first (first row).`
          : `line ${stated} is stated as the first row (first row), and the headings stand in line ${headerLine}.`,
    }));
  }
  return Math.max(index, 0);
}

/** Which cell of a row a column is, from 0. */
function indexOf(
  column: string | number,
  headings: readonly string[] | undefined,
  width: number,
  line: number,
  problems: ProblemList,
): number {
  if (typeof column === "number") {
    if (!Number.isInteger(column) || column < 1 || column > width) {
      problems.add("file/column", () => ({
        place: { line, column: 1 },
        path: [`column ${column}`],
        message: `there is no column ${column}: line ${line} has ${width} cells.`,
      }));
    }
    return column - 1;
  }
  const index = (headings ?? []).indexOf(column);
  const again = (headings ?? []).lastIndexOf(column);
  if (again !== index) {
    problems.add("file/column", () => ({
      place: { line, column: 1 },
      path: [column],
      message: `the heading ${JSON.stringify(column)} stands twice, over cells ${index + 1} and ${again + 1}. Name the column by its number, such as column ${index + 1}.`,
    }));
  }
  return index;
}

/** Takes the cells that are wanted of each row. */
function takeRows<K extends string>(about: {
  readonly csv: Csv;
  readonly first: number;
  readonly width: number;
  readonly columns: readonly Column<K>[];
  readonly places: ReadonlyMap<K, number>;
  readonly plain: string;
  readonly delimiter: Delimiter;
  readonly file: string;
  readonly problems: ProblemList;
}): {
  readonly cells: Record<K, string[]>;
  readonly lines: number[];
  readonly counts: Pick<TableCounts, "rowsEmpty" | "rowsElsewhere" | "rowsShort">;
  readonly notes: Problem[];
} {
  const { csv, first, width, columns, places, plain, delimiter, file, problems } = about;
  const taken = columns.map(({ key }) => ({ key, index: places.get(key) as number }));
  const cells = record(columns, (): string[] => []);
  const into = taken.map(({ key }) => cells[key]);
  const lines: number[] = [];
  const passed = { empty: new Passed(), elsewhere: new Passed(), short: new Passed() };
  let emptySoFar = new Passed();
  for (let i = first; i < csv.rows.length; i += 1) {
    const row = csv.rows[i] as readonly string[];
    const line = csv.lines[i] as number;
    const got = taken.map(({ index }) => row[index]?.trim());
    if (got.every((cell) => !cell)) {
      if (row.every((cell) => cell.trim() === "")) emptySoFar.add(line);
      else passed.elsewhere.add(line);
      continue;
    }
    const absent = got.indexOf(undefined);
    if (absent >= 0) {
      const { key, index } = taken[absent] as { key: K; index: number };
      problems.add("file/cells", () => ({
        place: cellPlace(plain, delimiter, line, row.length),
        path: [lines.length, key],
        message: `this row ends after ${row.length} of ${width} cells, and cell ${index + 1} is wanted. Is the row cut short?`,
      }));
      continue;
    }
    if (row.length > width && row.slice(width).some((cell) => cell.trim() !== "")) {
      problems.add("file/cells", () => ({
        place: cellPlace(plain, delimiter, line, width),
        path: [lines.length],
        message: `this row has ${row.length} cells, and the first has ${width}. Does a ${delimiter} stand inside a number or a text? Put that cell in quotes, or part the cells by another mark.`,
      }));
      continue;
    }
    if (row.length < width) passed.short.add(line);
    passed.empty.join(emptySoFar);
    emptySoFar = new Passed();
    for (const [n, list] of into.entries()) list.push(got[n] as string);
    lines.push(line);
  }
  if (lines.length === 0 && problems.empty) {
    problems.add("file/no-rows", () => ({
      place: { line: csv.lines[first] ?? csv.lines.at(-1) ?? 1, column: 1 },
      path: [],
      message: "no row has anything in the columns that are wanted.",
    }));
  }
  const note = (code: string, { count, line }: Passed, what: string): Problem[] =>
    count === 0
      ? []
      : [
          {
            file,
            line,
            column: 1,
            code,
            path: [],
            message: `${count === 1 ? "a row" : `${count} rows`} ${what}${count === 1 ? "" : ", the first of them here"}.`,
          },
        ];
  return {
    cells,
    lines,
    counts: {
      rowsEmpty: passed.empty.count,
      rowsElsewhere: passed.elsewhere.count,
      rowsShort: passed.short.count,
    },
    notes: [
      ...note("file/empty-row", passed.empty, "between others without anything"),
      ...note(
        "file/other-row",
        passed.elsewhere,
        "with nothing in the columns that are wanted, passed over",
      ),
      ...note("file/short-row", passed.short, "ending early, after the columns that are wanted"),
    ],
  };
}

/** Rows that were passed over: how many, and the line of the first. */
class Passed {
  count = 0;
  line = 0;

  add(line: number): void {
    if (this.count === 0) this.line = line;
    this.count += 1;
  }

  join(other: Passed): void {
    if (this.count === 0) this.line = other.line;
    this.count += other.count;
  }
}
