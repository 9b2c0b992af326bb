import fc from "fast-check";
import { describe, expect, it } from "vitest";

import type { Delimiter } from "../../../packages/scheme/src/read/csv.ts";
import { readTable, type WantedTable } from "../../../packages/scheme/src/read/table.ts";
import { listedBy, problemsOf } from "./problems-of.ts";

const wanted: WantedTable<"date" | "flow"> = {
  columns: {
    date: { column: "Date", reads: "text" },
    flow: { column: "Flow (L/s)", reads: "number" },
  },
};
const byNumber: WantedTable<"date" | "flow"> = {
  columns: { date: { column: 1, reads: "text" }, flow: { column: "column 2", reads: "number" } },
};

const table = (text: string, more: Partial<typeof wanted> = {}): ReturnType<typeof take> =>
  take(text, { ...wanted, ...more });

function take(
  text: string,
  how: typeof wanted,
): {
  date: readonly string[];
  flow: number[];
  lines: readonly number[];
} & Pick<ReturnType<typeof readTable>, "counts" | "delimiter" | "decimal" | "headerLine"> {
  const { cells, lines, counts, delimiter, decimal, headerLine, numberOf } = readTable(
    text,
    "t.csv",
    how,
  );
  const flow = cells.flow.map(numberOf);
  return { date: cells.date, flow, lines, counts, delimiter, decimal, headerLine };
}

const refused = (text: string, more: Partial<typeof wanted> = {}): string[] =>
  problemsOf(() => readTable(text, "t.csv", { ...wanted, ...more }));

describe("a table", () => {
  it("is found below its title, between byte order marks and empty lines", () => {
    const text =
      '\uFEFF\uFEFFStation "Upper" (invented); all flows\r\n\r\n Date ,Remark,Flow  (L/s)\r\n2020-01-01,"two\r\nlines",1.5\r\n2020-01-02,,2\r\n\r\n\r\n';
    const { counts, ...read } = table(text);
    expect(read).toEqual({
      date: ["2020-01-01", "2020-01-02"],
      flow: [1.5, 2],
      lines: [4, 6],
      delimiter: "comma",
      decimal: "point",
      headerLine: 3,
    });
    expect(counts).toEqual({
      linesBefore: 2,
      rowsSkipped: 0,
      rowsEmpty: 0,
      rowsElsewhere: 0,
      rowsShort: 0,
    });
  });

  it.each([
    ["comma", ","],
    ["semicolon", ";"],
    ["tab", "\t"],
  ])("is parted by a %s", (name, mark) => {
    const text = ["Date|Flow (L/s)", "2020-01-01|7"].join("\n").replaceAll("|", mark);
    expect(table(text).delimiter).toBe(name);
    expect(take(text.split("\n")[1] as string, byNumber).delimiter).toBe(name);
  });

  it("has no headings where its columns are numbers", () => {
    expect(take("2020-01-01\t5\n2020-01-02\t6", byNumber)).toMatchObject({
      flow: [5, 6],
      lines: [1, 2],
      headerLine: undefined,
    });
    expect(take("a\n\nday\tq\n2020-01-02\t6", { ...byNumber, header: 3 })).toMatchObject({
      flow: [6],
      headerLine: 3,
    });
    expect(take("a\nb\n2020-01-02\t6", { ...byNumber, firstRow: 3 }).counts).toMatchObject({
      linesBefore: 2,
      rowsSkipped: 0,
    });
    expect(take("2020-01-02\t6\n \n \n \n", byNumber).flow).toEqual([6]);
  });

  it("takes the headings from the line that is stated", () => {
    const text = "Date,Flow (L/s)\n\nDate,Flow (L/s)\n2020-01-02,6";
    expect(table(text, { header: 3 })).toMatchObject({ lines: [4], headerLine: 3 });
  });

  it("may have one column", () => {
    const one = { columns: { date: wanted.columns.date } };
    expect(readTable("Date\n2020-01-01\n", "t.csv", one).cells.date).toEqual(["2020-01-01"]);
    expect(readTable("x;y\nDate;z\na;b", "t.csv", one)).toMatchObject({
      delimiter: "semicolon",
      cells: { date: ["a"] },
    });
    const asked =
      "file/delimiter: the cells can be parted in more ways than one. State what parts them, such as delimiter: semicolon.";
    expect(problemsOf(() => readTable("a\nDate\n1;2", "t.csv", one))).toEqual([
      `t.csv:2:1: ${asked}`,
    ]);
    // The row of headings is another one, parted otherwise.
    expect(problemsOf(() => readTable("Date;x\nDate,y\n1;2", "t.csv", one))).toEqual([
      `t.csv:2:1: ${asked}`,
    ]);
  });

  it("has its headings within a hundred rows, unless their line is stated", () => {
    const text = (before: number): string =>
      `${"remark\n".repeat(before)}Date,Flow (L/s)\n2020-01-02,6`;
    expect(table(text(99)).headerLine).toBe(100);
    expect(refused(text(100))[0]).toContain('no column "Date" in the first 100 rows');
    expect(table(text(149), { header: 150 }).flow).toEqual([6]);
  });

  it("passes over a line of units where the first row is stated", () => {
    const text = "Date,Flow (L/s)\nUTC,mean\n2020-01-02,6";
    expect(table(text, { firstRow: 3 })).toMatchObject({ flow: [6], counts: { rowsSkipped: 1 } });
  });

  it("may have empty cells beyond its last column", () => {
    expect(table("Date,Flow (L/s)\n2020-01-01,5,, \n").flow).toEqual([5]);
  });

  it("counts and tells what it passes over", () => {
    const text =
      "Date,Flow (L/s),Note\n2020-01-01,1\n,,\n\n2020-01-04,4,x\n2020-01-05,5\n,,the gauge was moved\n\n";
    const { counts, notes, lines } = readTable(text, "t.csv", wanted);
    expect(lines).toEqual([2, 5, 6]);
    expect(counts).toEqual({
      linesBefore: 0,
      rowsSkipped: 0,
      rowsEmpty: 2,
      rowsElsewhere: 1,
      rowsShort: 2,
    });
    expect(notes.map(({ line, code, message }) => [line, code, message])).toEqual([
      [3, "file/empty-row", "2 rows between others without anything, the first of them here."],
      [7, "file/other-row", "a row with nothing in the columns that are wanted, passed over."],
      [
        2,
        "file/short-row",
        "2 rows ending early, after the columns that are wanted, the first of them here.",
      ],
    ]);
  });
});

