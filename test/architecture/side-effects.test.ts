import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { describe, expect, it, onTestFinished } from "vitest";

import { runsOnImport } from "../tools/bundles.ts";
import { readTree, root } from "../tools/tree.ts";

/** Builds its schemas when it is imported. Nobody imports it unawares: sizes.test.ts sees to that. */
const builds = "@leat/scheme/read";

const specifiers = readTree().packages.flatMap(({ manifest: { name = "", exports = {} } }) =>
  Object.keys(exports)
    .filter((subpath) => subpath !== "./package.json")
    .map((subpath) => `${name}${subpath.slice(1)}`)
    .filter((specifier) => specifier !== builds),
);

/** What runs when a package of one source is imported; its manifest claims to have no side effects. */
async function runsIn(source: string): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), "side-effects-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true });
  });
  const home = join(folder, "node_modules", "planted");
  mkdirSync(home, { recursive: true });
  writeFileSync(
    join(home, "package.json"),
    JSON.stringify({ name: "planted", type: "module", sideEffects: false, exports: "./index.ts" }),
  );
  writeFileSync(join(home, "index.ts"), source);
  return await runsOnImport("planted", folder);
}

describe("importing", () => {
  it.each(specifiers)("%s runs nothing", async (specifier) => {
    expect(await runsOnImport(specifier, root)).toEqual([]);
  });

  it.each([
    ["const units = new Map<string, number>(); units.set('m', 1);", 'units.set("m", 1);'],
    ["globalThis.leat = 1;", "globalThis.leat = 1;"],
    [
      "class A {} Object.defineProperty(A.prototype, 'a', {});",
      'Object.defineProperty(A.prototype, "a", {});',
    ],
    [
      "const make = (id: string) => ({ id }); export const weir = make('weir');",
      'var weir = make("weir");',
    ],
    ["let n = 0; export const next = ++n;", "var next = ++n;"],
    ["export const first = await Promise.resolve(1);", "var first = await Promise.resolve(1);"],
    ["export class A { static b = load(); } function load() { return 1; }", "var A = class {"],
  ])("is seen to act, whatever the manifest claims: %s", async (source, statement) => {
    expect(await runsIn(source)).toEqual([statement]);
  });

  it.each([
    "const make = (id: string) => ({ id }); export const weir = /* @__PURE__ */ make('weir');",
    "export const third = Math.PI / 3; export const names = new Set(['a']);",
    "export class A { b(): void { this.c = 1; } c = 0; }",
    "export const later = () => import('./index.ts');",
  ])("may define: %s", async (source) => {
    expect(await runsIn(source)).toEqual([]);
  });
});
