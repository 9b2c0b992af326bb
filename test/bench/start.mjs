// What starting costs: imports of the built packages and the command line, each in a new process.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Imports that may take as long as they take: they bring a parser and a schema along. */
const free = new Set(["@leat/scheme/read"]);

/** Every import that the packages offer, and the built file behind it. */
function offered(root) {
  return readdirSync(join(root, "packages")).flatMap((folder) => {
    const home = join(root, "packages", folder);
    const { name, exports } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
    return Object.entries(exports ?? {}).flatMap(([path, target]) =>
      target?.default
        ? [{ specifier: name + path.slice(1), file: join(home, target.default) }]
        : [],
    );
  });
}

function node(args, cwd) {
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd, encoding: "utf8" });
  const took = performance.now() - start;
  if (status !== 0)
    throw new Error(
      stderr
        .trim()
        .split("\n")
        .find((line) => /Error/u.test(line)) ?? `exit ${status}`,
    );
  return { took, stdout };
}

/**
 * Times imports, round by round.
 *
 * @param {string} root - of the repository
 * @param {number} rounds - how often
 * @returns {{ name: string, specifier: string, times: number[], limit?: number, problem?: string }[]} milliseconds of each
 */
export function imports(root, rounds) {
  const all = offered(root).map(({ specifier, file }) => ({
    name: `\`${specifier}\``,
    specifier,
    times: [],
    ...(!free.has(specifier) && { limit: 50 }),
    ...(!existsSync(file) && { problem: "is not built" }),
  }));
  // What an import costs before anything is imported.
  all.unshift({ name: "an empty module", specifier: "data:text/javascript,", times: [] });
  for (let round = 0; round < rounds; round++) {
    for (const each of all) {
      if (each.problem) continue;
      const code = `const t = performance.now(); await import(${JSON.stringify(each.specifier)}); console.log(performance.now() - t)`;
      try {
        each.times.push(Number(node(["--input-type=module", "--eval", code], root).stdout));
      } catch (error) {
        each.problem = error.message;
      }
    }
  }
  return all;
}

/**
 * Times the command line beside an empty program, round by round.
 *
 * @param {string} root - of the repository
 * @param {number} rounds - how often
 * @returns {{ name: string, times: number[], over?: number[], limit?: number, problem?: string }[]} milliseconds of the empty
 *   program, and of the command, whose limit is for what it takes more
 */
export function command(root, rounds) {
  const bin = join(root, "packages/cli/dist/bin.js");
  const times = [];
  const over = [];
  let problem = existsSync(bin) ? undefined : "is not built";
  for (let round = 0; round < rounds && !problem; round++) {
    try {
      over.push(node(["--eval", "0"], root).took);
      times.push(node([bin, "--version"], root).took);
    } catch (error) {
      problem = error.message;
    }
  }
  return [
    { name: "`node --eval 0`, whole process", times: over, ...(problem && { problem }) },
    {
      name: "`leat --version`, whole process",
      times,
      over,
      limit: 150,
      ...(problem && { problem }),
    },
  ];
}
