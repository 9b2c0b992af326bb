// What a package's sources may import and touch.
import { dirname, posix } from "node:path";

import { globalsUsed, importSpecifiers } from "./syntax.ts";
import type { PackageTree, TextFile, Tree } from "./tree.ts";

/** The only folder that may read files with these. */
const readers = new Set(["papaparse", "yaml", "zod"]);
const readersHome = "packages/scheme/src/read/";

/** The only package that may touch the machine it runs on. */
const program = "cli";

/** Globals that reach outside a pure function: the machine, the network, the clock, chance. */
const outside = new Set([
  "Bun",
  "Date.now",
  "Deno",
  "EventSource",
  "Math.random",
  "WebSocket",
  "XMLHttpRequest",
  "console",
  "crypto",
  "document",
  "fetch",
  "globalThis",
  "indexedDB",
  "localStorage",
  "navigator",
  "new Date()",
  "performance",
  "process",
  "require",
  "sessionStorage",
  "setImmediate",
  "setInterval",
  "setTimeout",
  "window",
]);

/**
 * Checks every import and every global of the packages' sources.
 *
 * @param tree - the repository
 * @returns one line for each that is not allowed
 */
export function importProblems(tree: Tree): string[] {
  return tree.packages.flatMap((each) =>
    each.sources.flatMap((source) => [
      ...importSpecifiers(source.path, source.text)
        .map((specifier) => problemOf(specifier, source, each, tree))
        .filter((problem) => problem !== undefined)
        .map((problem) => `${source.path}: ${problem}`),
      ...(each.folder === program
        ? []
        : globalsUsed(source.path, source.text)
            .filter((name) => outside.has(name))
            .map(
              (name) => `${source.path}: ${name} is not for a pure function: pass in what it gives`,
            )),
    ]),
  );
}

function problemOf(
  specifier: string,
  { path }: TextFile,
  { folder, manifest }: PackageTree,
  tree: Tree,
): string | undefined {
  if (specifier === "(computed)") return "imports what only running it would tell";
  if (specifier.startsWith(".")) {
    const target = posix.join(dirname(path), specifier);
    return target.startsWith(`packages/${folder}/src/`)
      ? undefined
      : `${specifier} leaves the package`;
  }
  if (specifier.startsWith("node:")) {
    return folder === program ? undefined : `${specifier} is for packages/${program} only`;
  }
  const name = /^(@[^/]+\/)?[^/]+/u.exec(specifier)?.[0] ?? specifier;
  if (manifest.dependencies?.[name] === undefined) {
    return `imports ${name}, which package.json does not declare`;
  }
  if (readers.has(name) && !path.startsWith(readersHome)) {
    return `${name} is for ${readersHome} only`;
  }
  const target = tree.packages.find((each) => each.manifest.name === name);
  if (target !== undefined) {
    const subpath = `.${specifier.slice(name.length)}`;
    if (!(subpath in (target.manifest.exports ?? {}))) {
      return `${specifier} reaches past what ${name} exports`;
    }
  }
  return undefined;
}
