import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";

import { describe, expect, it } from "vitest";

import {
  docCommentExamples,
  docCommentProblems,
  exampleProblems,
  markdownExamples,
  withImports,
  writeForCompiler,
} from "../tools/examples.ts";
import type { Example } from "../tools/examples.ts";
import { filesUnder, readText, readTree, root } from "../tools/tree.ts";

const files = filesUnder();
const pages = files.filter((path) =>
  /^(README\.md|DEVELOPERS\.md|packages\/[^/]+\/README\.md|docs\/.*\.md)$/u.test(path),
);
const sources = files.filter((path) => /^packages\/[^/]+\/src\/.*\.ts$/u.test(path));
const exported = new Map<string, ReadonlySet<string>>();
for (const { folder } of readTree().packages) {
  const name = `@leat/${folder}`;
  exported.set(name, new Set(Object.keys((await import(name)) as object)));
}

/** A doc comment need not import its own package, nor quantities. */
function completed(example: Example): Example {
  const own = `@leat/${example.path.split("/")[1]}`;
  return withImports(
    example,
    [own, "@leat/quantity"].map((name) => [name, exported.get(name) ?? new Set()]),
  );
}

const examples = [
  ...pages.map(readText).flatMap(({ path, text }) => markdownExamples(path, text)),
  ...sources
    .map(readText)
    .flatMap(({ path, text }) => docCommentExamples(path, text).map(completed)),
];

