// Reads the repository as plain data, so that a test can plant a violation in a copy of it.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** A text file, its path relative to the root and with forward slashes. */
export interface TextFile {
  path: string;
  text: string;
}

/** The fields of a `package.json` that the checks read. */
export interface Manifest {
  [field: string]: unknown;
  name?: string;
  exports?: Record<string, unknown>;
  dependencies?: Record<string, string>;
  devDependencies?: Record<string, string>;
  leat?: { layer?: number };
}

/** The fields of a `tsconfig.json` that the checks read. */
interface TypeScriptConfig {
  [field: string]: unknown;
  references?: { path: string }[];
}

/** One folder under `packages/`. */
export interface PackageTree {
  folder: string;
  manifest: Manifest;
  tsconfig: TypeScriptConfig;
  sources: TextFile[];
  /** Text of README.md, or `undefined` where there is none. */
  readme: string | undefined;
}

/** The repository, as far as the checks of its shape are concerned. */
export interface Tree {
  manifest: Manifest;
  build: TypeScriptConfig;
  packages: PackageTree[];
}

/** Absolute path of the repository. */
export const root: string = fileURLToPath(new URL("../..", import.meta.url));

/** Folders that hold what is made, fetched or recorded, never what is written. */
const notWritten = new Set([
  ".git",
  ".stryker-tmp",
  "coverage",
  "dist",
  "docs/api",
  "node_modules",
  "reports",
]);

/**
 * Lists the written files under a folder of the repository.
 *
 * @param folder - relative to the root; the whole repository when left out
 * @returns paths relative to the root, in order, with forward slashes
 */
export function filesUnder(folder = ""): string[] {
  const found: string[] = [];
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (notWritten.has(entry.name) || notWritten.has(path)) continue;
    if (entry.isDirectory()) found.push(...filesUnder(path));
    else if (entry.isFile()) found.push(path);
  }
  return found.toSorted();
}

/**
 * Reads one file of the repository.
 *
 * @param path - relative to the root
 * @returns the path and the text
 */
export function readText(path: string): TextFile {
  return { path, text: readFileSync(join(root, path), "utf8") };
}

function readJson(path: string): Record<string, unknown> {
  return JSON.parse(readText(path).text) as Record<string, unknown>;
}

function readPackage(folder: string): PackageTree {
  const home = `packages/${folder}`;
  return {
    folder,
    manifest: readJson(`${home}/package.json`),
    tsconfig: readJson(`${home}/tsconfig.json`),
    sources: filesUnder(`${home}/src`)
      .filter((path) => path.endsWith(".ts"))
      .map(readText),
    readme: existsSync(join(root, home, "README.md"))
      ? readText(`${home}/README.md`).text
      : undefined,
  };
}

/**
 * Reads the repository.
 *
 * @returns the manifests, the build's list and every package with its sources
 */
export function readTree(): Tree {
  return {
    manifest: readJson("package.json"),
    build: readJson("tsconfig.build.json"),
    packages: readdirSync(join(root, "packages"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => readPackage(entry.name))
      .toSorted((a, b) => a.folder.localeCompare(b.folder)),
  };
}

/**
 * Copies a tree and changes the copy.
 *
 * @param tree - left as it is
 * @param plant - puts a violation into the copy
 * @returns the changed copy
 */
export function planted(tree: Tree, plant: (copy: Tree) => void): Tree {
  const copy = structuredClone(tree);
  plant(copy);
  return copy;
}

/**
 * Finds one package in a tree.
 *
 * @param tree - where to look
 * @param folder - its folder under `packages/`
 * @returns the package
 * @throws Error where the tree has no such package
 */
export function packageIn(tree: Tree, folder: string): PackageTree {
  const found = tree.packages.find((each) => each.folder === folder);
  if (found === undefined) throw new Error(`no packages/${folder} in the tree`);
  return found;
}
