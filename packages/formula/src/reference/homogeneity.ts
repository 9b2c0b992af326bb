import { differenceOf, exponentsOf } from "@leat/quantity";

import { type AnyDefinition, type AnyFormula, outputsOf } from "../definition.ts";
import type { AnyInput } from "../input.ts";
import { type Numbers, resolve } from "../resolve.ts";
import { numbersOf } from "../sensitivity.ts";

/** Base units that are scaled, in the order of exponents. */
const bases = ["metre", "kilogram", "second", "ampere", "kelvin", "currency", "radian"];

/**
 * Whether a body knows only its inputs: each base unit is multiplied by a power of four, the inputs
 * are rescaled by their exponents, and the outputs must rescale by theirs, bit for bit, because powers
 * of four and their roots are exact in binary. It finds a hidden 1.84, a forgotten g, a branch on bare
 * metres, an rpm without its angle.
 *
 * @param formula - The formula.
 * @param args - Inputs to try it on, as for a call.
 * @returns What is wrong, in words; empty where nothing is.
 */
export function homogeneityProblems(
  formula: AnyFormula,
  args: Readonly<Record<string, unknown>>,
): string[] {
  const { definition } = formula;
  const { letters } = resolve(definition, args);
  const outputs = outputsOf(definition.output);
  const plain = numbersOf(definition, definition.body(letters as never));
  const problems: string[] = [];
  bases.forEach((base, b) => {
    for (const power of [1, -2]) {
      const factor = (kind: string): number => 2 ** (2 * power * (exponentsOf(kind)[b] as number));
      const scaled = numbersOf(
        definition,
        definition.body(rescale(definition, letters, factor) as never),
      );
      outputs.forEach(({ kind, letter }, i) => {
        const expected = (plain[i] as number) * factor(kind);
        if (!Object.is(scaled[i], expected)) {
          problems.push(
            `${definition.id}: with the ${base} scaled by 4^${power}, ${letter} is ${scaled[i]} and not ${expected}: a number with a unit hides in the body.`,
          );
        }
      });
    }
  });
  return problems;
}

function rescale(
  definition: AnyDefinition,
  letters: Numbers,
  factor: (kind: string) => number,
): Numbers {
  const scaled: Numbers = {};
  for (const input of Object.values(definition.inputs)) {
    scaled[input.letter] = rescaleOne(input, letters[input.letter], factor);
  }
  for (const [letter, q] of Object.entries(definition.constants ?? {})) {
    scaled[letter] = (letters[letter] as number) * factor(q.kind);
  }
  return scaled;
}

function rescaleOne(input: AnyInput, value: unknown, factor: (kind: string) => number): unknown {
  switch (input.type) {
    case "scalar":
      return (value as number) * factor(input.kinds[0] as string);
    case "point":
      return (value as number) * factor(differenceOf(input.origin));
    case "choice":
      return value;
    case "list":
      return (value as Numbers[]).map((row) =>
        Object.fromEntries(
          Object.values(input.record).map((field) => [
            field.letter,
            rescaleOne(field, row[field.letter], factor),
          ]),
        ),
      );
    case "curve": {
      const [x, y] = [factor(input.x), factor(input.y)];
      return (at: number): number => (value as (x: number) => number)(at / x) * y;
    }
  }
}
