import type { AnyDefinition } from "@leat/formula";
import { outputsOf } from "@leat/formula";
import { all, create } from "mathjs";

// The equation of a definition is text for people. Here it is read by a general-purpose evaluator, so
// that what is printed is what the body computes: a second route from the same inputs to the answer.

const { evaluate } = create(all!);

/** Functions that an equation may use, and what the evaluator calls them. */
const functions: Readonly<Record<string, string>> = {
  tan: "tan",
  sin: "sin",
  cos: "cos",
  exp: "exp",
  ln: "log",
  log10: "log10",
  sqrt: "sqrt",
  max: "max",
  min: "min",
};

/** The sides of one equation, for the evaluator, with our letters replaced by plain names. */
function sides(
  equation: string,
  names: ReadonlyMap<string, string>,
  steps: readonly string[],
): string[] {
  let text = equation;
  for (const step of steps) {
    // Ce(θ) stands for the step Ce: its argument is for the reader.
    let at = -1;
    while ((at = text.indexOf(`${step}(`, at + 1)) >= 0) {
      if (at > 0 && /[\p{L}\p{N}_]/u.test(text[at - 1] as string)) continue;
      let depth = 0;
      let end = at + step.length;
      do {
        if (text[end] === "(") depth += 1;
        if (text[end] === ")") depth -= 1;
        end += 1;
      } while (depth > 0 && end < text.length);
      text = text.slice(0, at + step.length) + text.slice(end);
    }
  }
  text = text
    .replaceAll(/[·×]/g, "*")
    .replaceAll("−", "-")
    .replaceAll("²", "^2")
    .replaceAll("³", "^3")
    .replaceAll("⁴", "^4")
    .replaceAll("⁵", "^5")
    .replaceAll("√", "sqrt");
  text = text.replaceAll(/sqrt(?!\s*\()([\p{L}][\p{L}\p{N}_₀-₉'′]*)/gu, "sqrt($1)");
  text = text.replaceAll(/[\p{L}][\p{L}\p{N}_₀-₉'′]*/gu, (word) => {
    const known = names.get(word) ?? functions[word] ?? (word === "π" ? "pi" : undefined);
    if (known === undefined) throw new Error(`${word} is neither a letter, a step nor a function`);
    return known;
  });
  return text.split("=");
}

/** What is wrong with the printed equation of a definition, for these letters and results. */
export function equationProblems(
  definition: AnyDefinition,
  letters: Readonly<Record<string, unknown>>,
  result: unknown,
): string[] {
  const values = new Map<string, number>();
  for (const [letter, value] of Object.entries(letters))
    if (typeof value === "number") values.set(letter, value);
  for (const [letter, step] of Object.entries(definition.steps ?? {}))
    values.set(letter, step.of(letters as never));
  for (const { letter } of outputsOf(definition.output)) {
    values.set(
      letter,
      typeof result === "number" ? result : (result as Record<string, number>)[letter]!,
    );
  }
  const names = new Map([...values.keys()].map((letter, i) => [letter, `x${i}`]));
  const scope = Object.fromEntries(
    [...values].map(([letter, value]) => [names.get(letter)!, value]),
  );
  return definition.equation.split(";").flatMap((equation) => {
    const parts = sides(equation, names, Object.keys(definition.steps ?? {}));
    if (parts.length !== 2) return [`${definition.id}: ${equation.trim()} is not one equation`];
    const [left, right] = parts.map((side) => Number(evaluate(side, scope)));
    const miss =
      Math.abs(left! - right!) / Math.max(Math.abs(left!), Math.abs(right!), Number.MIN_VALUE);
    return miss <= 1e-9
      ? []
      : [`${definition.id}: ${equation.trim()} gives ${right}, the body ${left}`];
  });
}
