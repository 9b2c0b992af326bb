import { type AnyPoint, type AnyQuantity, coherentUnit, isPoint } from "@leat/quantity";

import { bounded, keeps, limitText } from "./check.ts";
import { type AnyDefinition, type AnyFormula, outputsOf } from "./definition.ts";
import { run } from "./formula.ts";
import type { Args, Inputs } from "./input.ts";
import { type Resolved, resolve } from "./resolve.ts";
import { cite } from "./source.ts";

/** One number of a printed calculation. */
export interface WorkingLine {
  /** The book's letter. */
  readonly letter: string;
  /** The input's or the output's word; a step has its equation instead. */
  readonly word: string;
  /** As it was given. */
  readonly given: string;
  /** In the coherent unit, as the equation takes it. */
  readonly value: string;
  /** True where a default was taken. */
  readonly assumed?: boolean;
}

/** A printed calculation: what a person with a pocket calculator needs to follow it. */
export interface Working {
  /** Id of the formula. */
  readonly formula: string;
  /** Its revision. */
  readonly revision: number;
  /** The equation. */
  readonly equation: string;
  /** Inputs, in coherent units. */
  readonly inputs: readonly WorkingLine[];
  /** Constants, in coherent units. */
  readonly constants: readonly WorkingLine[];
  /** Numbers on the way. */
  readonly steps: readonly WorkingLine[];
  /** The answer or answers. */
  readonly results: readonly WorkingLine[];
  /** Each limit, and whether it is kept. */
  readonly limits: readonly { readonly text: string; readonly kept: boolean }[];
  /** Where the equation comes from. */
  readonly source: string;
}

/**
 * The calculation of a formula, to be printed. Limits that are exceeded are marked, not thrown.
 *
 * @param formula - The formula.
 * @param args - Its inputs, as for a call.
 * @returns The calculation as data.
 * @throws NonPhysicalError, QuantityError as a call does.
 */
export function working<I extends Inputs>(
  formula: AnyFormula & { readonly definition: { readonly inputs: I } },
  args: Args<I>,
): Working {
  const { definition } = formula;
  return workingOf(definition, resolve(definition, args));
}

/** The calculation of a definition on inputs that are resolved. */
function workingOf(definition: AnyDefinition, resolved: Resolved): Working {
  const { values } = run(definition, resolved);
  const si = (n: number, kind: string): string =>
    `${figures(n)} ${coherentUnit(kind, "¤").symbol}`.replace(/ 1$/, "");
  return {
    formula: definition.id,
    revision: definition.revision ?? 1,
    equation: definition.equation,
    inputs: [
      ...resolved.slots.map(({ path, letters, given, assumed }) => ({
        letter: letters.join("."),
        word: words(path),
        ...shown(given, si),
        ...(assumed && { assumed }),
      })),
      ...Object.entries(resolved.choices).map(([word, value]) => ({
        letter: "",
        word: words([word]),
        given: value,
        value,
      })),
    ],
    constants: Object.entries(definition.constants ?? {}).map(([letter, q]) => ({
      letter,
      word: "",
      given: q.toString(),
      value: si(q["~si"], q.kind),
    })),
    steps: Object.entries(definition.steps ?? {}).map(([letter, step]) => ({
      letter,
      word: step.equation,
      given: "",
      value: si(step.of(resolved.letters as never), step.kind),
    })),
    results: outputsOf(definition.output).map(({ word, kind, letter }, i) => ({
      letter,
      word: word ? words([word]) : "",
      given: "",
      value: si(values[i] as number, kind),
    })),
    limits: (definition.limits ?? []).map((limit) => ({
      text: limitText(limit),
      kept: keeps(limit, bounded(definition, limit, resolved.letters)),
    })),
    source: cite(definition.source),
  };
}

/** As it was given and in the coherent unit; a number that was given in that unit is shown once. */
function shown(
  given: AnyQuantity | AnyPoint,
  si: (n: number, kind: string) => string,
): { given: string; value: string } {
  const value = si(given["~si"], isPoint(given) ? given.overOrigin().kind : given.kind);
  const text = String(given);
  return { given: unitPart(text) === unitPart(value) ? value : text, value };
}

function unitPart(text: string): string {
  return text.replace(/^[-\d.e+]+ ?/, "");
}

/**
 * A calculation as lines of text.
 *
 * @param sheet - The calculation.
 * @returns Lines: the equation, each letter with its number, the answer, the limits, the source.
 */
export function workingText(sheet: Working): string {
  const line = ({ letter, word, given, value, assumed }: WorkingLine): string =>
    `  ${letter && `${letter} = `}${given && given !== value ? `${given} = ` : ""}${value}${word && `   ${word}`}${assumed ? " (assumed)" : ""}`;
  return [
    sheet.equation,
    ...sheet.inputs.map(line),
    ...sheet.constants.map(line),
    ...sheet.steps.map(line),
    ...sheet.results.map(
      ({ letter, word, value }) => `→ ${letter} = ${value}${word && `   ${word}`}`,
    ),
    ...sheet.limits.map(({ text, kept }) => `  ${kept ? "within" : "BEYOND"}: ${text}`),
    `  source: ${sheet.source}; ${sheet.formula}, revision ${sheet.revision}`,
  ].join("\n");
}

/** `crestHeight` → `crest height`; rows of a list are counted from 1. */
function words(path: readonly (string | number)[]): string {
  return path
    .map((part) =>
      typeof part === "number"
        ? String(part + 1)
        : part.replaceAll(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`),
    )
    .join(" ");
}

/** Seven figures: a pocket calculator's. */
function figures(n: number): string {
  return n !== 0 && (Math.abs(n) < 1e-4 || Math.abs(n) >= 1e7)
    ? n
        .toExponential(6)
        .replace(/\.?0+e/, "e")
        .replace("e+", "e")
    : String(Number(n.toPrecision(7)));
}
