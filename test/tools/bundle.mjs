// Writes each package's JavaScript: its entries, and what they share, in a few files. A program that imports a scheme
// would otherwise open some two hundred; the compiler writes the declarations.
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { build } from "esbuild";

const packages = fileURLToPath(new URL("../../packages", import.meta.url));

await Promise.all(
  readdirSync(packages).map(async (name) => {
    const home = join(packages, name);
    const { exports, bin = {} } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
    const sources = Object.values(exports).flatMap((entry) => entry["@leat/source"] ?? []);
    const programs = Object.values(bin).map((path) =>
      path.replace("/dist/", "/src/").replace(/\.js$/u, ".ts"),
    );
    // What an earlier build shared under another name.
    const dist = join(home, "dist");
    for (const file of existsSync(dist) ? readdirSync(dist) : []) {
      if (/^shared-.*\.js(\.map)?$/u.test(file)) rmSync(join(dist, file));
    }
    await build({
      entryPoints: [...sources, ...programs].map((path) => join(home, path)),
      outbase: join(home, "src"),
      outdir: dist,
      chunkNames: "shared-[hash]",
      bundle: true,
      splitting: true,
      packages: "external",
      format: "esm",
      platform: "neutral",
      target: "es2023",
      sourcemap: true,
      sourcesContent: false,
      external: ["node:*"],
      logLevel: "warning",
    });
  }),
);
