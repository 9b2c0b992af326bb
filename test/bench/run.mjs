// npm run bench: everything that is promised about speed, in one interleaved run. Prints tables in Markdown, then the gates, and
// exits 1 where one fails.
//
//     npm run bench                        all of it
//     npm run bench -- --rounds 45         more rounds (25 otherwise)
//     npm run bench -- --only V-notch      groups whose name contains this; nothing is started anew
//     npm run bench -- --json <file>       the figures as a file, too
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parseArgs } from "node:util";

import { build } from "esbuild";

import { command, imports } from "./start.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const { values: asked } = parseArgs({
  options: {
    rounds: { type: "string", default: "25" },
    only: { type: "string" },
    json: { type: "string" },
  },
});
const rounds = Number(asked.rounds);
if (!(Number.isInteger(rounds) && rounds >= 15))
  throw new Error("--rounds: fewer than 15 rounds say nothing");

// Below the root, so that the peers are found.
const cache = join(root, "node_modules/.cache/leat-bench");
mkdirSync(cache, { recursive: true });
const outfile = join(cache, "entry.mjs");
await build({
  entryPoints: [join(root, "test/bench/entry.mjs")],
  outfile,
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  conditions: ["@leat/source"],
  external: ["mathjs", "js-quantities", "unitmath", "safe-units"],
  logLevel: "warning",
});
const { arithmetic, bodies, century, measure, quantile, text, year } = await import(
  pathToFileURL(outfile).href
);

const groups = [...bodies(), ...year(), ...century(), ...arithmetic(), ...text()].filter(
  ({ name }) => !asked.only || name.includes(asked.only),
);
const measured = measure(groups, rounds);

// The smaller of two figures: best over best, because what else the machine does can only add to a time; and the median of
// the rounds' own ratios, because a best of a variant that waits for memory is a matter of luck. What is slower is so by both.
const gated = ({ ratio, ratioBest }) => Math.min(ratio, ratioBest);
const fails = ({ variants }) =>
  variants.some((each) => each.gate !== undefined && gated(each) > each.gate);

// A group that fails is measured again, by itself, twice at most: a busy minute passes, a slow body stays slow.
const again = [];
for (const [place, group] of groups.entries()) {
  for (let time = 0; time < 2 && fails(measured[place]); time++) {
    again.push(group.name);
    [measured[place]] = measure([group], rounds);
  }
}

const started = [];
if (!asked.only) {
  // Nothing is cleaned: what is up to date stays.
  const { status, stdout } = spawnSync(process.execPath, [join(root, "test/tools/bundle.mjs")], {
    cwd: root,
    encoding: "utf8",
  });
  if (status !== 0)
    console.log(
      `The build has errors; what it wrote is timed.\n${stdout.split("\n").slice(0, 5).join("\n")}\n`,
    );
  started.push(...imports(root, Math.max(7, Math.ceil(rounds / 3))), ...command(root, rounds));
}

// ------------------------------------------------------------------------------------------------------------- the tables

function duration(ns) {
  const [size, unit] = ns < 1e3 ? [1, "ns"] : ns < 1e6 ? [1e3, "µs"] : [1e6, "ms"];
  return `${Number((ns / size).toPrecision(3))} ${unit}`;
}

const times = (ratio) => (ratio >= 10 ? String(Number(ratio.toPrecision(2))) : ratio.toFixed(2));

const [cpu] = cpus();
console.log(
  `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus().length} × ${cpu.model.trim()}, ${rounds} rounds\n`,
);
for (const { name, per, variants } of measured) {
  console.log(`**${name}**, time per ${per}\n`);
  console.log(
    `| | median | middle half | best | over the first: median (middle half) | over the first: best |`,
  );
  console.log(`| --- | ---: | ---: | ---: | ---: | ---: |`);
  for (const each of variants) {
    console.log(
      each.refused
        ? `| ${each.name} | ${each.refused} | | | | |`
        : `| ${each.name} | ${duration(each.median)} | ${duration(each.low)} to ${duration(each.high)} | ${duration(each.best)} | ${times(each.ratio)} (${times(each.ratioLow)} to ${times(each.ratioHigh)}) | ${times(each.ratioBest)} |`,
    );
  }
  console.log();
}
if (started.length > 0) {
  console.log("**start**, ms in a new process\n");
  console.log("| | median | middle half | best |\n| --- | ---: | ---: | ---: |");
  for (const { name, times: list, problem } of started) {
    const cells = [
      quantile(list),
      quantile(list, 0.25),
      quantile(list, 0.75),
      Math.min(...list),
    ].map((n) => n?.toFixed(1));
    console.log(
      problem
        ? `| ${name} | ${problem} | | |`
        : `| ${name} | ${cells[0]} | ${cells[1]} to ${cells[2]} | ${cells[3]} |`,
    );
  }
  console.log();
}

// -------------------------------------------------------------------------------------------------------------- the gates

const gates = [
  ...measured.flatMap(({ name, variants }) =>
    variants.flatMap((each) => {
      const { name: variant, gate } = each;
      const got = gated(each);
      return gate === undefined
        ? []
        : [
            {
              name: `${name}: ${variant}`,
              got,
              limit: gate,
              says: `${got.toFixed(2)} of ${variants[0].name}`,
            },
          ];
    }),
  ),
  ...started.flatMap(({ name, times: list, over, limit, problem }) => {
    if (limit === undefined) return [];
    const got = problem
      ? Number.POSITIVE_INFINITY
      : Math.min(...list) - (over ? Math.min(...over) : 0);
    const says = problem ?? `${got.toFixed(1)} ms${over ? " over an empty program" : ""}`;
    return [{ name, got, limit, says }];
  }),
];
for (const { name, got, limit, says } of gates)
  console.log(`${got <= limit ? "PASS" : "FAIL"}  ${name}: ${says}, at most ${limit}`);
const failed = gates.filter(({ got, limit }) => !(got <= limit)).length;
for (const name of again) console.log(`measured again: ${name}`);
console.log(`\n${gates.length} gates, ${gates.length - failed} passed, ${failed} failed`);
if (asked.json) {
  const bare = measured.map(({ variants, ...group }) => ({
    ...group,
    variants: variants.map(({ run: _, ...figures }) => figures),
  }));
  writeFileSync(
    asked.json,
    `${JSON.stringify({ node: process.version, rounds, groups: bare, started, gates }, undefined, 2)}\n`,
  );
}
process.exitCode = failed > 0 || gates.length === 0 ? 1 : 0;