describe("a table is refused", () => {
  it.each<[string, string, Partial<typeof wanted>, string]>([
    ["empty", "\uFEFF \r\n\n", {}, "1:1: file/empty: the file is empty. Is it the right file?"],
    [
      "in another encoding",
      "D\0a\0t\0e\0",
      {},
      "1:1: file/encoding: the file is not UTF-8 text. Save it again as UTF-8.",
    ],
    [
      "without rows",
      "Date,Flow (L/s)\n\n",
      {},
      "2:1: file/no-rows: no row has anything in the columns that are wanted.",
    ],
    [
      "with a name nearly right",
      "x\nDate,Flow (l/s),Level\n2020-01-01,5,6",
      {},
      '2:1: file/column: there is no column "Flow (L/s)" in line 2, which is most like the headings; is it "Flow (l/s)"? Its columns are Date, Flow (l/s), Level.',
    ],
    [
      "with a name missing and nothing in its place",
      "Date\n2020-01-01",
      {},
      '1:1: file/column: there is no column "Flow (L/s)" in line 1, which is most like the headings. Its columns are Date.',
    ],
    [
      "with a name that lost letters",
      "Date;Flow (\uFFFD/s)\n2020-01-01;5",
      {},
      '1:1: file/column: there is no column "Flow (L/s)" in line 1, which is most like the headings; is it "Flow (\uFFFD/s)"? Its columns are Date, Flow (\uFFFD/s). Some letters could not be read: save the file again as UTF-8.',
    ],
    [
      "with other names in the line that is stated",
      "Date,Flow (L/s)\nDate,Level\n",
      { header: 2 },
      '2:1: file/column: there is no column "Flow (L/s)" in line 2, which is stated as that of the headings. Its columns are Date, Level.',
    ],
    [
      "with a line stated that is none",
      "Date,Flow (L/s)\n2020-01-01,5",
      { header: 7 },
      "1:1: file/header: no row begins on line 7, which is stated as that of the headings (header).",
    ],
    [
      "with a first row stated that is none",
      "Date,Flow (L/s)\n2020-01-01,5",
      { firstRow: 9 },
      "1:1: file/first-row: no row begins on line 9, which is stated as the first (first row).",
    ],
    [
      "with a first row above the headings",
      "a\nDate,Flow (L/s)\n2020-01-01,5",
      { firstRow: 1 },
      "2:1: file/first-row: line 1 is stated as the first row (first row), and the headings stand in line 2.",
    ],
    [
      "with a name that stands twice",
      "Date,Flow (L/s),Flow (L/s)\n2020-01-01,5,6",
      {},
      '1:1: file/column: the heading "Flow (L/s)" stands twice, over cells 2 and 3. Name the column by its number, such as column 2.',
    ],
    [
      "with a column beyond its last",
      "2020-01-01,5",
      {
        ...byNumber,
        columns: { ...byNumber.columns, flow: { column: 3, reads: "number" } },
        delimiter: "comma",
      },
      "1:1: file/column: there is no column 3: line 1 has 2 cells.",
    ],
    [
      "with nothing that parts it",
      "2020-01-01 5",
      byNumber,
      "1:1: file/delimiter: neither commas nor semicolons nor tabs part most rows into 2 cells. Is it the right file, and are the numbers of its columns right?",
    ],
    [
      "with two things that could part it",
      "2020-01-01;1,5\n2020-01-02;1,6",
      byNumber,
      "1:1: file/delimiter: the cells can be parted in more ways than one. State what parts them, such as delimiter: semicolon.",
    ],
    [
      "with a quote left open",
      'Date,Flow (L/s),Note\n2020-01-01,5,a\n2020-01-02,6,"b\n2020-01-03,7,c',
      {},
      "3:14: file/quote: a quote opens this cell and is not closed before a comma or the end of the line. Close it, or write a quote inside quotes twice.",
    ],
    [
      "with text after a quote",
      'Date,Flow (L/s),Note\n2020-01-01,5,"5" pipe\n2020-01-02,6,b',
      {},
      "2:14: file/quote: a quote opens this cell and is not closed before a comma or the end of the line. Close it, or write a quote inside quotes twice.",
    ],
    [
      "with a row cut short",
      "Date,Flow (L/s)\n2020-01-01,5\n2020-01\n2020-01-03,7",
      {},
      "3:8: file/cells: this row ends after 1 of 2 cells, and cell 2 is wanted. Is the row cut short?",
    ],
    [
      "with a decimal comma between commas",
      "Date,Flow (L/s)\n2020-01-01,1,5",
      {},
      "2:14: file/cells: this row has 3 cells, and the first has 2. Does a comma stand inside a number or a text? Put that cell in quotes, or part the cells by another mark.",
    ],
  ])("%s", (_, text, more, problem) => {
    expect(refused(text, more)).toEqual([`t.csv:${problem}`]);
  });

  it("with every name nearly right", () => {
    expect(refused("about\n\ndate,flow (L/s)\n2020-01-01,5\n2020-01-02,6")).toEqual([
      't.csv:3:1: file/column: there is no column "Date" in line 3, which is most like the headings; is it "date"? Its columns are date, flow (L/s).',
      't.csv:3:1: file/column: there is no column "Flow (L/s)" in line 3, which is most like the headings; is it "flow (L/s)"? Its columns are date, flow (L/s).',
    ]);
  });

  it("with many columns, of which some are named", () => {
    const names = Array.from({ length: 31 }, (_, i) => `c${i}`);
    const [problem] = refused(`Date,${names.join(",")}`);
    expect(problem).toMatch(/Its columns are Date, c0, .*, c28 and more\.$/);
  });

  it("with none of its names", () => {
    expect(refused("when;how much\n2020-01-01;5")).toEqual(
      ["Date", "Flow (L/s)"].map(
        (name) =>
          `t.csv:1:1: file/column: there is no column "${name}" in the first 100 rows. Write the headings as they stand in the file, or the line that they stand on (header).`,
      ),
    );
  });

  it("too large", () => {
    const [problem] = refused("x".repeat(32 * 1024 * 1024 + 1));
    expect(problem).toBe(
      "t.csv:1:1: file/too-large: the file has 33554433 characters, and a table at most 33554432. Is it the right file?",
    );
  });

  it("with the place of the cell, whatever stands before it", () => {
    const text = 'Date,Flow (L/s)\n"2020\n""01""",4,"x,\ny",5';
    expect(listedBy(() => readTable(text, "t.csv", wanted))).toMatchObject([
      { line: 3, column: 11, path: [0] },
    ]);
  });

  it("with twenty of a kind, and the rest counted", () => {
    const text = `Date,Flow (L/s)\n${"2020-01-01,1,5\n".repeat(25)}`;
    const problems = refused(text);
    expect(problems).toHaveLength(21);
    expect(problems.at(-1)).toBe(
      "t.csv:22:14: file/cells: and 5 more like these, the first of them here.",
    );
  });
});

