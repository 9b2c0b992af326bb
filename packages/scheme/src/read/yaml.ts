import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  type YAMLError,
} from "yaml";

import type { Problem } from "./problem.ts";

/** Largest text that is parsed, in characters: a survey is a few pages. */
const largestText: number = 256 * 1024;

const mostNodes = 20_000;
const mostAliases = 50;
const deepest = 16;

/** A parsed file: plain lists, maps and the source text of every scalar, with the place of each. */
export interface Parsed {
  /** The content; maps have no prototype. */
  readonly value: unknown;
  /** Everything that is wrong with it. */
  readonly problems: readonly Problem[];
  /** Line and column of the value at a path, or of the nearest place above it. */
  place(path: readonly (string | number)[]): { readonly line: number; readonly column: number };
  /** Line and column of a key. */
  keyPlace(path: readonly (string | number)[]): { readonly line: number; readonly column: number };
}

/**
 * Parses YAML 1.2, every scalar kept as its source text: `012` stays `012`, `no` stays `no`.
 *
 * Duplicate keys, merges, tags and second documents are problems; aliases, depth and size are capped.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @returns Content, problems and places.
 */
export function parseYaml(text: string, file: string): Parsed {
  const problems: Problem[] = [];
  const values = new Map<string, number>();
  const keys = new Map<string, number>();
  const lines = new LineCounter();
  const at = (offset: number): { line: number; column: number } => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const problem = (
    offset: number,
    code: string,
    path: readonly (string | number)[],
    message: string,
  ): void => {
    problems.push({ file, ...at(offset), code, path, message });
  };
  const find = (
    from: Map<string, number>,
    path: readonly (string | number)[],
  ): { line: number; column: number } => {
    for (let n = path.length; n >= 0; n--) {
      const offset = from.get(JSON.stringify(path.slice(0, n)));
      if (offset !== undefined) return at(offset);
    }
    return { line: 1, column: 1 };
  };
  const done = (value: unknown): Parsed => ({
    value,
    problems,
    place: (path) => find(values, path),
    keyPlace: (path) => find(keys.has(JSON.stringify(path)) ? keys : values, path),
  });

  if (text.length > largestText) {
    problem(
      0,
      "file/too-large",
      [],
      `the file has ${text.length} characters, and a survey at most ${largestText}. Is it the right file?`,
    );
    return done(undefined);
  }
  const document = parseDocument(text, {
    version: "1.2",
    schema: "failsafe",
    uniqueKeys: true,
    merge: false,
    prettyErrors: false,
    lineCounter: lines,
  });
  for (const error of [...document.errors, ...document.warnings])
    problem(error.pos[0], ...say(error));
  if (document.contents === null && problems.length === 0) {
    problem(
      0,
      "file/empty",
      [],
      "the file is empty. Write the five lines that a first scheme needs: fall, stream, reaches, cable, bank.",
    );
  }

  let nodes = 0;
  let aliases = 0;
  const walk = (
    node: Node | null | undefined,
    path: (string | number)[],
    offset: number,
  ): unknown => {
    nodes += 1;
    if (nodes > mostNodes || path.length > deepest) {
      if (nodes === mostNodes + 1 || path.length === deepest + 1) {
        problem(
          offset,
          "file/too-large",
          path,
          `more than ${mostNodes} values or ${deepest} levels. Is it the right file?`,
        );
      }
      return "";
    }
    const place = node?.range?.[0] ?? offset;
    values.set(JSON.stringify(path), place);
    if (isAlias(node)) {
      aliases += 1;
      const target = aliases > mostAliases ? undefined : node.resolve(document);
      if (!target || !isScalar(target)) {
        problem(
          place,
          "file/alias",
          path,
          `*${node.source} is refused: an alias may stand for one value written above it, ${mostAliases} times at most. Write the value out.`,
        );
        return "";
      }
      return String(target.value);
    }
    if (isMap(node)) {
      const map: Record<string, unknown> = Object.create(null) as Record<string, unknown>;
      for (const { key, value } of node.items) {
        const keyNode = key as Node;
        const keyAt = keyNode.range?.[0] ?? place;
        if (!isScalar(keyNode)) {
          problem(
            keyAt,
            "file/key",
            path,
            "a key that is itself a list or a map is refused. Write a word.",
          );
          continue;
        }
        const name = String(keyNode.value);
        if (name === "<<") {
          problem(keyAt, "file/merge", path, "the merge key << is refused. Write the values out.");
          continue;
        }
        keys.set(JSON.stringify([...path, name]), keyAt);
        const child = value as Node | null;
        if (
          isScalar(child) &&
          child.value === "" &&
          child.type === "PLAIN" &&
          child.comment != null
        ) {
          problem(
            child.range?.[0] ?? keyAt,
            "file/comment",
            [...path, name],
            `${name} is empty, because an unquoted # begins a comment (#${child.comment.trim()}). Write a wire size as 2 AWG, or put it in quotes.`,
          );
          continue;
        }
        map[name] = walk(child, [...path, name], keyAt);
      }
      return map;
    }
    if (isSeq(node)) return node.items.map((item, i) => walk(item as Node, [...path, i], place));
    return isScalar(node) ? String(node.value ?? "") : "";
  };
  return done(
    problems.some(({ code }) => code !== "file/duplicate-key" && code !== "file/tag")
      ? undefined
      : walk(document.contents, [], 0),
  );
}

/** A parser's complaint in our words. */
function say(error: YAMLError): [code: string, path: never[], message: string] {
  const codes: Record<string, [string, string]> = {
    DUPLICATE_KEY: ["file/duplicate-key", "the same key stands twice. Keep one."],
    TAB_AS_INDENT: ["file/tab", "a tab indents this line. Use spaces."],
    MULTIPLE_DOCS: [
      "file/second-document",
      "a second document begins here. Put one survey in one file.",
    ],
    TAG_RESOLVE_FAILED: ["file/tag", "a tag (!) is refused. Write the plain value."],
  };
  const [code, message] = codes[error.code] ?? [
    "file/not-yaml",
    `this is not YAML: ${error.message.replace(/\s+/g, " ").trim()}. Check colons, quotes and indents here.`,
  ];
  return [code, [], message];
}
