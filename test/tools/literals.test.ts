import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";

import { afterAll, describe, expect, it } from "vitest";

import { root } from "./tree.ts";

const cache = join(root, "node_modules/.cache");
mkdirSync(cache, { recursive: true });
const home = mkdtempSync(join(cache, "leat-literals-"));

afterAll(() => rmSync(home, { recursive: true, force: true }));

/** A weir whose coefficient is a fit: c0 decides, c1 is too small for rows of ±1 % to see. */
function planted({ body = "fit(h / P) * b * h * Math.sqrt(g * h)", guard = "" } = {}): string {
  return [
    `import { commonPractice, formula, input, output } from "@leat/formula";`,
    `const c0 = 0.4;`,
    `const c1 = 0.005;${guard}`,
    `function fit(x: number): number {`,
    `  return c0 + c1 * x;`,
    `}`,
    `export const plantedWeir = /* @__PURE__ */ formula(() => ({`,
    `  id: "planted-weir",`,
    `  equation: "Q = C · b · h · √(g·h)",`,
    `  inputs: {`,
    `    head: input("length", "h"),`,
    `    width: input("length", "b"),`,
    `    crestHeight: input("length", "P", { domain: "positive" }),`,
    `    gravity: input("acceleration", "g"),`,
    `  },`,
    `  output: output("volume flow", "Q"),`,
    `  steps: { C: { kind: "coefficient", equation: "fit", of: ({ h, P }) => fit(h / P) } },`,
    `  source: commonPractice.at("planted", "practice"),`,
    `  body: ({ h, b, P, g }) => ${body},`,
    `}));`,
  ].join("\n");
}

/** Heads with the flows that a pocket calculator gives for them, at g = 10 m/s². */
function row(head: string, width: string, expected: string, tolerance: string): object {
  const inputs = { head, width, crestHeight: "1 m", gravity: "10 m/s²" };
  return {
    kind: "second-equation",
    source: "worked by hand",
    standing: "derived",
    inputs,
    expected,
    tolerance,
  };
}

const rough = [
  row("0.1 m", "1 m", "0.04005 m³/s", "0.9 %"),
  row("0.4 m", "1 m", "0.3216 m³/s", "0.9 %"),
  row("0.1 m", "2 m", "0.0801 m³/s", "0.9 %"),
];

/** What the script says of a folder with this source and these rows. */
function run(source: string, rows: readonly object[]): { status: number | null; out: string } {
  const folder = mkdtempSync(join(home, "case-"));
  writeFileSync(join(folder, "planted-weir.ts"), source);
  writeFileSync(
    join(folder, "planted-weir.rows.json"),
    JSON.stringify({ formula: "planted-weir", rows }),
  );
  const script = join(root, "test/tools/literals.mjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, folder], {
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  return { status, out: stdout };
}

describe("npm run literals", { timeout: 60_000 }, () => {
  it("fails on a number that no row sees", () => {
    const { status, out } = run(planted(), rough);
    expect(out).toMatch(/planted-weir\.ts:2 {2}0\.4 {2}red by planted-weir, row 1/u);
    expect(out).toMatch(/planted-weir\.ts:3 {2}0\.005 {2}GREEN in planted-weir/u);
    expect(out).toMatch(/^2 literals, 1 red, 1 green$/mu);
    expect(status).toBe(1);
  });

  it("passes where a row sees each number", () => {
    const { status, out } = run(planted(), [
      ...rough,
      row("0.4 m", "1 m", "0.3216 m³/s", "0.001 %"),
    ]);
    expect(out).toMatch(/0\.005 {2}red by planted-weir, row 4/u);
    expect(out).toMatch(/^2 literals, 2 red, 0 green$/mu);
    expect(status).toBe(0);
  });

  it("passes over a number that its line calls a guard, and says why", () => {
    const { status, out } = run(planted({ guard: " // guard: only planted" }), rough);
    expect(out).toMatch(/planted-weir\.ts:3 {2}0\.005 {2}guard: only planted$/mu);
    expect(out).toMatch(/^1 literals, 1 red, 0 green$/mu);
    expect(status).toBe(0);
  });

  it("counts a change after which no answer comes as seen", () => {
    const body =
      "{ let i = 0; while (i !== 1) i += 1; return i * fit(h / P) * b * h * Math.sqrt(g * h); }";
    const { status, out } = run(planted({ body }), rough);
    expect(out.match(/planted-weir\.ts:19 {2}1 {2}red/gu)).toHaveLength(2);
    expect(status).toBe(1);
  });

  it("trusts no row that fails before anything is changed", () => {
    const { status, out } = run(planted(), [...rough, row("0.4 m", "1 m", "0.33 m³/s", "0.001 %")]);
    expect(out).toMatch(
      /Already broken, and left out:\nplanted-weir, row 1 \(worked by hand\): 0\.32\d+ m³\/s, expected 0\.33/u,
    );
    expect(out).toMatch(/0\.005 {2}GREEN/u);
    expect(status).toBe(1);
  });
});