describe("the decimal mark", () => {
  const flows = (cells: readonly string[], mark: string): string =>
    ["Date|Flow (L/s)", ...cells.map((cell, i) => `2020-01-0${i + 1}|${cell}`)]
      .join("\n")
      .replaceAll("|", mark);

  it.each<[readonly string[], string, number[], "point" | "comma"]>([
    [["1.234", "2.345"], ",", [1.234, 2.345], "point"],
    [["1.234", "-.5", "+3.", "1e-2"], "\t", [1.234, -0.5, 3, 0.01], "point"],
    [["1,5", "2,25"], ";", [1.5, 2.25], "comma"],
    [["1,234", "0,345"], ";", [1.234, 0.345], "comma"],
    [["1,234", "12345,6"], "\t", [1.234, 12345.6], "comma"],
    [['"1,5"', '"2,5E3"'], ",", [1.5, 2500], "comma"],
    [["1.234", "0.5"], ";", [1.234, 0.5], "point"],
    [["12", "3"], ";", [12, 3], "point"],
    [["\u22125,0"], ";", [-5], "comma"],
  ])("of %j parted by %j", (cells, mark, numbers, decimal) => {
    const read = table(flows(cells, mark));
    expect(read.flow).toEqual(numbers);
    expect(read.decimal).toBe(decimal);
  });

  it("is told where it is a comma that nobody stated", () => {
    const { notes } = readTable(flows(["12", "1,5"], ";"), "t.csv", wanted);
    expect(notes).toEqual([
      {
        file: "t.csv",
        line: 3,
        column: 12,
        code: "file/decimal",
        path: [1, "flow"],
        message:
          '"1,5" and the numbers like it are read with a decimal comma, for no comma groups so many digits.',
      },
    ]);
    expect(readTable(flows(["1,5"], ";"), "t.csv", { ...wanted, decimal: "comma" }).notes).toEqual(
      [],
    );
  });

  it.each<[readonly string[], string, number, string]>([
    [
      ["1,234", "2,345"],
      ";",
      2,
      '"1,234" could be thousands or decimals, and no other number tells which',
    ],
    [
      ['"1,234"'],
      ",",
      2,
      '"1,234" could be thousands or decimals, and no other number tells which',
    ],
    [
      ["5", "1.234"],
      ";",
      3,
      '"1.234" could be thousands or decimals, and no other number tells which',
    ],
    [["1.5", "1,5"], ";", 3, '"1,5" has a comma, and "1.5" elsewhere has a point'],
    [["1.234,5"], ";", 2, '"1.234,5" has marks between groups of digits'],
  ])("of %j parted by %j is asked for", (cells, mark, line, fault) => {
    expect(refused(flows(cells, mark))).toEqual([
      `t.csv:${line}:12: file/decimal: ${fault}. State the decimal mark: decimal: point or decimal: comma.`,
    ]);
  });

  it.each<[string, "point" | "comma", number]>([
    ["1,234", "point", 1234],
    ["1,234", "comma", 1.234],
    ["1.234,5", "comma", 1234.5],
    ["1,234,567.5", "point", 1234567.5],
    ["1 234,5", "comma", 1234.5],
    ["1\u00A0234.5", "point", 1234.5],
    ["12'345.6", "point", 12345.6],
    ["1,5", "point", NaN],
    ["1,2345", "point", NaN],
    ["1234,567", "point", NaN],
    ["1,234 567", "point", NaN],
    ["1.5", "comma", NaN],
    ["1,234.5", "comma", NaN],
  ])("%s with a decimal %s stated is %d", (cell, decimal, number) => {
    expect(table(flows([cell], ";"), { decimal }).flow).toEqual([number]);
  });

  it.each([
    "",
    "ERR",
    "1 2",
    "1e",
    "0x10",
    "Infinity",
    "NaN",
    "--1",
    "1e999",
    "1e200",
    "5 L/s",
    ".",
  ])("%j is no number", (cell) => {
    expect(table(flows([cell, "7"], ",")).flow).toEqual([NaN, 7]);
  });

  it("reads what is written with either, in groups or not", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), { minLength: 1, maxLength: 20 }),
        fc.constantFrom<"point" | "comma">("point", "comma"),
        fc.boolean(),
        (numbers, decimal, grouped) => {
          const [mark, group] = decimal === "point" ? [".", ","] : [",", "."];
          const written = numbers.map((n) => {
            const [whole = "", rest] = Math.abs(n).toFixed(6).split(".");
            const parts = grouped ? whole.replaceAll(/\B(?=(?:\d{3})+$)/g, group) : whole;
            return `${n < 0 ? "-" : ""}${parts}${mark}${rest}`;
          });
          const text = `Date\tFlow (L/s)\n${written.map((n) => `d\t${n}\n`).join("")}`;
          expect(table(text, { decimal }).flow).toEqual(
            numbers.map((n) => Number(`${n < 0 ? "-" : ""}${Math.abs(n).toFixed(6)}`)),
          );
        },
      ),
    );
  });
});