/** What the compiler says of examples, read as a user would: from the packages' types. */
function compilerProblems(blocks: Example[]): string[] {
  const cache = join(root, "node_modules/.cache");
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, "leat-examples-types-"));
  try {
    const where = writeForCompiler(blocks, folder);
    const compilerOptions = {
      noEmit: true,
      types: ["node"],
      typeRoots: [join(root, "node_modules/@types")],
      noUncheckedIndexedAccess: false,
      noPropertyAccessFromIndexSignature: false,
      noUnusedLocals: false,
    };
    const config = { extends: "../../../tsconfig.base.json", compilerOptions, include: ["*.ts"] };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(config));
    const { stdout } = spawnSync(
      process.execPath,
      [join(root, "node_modules/typescript/bin/tsc"), "-p", folder, "--pretty", "false"],
      { encoding: "utf8", cwd: folder },
    );
    return stdout
      .split("\n")
      .filter((line) => /^\d+\.ts\(/u.test(line))
      .map(where);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function block(code: string): Example {
  return { path: "page.md", line: 10, code };
}

describe("examples in the documentation", () => {
  it("are found", () => {
    expect(examples.length).toBeGreaterThan(0);
    expect(
      sources.map(readText).flatMap(({ path, text }) => docCommentProblems(path, text)),
    ).toEqual([]);
  });

  it.each(examples.map((each) => [`${each.path}:${each.line}`, each] as const))(
    "%s",
    async (_, example) => {
      expect(await exampleProblems(example)).toEqual([]);
    },
  );

  it("compile", () => {
    expect(compilerProblems(examples)).toEqual([]);
  });
});

describe("an example", () => {
  it.each([
    ["1 + 1; // => 3", "page.md:10: gives 2, not 3"],
    ["\n0.1 + 0.2; // => 0.3", "page.md:11: gives 0.30000000000000004, not 0.3"],
    ["(2).toFixed(1); // => 2", "page.md:10: gives 2.0, not 2"],
    ["'24.7 L/s'; // => 24.7", "page.md:10: gives 24.7 L/s, not 24.7"],
    ["24.70; // => 24.70", "page.md:10: gives 24.7, not 24.70"],
    ["[1, 2]; // => [1, 3]", "page.md:10: gives [1, 2], not [1, 3]"],
    ["({ a: 1, b: 2 }); // => { a: 1 }", "page.md:10: gives { a: 1, b: 2 }, not { a: 1 }"],
    ['"dry"; // => "wet"', 'page.md:10: gives "dry", not "wet"'],
    ["const level = 1 / 3; // => 0.334…", "page.md:10: gives 0.3333333333333333, not 0.334…"],
    ["console.log(1, 'm'); // => 2 m", "page.md:10: gives 1 m, not 2 m"],
    ["1; // throws RangeError: too high", "page.md:10: throws nothing, not RangeError: too high"],
    [
      "throw new RangeError('too low'); // throws RangeError: too high",
      "page.md:10: throws RangeError: too low, not RangeError: too high",
    ],
    ["1;\n// => 2\n// => 3", "page.md:11: gives 1, not 2\n3"],
    ["if (1 > 2) {\n  1; // => 1\n}", "page.md:10: Error: line 2: no statement ends before the =>"],
    ["if (1 > 2) 1; // => 1", "page.md:10: Error: line 1: => needs an expression"],
    ["1; // =>", "page.md:10: Error: line 1: nothing is said after =>"],
    ["1 / 3; // => 0.3…", "page.md:10: Error: line 1: too little is said before the …"],
    ["const x = ;", "page.md:10: SyntaxError: page.md: Unexpected token"],
  ])("that is wrong fails: %s", async (code, problem) => {
    expect(await exampleProblems(block(code))).toEqual([problem]);
  });

  it("that stops early fails for each line it does not reach", async () => {
    expect(await exampleProblems(block("1; // => 1\nthrow new Error('dry');\n2; // => 2"))).toEqual(
      ["page.md:10: stopped by Error: dry", "page.md:12: never reached"],
    );
  });

  it("with nothing to compare still runs", async () => {
    expect(
      await exampleProblems(block(`import { nothing } from "@leat/mill";\nnothing();`)),
    ).toEqual([expect.stringMatching(/^page\.md:10: stopped by .*@leat\/mill/u)]);
    expect(await exampleProblems(block("const x = 1;\nexport { x };"))).toEqual([]);
  });

  it.each([
    "1 + 1; // => 2",
    "-0.5; // => -0.5",
    "(-2).toFixed(1); // => -2.0",
    "const level: number = 1 / 3; // => 0.3333…",
    '`24.7 L/s`; // => "24.7 L/s"',
    "[new Date(0).getTime(), { b: null, a: 'x' }]; // => [0, { a: 'x', b: null }]",
    "new Float64Array([1, 2.5]); // => [1, 2.5]",
    "({ toString: () => '3 m' }); // => \"3 m\"",
    "[{ toString: () => '3 m' }]; // => [\"3 m\"]",
    "console.log('θ', 1 / 4); // => θ 0.25",
    "'a\\nb'\n// => a\n// => b",
    "undefined; // => undefined\nNaN; // => NaN",
    "throw new RangeError('too low'); // throws RangeError: too low",
    "throw new RangeError('too low by far'); // => throws RangeError: too low…",
    "throw Object.assign(new Error('x'), { code: 'out-of-range' }); // throws out-of-range: x",
    "await Promise.resolve(5); // => 5",
  ])("that is right passes: %s", async (code) => {
    expect(await exampleProblems(block(code))).toEqual([]);
  });

  it("that does not compile fails", () => {
    expect(
      compilerProblems([
        block("1; // => 1"),
        { path: "page.md", line: 30, code: `\nconst level: string = 1;\n` },
      ]),
    ).toEqual([`page.md:31: error TS2322: Type 'number' is not assignable to type 'string'.`]);
  });
});

describe("blocks", () => {
  it("are found in a page, those marked no-run and those in other languages aside", () => {
    const page = [
      "# Page",
      "```ts",
      "1; // => 1",
      "```",
      "```ts no-run",
      "declare const survey: unknown;",
      "```",
      "````md",
      "```ts",
      "inner",
      "```",
      "````",
      "```sh",
      "ls",
      "```",
      "```ts",
      "2;",
      "3;",
      "```",
    ].join("\n");
    expect(markdownExamples("page.md", page)).toEqual([
      { path: "page.md", line: 3, code: "1; // => 1\n" },
      { path: "page.md", line: 17, code: "2;\n3;\n" },
    ]);
  });

  it("are found in doc comments", () => {
    const source = [
      "/**",
      " * Adds.",
      " *",
      " * @example",
      " * ```ts",
      " * 1 + 1; // => 2",
      " * ```",
      " * @returns the sum",
      " */",
      "export const text = '/** @example none */';",
    ].join("\n");
    expect(docCommentExamples("a.ts", source)).toEqual([
      { path: "a.ts", line: 6, code: "1 + 1; // => 2\n" },
    ]);
  });

  it("in doc comments need not import what stands beside them", async () => {
    const own = new Set(["metre", "bracketedRoot"]);
    const code = "bracketedRoot; const litre = 1;";
    expect(withImports(block(code), [["@leat/numerics", own]])).toEqual({
      ...block(code),
      imports: ' import { bracketedRoot } from "@leat/numerics";',
    });
    const example = block(`metre.of(3).kind; // => "length"`);
    expect(await exampleProblems(example)).toHaveLength(2);
    expect(
      await exampleProblems(withImports(example, [["@leat/quantity", new Set(["metre"])]])),
    ).toEqual([]);
  });

  it("are owed by every @example", () => {
    expect(docCommentProblems("a.ts", "/**\n * @example 1 + 1\n */\nexport {};")).toEqual([
      "a.ts:2: an @example needs a ```ts block",
    ]);
  });
});
