// Runs the examples in the documentation and compares what they give with what they say.
//
//     expression; // => 24.70       digits as printed, of a number or of a text; `0.02471…` gives the first ones only
//     expression; // => "24.7 L/s"  a string, or a value whose text it is
//     expression; // => [1, { a: "2 m" }]
//     console.log(expression); // => 24.7 L/s
//     expression; // throws QuantityError: the message, or its beginning …
//
// A `// =>` on lines of its own belongs to the statement above it; several of them are lines of one value.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { globalsUsed, isNode, parse } from "./syntax.ts";
import type { Comment, Node } from "./syntax.ts";
import { root } from "./tree.ts";

/** A block of code in the documentation. */
export interface Example {
  /** File it stands in, relative to the root. */
  path: string;
  /** Line of the file that holds the block's first line. */
  line: number;
  code: string;
  /** Imports that the reader is not bothered with. */
  imports?: string;
}

/** What a statement of an example should come to. */
interface Expectation {
  line: number;
  kind: "gives" | "throws";
  text: string;
}

/** An example as a module that reports what its statements come to. */
interface Instrumented {
  code: string;
  expectations: Expectation[];
}

/** Put in front of an example, on one line. */
const header =
  "declare const leatExample: { gives(index: number, ...values: unknown[]): void; " +
  "throws(index: number, error?: unknown): void }; " +
  "const console = { log(..._values: unknown[]): void {} }; export {};";

/** Where examples are put to be run: below the root, so that packages are found, and out of sight. */
const folder = join(root, "node_modules/.cache/leat-examples");

/**
 * Finds the runnable blocks of a Markdown page: those fenced as `ts`, unless marked `ts no-run`.
 *
 * @param path - named in reports
 * @param text - the page
 * @returns the blocks in order
 */
