import { commonPractice, formula, input, list, output, pointInput } from "@leat/formula";
import { describe, expect, it } from "vitest";

import { everyFormula } from "../formula/every-formula.ts";
import { linesOf, nomenclatureProblems } from "../tools/nomenclature.ts";
import { readText } from "../tools/tree.ts";

const planted = formula(() => ({
  id: "planted",
  equation: "Q = b · h · Σ(n) · T/T",
  inputs: {
    head: input(["net head", "length"], "h"),
    temperature: pointInput("absolute zero", "T"),
    parts: list({ count: input("count", "n") }, "parts", { default: [] }),
  },
  output: output("length", "Q"),
  source: commonPractice.at("planted", "practice"),
  body: ({ h }) => h,
}));

const good = [
  "| word | letter | kind | unit | not to be confused with |",
  "| --- | --- | --- | --- | --- |",
  "| `head` | h | net head, length | m | depth |",
  "| `temperature` | T | point over absolute zero | K | a rise; `head` |",
  "| `parts` | parts | list | – | the whole |",
  "| `parts.count` | n | count | 1 | a share |",
].join("\n");

describe("docs/nomenclature.md", () => {
  it("names every input of every public formula, and no others", async () => {
    const formulas = (await everyFormula()).map(({ formula: each }) => each);
    expect(formulas.flatMap(({ definition }) => linesOf(definition.inputs)).length).toBeGreaterThan(
      100,
    );
    expect(nomenclatureProblems(readText("docs/nomenclature.md").text, formulas)).toEqual([]);
  });

  it("may be as the planted page is", () => {
    expect(nomenclatureProblems(good, [planted])).toEqual([]);
  });

  it.each([
    ["a missing word", /^.*`parts\.count`.*\n?/mu, "", ["`parts.count` | n | count | 1"]],
    ["another letter", "| h |", "| H |", ["`head` | h | net head, length | m"]],
    ["a missing kind", "net head, length", "net head", ["`head` | h | net head, length | m"]],
    ["another unit", "zero | K", "zero | °C", ["`temperature` | T | point over absolute zero | K"]],
  ])("is refused with %s", (_, from, to, missing) => {
    const problems = nomenclatureProblems(good.replace(from, to), [planted]);
    expect(problems.filter((each) => each.endsWith("not on the page"))).toEqual(
      missing.map((each) => `planted: ${each}: it is not on the page`),
    );
  });

  it("is refused with a row that no formula needs, or twice", () => {
    const row = "| `width` | b | length | m | depth |";
    expect(nomenclatureProblems(`${good}\n${row}\n${row}`, [planted])).toEqual([
      "`width` | b | length | m: it is on the page twice",
      "`width` | b | length | m: no formula has such an input",
    ]);
  });

  it("is refused where it does not tell a word from others", () => {
    expect(nomenclatureProblems(good.replace("| depth |", "| |"), [planted])).toEqual([
      "`head`: nothing is said that it could be confused with",
    ]);
    expect(nomenclatureProblems(good.replace("depth", "`depth`, `head`"), [planted])).toEqual([
      "`head`: `depth`, that it could be confused with, is no other word here",
      "`head`: `head`, that it could be confused with, is no other word here",
    ]);
  });
});
