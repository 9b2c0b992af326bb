import { commonPractice, formula, input, output, range, source } from "@leat/formula";
import { metre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { everyFormula } from "../formula/every-formula.ts";
import {
  citationsInText,
  everyCitation,
  everyFormulaRows,
  pages,
  rowsPage,
  sourceIdsIn,
  sourceProblems,
  sourcesPage,
  usesOf,
} from "../tools/pages.ts";
import { filesUnder, readText } from "../tools/tree.ts";

const weirBook = source({ id: "weir-book", by: "A book", title: "Weirs", edition: "2nd ed." });
const planted = formula(() => ({
  id: "planted",
  equation: "y = 2 · x",
  inputs: {
    length: input("length", "x"),
    width: input("length", "b", { default: metre.of(1), because: weirBook.at("p. 3", "memory") }),
  },
  output: output("length", "y"),
  limits: [range("length", { max: metre.of(1) }, weirBook.at("p. 2", "secondary"))],
  source: weirBook.at("p. 1 | eq. 1"),
  body: ({ x }) => 2 * x,
}));
const plantedSources = [
  { path: "packages/weir/src/sources.ts", name: "weirBook", source: weirBook },
];

const made = await pages();

describe("generated pages", () => {
  it.each(Object.entries(made))("%s is what npm run rows makes", (path, text) => {
    expect(readText(path).text).toBe(text);
  });
});

describe("docs/sources.md", () => {
  const { text: page } = readText("docs/sources.md");

  it("has every source that a formula, a limit, a default or a table rests on", async () => {
    const { sources, uses } = await everyCitation();
    const ofFormulas = (await everyFormula()).flatMap(({ formula: each }) => usesOf(each));
    expect(ofFormulas.length).toBeGreaterThan(100);
    const asked = [...uses, ...ofFormulas].map(({ citation, by }) => ({
      id: citation.source.id,
      by,
    }));
    expect(sourceProblems(page, asked, sources)).toEqual([]);
  });

  it("has every source that a file makes, exported or not, and every one that is linked to", () => {
    const texts = filesUnder()
      .filter((path) => /^packages\/.*\.(?:ts|md)$|^[^/]*\.md$|^docs\/[^/]*\.md$/u.test(path))
      .map(readText);
    const ids = texts
      .filter(({ path }) => /\/src\/.*\.ts$/u.test(path))
      .flatMap(({ path, text }) => sourceIdsIn(path, text).map((id) => ({ id, by: path })));
    const linked = texts.flatMap(({ path, text }) =>
      [...text.matchAll(/sources\.md#([\w-]+)/gu)].map(([, id = ""]) => ({ id, by: path })),
    );
    expect(ids.length).toBeGreaterThan(30);
    expect(sourceProblems(page, [...ids, ...linked])).toEqual([]);
  });

  it("is refused without a source that is cited", () => {
    const asked = [{ id: "weir-book", by: "planted" }];
    const good = sourcesPage({ sources: plantedSources, uses: [] });
    expect(sourceProblems(good, asked)).toEqual([]);
    expect(sourceProblems("# Sources", asked)).toEqual([
      "planted: weir-book is not in docs/sources.md",
    ]);
  });

  it("is refused where one id is two documents", () => {
    const other = source({ id: "weir-book", by: "A book", title: "Sluices", edition: "" });
    const path = "packages/sluice/src/sources.ts";
    const sources = [...plantedSources, { path, name: "weirBook", source: other }];
    expect(sourceProblems(sourcesPage({ sources, uses: [] }), [], sources)).toEqual([
      "packages/sluice/src/sources.ts: weir-book is another document in packages/weir/src/sources.ts",
    ]);
  });

  it("tells title, edition, standing and what rests on each place", () => {
    const lines = sourcesPage({ sources: plantedSources, uses: usesOf(planted) }).split("\n");
    expect(lines).toContain(
      '| <a id="weir-book"></a>[weir-book](#places-weir-book) | A book | Weirs | 2nd ed. | read 1, secondary 1, memory 1 |',
    );
    expect(lines).toContain("| p. 1 \\| eq. 1 | read | `planted` |");
    expect(lines).toContain("| p. 2 | secondary | `planted` |");
    expect(lines).toContain("| p. 3 | memory | `planted` |");
  });

  it("finds sources and citations in the text of a file", () => {
    const text = `const a = source({ id: "weir-book" }); const b = () => weirBook.at("p. 9", "memory");`;
    expect(sourceIdsIn("a.ts", text)).toEqual(["weir-book"]);
    expect(citationsInText("a.ts", text, new Map([["weirBook", weirBook]]))).toEqual([
      { source: weirBook, place: "p. 9", standing: "memory" },
    ]);
    expect(citationsInText("a.ts", text, new Map([["bos", commonPractice]]))).toEqual([]);
  });
});

describe("docs/reference-rows.md", () => {
  it("has a line and a list for every formula", async () => {
    const { text: page } = readText("docs/reference-rows.md");
    const formulas = await everyFormulaRows();
    expect(formulas.filter(({ id }) => !page.includes(`\n## ${id}\n`))).toEqual([]);
    expect(formulas.filter(({ rows }) => rows.length === 0)).toEqual([]);
  });

  it("counts rows by kind and by standing", () => {
    const row = { source: "p. 1", inputs: {}, expected: "2 m" };
    const page = rowsPage([
      {
        folder: "weir",
        name: "planted",
        id: "planted",
        rows: [
          { ...row, kind: "printed", standing: "read" },
          { ...row, kind: "printed", standing: "memory", beyond: true },
          { ...row, kind: "regression", standing: "derived", expected: { flow: "1 m³/s" } },
        ],
      },
    ]);
    const lines = page.split("\n");
    expect(lines).toContain(
      "| [planted](#planted) | weir | 3 | 2 | 0 | 0 | 1 | 1 | 0 | 1 | 1 | 0 |",
    );
    expect(lines).toContain("| **1 formulas** |  | 3 | 2 | 0 | 0 | 1 | 1 | 0 | 1 | 1 | 0 |");
    expect(lines).toContain("| printed | memory | p. 1 | 2 m (beyond) |");
    expect(lines).toContain("| regression | derived | p. 1 | flow 1 m³/s |");
  });
});