export function markdownExamples(path: string, text: string): Example[] {
  const examples: Example[] = [];
  let open: { fence: string; example: Example | undefined } | undefined;
  for (const [index, line] of text.split("\n").entries()) {
    const [, fence, info] = /^ {0,3}(`{3,})\s*(.*)$/u.exec(line) ?? [];
    if (open === undefined) {
      if (fence === undefined) continue;
      const example = info === "ts" ? { path, line: index + 2, code: "" } : undefined;
      if (example !== undefined) examples.push(example);
      open = { fence, example };
    } else if (fence !== undefined && fence.length >= open.fence.length && info === "") {
      open = undefined;
    } else if (open.example !== undefined) {
      open.example.code += `${line}\n`;
    }
  }
  return examples;
}

/**
 * Finds the `@example` blocks of a source's doc comments.
 *
 * @param path - named in reports
 * @param text - the source
 * @returns the blocks in order
 */
export function docCommentExamples(path: string, text: string): Example[] {
  return exampleTags(path, text).flatMap(({ line, block }) =>
    markdownExamples(path, block).map(({ line: at, code }) => ({
      path,
      line: line + at - 1,
      code,
    })),
  );
}

/**
 * Finds `@example` tags that nobody could run.
 *
 * @param path - named in reports
 * @param text - the source
 * @returns one line for each tag without a block fenced as `ts`
 */
export function docCommentProblems(path: string, text: string): string[] {
  return exampleTags(path, text)
    .filter(({ block }) => !/^```ts\b/mu.test(block))
    .map(({ line }) => `${path}:${line}: an @example needs a \`\`\`ts block`);
}

/** The `@example` tags of a source, each with its line and its text up to the next tag. */
function exampleTags(path: string, text: string): { line: number; block: string }[] {
  return parse(path, text)
    .comments.filter(({ type, value }) => type === "Block" && value.startsWith("*"))
    .flatMap(({ value, start }) => {
      const first = text.slice(0, start).split("\n").length;
      const lines = value.split("\n").map((line) => line.replace(/^\s*\* ?/u, ""));
      const tags = lines.flatMap((line, index) => (/^\s*@\w/u.test(line) ? [index] : []));
      return tags
        .map((index, at) => ({
          line: first + index,
          block: lines.slice(index, tags[at + 1]).join("\n"),
        }))
        .filter(({ block }) => block.trimStart().startsWith("@example"));
    });
}

/**
 * Adds the imports that a doc comment leaves out: those of the package it stands in, and of the packages that everyone knows.
 *
 * @param example - out of a doc comment
 * @param packages - names of packages, the nearest first, and what each exports
 * @returns the example with imports for the names that it declares nowhere
 */
export function withImports(
  example: Example,
  packages: [name: string, exports: ReadonlySet<string>][],
): Example {
  const imports = globalsUsed(example.path, example.code).flatMap((name) => {
    const [from] = packages.find(([, exports]) => exports.has(name)) ?? [];
    return from === undefined ? [] : [` import { ${name} } from "${from}";`];
  });
  return { ...example, imports: imports.join("") };
}

/**
 * Checks one example by running it.
 *
 * @param example - the block
 * @returns one line for each statement that does not come to what it says; none where all do
 */
export async function exampleProblems(example: Example): Promise<string[]> {
  const problems: string[] = [];
  let instrumented: Instrumented;
  try {
    instrumented = instrument(example);
  } catch (error) {
    return [`${example.path}:${example.line}: ${String(error)}`];
  }
  const { code, expectations } = instrumented;
  const met = new Set<number>();
  const report = (index: number, got: string, isMet: boolean): void => {
    const wanted = expectations[index];
    if (wanted === undefined) return;
    met.add(index);
    if (isMet) return;
    const where = `${example.path}:${example.line + wanted.line}`;
    problems.push(`${where}: ${wanted.kind} ${got}, not ${wanted.text}`);
  };
  const watch = globalThis as { leatExample?: unknown };
  watch.leatExample = {
    gives(index: number, ...values: unknown[]): void {
      const { text = "" } = expectations[index] ?? {};
      const got = shown(values, text);
      report(index, got, isSame(got, text));
    },
    throws(index: number, ...errors: unknown[]): void {
      const { text = "" } = expectations[index] ?? {};
      const got = errors.length === 0 ? "nothing" : namesOf(errors[0]).join(" or ");
      report(
        index,
        got,
        errors.length > 0 && namesOf(errors[0]).some((name) => isSame(name, text)),
      );
    },
  };
  const file = write(example, code);
  try {
    await import(/* @vite-ignore */ pathToFileURL(file).href);
  } catch (error) {
    problems.push(`${example.path}:${example.line}: stopped by ${namesOf(error).join(" or ")}`);
  } finally {
    delete watch.leatExample;
    rmSync(file);
  }
  for (const [index, { line }] of expectations.entries()) {
    if (!met.has(index)) problems.push(`${example.path}:${example.line + line}: never reached`);
  }
  return problems;
}

/**
 * Writes examples as modules for the compiler, under names that tell where they come from.
 *
 * @param examples - the blocks
 * @param into - an empty folder
 * @returns how to read a line of the compiler's output as a line of the documentation
 */
export function writeForCompiler(examples: Example[], into: string): (line: string) => string {
  for (const [index, example] of examples.entries()) {
    writeFileSync(join(into, `${index}.ts`), instrument(example).code);
  }
  return (line) =>
    line.replace(/^.*?(\d+)\.ts\((\d+),(\d+)\)/u, (whole, index: string, row: string) => {
      const example = examples[Number(index)];
      if (example === undefined) return whole;
      return `${example.path}:${example.line + Number(row) - 2}`;
    });
}

let written = 0;

function write({ path, line }: Example, code: string): string {
  written += 1;
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${path.replaceAll(/\W/gu, "-")}-${line}-${process.pid}-${written}.ts`);
  writeFileSync(file, code);
  return file;
}

/** Makes every statement that a `// =>` or `// throws` follows report what it comes to. */
function instrument({ path, code, imports = "" }: Example): Instrumented {
  const { body, comments } = parse(path, code);
  const lineOf = (at: number): number => code.slice(0, at).split("\n").length - 1;
  const expectations: Expectation[] = [];
  const edits: { start: number; end: number; text: string }[] = [];
  let last: { comment: Comment; expectation: Expectation } | undefined;
  for (const comment of comments) {
    const found = /^\s*(?:=>\s*(?:(throws)\s)?|(throws)\s)\s*(.*)$/u.exec(comment.value);
    if (comment.type !== "Line" || found === null) continue;
    const text = (found[3] ?? "").trim();
    const line = lineOf(comment.start);
    if (text === "") throw new Error(`line ${line + 1}: nothing is said after =>`);
    if (last !== undefined && code.slice(last.comment.end, comment.start).trim() === "") {
      last.expectation.text += `\n${text}`;
      last.comment = comment;
      continue;
    }
    const statement = body.findLast(({ end }) => end <= comment.start);
    if (statement === undefined || /[^\s;]/u.test(code.slice(statement.end, comment.start))) {
      throw new Error(`line ${line + 1}: no statement ends before the =>`);
    }
    const throws = (found[1] ?? found[2]) !== undefined;
    const expectation: Expectation = { line, kind: throws ? "throws" : "gives", text };
    const index = expectations.push(expectation) - 1;
    edits.push({
      start: statement.start,
      end: statement.end,
      text: throws
        ? catching(index, code.slice(statement.start, statement.end))
        : giving(index, statement, code),
    });
    last = { comment, expectation };
  }
  let result = code;
  for (const { start, end, text } of edits.toReversed()) {
    result = result.slice(0, start) + text + result.slice(end);
  }
  for (const { kind, text, line } of expectations) checkText(kind, text, line);
  return { code: `${header}${imports}\n${result}`, expectations };
}

function catching(index: number, statement: string): string {
  return `try { ${statement}; leatExample.throws(${index}); } catch (error) { leatExample.throws(${index}, error); }`;
}

function giving(index: number, statement: Node, code: string): string {
  const text = (node: Node): string => code.slice(node.start, node.end);
  const { expression, declarations } = statement;
  if (isNode(expression)) {
    const { callee } = expression;
    const printed = isNode(callee) && text(callee) === "console.log";
    const values = printed
      ? (expression["arguments"] as Node[]).map((each) => `(${text(each)})`).join(", ")
      : `(${text(expression)})`;
    return `leatExample.gives(${index}, ${values});`;
  }
  const [only, ...others] = (declarations ?? []) as Node[];
  if (only !== undefined && others.length === 0 && isNode(only["id"])) {
    const { id } = only as unknown as { id: Node & { name?: string } };
    if (id.type === "Identifier")
      return `${text(statement)} leatExample.gives(${index}, ${id.name});`;
  }
  throw new Error(
    `line ${code.slice(0, statement.start).split("\n").length}: => needs an expression`,
  );
}

/** An elision must leave enough to be wrong. */
function checkText(kind: Expectation["kind"], text: string, line: number): void {
  const said = kind === "throws" ? text.replace(/^\w+:?/u, "") : text;
  if (text.endsWith("…") && said.replaceAll(/[^\p{L}\p{N}]/gu, "").length < 4) {
    throw new Error(`line ${line + 1}: too little is said before the …`);
  }
}

/** What values look like beside an expected text: as a literal where it is one, else as printed. */
function shown(values: unknown[], expected: string): string {
  const literal = literalOf(expected);
  const [only] = values;
  const isDigits = typeof only === "string" && /^-?[\d.]+$/u.test(expected);
  if (values.length === 1 && literal !== undefined && !isDigits) return rendered(only);
  return values.map(printed).join(" ");
}

function isSame(got: string, expected: string): boolean {
  if (expected.endsWith("…")) return got.startsWith(expected.slice(0, -1).trimEnd());
  return got === (literalOf(expected) ?? expected);
}

/** An error's name, its code where it has one, each with the message. */
function namesOf(error: unknown): string[] {
  if (!(error instanceof Error)) return [printed(error)];
  const { code } = error as { code?: unknown };
  return [error.name, ...(typeof code === "string" ? [code] : [])].map(
    (name) => `${name}: ${error.message}`,
  );
}

function printed(value: unknown): string {
  return typeof value === "string" ? value : (ownText(value) ?? rendered(value));
}

/** Text of a value whose class says how it reads: a quantity, a point. */
function ownText(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (Array.isArray(value) || ArrayBuffer.isView(value)) return undefined;
  const text = (value as { toString(): string }).toString();
  return text.startsWith("[object ") ? undefined : text;
}

/** A value in the same notation as {@link literalOf} gives. */
function rendered(value: unknown): string {
  const text = ownText(value);
  if (typeof value === "string" || text !== undefined) return JSON.stringify(text ?? value);
  if (typeof value === "number") return Object.is(value, -0) ? "-0" : String(value);
  if (typeof value === "bigint") return `${value}n`;
  if (typeof value === "function") return `[function ${value.name}]`;
  if (typeof value !== "object" || value === null) return String(value);
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    return `[${Array.from(value as ArrayLike<unknown>, rendered).join(", ")}]`;
  }
  return record(Object.entries(value).map(([key, each]) => [key, rendered(each)]));
}

/**
 * Reads an expected text as a literal: numbers keep the digits as written, and nothing is evaluated.
 *
 * @param text - what follows `// =>`
 * @returns the canonical notation, or `undefined` where the text is not a literal
 */
function literalOf(text: string): string | undefined {
  try {
    const [statement] = parse("expected", `(${text}\n)`).body;
    return isNode(statement?.["expression"])
      ? canonical(statement["expression"], `(${text}\n)`)
      : undefined;
  } catch {
    return undefined;
  }
}

function canonical(node: Node, text: string): string | undefined {
  const raw = text.slice(node.start, node.end);
  switch (node.type) {
    case "ParenthesizedExpression":
      return canonical(node["expression"] as Node, text);
    case "Literal":
      return typeof node["value"] === "string" ? JSON.stringify(node["value"]) : raw;
    case "TemplateLiteral": {
      const [only, ...others] = node["quasis"] as (Node & { value: { cooked: string } })[];
      return only !== undefined && others.length === 0
        ? JSON.stringify(only.value.cooked)
        : undefined;
    }
    case "UnaryExpression":
      return node["operator"] === "-" && isNode(node["argument"]) && isNumber(node["argument"])
        ? raw
        : undefined;
    case "Identifier":
      return isNumber(node) || raw === "undefined" ? raw : undefined;
    case "ArrayExpression": {
      const items = (node["elements"] as (Node | null)[]).map((each) =>
        each === null ? undefined : canonical(each, text),
      );
      return items.includes(undefined) ? undefined : `[${items.join(", ")}]`;
    }
    case "ObjectExpression": {
      const entries: [string, string][] = [];
      for (const property of node["properties"] as Node[]) {
        const { key, value, computed } = property as Node & { key?: Node; value?: Node };
        const said = key !== undefined && value !== undefined ? canonical(value, text) : undefined;
        if (key === undefined || said === undefined || computed === true) return undefined;
        entries.push([String(key["name"] ?? key["value"]), said]);
      }
      return record(entries);
    }
    default:
      return undefined;
  }
}

function isNumber(node: Node): boolean {
  return (
    (node.type === "Literal" && ["number", "bigint"].includes(typeof node["value"])) ||
    (node.type === "Identifier" && ["NaN", "Infinity"].includes(String(node["name"])))
  );
}

/** A record does not depend on the order of its keys. */
function record(entries: [key: string, text: string][]): string {
  const sorted = entries.toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{ ${sorted.map(([key, text]) => `${key}: ${text}`).join(", ")} }`;
}
