// Packs each package as it would be published, and checks what a user would get: the tarballs themselves, then a project that
// installed them all. Needs the build; `npm run packages` makes it first.
import { spawn } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const modules = join(root, "node_modules");
const failures = [];

/** The oldest and the newest compiler that the published types are promised to. */
const compilers = { "TypeScript 7": "typescript", "TypeScript 5.9": "typescript-oldest" };

/** Both ways in which a user's project finds packages. */
const resolutions = {
  nodenext: { module: "nodenext", rewriteRelativeImportExtensions: true },
  bundler: {
    module: "esnext",
    moduleResolution: "bundler",
    noEmit: true,
    allowImportingTsExtensions: true,
  },
};

/** The user's programs, and what their types may take for granted: no page and no Node, but where zod's own types do. */
const programs = {
  program: ["es2023"],
  "two-copies": ["es2023"],
  reader: ["es2023", "dom"],
};

const work = await mkdtemp(join(tmpdir(), "leat-packages-"));
try {
  const tarballs = await pack(join(work, "tarballs"));
  await inTurn(2, tarballs, checkTarball);
  await checkProject(join(work, "project"), tarballs);
} finally {
  await rm(work, { recursive: true });
}
console.log(failures.length === 0 ? "packages: all good" : `packages: ${failures.join(", ")}`);
process.exitCode = failures.length === 0 ? 0 : 1;

/** Packs every package into a folder; gives the tarballs. */
async function pack(folder) {
  await mkdir(folder);
  const words = ["-r", "--filter", "./packages/*", "pack", "--pack-destination", folder];
  const { code, output } = await run("npm", ["run", "-s", "pnpm", "--", ...words], root);
  if (code !== 0) throw new Error(`pnpm pack failed\n${output}`);
  const tarballs = (await readdir(folder)).map((name) => join(folder, name));
  const packages = await readdir(join(root, "packages"));
  if (tarballs.length !== packages.length) {
    throw new Error(`${tarballs.length} tarballs of ${packages.length} packages`);
  }
  return tarballs;
}

/** What publishing asks: entries that exist, types that match them, and the files that a reader expects. */
async function checkTarball(tarball) {
  const name = tarball.replace(/^.*leat-|-[\d.]+\.tgz$/gu, "");
  const bin = (tool) => join(modules, ".bin", tool);
  await step(`publint ${name}`, bin("publint"), ["--strict", tarball], root);
  const format = ["--format", "table-flipped", "--no-emoji", "--quiet"];
  await step(`types ${name}`, bin("attw"), ["--profile", "esm-only", ...format, tarball], root);
  const { output } = await run("tar", ["-tzf", tarball], root);
  const files = output.split("\n");
  for (const file of ["LICENSE", "README.md", "package.json", "dist/index.js", "src/index.ts"]) {
    if (!files.includes(`package/${file}`)) fail(`${name} has no ${file}`);
  }
  const extra = files.filter((file) => /tsbuildinfo|\.test\.|\/test\/|node_modules/u.test(file));
  if (extra.length > 0) fail(`${name} ships ${extra.join(", ")}`);
}

/** A user's project: all tarballs installed by npm, its programs compiled and run. */
async function checkProject(folder, tarballs) {
  await cp(join(root, "test/consumers/project"), folder, { recursive: true });
  await writeFile(join(folder, "package.json"), `{ "private": true, "type": "module" }`);
  const quiet = ["--prefer-offline", "--no-audit", "--no-fund", "--loglevel=error"];
  if (!(await step("npm install", "npm", ["install", ...quiet, ...tarballs], folder))) return;

  const second = join(folder, "second/node_modules/@leat/quantity");
  await cp(join(folder, "node_modules/@leat/quantity"), second, { recursive: true });

  await checkEntries(folder);
  for (const [compiler, name] of Object.entries(compilers)) {
    const tsc = join(modules, name, "bin/tsc");
    for (const [resolution, options] of Object.entries(resolutions)) {
      for (const [program, lib] of Object.entries(programs)) {
        const config = join(folder, `tsconfig.${program}.json`);
        const strict = { strict: true, exactOptionalPropertyTypes: true, skipLibCheck: false };
        const compilerOptions = { target: "es2023", lib, types: [], ...strict, ...options };
        await writeFile(config, JSON.stringify({ compilerOptions, files: [`${program}.ts`] }));
        const what = `${compiler}, ${resolution}: ${program}`;
        await step(what, process.execPath, [tsc, "-p", config], folder);
      }
    }
  }
  for (const program of Object.keys(programs)) {
    await step(`run ${program}`, process.execPath, [`${program}.js`], folder);
  }

  const manifest = JSON.parse(
    await readFile(join(folder, "node_modules/@leat/cli/package.json"), "utf8"),
  );
  const { code, output } = await run(
    "npx",
    ["--no-install", "--offline", "leat", "--version"],
    folder,
  );
  report("leat --version", code === 0 && output.trim().includes(manifest.version), output);
}

/** The user's programs import every entry that is published, so that every type is read. */
async function checkEntries(folder) {
  const sources = Object.keys(programs).map((name) => readFile(join(folder, `${name}.ts`), "utf8"));
  const text = (await Promise.all(sources)).join("");
  for (const name of await readdir(join(root, "packages"))) {
    const { exports } = JSON.parse(
      await readFile(join(root, "packages", name, "package.json"), "utf8"),
    );
    for (const subpath of Object.keys(exports)) {
      const specifier = `@leat/${name}${subpath.slice(1)}`;
      if (subpath !== "./package.json" && !text.includes(`from "${specifier}"`)) {
        fail(`no program in test/consumers imports ${specifier}`);
      }
    }
  }
}

async function step(what, command, words, cwd) {
  const { code, output } = await run(command, words, cwd);
  return report(what, code === 0, output);
}

function report(what, isGood, output) {
  console.log(`${isGood ? "ok    " : "FAILED"} ${what}`);
  if (isGood) return true;
  if (output !== "") console.log(output.trimEnd().replaceAll(/^/gmu, "       "));
  failures.push(what);
  return false;
}

function fail(what) {
  report(what, false, "");
}

/** Runs a command to its end without a stdin; gives its exit code and all that it printed. */
function run(command, words, cwd) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, words, { cwd, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (chunk) => {
        output += chunk;
      });
    }
    child.on("error", reject).on("close", (code) => {
      resolve({ code, output });
    });
  });
}

/** Works through a list, so many at a time. */
async function inTurn(width, list, work) {
  const waiting = [...list];
  const worker = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await work(next);
  };
  await Promise.all(Array.from({ length: width }, worker));
}
