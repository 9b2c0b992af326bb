import { describe, expect, it } from "vitest";

import { importProblems } from "../tools/imports.ts";
import { globalsUsed, importSpecifiers } from "../tools/syntax.ts";
import { packageIn, planted, readTree } from "../tools/tree.ts";

const tree = readTree();

/** The packages without their sources. */
const bare = {
  ...tree,
  packages: tree.packages.map((each) => ({ ...each, sources: [] })),
};

/** What the check says of one source in a package. */
function problemsWith(folder: string, text: string, path = "planted.ts"): string[] {
  return importProblems(
    planted(bare, (copy) => {
      packageIn(copy, folder).sources.push({ path: `packages/${folder}/src/${path}`, text });
    }),
  );
}

describe("imports", () => {
  it("keep to what each package declares", () => {
    expect(tree.packages.flatMap(({ sources }) => sources).length).toBeGreaterThan(0);
    expect(importProblems(tree)).toEqual([]);
  });

  it("are found in every form", () => {
    const text = [
      `import "a";`,
      `import type { B } from "b";`,
      `export * from "c";`,
      `export { d } from "d";`,
      `export type E = import("e").E;`,
      `export const f = (): Promise<unknown> => import("f");`,
      `export const g = (name: string): Promise<unknown> => import(name);`,
      `import h = require("h");`,
      `const text = 'import "none"'; // import "none"`,
    ].join("\n");
    expect(importSpecifiers("planted.ts", text)).toEqual([
      "a",
      "b",
      "c",
      "d",
      "e",
      "f",
      "(computed)",
      "h",
    ]);
  });

  it("refuse a package that is not declared", () => {
    expect(problemsWith("penstock", `import { turn } from "@leat/impulse-turbine";`)).toEqual([
      "packages/penstock/src/planted.ts: imports @leat/impulse-turbine, which package.json does not declare",
    ]);
    expect(problemsWith("penstock", `export type { X } from "fast-check";`)).toEqual([
      "packages/penstock/src/planted.ts: imports fast-check, which package.json does not declare",
    ]);
  });

  it("refuse to reach past what a package exports", () => {
    expect(problemsWith("penstock", `import { x } from "@leat/quantity/src/unit.ts";`)).toEqual([
      "packages/penstock/src/planted.ts: @leat/quantity/src/unit.ts reaches past what @leat/quantity exports",
    ]);
    expect(problemsWith("penstock", `import "@leat/formula/reference";`)).toEqual([]);
  });

  it("refuse to leave the package by a relative path", () => {
    expect(problemsWith("penstock", `import { x } from "../../quantity/src/unit.ts";`)).toEqual([
      "packages/penstock/src/planted.ts: ../../quantity/src/unit.ts leaves the package",
    ]);
    expect(problemsWith("penstock", `import { x } from "../unit.ts";`, "pipe/a.ts")).toEqual([]);
  });

  it("refuse the readers of files outside scheme/read", () => {
    expect(problemsWith("scheme", `import * as z from "zod/mini";`)).toEqual([
      "packages/scheme/src/planted.ts: zod is for packages/scheme/src/read/ only",
    ]);
    expect(problemsWith("scheme", `import { parse } from "yaml";`)).toEqual([
      "packages/scheme/src/planted.ts: yaml is for packages/scheme/src/read/ only",
    ]);
    expect(problemsWith("scheme", `import * as z from "zod/mini";`, "read/planted.ts")).toEqual([]);
    expect(problemsWith("penstock", `import * as z from "zod/mini";`)).toEqual([
      "packages/penstock/src/planted.ts: imports zod, which package.json does not declare",
    ]);
  });

  it("refuse Node's modules outside the program", () => {
    expect(problemsWith("scheme", `import { readFileSync } from "node:fs";`)).toEqual([
      "packages/scheme/src/planted.ts: node:fs is for packages/cli only",
    ]);
    expect(problemsWith("cli", `import { readFileSync } from "node:fs";`)).toEqual([]);
  });

  it("refuse what only running would tell", () => {
    expect(problemsWith("water", `export const x = (name: string) => import(name);`)).toEqual([
      "packages/water/src/planted.ts: imports what only running it would tell",
    ]);
  });
});

describe("globals", () => {
  it.each([
    ["console.log(1);", "console"],
    ["export const get = () => fetch(url);", "fetch"],
    ["export const now = () => Date.now();", "Date.now"],
    ["export const now = () => new Date();", "new Date()"],
    ["export const dice = () => Math.random();", "Math.random"],
    ["export const home = process.env.HOME as string;", "process"],
    ["export const all = { process };", "process"],
    ["globalThis.leat = 1;", "globalThis"],
  ])("that reach outside are refused: %s", (text, name) => {
    expect(problemsWith("water", text)).toEqual([
      `packages/water/src/planted.ts: ${name} is not for a pure function: pass in what it gives`,
    ]);
    expect(problemsWith("cli", text)).toEqual([]);
  });

  it("are told from names of the source's own", () => {
    const text = [
      `import { fetch } from "./fetch.ts";`,
      `interface Row { process: number; document(window: number): void }`,
      `export const f = ({ process, n: [window] }: Row, ...console: Row[]) => process + window + fetch;`,
      `export const g = (row: Row, day = new Date(2001, 1)) => [row.process, { process: 1 }, day];`,
    ].join("\n");
    expect(globalsUsed("planted.ts", text)).toEqual(["Date"]);
  });
});