describe("a table that is written", () => {
  const cell = fc.string({ unit: fc.constantFrom(..."ab1 ,;\t\"\n'é€".split("")), maxLength: 6 });
  const name = cell
    .map((text) => text.trim().replaceAll(/\s+/g, " "))
    .filter((text) => text !== "");
  const shape = fc.integer({ min: 2, max: 5 }).chain((width) =>
    fc.record({
      names: fc.uniqueArray(name, { minLength: width, maxLength: width }),
      rows: fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
        minLength: 1,
        maxLength: 12,
      }),
      delimiter: fc.constantFrom<Delimiter>("comma", "semicolon", "tab"),
      newline: fc.constantFrom("\n", "\r\n", "\r"),
      marks: fc.integer({ min: 0, max: 2 }),
      always: fc.boolean(),
      title: fc.array(fc.constantFrom("Station of nowhere", "all (L/s), mean; daily", ""), {
        maxLength: 3,
      }),
      after: fc.integer({ min: 0, max: 3 }),
      told: fc.boolean(),
    }),
  );

  it("is read back the same, with the lines that its rows stand on", () => {
    fc.assert(
      fc.property(shape, (each) => {
        const { names, rows, delimiter, newline, marks, always, title, after, told } = each;
        const full = rows.filter((row) => row.some((text) => text.trim() !== ""));
        fc.pre(full.length > 0);
        const mark = { comma: ",", semicolon: ";", tab: "\t" }[delimiter];
        const written = (row: readonly string[]): string =>
          row
            .map((text) =>
              always || /[",;\t\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text,
            )
            .join(mark);
        const parts = [...title, written(names), ...rows.map(written)];
        const text =
          "\uFEFF".repeat(marks) +
          parts.join("\n").replaceAll("\n", newline) +
          newline.repeat(after);
        const read = readTable(text, "t.csv", {
          columns: Object.fromEntries(
            names
              .toReversed()
              .map((column) => [column, { column, reads: "text" as const }] as const),
          ),
          ...(told && { delimiter }),
        });
        expect(names.map((column) => read.cells[column])).toEqual(
          names.map((_, i) => full.map((row) => row[i]?.trim())),
        );
        const lineOf = (n: number): number => parts.slice(0, n).join("\n").split("\n").length + 1;
        expect(read.lines).toEqual(
          rows.flatMap((row, i) => (full.includes(row) ? [lineOf(title.length + 1 + i)] : [])),
        );
        expect(read.counts.linesBefore).toBe(title.length);
      }),
      { numRuns: 500 },
    );
  });

  it("says where each cell begins", () => {
    fc.assert(
      fc.property(shape, ({ names, rows, delimiter, always }) => {
        const full = rows.filter((row) => row.some((text) => text.trim() !== ""));
        fc.pre(full.length > 0);
        const mark = { comma: ",", semicolon: ";", tab: "\t" }[delimiter];
        let text = "";
        const begins = new Map<string, { line: number; column: number }>();
        for (const [n, row] of [names, ...full].entries()) {
          for (const [i, each] of row.entries()) {
            const before = text.split("\n");
            begins.set(`${n - 1},${i}`, {
              line: before.length,
              column: (before.at(-1)?.length ?? 0) + 1,
            });
            text += always || /[",;\t\n]/.test(each) ? `"${each.replaceAll('"', '""')}"` : each;
            text += i + 1 < row.length ? mark : "\n";
          }
        }
        const read = readTable(text, "t.csv", {
          columns: Object.fromEntries(
            names.map((column) => [column, { column, reads: "text" as const }] as const),
          ),
          delimiter,
        });
        for (const row of full.keys()) {
          for (const [i, column] of names.entries()) {
            expect(read.say(row, column, "").place).toEqual(begins.get(`${row},${i}`));
          }
        }
      }),
    );
  });
});
