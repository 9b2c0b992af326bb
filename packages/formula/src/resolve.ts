import {
  type AnyPoint,
  type AnyQuantity,
  coherentUnit,
  isPoint,
  isQuantity,
  QuantityError,
  type Sources,
} from "@leat/quantity";

import type { AnyDefinition, CallOptions } from "./definition.ts";
import type { AnyInput, CurvePoints, Domain, ScalarInput } from "./input.ts";
import { NonPhysicalError, type Notice } from "./notice.ts";
import { firstPrinciples } from "./source.ts";

/** Numbers by letter, as a body sees them. */
export type Numbers = Record<string, unknown>;

/** One number of the inputs: where it stands, what it came from. */
export interface Slot {
  /** Words to it: an input, or an input, a row and a word of its record. */
  readonly path: readonly (string | number)[];
  /** Letters to it. */
  readonly letters: readonly (string | number)[];
  /** What physics allows. */
  readonly domain: Domain;
  /** What the caller gave, or the default. */
  readonly given: AnyQuantity | AnyPoint;
  /** True where a default was taken. */
  readonly assumed: boolean;
}

/** Inputs made into numbers. */
export interface Resolved {
  /** What the body sees, constants included. */
  readonly letters: Numbers;
  /** Every scalar and point among the inputs. */
  readonly slots: readonly Slot[];
  /** Words chosen, by input. */
  readonly choices: Readonly<Record<string, string>>;
}

/** Constants in coherent units. */
export function constantsOf(definition: AnyDefinition): Record<string, number> {
  return Object.fromEntries(
    Object.entries(definition.constants ?? {}).map(([letter, q]) => [letter, q["~si"]]),
  );
}

/** Makes a caller's arguments into numbers, or refuses them, all at once. */
export function resolve(
  definition: AnyDefinition,
  args: Readonly<Record<string, unknown>>,
  options: CallOptions = {},
): Resolved {
  const letters: Numbers = constantsOf(definition);
  const slots: Slot[] = [];
  const choices: Record<string, string> = {};
  for (const name of Object.keys(args)) {
    if (!Object.hasOwn(definition.inputs, name)) {
      refuse(
        definition,
        `${name} is not an input; inputs are ${Object.keys(definition.inputs).join(", ")}`,
      );
    }
  }
  for (const [name, input] of Object.entries(definition.inputs)) {
    const value = args[name] ?? undefined;
    if (value === undefined && input.default === undefined)
      refuse(definition, `${name} is missing: give ${wanted(input)}`);
    const assumed = value === undefined;
    const used = assumed ? input.default : value;
    if (assumed && input.type !== "list") {
      options.onAssumed?.({
        formula: definition.id,
        input: name,
        value: String(used),
        because: input.because,
      });
    }
    letters[input.letter] = take(
      definition,
      input,
      [name],
      [input.letter],
      used,
      assumed,
      slots,
      choices,
    );
  }
  const problems = slots.flatMap((slot) => domainProblem(definition.id, slot) ?? []);
  if (problems.length > 0) throw new NonPhysicalError(problems);
  return { letters, slots, choices };
}

