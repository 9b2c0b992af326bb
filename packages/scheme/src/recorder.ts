import {
  type AnyFormula,
  type AnyInput,
  limitNotices,
  type Notice,
  working,
  type Working,
} from "@leat/formula";
import {
  type AnyPoint,
  type AnyQuantity,
  coherentUnit,
  type Origin,
  point,
  type Quantity,
  differenceOf,
} from "@leat/quantity";

import { type Use, useBody } from "./compute.ts";
import type { Parameter } from "./ledger.ts";

interface Call {
  readonly formula: AnyFormula;
  readonly letters: Readonly<Record<string, unknown>>;
}

/** Calls bodies as any other, and remembers what was called with what. */
export class Recorder {
  readonly #calls: Call[] = [];

  /** Calls a body and remembers it. */
  readonly use: Use = (formula: AnyFormula, letters: Readonly<Record<string, unknown>>) => {
    this.#calls.push({ formula, letters });
    return useBody(formula as never, letters as never);
  };

  /** Every formula that was called, with its revision. */
  formulas(): { id: string; revision: number }[] {
    const byId = new Map(
      this.#calls.map(({ formula }) => [formula.id, formula.definition.revision ?? 1]),
    );
    return Array.from(byId, ([id, revision]) => ({ id, revision }));
  }

  /** The calculation sheet: each call as it can be followed by hand, in order, like calls once. */
  sheets(parameters: readonly Parameter[]): Working[] {
    const seen = new Set<string>();
    return this.#calls.flatMap((call) => {
      const key = `${call.formula.id} ${JSON.stringify(call.letters)}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [working(call.formula as never, argsOf(call, parameters) as never)];
    });
  }

  /** A notice for each limit that a call exceeds. */
  limits(parameters: readonly Parameter[]): Notice[] {
    return this.#calls.flatMap((call) => limitNotices(call.formula, argsOf(call, parameters)));
  }
}

/** Arguments in quantities for a call that was made in numbers; what was written shows as written. */
function argsOf(
  { formula, letters }: Call,
  parameters: readonly Parameter[],
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(formula.definition.inputs).flatMap(([name, input]) => {
      const value = letters[input.letter];
      return value === undefined ? [] : [[name, dress(input, value, parameters)]];
    }),
  );
}

function dress(input: AnyInput, value: unknown, parameters: readonly Parameter[]): unknown {
  switch (input.type) {
    case "scalar": {
      const kind = input.kinds[0] as string;
      const plain = coherentUnit(kind).of(value as number) as unknown as AnyQuantity;
      const written = writtenAs(
        value as number,
        parameters,
        (given) => "kind" in given && plainly(given, kind),
      );
      return written ? (written as unknown as Quantity<string>).as(kind) : plain;
    }
    case "point":
      return (
        writtenAs(
          value as number,
          parameters,
          (given) => "origin" in given && given.origin === input.origin,
        ) ?? overOrigin(input.origin, value as number)
      );
    case "list":
      return (value as Record<string, unknown>[]).map((row) =>
        Object.fromEntries(
          Object.entries(input.record).map(([name, field]) => [
            name,
            dress(field, row[field.letter], parameters),
          ]),
        ),
      );
    case "choice":
    case "curve":
      return value;
  }
}

function writtenAs(
  value: number,
  parameters: readonly Parameter[],
  fits: (given: AnyQuantity | AnyPoint) => boolean,
): AnyQuantity | AnyPoint | undefined {
  return parameters.find((parameter) => parameter.value === value && fits(parameter.given))?.given;
}

function plainly(given: AnyQuantity, kind: string): boolean {
  return coherentUnit(given.kind).symbol === coherentUnit(kind).symbol;
}

function overOrigin(origin: Origin, value: number): AnyPoint {
  return point(origin, coherentUnit(differenceOf(origin)).of(value) as never);
}
