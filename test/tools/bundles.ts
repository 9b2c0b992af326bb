// Bundles an import as a web page would, and says what it costs and what it holds.
import { gzipSync } from "node:zlib";

import { build } from "esbuild";
import type { BuildOptions, Plugin } from "esbuild";

import { acts, parse } from "./syntax.ts";

const options = {
  bundle: true,
  format: "esm",
  conditions: ["@leat/source"],
  write: false,
  logLevel: "silent",
} as const satisfies BuildOptions;

/** What a bundle weighs and which npm packages are in it. */
interface Bundle {
  /** Bytes, minified and compressed with `gzip -9`. */
  gzip: number;
  /** Names of the npm packages that contribute code. */
  packages: string[];
}

/** A promise about the size of one import. */
export interface Ceiling {
  /** The import, as a module. */
  code: string;
  /** Most bytes allowed, minified and compressed with `gzip -9`. */
  bytes: number;
  /** npm packages that may not be in the bundle. */
  mustNotContain: readonly string[];
}

/**
 * Bundles a module, minified.
 *
 * @param code - the module's text
 * @param folder - where its imports are resolved from
 * @returns its weight and what is in it
 */
async function bundle(code: string, folder: string): Promise<Bundle> {
  const { outputFiles, metafile } = await build({
    ...options,
    stdin: { contents: code, resolveDir: folder },
    minify: true,
    metafile: true,
  });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  const packages = inputs
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .map(([path]) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//u.exec(path)?.[1])
    .filter((name) => name !== undefined);
  return {
    gzip: gzipSync(outputFiles[0]?.contents ?? "", { level: 9 }).length,
    packages: [...new Set(packages)],
  };
}

/**
 * Checks a promise about the size of an import.
 *
 * @param ceiling - the promise
 * @param folder - where its imports are resolved from
 * @returns one line for each part of the promise that is broken
 */
export async function ceilingProblems(ceiling: Ceiling, folder: string): Promise<string[]> {
  const { gzip, packages } = await bundle(ceiling.code, folder);
  return [
    ...(gzip > ceiling.bytes ? [`${ceiling.code} takes ${gzip} bytes of ${ceiling.bytes}`] : []),
    ...packages
      .filter((name) => ceiling.mustNotContain.includes(name))
      .map((name) => `${ceiling.code} brings ${name} along`),
  ];
}

/**
 * Makes esbuild look at the code itself: `"sideEffects": false` in a manifest is a claim, and with it every bare import would
 * vanish, whatever it does.
 */
const ignoreClaims: Plugin = {
  name: "ignore-claims",
  setup(builder) {
    builder.onResolve({ filter: /.*/ }, async ({ path, pluginData, ...from }) => {
      if (pluginData === "resolved") return undefined;
      const { importer, resolveDir, kind } = from;
      // What is imported later does not run now.
      if (kind === "dynamic-import") return { path, external: true };
      const { errors, ...found } = await builder.resolve(path, {
        importer,
        resolveDir,
        kind,
        pluginData: "resolved",
      });
      return { path: found.path, external: found.external, errors, sideEffects: true };
    });
  },
};

/**
 * Finds what happens when a module is imported and nothing of it is used.
 *
 * @param specifier - a package or a path
 * @param folder - where it is resolved from
 * @returns the first line of each statement that does something; none for a module that only defines
 */
export async function runsOnImport(specifier: string, folder: string): Promise<string[]> {
  const { outputFiles } = await build({
    ...options,
    stdin: { contents: `import ${JSON.stringify(specifier)};`, resolveDir: folder },
    treeShaking: true,
    plugins: [ignoreClaims],
    external: ["node:*", "yaml", "zod"],
  });
  const text = outputFiles[0]?.text ?? "";
  return parse(specifier, text)
    .body.filter((statement) => statement.type !== "ImportDeclaration" && acts(statement, text))
    .map(({ start, end }) => text.slice(start, end).split("\n")[0] ?? "");
}
