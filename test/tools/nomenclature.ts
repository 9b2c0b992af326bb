// Holds the inputs of formulas against the table of docs/nomenclature.md.
import type { AnyFormula, AnyInput } from "@leat/formula";
import { coherentUnit, type Origin } from "@leat/quantity";

/** A line of the table: word, letter, kinds and unit, as the page writes them. */
type Cells = readonly [word: string, letter: string, kinds: string, unit: string];

/**
 * The lines that the inputs of a formula ask of the page.
 *
 * @param inputs - by their words
 * @param list - the list that they are fields of
 * @returns one line for each input, and one for each field of a list
 */
export function linesOf(inputs: Readonly<Record<string, AnyInput>>, list = ""): Cells[] {
  return Object.entries(inputs).flatMap(([name, input]): Cells[] => {
    const word = `\`${list}${name}\``;
    const line = (kinds: string, unit: string): Cells => [word, input.letter, kinds, unit];
    switch (input.type) {
      case "scalar":
        return [line(input.kinds.join(", "), symbolOf(input.kinds[0]!))];
      case "point":
        return [line(`point over ${input.origin}`, symbolOf(differenceOf(input.origin)))];
      case "choice":
        return [line(input.words.join(", "), "–")];
      case "curve":
        return [line(`${input.y} over ${input.x}`, symbolOf(input.y))];
      case "list":
        return [line("list", "–"), ...linesOf(input.record, `${name}.`)];
    }
  });
}

function symbolOf(kind: string): string {
  return coherentUnit(kind).symbol;
}

/** The kind of the difference of two points of an origin. */
function differenceOf(origin: Origin): string {
  const kinds: Readonly<Record<Origin, string>> = {
    "absolute zero": "temperature difference",
    vacuum: "pressure",
    "local atmosphere": "pressure",
    "site datum": "length",
    "staff zero": "length",
  };
  return kinds[origin];
}

/**
 * Holds formulas against the page.
 *
 * @param page - text of docs/nomenclature.md
 * @param formulas - every public formula
 * @returns what is wrong, one line each; none where page and formulas agree
 */
export function nomenclatureProblems(
  page: string,
  formulas: readonly Pick<AnyFormula, "id" | "definition">[],
): string[] {
  const problems: string[] = [];
  const table = page
    .split("\n")
    .filter((line) => /^\|\s*`/u.test(line))
    .map((line) =>
      line
        .slice(1, -1)
        .split("|")
        .map((cell) => cell.trim()),
    );
  const words = new Set(table.map(([word]) => word));
  const unused = new Map<string, string>();
  for (const [word = "", letter, kinds, unit, unlike = ""] of table) {
    const key = [word, letter, kinds, unit].join(" | ");
    if (unused.has(key)) problems.push(`${key}: it is on the page twice`);
    unused.set(key, word);
    if (unlike === "") problems.push(`${word}: nothing is said that it could be confused with`);
    for (const [other] of unlike.matchAll(/`[^`]*`/gu)) {
      if (other === word || !words.has(other)) {
        problems.push(`${word}: ${other}, that it could be confused with, is no other word here`);
      }
    }
  }
  const known = new Set(unused.keys());
  for (const { id, definition } of formulas) {
    for (const line of linesOf(definition.inputs)) {
      const key = line.join(" | ");
      if (!known.has(key)) problems.push(`${id}: ${key}: it is not on the page`);
      unused.delete(key);
    }
  }
  for (const key of unused.keys()) problems.push(`${key}: no formula has such an input`);
  return problems;
}
