// What the first screen of a package's README owes its reader.
import { isNode, parse, walk } from "./syntax.ts";
import type { Node } from "./syntax.ts";
import type { PackageTree } from "./tree.ts";

/** Lines that make the first screen. */
const screen = 40;

/**
 * Lists the formulas that a package defines: what `formula(…)` of `@leat/formula` makes.
 *
 * @param each - the package
 * @returns names of the exported constants
 */
export function formulasOf({ sources }: PackageTree): string[] {
  return sources.flatMap(({ path, text }) => {
    const names: string[] = [];
    walk(parse(path, text).program, (node) => {
      if (node.type !== "ExportNamedDeclaration" || !isNode(node["declaration"])) return;
      for (const declarator of (node["declaration"]["declarations"] ?? []) as Node[]) {
        const { id, init } = declarator as Node & { id: Node; init: Node | null };
        const callee = init?.["callee"];
        if (isNode(callee) && callee["name"] === "formula") names.push(String(id["name"]));
      }
    });
    return names;
  });
}

/**
 * Checks a package's README. One that offers formulas owes: one sentence first, a runnable block on the first screen, a table
 * that names each formula, and what the package is not for.
 *
 * @param each - the package
 * @param publicNames - what the package exports
 * @returns one line for each thing owed
 */
export function readmeProblems(each: PackageTree, publicNames: string[]): string[] {
  const path = `packages/${each.folder}/README.md`;
  if (each.readme === undefined) return [`${path}: there is none`];
  const formulas = formulasOf(each).filter((name) => publicNames.includes(name));
  if (formulas.length === 0) return [];
  const lines = each.readme.split("\n");
  const problems: string[] = [];

  const [, first = ""] = each.readme.trim().split(/\n\s*\n/u);
  const sentence = first.replaceAll("\n", " ");
  if (!/^# @leat\/[a-z-]+$/mu.test(lines[0] ?? "") || !isOneSentence(sentence)) {
    problems.push(`${path}: it begins with its name and one sentence`);
  }
  const block = lines.findIndex((line) => /^```ts$/u.test(line));
  if (block === -1 || block >= screen) {
    problems.push(`${path}: no \`\`\`ts block begins in the first ${screen} lines`);
  }
  const rows = lines.filter((line) => /^\|.*\|$/u.test(line.trim()));
  if (!lines.some((line) => /^\|(\s*:?-+:?\s*\|)+$/u.test(line.trim()))) {
    problems.push(`${path}: there is no table`);
  } else {
    problems.push(
      ...formulas
        .filter((name) => !rows.some((row) => row.includes(`\`${name}\``)))
        .map((name) => `${path}: no table names \`${name}\``),
    );
  }
  if (!/^## Not for\n+[^#\s]/mu.test(each.readme)) {
    problems.push(`${path}: "## Not for" says nothing`);
  }
  return problems;
}

function isOneSentence(text: string): boolean {
  return /^[\p{Lu}`].*\.$/u.test(text) && !/[.!?]\s+\p{Lu}/u.test(text);
}
