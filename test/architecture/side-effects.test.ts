import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { describe, expect, it, onTestFinished } from "vitest";

import { runsOnImport } from "../tools/bundles.ts";
import { readTree, root } from "../tools/tree.ts";

const specifiers = readTree().packages.flatMap(({ manifest: { name = "", exports = {} } }) =>
  Object.keys(exports)
    .filter((subpath) => subpath !== "./package.json")
    .map((subpath) => `${name}${subpath.slice(1)}`),
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

  it("is seen to register something, whatever the manifest claims", async () => {
    expect(
      await runsIn("const units = new Map<string, number>(); units.set('m', 1); export { units };"),
    ).toEqual(["var units = /* @__PURE__ */ new Map();", 'units.set("m", 1);']);
  });

  it("is seen to call a function that is not marked as pure", async () => {
    const make = "const make = (id: string) => ({ id });";
    expect(await runsIn(`${make} export const weir = make("weir");`)).toContain(
      'var weir = make("weir");',
    );
    expect(await runsIn(`${make} export const weir = /* @__PURE__ */ make("weir");`)).toEqual([]);
  });
});