function take(
  definition: AnyDefinition,
  input: AnyInput,
  path: readonly (string | number)[],
  letters: readonly (string | number)[],
  value: unknown,
  assumed: boolean,
  slots: Slot[],
  choices: Record<string, string>,
): unknown {
  const where = path.join(".");
  switch (input.type) {
    case "scalar": {
      if (!isQuantity(value) || !input.kinds.includes(value.kind)) {
        refuse(definition, `${where} = ${said(value)} is refused: give ${wanted(input)}`);
      }
      slots.push({ path, letters, domain: input.domain, given: value, assumed });
      return value["~si"];
    }
    case "point": {
      if (!isPoint(value) || value.origin !== input.origin) {
        refuse(definition, `${where} = ${said(value)} is refused: give ${wanted(input)}`);
      }
      slots.push({ path, letters, domain: "any", given: value, assumed });
      return value["~si"];
    }
    case "choice": {
      if (!input.words.includes(value as string))
        refuse(definition, `${where} = ${said(value)} is refused: give ${wanted(input)}`);
      choices[where] = value as string;
      return value;
    }
    case "list": {
      if (!Array.isArray(value))
        refuse(definition, `${where} = ${said(value)} is refused: give ${wanted(input)}`);
      return (value as unknown[]).map((row, i) =>
        record(definition, input.record, [...path, i], [...letters, i], row, slots),
      );
    }
    case "curve": {
      const points = value as CurvePoints<string, string>;
      const numbers = (axis: "x" | "y"): Float64Array =>
        Float64Array.from(
          points?.[axis] ?? refuse(definition, `${where} is refused: give ${wanted(input)}`),
          (q: unknown) => {
            if (!isQuantity(q) || q.kind !== input[axis])
              refuse(definition, `${where}.${axis} holds ${said(q)}: give ${input[axis]}`);
            return q["~si"];
          },
        );
      return input.through(numbers("x"), numbers("y"));
    }
  }
}

function record(
  definition: AnyDefinition,
  inputs: Readonly<Record<string, ScalarInput<string, string, boolean>>>,
  path: readonly (string | number)[],
  letters: readonly (string | number)[],
  row: unknown,
  slots: Slot[],
): Numbers {
  const fields = (typeof row === "object" && row !== null ? row : {}) as Record<string, unknown>;
  const numbers: Numbers = {};
  for (const name of Object.keys(fields)) {
    if (!Object.hasOwn(inputs, name))
      refuse(
        definition,
        `${path.join(".")}.${name} is not an input; inputs are ${Object.keys(inputs).join(", ")}`,
      );
  }
  for (const [name, input] of Object.entries(inputs)) {
    const value = fields[name] ?? input.default;
    const here = [...path, name];
    if (value === undefined)
      refuse(definition, `${here.join(".")} is missing: give ${wanted(input)}`);
    numbers[input.letter] = take(
      definition,
      input,
      here,
      [...letters, input.letter],
      value,
      fields[name] == null,
      slots,
      {},
    );
  }
  return numbers;
}

/** What physics says of a number, or nothing where it has nothing to say. */
function domainProblem(id: string, { path, domain, given }: Slot): Notice | undefined {
  const n = given["~si"];
  const bad =
    domain === "positive" && !(n > 0)
      ? "is not above zero"
      : domain === "non-negative" && !(n >= 0)
        ? "is below zero"
        : domain === "fraction" && !(n >= 0 && n <= 1)
          ? "is not between 0 and 1"
          : undefined;
  if (!bad) return undefined;
  const where = path.join(".");
  return {
    code: "non-physical",
    severity: "stop",
    path,
    message: `${id}: ${where} = ${String(given)} ${bad}, which no physical ${where.split(".").at(-1)} can be. Check its sign and its unit.`,
    actual: String(given),
    limit: domain,
    source: firstPrinciples.at("meaning of the input"),
  };
}

function wanted(input: AnyInput): string {
  switch (input.type) {
    case "scalar":
      return `a ${input.kinds.map((kind) => `${kind} (such as ${example(kind)})`).join(" or a ")}`;
    case "point":
      return `a point over ${input.origin}`;
    case "choice":
      return `one of ${input.words.join(", ")}`;
    case "list":
      return `a list of { ${Object.keys(input.record).join(", ")} }`;
    case "curve":
      return `{ x: ${input.x}, y: ${input.y} } as two lists of quantities`;
  }
}

function example(kind: string): string {
  return coherentUnit(kind, "USD").of(1).toString();
}

function said(value: unknown): string {
  if (isQuantity(value)) return `${value.toString()} (${value.kind})`;
  return isPoint(value)
    ? value.toString()
    : typeof value === "string"
      ? JSON.stringify(value.slice(0, 60))
      : typeof value;
}

function refuse(definition: AnyDefinition, message: string): never {
  throw new QuantityError("kind", `${definition.id}: ${message}.`);
}

/** The sources of everything that was given. */
export function sourcesOf(slot: Slot): Sources | undefined {
  return slot.given["~sources"];
}
