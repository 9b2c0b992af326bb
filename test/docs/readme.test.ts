import { describe, expect, it } from "vitest";

import { formulasOf, readmeProblems } from "../tools/readme.ts";
import { readTree } from "../tools/tree.ts";
import type { PackageTree } from "../tools/tree.ts";

const good = [
  "# @leat/weir",
  "",
  "Flow over weirs, from the level above",
  "their crests.",
  "",
  "```ts",
  "1; // => 1",
  "```",
  "",
  "| function | answers | source | valid for |",
  "| --- | --- | --- | --- |",
  "| `notch` | flow | a standard | 1 to 2 m |",
  "",
  "## Not for",
  "",
  "Drowned weirs.",
].join("\n");

/** What the check says of a README, for a package with one formula. */
function problemsOf(readme: string | undefined, publicNames = ["notch"]): string[] {
  const each: PackageTree = {
    folder: "weir",
    manifest: {},
    tsconfig: {},
    sources: [
      {
        path: "packages/weir/src/notch.ts",
        text: [
          `export const notch: Formula = /* @__PURE__ */ formula({ id: "notch" });`,
          `export const width = metre.of(1);`,
          `const inner = formula({ id: "inner" });`,
        ].join("\n"),
      },
    ],
    readme,
  };
  return readmeProblems(each, publicNames);
}

describe("a package's README", () => {
  it.each(readTree().packages)("$folder", async (each) => {
    const names = Object.keys((await import(`@leat/${each.folder}`)) as object);
    expect(readmeProblems(each, names)).toEqual([]);
  });

  it("may be as the planted one is", () => {
    expect(problemsOf(good)).toEqual([]);
  });

  it("is owed by every package", () => {
    expect(problemsOf(undefined)).toEqual(["packages/weir/README.md: there is none"]);
  });

  it("is short where there are no formulas to show", () => {
    expect(problemsOf("# @leat/weir\n", [])).toEqual([]);
  });

  it.each([
    ["two sentences", good.replace("weirs, from", "weirs. From")],
    ["no full stop", good.replace("crests.", "crests")],
    ["a badge", good.replace("Flow over", "![badge](x.svg)\n\nFlow over")],
    ["no name", good.replace("# @leat/weir", "# Weirs")],
  ])("begins with its name and one sentence, not with %s", (_, text) => {
    expect(problemsOf(text)).toEqual([
      "packages/weir/README.md: it begins with its name and one sentence",
    ]);
  });

  it("has a runnable block on the first screen", () => {
    const problem = "packages/weir/README.md: no ```ts block begins in the first 40 lines";
    expect(problemsOf(good.replace("```ts", "```sh"))).toEqual([problem]);
    expect(problemsOf(good.replace("```ts", "```ts no-run"))).toEqual([problem]);
    expect(problemsOf(good.replace("```ts", `${"\n".repeat(40)}\`\`\`ts`))).toEqual([problem]);
  });

  it("has a table that names every formula", () => {
    expect(problemsOf(good.replaceAll("|", "/"))).toEqual([
      "packages/weir/README.md: there is no table",
    ]);
    expect(problemsOf(good.replace("`notch`", "`weir`"))).toEqual([
      "packages/weir/README.md: no table names `notch`",
    ]);
  });

  it("says what the package is not for", () => {
    const problem = `packages/weir/README.md: "## Not for" says nothing`;
    expect(problemsOf(good.replace("## Not for", "## For"))).toEqual([problem]);
    expect(problemsOf(good.replace("Drowned weirs.", ""))).toEqual([problem]);
  });
});

describe("formulas", () => {
  it("are found in the packages", () => {
    expect(readTree().packages.flatMap(formulasOf).length).toBeGreaterThan(0);
  });
});
