// Every package is put together alike: its manifest, its tsconfig, and its place in the root's lists.
import type { Manifest, PackageTree, Tree } from "./tree.ts";

/** Names of a drawer, not of a topic. */
const drawers = new Set(["common", "helper", "helpers", "misc", "util", "utils"]);

/** The one package that is a program: it has a `bin` and may touch the machine. */
const program = "cli";

/**
 * Checks that every manifest and tsconfig is alike, and that the root lists every package.
 *
 * @param tree - the repository
 * @returns one line for each thing that differs
 */
export function manifestProblems(tree: Tree): string[] {
  return [
    ...tree.packages.flatMap(packageProblems),
    ...listProblems(
      "tsconfig.build.json: references",
      (tree.build.references ?? []).map(({ path }) => path),
      tree.packages.map(({ folder }) => `packages/${folder}`),
    ),
    ...listProblems(
      "package.json: devDependencies",
      Object.keys(tree.manifest.devDependencies ?? {}).filter((name) => name.startsWith("@leat/")),
      tree.packages.map(({ folder }) => `@leat/${folder}`),
    ),
    ...Object.entries(tree.manifest.devDependencies ?? {})
      .filter(([name, range]) => name.startsWith("@leat/") && range !== "workspace:*")
      .map(([name, range]) => `package.json: ${name} is "${range}", not "workspace:*"`),
  ];
}

function packageProblems({ folder, manifest, tsconfig, sources }: PackageTree): string[] {
  const problems: string[] = [];
  const home = `packages/${folder}`;
  const wanted = expectedManifest(folder, manifest);
  problems.push(...differences(`${home}/package.json`, manifest, wanted));

  const description = manifest["description"];
  if (typeof description !== "string" || !/^[^a-z].*\.$/u.test(description)) {
    problems.push(`${home}/package.json: description is not a sentence`);
  }
  if (!/^\d+\.\d+\.\d+(-[\w.]+)?$/u.test(String(manifest["version"]))) {
    problems.push(`${home}/package.json: version is "${String(manifest["version"])}"`);
  }
  const layer = manifest.leat?.layer;
  if (layer === undefined || !Number.isInteger(layer) || layer < 0 || layer > 6) {
    problems.push(
      `${home}/package.json: leat.layer is ${String(layer)}, not a whole number 0 to 6`,
    );
  }
  for (const [subpath, target] of Object.entries(manifest.exports ?? {})) {
    if (subpath === "./package.json") continue;
    const source = (target as Record<string, string>)["@leat/source"] ?? "(no @leat/source)";
    const path = `${home}/${source.replace("./", "")}`;
    if (!sources.some((file) => file.path === path)) {
      problems.push(
        `${home}/package.json: exports "${subpath}" from ${source}, which is not there`,
      );
    }
  }
  const dependencies = Object.keys(manifest.dependencies ?? {});
  problems.push(
    ...differences(`${home}/tsconfig.json`, tsconfig, expectedTsconfig(folder, tsconfig)),
    ...listProblems(
      `${home}/tsconfig.json: references`,
      (tsconfig.references ?? []).map(({ path }) => path),
      dependencies
        .filter((name) => name.startsWith("@leat/"))
        .map((name) => name.replace("@leat/", "../")),
    ),
  );
  for (const path of [folder, ...sources.map((file) => file.path)]) {
    const drawer = path.split("/").find((part) => drawers.has(part.replace(/\.ts$/u, "")));
    if (drawer !== undefined) {
      problems.push(`${path === folder ? home : path}: "${drawer}" is not a topic: name the idea`);
    }
  }
  return problems;
}

/** What a package's manifest must be, its own words, exports and dependencies aside. */
function expectedManifest(folder: string, manifest: Manifest): Manifest {
  const subpaths = Object.keys(manifest.exports ?? {})
    .filter((subpath) => /^\.\/[a-z][a-z-]*$/u.test(subpath))
    .map((subpath) => subpath.slice(2));
  const isProgram = folder === program;
  const dependencies = Object.keys(manifest.dependencies ?? {}).toSorted();
  return {
    name: `@leat/${folder}`,
    version: manifest["version"],
    description: manifest["description"],
    license: "MIT",
    repository: {
      type: "git",
      url: "git+https://example.org/leat.git",
      directory: `packages/${folder}`,
    },
    ...(isProgram ? { bin: { leat: "./dist/bin.js" } } : {}),
    files: ["dist", "src", "!**/*.tsbuildinfo"],
    type: "module",
    ...(isProgram ? {} : { sideEffects: false }),
    exports: {
      ".": entry(""),
      ...Object.fromEntries(subpaths.map((subpath) => [`./${subpath}`, entry(`${subpath}/`)])),
      "./package.json": "./package.json",
    },
    ...(dependencies.length === 0
      ? {}
      : {
          dependencies: Object.fromEntries(
            dependencies.map((name) => [
              name,
              name.startsWith("@leat/") ? "workspace:^" : "catalog:",
            ]),
          ),
        }),
    engines: { node: ">=20.19" },
    leat: { layer: manifest.leat?.layer },
  } as Manifest;
}

/** One entry of `exports`: sources for the workspace first, then what is published. */
function entry(folder: string): Record<string, string> {
  return {
    "@leat/source": `./src/${folder}index.ts`,
    types: `./dist/${folder}index.d.ts`,
    default: `./dist/${folder}index.js`,
  };
}

/** What a package's tsconfig must be; its references are compared apart, as their order is free. */
function expectedTsconfig(
  folder: string,
  { references }: PackageTree["tsconfig"],
): Record<string, unknown> {
  return {
    extends: "../../tsconfig.base.json",
    compilerOptions: {
      composite: true,
      declarationMap: true,
      // The JavaScript is written by test/tools/bundle.mjs.
      emitDeclarationOnly: true,
      outDir: "dist",
      rootDir: "src",
      tsBuildInfoFile: "dist/.tsbuildinfo",
      types: folder === program ? ["node"] : [],
    },
    include: ["src"],
    ...(references === undefined ? {} : { references }),
  };
}

/** Compares two records field by field, the order of fields included. */
function differences(
  path: string,
  actual: Record<string, unknown>,
  wanted: Record<string, unknown>,
): string[] {
  const fields = Object.keys(actual).join(", ");
  const wantedFields = Object.keys(wanted).join(", ");
  if (fields !== wantedFields)
    return [`${path}: fields are ${fields}; they must be ${wantedFields}`];
  return Object.keys(wanted)
    .filter((field) => JSON.stringify(actual[field]) !== JSON.stringify(wanted[field]))
    .map(
      (field) =>
        `${path}: ${field} is ${JSON.stringify(actual[field])}; it must be ${JSON.stringify(wanted[field])}`,
    );
}

function listProblems(what: string, actual: string[], wanted: string[]): string[] {
  return [
    ...wanted.filter((name) => !actual.includes(name)).map((name) => `${what} lack ${name}`),
    ...actual
      .filter((name) => !wanted.includes(name))
      .map((name) => `${what} have ${name} too many`),
  ];
}
