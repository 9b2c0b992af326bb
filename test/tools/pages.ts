// Makes docs/sources.md and docs/reference-rows.md of what the packages export and of the rows beside the tests.
import { join } from "node:path";

import type { AnyFormula, AnyInput, Citation, Source, Standing } from "@leat/formula";
import { isFormula } from "@leat/formula";
import type { ReferenceRow } from "@leat/formula/reference";

import { everyFormula, everyRowFile } from "../formula/every-formula.ts";
import { parse, walk } from "./syntax.ts";
import { filesUnder, readText, root } from "./tree.ts";

/** A place in a source, and what rests on it. */
export interface Use {
  /** The place, and how sure we are of it. */
  readonly citation: Citation;
  /** Id of the formula or the table; the exported name of other data; else the file that cites it. */
  readonly by: string;
}

/** What the packages say of where their numbers come from. */
export interface Cited {
  /** Every source that a file of a package exports, with the file and the name of the constant. */
  readonly sources: readonly {
    readonly path: string;
    readonly name: string;
    readonly source: Source;
  }[];
  /** Every place in them that a formula, a limit, a default, a table, other data or a function rests on. */
  readonly uses: readonly Use[];
}

/**
 * Looks through everything that the files of the packages export.
 *
 * @returns sources, and the places that are cited in them
 */
