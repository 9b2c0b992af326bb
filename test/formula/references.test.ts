import {
  type AnyDefinition,
  type CallOptions,
  commonPractice,
  formula,
  input,
  output,
} from "@leat/formula";
import { argsOf, checkRows, homogeneityProblems, type ReferenceRow } from "@leat/formula/reference";
import { metre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { equationProblems } from "./equation.ts";
import { everyFormula, everyRowFile } from "./every-formula.ts";

const formulas = await everyFormula();
const files = everyRowFile();

/** Equations that no evaluator reads, and why. */
const unreadable: Readonly<Record<string, string>> = {};

describe("every formula", () => {
  it("is exported under a name of its own and has an id of its own", () => {
    const ids = formulas.map(({ formula }) => formula.id);
    expect(ids.length).toBeGreaterThan(20);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("has reference rows, and each file of rows has its formula", () => {
    const ids = formulas.map(({ formula }) => formula.id).toSorted();
    expect([...files.keys()].toSorted()).toEqual(ids);
  });

  describe.each(formulas.map(({ formula }) => [formula.id, formula] as const))(
    "%s",
    (id, formula) => {
      const rows = files.get(id)?.rows ?? [];

      it("agrees with its reference rows, three or more of them independent", () => {
        expect(checkRows(formula, rows).problems).toEqual([]);
      });

      it("knows only its inputs: rescaled units rescale its outputs bit for bit", () => {
        const problems = rows.flatMap((row) =>
          homogeneityProblems(formula, argsOf(formula.definition, row.inputs)),
        );
        expect(problems).toEqual([]);
      });

      it("prints the equation that it computes", () => {
        const { definition } = formula;
        if (definition.equation.includes("Σ") || unreadable[id]) return;
        for (const row of rows) {
          const { letters, result } = watch(definition, argsOf(definition, row.inputs));
          expect(equationProblems(definition, letters, result)).toEqual([]);
        }
      });
    },
  );
});

/** Calls a formula of this definition, limits ignored, and watches what its body is given and gives. */
function watch(
  definition: AnyDefinition,
  args: Record<string, unknown>,
): { letters: Record<string, unknown>; result: unknown } {
  const seen = { letters: {}, result: undefined as unknown };
  const watched: (args: never, options: CallOptions) => unknown = formula(
    () =>
      ({
        ...definition,
        body: (letters: never) =>
          Object.assign(seen, { letters, result: definition.body(letters) }).result,
      }) as never,
  );
  watched(args as never, { onNotice: () => {} });
  return seen;
}

describe("the runner of reference rows", () => {
  const doubled = formula(() => ({
    id: "doubled-length",
    equation: "y = 2 · x",
    inputs: { length: input("length", "x") },
    output: output("length", "y"),
    source: commonPractice.at("planted", "practice"),
    body: ({ x }) => 2 * x,
  }));
  const row = (kind: ReferenceRow["kind"], length: string, expected: string): ReferenceRow => ({
    kind,
    source: "a planted page",
    standing: "read",
    inputs: { length },
    expected,
  });

  it("passes a formula with three independent rows", () => {
    const rows = [
      row("printed", "1 m", "2.0 m"),
      row("measured", "2 m", "4.0 m"),
      row("second-equation", "3 ft", "6.0 ft"),
    ];
    expect(checkRows(doubled, rows).problems).toEqual([]);
  });

  it("refuses a formula that has only regression rows", () => {
    const rows = [
      row("regression", "1 m", "2 m"),
      row("regression", "2 m", "4 m"),
      row("regression", "3 m", "6 m"),
    ];
    expect(checkRows(doubled, rows).problems).toEqual([
      "doubled-length: only regression rows: they are our own output and prove nothing. Add rows from outside.",
    ]);
  });

  it("refuses a formula with too few independent rows", () => {
    expect(checkRows(doubled, [row("printed", "1 m", "2.0 m")]).problems).toEqual([
      "doubled-length: 1 independent rows, 3 are needed.",
    ]);
  });

  it("earns its tolerance from the printed digits", () => {
    const rows = [
      row("printed", "1.02 m", "2.0 m"),
      row("printed", "1.03 m", "2.0 m"),
      row("printed", "1.03 m", "2 m"),
    ];
    expect(checkRows(doubled, rows).problems).toEqual([
      "doubled-length, row 2 (a planted page): 2.06 m, expected 2.0 m ± half of the last digit",
    ]);
  });

  it("refuses a row without a source, of another kind, or beyond the limits by word only", () => {
    const rows = [
      { ...row("printed", "1 m", "2 m"), source: " " },
      row("printed", "1 s", "2 m"),
      { ...row("printed", "1 m", "2 m"), beyond: true },
    ];
    const { problems } = checkRows(doubled, rows);
    expect(problems[0]).toBe("doubled-length, row 1 ( ): no source is named");
    expect(problems[1]).toContain("doubled-length, row 2 (a planted page): ");
    expect(problems[2]).toBe(
      "doubled-length, row 3 (a planted page): marked as beyond the limits, but within them",
    );
  });

  it("finds a number with a unit that hides in a body", () => {
    const planted = formula(() => ({
      id: "planted-constant",
      equation: "Q = 1.84 · b · h · √h",
      inputs: { width: input("length", "b"), head: input("length", "h") },
      output: output("volume flow", "Q"),
      source: commonPractice.at("planted", "practice"),
      body: ({ b, h }) => 1.84 * b * h * Math.sqrt(h),
    }));
    const problems = homogeneityProblems(planted, { width: metre.of(1), head: metre.of(0.2) });
    expect(problems.length).toBeGreaterThan(0);
    expect(
      problems.every((problem) => problem.endsWith("a number with a unit hides in the body.")),
    ).toBe(true);
  });

  it("finds an equation that is not what the body computes", () => {
    expect(equationProblems({ ...doubled.definition, equation: "y = 3 · x" }, { x: 2 }, 4)).toEqual(
      ["doubled-length: y = 3 · x gives 6, the body 4"],
    );
  });
});