export async function everyCitation(): Promise<Cited> {
  const sources: { path: string; name: string; source: Source }[] = [];
  const uses: Use[] = [];
  const paths = filesUnder("packages").filter(
    (path) => /\/src\/.*\.ts$/u.test(path) && !/^packages\/cli\/|\/index\.ts$/u.test(path),
  );
  for (const path of paths) {
    const exports = (await import(join(root, path))) as Record<string, unknown>;
    for (const [name, value] of Object.entries(exports)) {
      if (isSource(value)) {
        sources.push({ path, name, source: value });
      } else if (isFormula(value)) uses.push(...usesOf(value));
      else {
        const by = tableId(value) ?? name;
        uses.push(...citationsIn(value).map((citation) => ({ citation, by })));
      }
    }
  }
  const known = new Set(uses.map(({ citation }) => keyOf(citation)));
  const byName = new Map<string, Source>();
  for (const { name, source } of sources) byName.set(name, source);
  for (const path of paths) {
    const inText = citationsInText(path, readText(path).text, byName);
    uses.push(
      ...inText
        .filter((citation) => !known.has(keyOf(citation)))
        .map((citation) => ({ citation, by: path.replace(/^packages\//u, "") })),
    );
  }
  return { sources, uses };
}

function keyOf({ source, place, standing }: Citation): string {
  return [source.id, place, standing].join("\n");
}

/**
 * Citations as a file writes them, for those that only a call reaches.
 *
 * @param path - of the file
 * @param text - of the file
 * @param sources - by the names of their constants
 * @returns one citation for each `name.at("place", "standing")`
 */
export function citationsInText(
  path: string,
  text: string,
  sources: ReadonlyMap<string, Source>,
): Citation[] {
  const found: Citation[] = [];
  for (const statement of parse(path, text).body) {
    walk(statement, (node) => {
      if (node.type !== "CallExpression") return;
      const { callee, arguments: given } = node as unknown as {
        callee: { object?: { name?: string }; property?: { name?: string } };
        arguments: { value?: unknown }[];
      };
      const source = sources.get(callee.object?.name ?? "");
      const [place, standing] = given.map(({ value }) => value);
      if (source === undefined || callee.property?.name !== "at") return;
      if (typeof place === "string") found.push(source.at(place, standing as Standing | undefined));
    });
  }
  return found;
}

/**
 * The places that a formula rests on.
 *
 * @param formula - the formula
 * @returns those of its equation, of its limits and of its defaults
 */
export function usesOf({ id, definition }: Pick<AnyFormula, "id" | "definition">): Use[] {
  const { source, limits = [], inputs } = definition;
  const defaults = (each: AnyInput): Citation[] => [
    ...(each.because ? [each.because] : []),
    ...(each.type === "list" ? Object.values(each.record).flatMap(defaults) : []),
  ];
  return [
    source,
    ...limits.map((limit) => limit.source),
    ...Object.values(inputs).flatMap(defaults),
  ].map((citation) => ({ citation, by: id }));
}

function isSource(value: unknown): value is Source {
  const { id, by, title, at } = (value ?? {}) as Partial<Source>;
  return [id, by, title].every((each) => typeof each === "string") && typeof at === "function";
}

function isCitation(value: object): value is Citation {
  const { source, place, standing } = value as Partial<Citation>;
  return isSource(source) && typeof place === "string" && typeof standing === "string";
}

/** Citations anywhere in plain data, and in the definition of a table. */
function citationsIn(value: unknown, seen = new Set<object>()): Citation[] {
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  if (isCitation(value)) return [value];
  return Object.values(value).flatMap((each) => citationsIn(each, seen));
}

function tableId(value: unknown): string | undefined {
  const { definition } = (value ?? {}) as { definition?: { id?: unknown } };
  return typeof definition?.id === "string" ? definition.id : undefined;
}

/**
 * Ids of the sources that are made in a file, exported or not.
 *
 * @param path - of the file
 * @param text - of the file
 * @returns the `id` of each call of `source({ … })`
 */
export function sourceIdsIn(path: string, text: string): string[] {
  const ids: string[] = [];
  for (const statement of parse(path, text).body) {
    walk(statement, (node) => {
      const { callee, arguments: given } = node as unknown as {
        callee?: { name?: string };
        arguments?: { properties?: { key?: { name?: string }; value?: { value?: unknown } }[] }[];
      };
      if (node.type !== "CallExpression" || callee?.name !== "source") return;
      for (const { key, value } of given?.[0]?.properties ?? []) {
        if (key?.name === "id") ids.push(String(value?.value));
      }
    });
  }
  return ids;
}

/**
 * Holds the page of sources against what cites it.
 *
 * @param page - text of docs/sources.md
 * @param asked - ids that must have a place to link to, and who asks
 * @param sources - every source: two with one id must be one document
 * @returns what is wrong, one line each
 */
export function sourceProblems(
  page: string,
  asked: readonly { readonly id: string; readonly by: string }[],
  sources: Cited["sources"] = [],
): string[] {
  const anchors = new Set([...page.matchAll(/<a id="([^"]+)">/gu)].map(([, id]) => id));
  const missing = asked
    .filter(({ id }) => !anchors.has(id))
    .map(({ id, by }) => `${by}: ${id} is not in docs/sources.md`);
  const byId = grouped(sources, ({ source }) => source.id);
  const unlike = [...byId].flatMap(([id, [first, ...others]]) =>
    others
      .filter(
        ({ source: { by, title } }) => by !== first!.source.by || title !== first!.source.title,
      )
      .map(({ path }) => `${path}: ${id} is another document in ${first!.path}`),
  );
  return [...missing, ...unlike];
}

/** From the surest to the least sure. */
const standings: readonly Standing[] = ["read", "secondary", "memory", "practice"];

/**
 * Writes docs/sources.md.
 *
 * @param cited - sources and uses
 * @returns the text
 */
export function sourcesPage({ sources, uses }: Cited): string {
  const byId = grouped(
    sources.map(({ source }) => source),
    ({ id }) => id,
  );
  const usesById = grouped(uses, ({ citation }) => citation.source.id);
  const entries = [...byId].toSorted(([a], [b]) => (a < b ? -1 : 1));
  const lines = entries.map(([id, [first, ...others]]) => {
    const count = grouped(usesById.get(id) ?? [], ({ citation }) => citation.standing);
    const counts = standings.flatMap((each) =>
      count.has(each) ? [`${each} ${count.get(each)?.length}`] : [],
    );
    const editions = new Set([first!, ...others].map(({ edition }) => edition));
    const cells = [
      `<a id="${id}"></a>[${id}](#places-${id})`,
      first!.by,
      first!.title,
      [...editions].filter(Boolean).join("; ") || "–",
      counts.join(", ") || "named, nothing rests on it",
    ];
    return `| ${cells.map(cell).join(" | ")} |`;
  });
  const places = entries.flatMap(([id]) => {
    const byPlace = grouped(
      usesById.get(id) ?? [],
      ({ citation: { place, standing } }) => `| ${cell(place)} | ${standing} |`,
    );
    if (byPlace.size === 0) return [];
    const rows = [...byPlace].map(([start, at]) => {
      const names = [...new Set(at.map(({ by }) => `\`${by}\``))].toSorted();
      return `${start} ${names.join(", ")} |`;
    });
    return [
      `\n### <a id="places-${id}"></a>${id}\n`,
      "| place | standing | what rests on it |",
      "| --- | --- | --- |",
      ...rows.toSorted(),
    ];
  });
  return [
    "# Sources",
    "",
    "Generated from the packages by `npm run rows`. The standing of a place says how sure we are that the figure stands there as it is",
    "given: `read` in the text itself, `secondary` in a second text that attributes it, `memory` from memory and to be confirmed,",
    "`practice` common practice with no source. The number beside it counts what rests on such a place: an equation, a limit, a",
    "default, a table, a line of a function.",
    "",
    "| id | who | title | edition | standing |",
    "| --- | --- | --- | --- | --- |",
    ...lines,
    "",
    "## Places",
    ...places,
    "",
  ].join("\n");
}

/** What a formula's page of rows is made of. */
export interface FormulaRows {
  /** Package folder. */
  readonly folder: string;
  /** Exported name. */
  readonly name: string;
  /** Id of the formula. */
  readonly id: string;
  /** Its rows. */
  readonly rows: readonly ReferenceRow[];
}

/**
 * Finds the reference rows of every formula.
 *
 * @returns formulas in the order of packages and names
 */
export async function everyFormulaRows(): Promise<FormulaRows[]> {
  const files = everyRowFile();
  return (await everyFormula())
    .map(({ folder, name, formula: { id } }) => ({
      folder,
      name,
      id,
      rows: files.get(id)?.rows ?? [],
    }))
    .toSorted((a, b) => (`${a.folder} ${a.id}` < `${b.folder} ${b.id}` ? -1 : 1));
}

const rowKinds = ["printed", "measured", "second-equation", "regression"] as const;
const rowStandings = ["read", "secondary", "derived", "memory", "practice"] as const;

/**
 * Writes docs/reference-rows.md.
 *
 * @param formulas - each with its rows
 * @returns the text
 */
export function rowsPage(formulas: readonly FormulaRows[]): string {
  const tally = (rows: readonly ReferenceRow[]): (string | number)[] => [
    ...rowKinds.map((each) => rows.filter(({ kind }) => kind === each).length),
    ...rowStandings.map((each) => rows.filter(({ standing }) => standing === each).length),
  ];
  const all = formulas.flatMap(({ rows }) => rows);
  const line = (cells: readonly (string | number)[]): string => `| ${cells.join(" | ")} |`;
  const head = ["formula", "package", "rows", ...rowKinds, ...rowStandings];
  return [
    "# Reference rows",
    "",
    "Generated from the rows beside the tests by `npm run rows`. What a kind of row proves: `printed` is typed from a page, `measured`",
    "was measured by somebody, `second-equation` was worked out by another route, `regression` is our own output and proves nothing",
    "alone. The last five columns count the same rows by how sure we are of them.",
    "",
    line(head),
    line(head.map((_, index) => (index < 2 ? "---" : "---:"))),
    ...formulas.map(({ folder, id, rows }) =>
      line([`[${id}](#${id})`, folder, rows.length, ...tally(rows)]),
    ),
    line([`**${formulas.length} formulas**`, "", all.length, ...tally(all)]),
    ...formulas.flatMap(({ id, folder, name, rows }) => [
      "",
      `## ${id}`,
      "",
      `\`${name}\` of \`@leat/${folder}\``,
      "",
      "| kind | standing | source | expected |",
      "| --- | --- | --- | --- |",
      ...rows.map(({ kind, standing, source, expected, beyond }) =>
        line([kind, standing, cell(source), cell(shown(expected)) + (beyond ? " (beyond)" : "")]),
      ),
    ]),
    "",
  ].join("\n");
}

function shown(expected: ReferenceRow["expected"]): string {
  return typeof expected === "string"
    ? expected
    : Object.entries(expected)
        .map(([word, text]) => `${word} ${text}`)
        .join(", ");
}

/** Items by what they have in common. */
function grouped<T>(items: readonly T[], by: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(by(item), [...(groups.get(by(item)) ?? []), item]);
  return groups;
}

/** Marks a page as one that the formatter leaves as it is made. */
function unformatted(text: string): string {
  return `<!-- prettier-ignore-start -->\n\n${text}\n<!-- prettier-ignore-end -->\n`;
}

/** Text that cannot end its cell. */
function cell(text: string): string {
  return text.replaceAll("|", "\\|").replaceAll("\n", " ");
}

/**
 * Makes the generated pages.
 *
 * @returns text by path
 */
export async function pages(): Promise<Record<string, string>> {
  return {
    "docs/sources.md": unformatted(sourcesPage(await everyCitation())),
    "docs/reference-rows.md": unformatted(rowsPage(await everyFormulaRows())),
  };
}
