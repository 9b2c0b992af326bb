import {
  choice,
  type CallOptions,
  cite,
  commonPractice,
  curve,
  bound,
  firstPrinciples,
  formula,
  input,
  isFormula,
  limitNotices,
  list,
  NonPhysicalError,
  type Notice,
  OutOfValidityError,
  output,
  pointInput,
  range,
  ratio,
  series,
  source,
  table,
  working,
  workingText,
} from "@leat/formula";
import {
  celsius,
  cubicMetrePerSecond,
  each,
  foot,
  kelvin,
  litrePerSecond,
  metre,
  metrePerSecondSquared,
  millimetre,
  one,
  pascal,
  type QuantityError,
} from "@leat/quantity";
import { Column, Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const book = source({ id: "book", by: "A Book", title: "Of Water", edition: "1st ed." });

const weir = formula(() => ({
  id: "planted-weir",
  revision: 3,
  equation: "Q = C · b · √g · h^(3/2)",
  inputs: {
    /** Level over the sill. */
    head: input("length", "h"),
    /** Width of the opening. */
    width: input("length", "b", { domain: "positive" }),
    /** Coefficient. */
    coefficient: input("coefficient", "C", {
      domain: "fraction",
      default: one.of(0.6).as("coefficient"),
      because: book.at("ch. 1"),
    }),
    /** Gravity. */
    gravity: input("acceleration", "g", { default: metrePerSecondSquared.of(9.80665) }),
  },
  output: output("volume flow", "Q"),
  limits: [
    range("head", { min: millimetre.of(60), max: foot.of(1.25) }, book.at("p. 2")),
    ratio("head", "width", { max: 0.5 }, book.at("p. 3")),
    bound(
      "width",
      "square of the width over a square metre",
      ({ b }: { b: number }) => b * b,
      { max: 9 },
      book.at("p. 4"),
    ),
  ],
  source: book.at("eq. 1"),
  body: ({ h, b, C, g }) => C * b * Math.sqrt(g) * h * Math.sqrt(h),
  series: {
    over: "head",
    loop: (column, { b, C, g }, out, from, to) => {
      const k = C * b * Math.sqrt(g);
      for (let i = from; i < to; i++) out[i] = k * column[i]! * Math.sqrt(column[i]!);
    },
  },
}));

const args = { head: metre.of(0.2), width: metre.of(1) };

function thrown(call: () => unknown): Error {
  try {
    call();
  } catch (error) {
    return error as Error;
  }
  throw new Error("nothing was thrown");
}

/** Calls without the types' help, as a notebook or a cell would. */
const untyped = weir as unknown as (args: unknown, options?: CallOptions) => unknown;

describe("a call", () => {
  it("gives a quantity of the declared kind", () => {
    const q = weir(args);
    expect(q.kind).toBe("volume flow");
    expect(q.in(cubicMetrePerSecond)).toBeCloseTo(0.6 * Math.sqrt(9.80665) * 0.2 ** 1.5, 14);
    expect(isFormula(weir)).toBe(true);
    expect(isFormula(() => 1)).toBe(false);
    expect([weir.id, weir.definition.revision, weir.constants]).toEqual(["planted-weir", 3, {}]);
  });

  it("takes a default for undefined and for null, never for zero, and says so", () => {
    const told: string[] = [];
    const options: CallOptions = {
      onAssumed: ({ formula: id, input: name, value, because }) =>
        told.push(`${id} ${name} ${value} ${because ? cite(because) : "–"}`),
    };
    weir({ ...args, coefficient: null, gravity: undefined }, options);
    expect(told).toEqual([
      "planted-weir coefficient 0.6 A Book, Of Water, 1st ed., ch. 1",
      "planted-weir gravity 9.80665 m/s² –",
    ]);
    expect(weir({ ...args, coefficient: one.of(0).as("coefficient") }).in(litrePerSecond)).toBe(0);
  });

  it("refuses a missing input, an unknown one, another kind and a bare number", () => {
    expect(thrown(() => untyped({ head: metre.of(0.2) })).message).toBe(
      "planted-weir: width is missing: give a length (such as 1 m).",
    );
    expect(thrown(() => untyped({ ...args, hed: metre.of(1) })).message).toBe(
      "planted-weir: hed is not an input; inputs are head, width, coefficient, gravity.",
    );
    expect(thrown(() => untyped({ ...args, head: pascal.of(3) })).message).toBe(
      "planted-weir: head = 3 Pa (pressure) is refused: give a length (such as 1 m).",
    );
    expect(thrown(() => untyped({ ...args, head: 0.2 })).message).toBe(
      "planted-weir: head = number is refused: give a length (such as 1 m).",
    );
    expect((thrown(() => untyped({ ...args, head: "3 ft" })) as QuantityError).code).toBe("kind");
  });

  it("throws for what nothing physical can have, all at once, notices asked for or not", () => {
    const call = (): unknown =>
      weir(
        { head: metre.of(-0.2), width: metre.of(0), coefficient: one.of(2).as("coefficient") },
        { onNotice: () => {} },
      );
    const error = thrown(call);
    expect(error).toBeInstanceOf(NonPhysicalError);
    expect(error.message).toBe(
      [
        "planted-weir: head = -0.2 m is below zero, which no physical head can be. Check its sign and its unit.",
        "planted-weir: width = 0 m is not above zero, which no physical width can be. Check its sign and its unit.",
        "planted-weir: coefficient = 2 is not between 0 and 1, which no physical coefficient can be. Check its sign and its unit.",
      ].join("\n"),
    );
    expect((error as NonPhysicalError).notices.map(({ path }) => path)).toEqual([
      ["head"],
      ["width"],
      ["coefficient"],
    ]);
  });

  it("throws for every limit that is exceeded, or tells of each", () => {
    const far = { head: foot.of(2), width: metre.of(1) };
    const error = thrown(() => weir(far));
    expect(error).toBeInstanceOf(OutOfValidityError);
    expect(error.message.split("\n")).toEqual([
      "planted-weir: head = 2 ft is above 1.25 ft, the range A Book gives (Of Water, p. 2). Pass onNotice to accept the extrapolation.",
      "planted-weir: head/width = 0.6096 is above 0.5, the range A Book gives (Of Water, p. 3). Pass onNotice to accept the extrapolation.",
    ]);
    const notices: Notice[] = [];
    expect(
      weir(far, { onNotice: (notice) => notices.push(notice) }).in(cubicMetrePerSecond),
    ).toBeGreaterThan(0);
    expect(notices.map(({ code, severity, limit }) => [code, severity, limit])).toEqual([
      ["planted-weir/out-of-range", "caution", "at most 1.25 ft"],
      ["planted-weir/out-of-range", "caution", "at most 0.5"],
    ]);
    expect(limitNotices(weir, far)).toEqual(notices);
    expect(limitNotices(weir, args)).toEqual([]);
  });

  it("shows a bound in the caller's terms too, where the two write other units", () => {
    expect(thrown(() => weir({ ...args, head: metre.of(0.5) })).message).toContain(
      "head = 0.5 m is above 1.25 ft (0.381 m), the range",
    );
    expect(thrown(() => weir({ ...args, width: metre.of(4) })).message).toContain(
      "square of the width over a square metre = 16 is above 9",
    );
  });

  it("refuses an answer that is no number", () => {
    const broken = formula(() => ({
      id: "planted-nothing",
      equation: "y = x/x",
      inputs: { length: input("length", "x") },
      output: output("ratio", "y"),
      source: commonPractice.at("planted", "practice"),
      body: ({ x }) => x / x,
    }));
    expect(thrown(() => broken({ length: metre.of(0) })).message).toBe(
      "planted-nothing: y is not a number for these inputs. Check them against the equation y = x/x.",
    );
  });
});

describe("uncertainty", () => {
  it("comes of the slopes of the body: a power of 3/2 makes 1 % into 1.5 %", () => {
    const q = weir({ ...args, head: args.head.plusMinus(metre.of(0.002), "staff") });
    const relative = q.standardUncertainty().in(litrePerSecond) / q.in(litrePerSecond);
    expect(relative).toBeCloseTo((1.5 * (0.002 / 0.2)) / 1.959963984540054, 9);
  });

  it("is shared by what shares a source", () => {
    const uncertain = { ...args, head: args.head.plusMinus(metre.of(0.002), "staff") };
    expect(weir(uncertain).minus(weir(uncertain)).sources().size).toBe(0);
  });

  it("is one-sided where physics ends, and its slope is right there", () => {
    const straight = formula(() => ({
      id: "planted-line",
      equation: "y = 3 · x + 2 · x²/r",
      inputs: {
        length: input("length", "x"),
        reference: input("length", "r", { domain: "positive" }),
      },
      output: output("length", "y"),
      source: commonPractice.at("planted", "practice"),
      body: ({ x, r }) => 3 * x + (2 * x * x) / r,
    }));
    const y = straight({
      length: metre.of(0).plusMinus(metre.of(0.1), "tape"),
      reference: metre.of(1),
    });
    expect(y.standardUncertainty().in(metre)).toBeCloseTo((3 * 0.1) / 1.959963984540054, 8);
  });

  it("goes through points and lists", () => {
    const expansion = formula(() => ({
      id: "planted-expansion",
      equation: "y = Σ(n·x) · (t2 − t1)/K",
      inputs: {
        parts: list(
          { length: input("length", "x"), count: input("count", "n", { default: each.of(1) }) },
          "parts",
        ),
        warm: pointInput("absolute zero", "t2"),
        cold: pointInput("absolute zero", "t1", { default: celsius.at(0) }),
      },
      output: output("length", "y"),
      constants: { K: kelvin.of(1) },
      source: commonPractice.at("planted", "practice"),
      body: ({ parts, t1, t2, K }) =>
        parts.reduce((sum, { x, n }) => sum + x * n, 0) * ((t2 - t1) / K),
    }));
    const y = expansion({
      parts: [
        { length: metre.of(2), count: each.of(3) },
        { length: metre.of(1).within(metre.of(0.3), "rule") },
      ],
      warm: celsius.at(10).plusMinus(kelvin.of(1), "thermometer"),
    });
    expect(y.in(metre)).toBeCloseTo(70, 9);
    const byHand = Math.hypot((0.3 / Math.sqrt(3)) * 10, (7 * 1) / 1.959963984540054);
    expect(y.standardUncertainty().in(metre)).toBeCloseTo(byHand, 6);
    expect([...y.sources().keys()].toSorted()).toEqual(["rule", "thermometer"]);
    expect(() => expansion({ parts: [{ length: metre.of(-2) }], warm: celsius.at(10) })).toThrow(
      "planted-expansion: parts.0.length = -2 m is below zero, which no physical length can be. Check its sign and its unit.",
    );
    const loose = expansion as unknown as (given: unknown) => unknown;
    expect(() =>
      loose({ parts: [{ length: metre.of(1), cuont: each.of(2) }], warm: celsius.at(1) }),
    ).toThrow("planted-expansion: parts.0.cuont is not an input; inputs are length, count.");
    expect(() => loose({ parts: [{}], warm: celsius.at(1) })).toThrow(
      "planted-expansion: parts.0.length is missing: give a length (such as 1 m).",
    );
    expect(() => loose({ parts: metre.of(1), warm: celsius.at(1) })).toThrow(
      "is refused: give a list of { length, count }.",
    );
    expect(() => loose({ parts: [], warm: kelvin.of(3) })).toThrow(
      "planted-expansion: warm = 3 K (temperature difference) is refused: give a point over absolute zero.",
    );
  });
});

describe("the hard inputs and outputs", () => {
  const pump = formula(() => ({
    id: "planted-pump",
    equation: "two outputs of a curve",
    inputs: {
      flow: input("volume flow", "Q"),
      characteristic: curve("volume flow", "length", "curve"),
      finish: choice(["smooth", "rough"], "finish", { default: "smooth" }),
      kind: input(["gross head", "net head"], "H"),
    },
    output: { rise: output("length", "h"), left: output("length", "l") },
    solver: true,
    source: commonPractice.at("planted", "practice"),
    body: ({ Q, curve: at, finish, H }) => ({
      h: at(Q) * (finish === "rough" ? 0.5 : 1),
      l: H - at(Q),
      iterations: 4,
      residual: 0,
      bracket: [0, 1] as const,
    }),
  }));
  const characteristic = {
    x: [0, 1, 2].map((q) => cubicMetrePerSecond.of(q)),
    y: [10, 8, 3].map((h) => metre.of(h)),
  };
  const given = {
    flow: cubicMetrePerSecond.of(1),
    characteristic,
    kind: metre.of(20).as("net head"),
  };

  it("give several outputs by their words, with the convergence of a solver", () => {
    const { rise, left, convergence } = pump(given);
    expect([rise.in(metre), left.in(metre)]).toEqual([8, 12]);
    expect(convergence).toEqual({ iterations: 4, residual: 0, bracket: [0, 1] });
    expect(
      pump({ ...given, finish: "rough", kind: metre.of(20).as("gross head") }).rise.in(metre),
    ).toBe(4);
  });

  it("refuse extrapolation, another word, another kind and a curve that is none", () => {
    expect(() => pump({ ...given, flow: cubicMetrePerSecond.of(3) })).toThrow("3");
    const loose = pump as unknown as (args: unknown) => unknown;
    expect(() => loose({ ...given, finish: "wavy" })).toThrow(
      'planted-pump: finish = "wavy" is refused: give one of smooth, rough.',
    );
    expect(() => loose({ ...given, kind: metre.of(20) })).toThrow(
      "planted-pump: kind = 20 m (length) is refused: give a gross head (such as 1 m) or a net head (such as 1 m).",
    );
    expect(() => loose({ ...given, characteristic: { x: [metre.of(1)], y: [] } })).toThrow(
      "planted-pump: characteristic.x holds 1 m (length): give volume flow.",
    );
    expect(() => loose({ ...given, characteristic: 3 })).toThrow(
      "planted-pump: characteristic is refused: give { x: volume flow, y: length } as two lists of quantities.",
    );
  });
});

describe("a series", () => {
  const levels = [0.1, 0.2, null, 0.3, 0.05];

  it("is row by row what the formula gives, gaps kept, rows out of range counted and flagged in one notice", () => {
    const notices: Notice[] = [];
    const flows = series(
      weir,
      { ...args, head: Column.of(metre, levels) },
      { onNotice: (notice) => notices.push(notice) },
    );
    expect(flows.kind).toBe("volume flow");
    for (const [row, level] of levels.entries()) {
      const alone =
        level === null
          ? undefined
          : weir({ ...args, head: metre.of(level) }, { onNotice: () => {} });
      expect(flows.at(row)?.in(litrePerSecond)).toBe(alone?.in(litrePerSecond));
    }
    expect([...flows.quality]).toEqual([0, 0, Quality.gap, 0, Quality.outOfRange]);
    expect(notices.map(({ message }) => message)).toEqual([
      "planted-weir: head = 0.05 at worst, in 1 of 5 rows, is below 60 mm (0.06 m), the range A Book gives (Of Water, p. 2).",
    ]);
  });

  it("is an error where rows are out of range and nobody asked to be told", () => {
    expect(thrown(() => series(weir, { ...args, head: Column.of(metre, levels) }))).toBeInstanceOf(
      OutOfValidityError,
    );
  });

  it("takes more than one column, and a limit between two", () => {
    const width = Column.of(metre, [1, 1, 1, 0.5, 1]);
    const notices: Notice[] = [];
    const flows = series(
      weir,
      { head: Column.of(metre, [0.1, 0.2, 0.25, 0.3, 0.1]), width },
      { onNotice: (notice) => notices.push(notice) },
    );
    expect(flows.at(3)!.in(litrePerSecond)).toBe(
      weir({ head: metre.of(0.3), width: metre.of(0.5) }, { onNotice: () => {} }).in(
        litrePerSecond,
      ),
    );
    expect([...flows.quality]).toEqual([0, 0, 0, Quality.outOfRange, 0]);
    expect(notices).toHaveLength(1);
  });

  it("names the first row that nothing physical can have, and counts them", () => {
    for (const head of [
      [0.1, -0.2, -0.3],
      [-0.2, 0.1, -0.3],
    ]) {
      const error = thrown(() => series(weir, { ...args, head: Column.of(metre, head) }));
      expect(error).toBeInstanceOf(NonPhysicalError);
      const row = head.indexOf(-0.2);
      expect(error.message).toBe(
        `planted-weir: head has 2 rows that no physical head can be, the first being row ${row} with -0.2 in coherent units. Flag them as gaps, or correct them.`,
      );
    }
  });

  it("refuses no column, unequal lengths, and a column where none is taken", () => {
    expect(thrown(() => series(weir, args)).message).toBe(
      "planted-weir: no input is a column; call the formula itself.",
    );
    expect(
      thrown(() => series(weir, { head: Column.of(metre, [0.1]), width: Column.of(metre, [1, 1]) }))
        .message,
    ).toBe("planted-weir: width has 2 rows and head has 1; give columns of one length.");
  });

  it("carries offset, scale and noise on", () => {
    const head = Column.of(metre, [0.2, 0.2, 0.2], {
      uncertainty: { offset: [["staff", 0.001]], noise: [["waves", 0.002]] },
    });
    const flows = series(weir, { ...args, head });
    const q = flows.at(0)!;
    const scale = flows.uncertainty!.scale!.find(([id]) => id === "staff")![1];
    expect(scale).toBeCloseTo((1.5 * 0.001) / 0.2, 7);
    expect(flows.uncertainty!.noise!.find(([id]) => id === "waves")![1]).toBeCloseTo(
      (1.5 * 0.002 * q.in(cubicMetrePerSecond)) / 0.2,
      7,
    );
  });

  it("is the same by the written loop and by the body", () => {
    const plain = formula(() => {
      const { series: written, ...rest } = weir.definition;
      expect(written).toBeDefined();
      return rest as never;
    }) as unknown as typeof weir;
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.double({ min: 0.06, max: 0.38, noNaN: true })), {
          minLength: 1,
          maxLength: 40,
        }),
        (rows) => {
          const given = { ...args, head: Column.of(metre, rows) };
          const [a, b] = [series(weir, given), series(plain, given)];
          a.values.forEach((n, i) => expect(n).toBeCloseTo(b.values[i]!, 15));
          expect([...a.quality]).toEqual([...b.quality]);
        },
      ),
    );
  });

  it("is empty of answers where every row is a gap", () => {
    expect([...series(weir, { ...args, head: Column.of(metre, [null, null]) }).quality]).toEqual([
      1, 1,
    ]);
  });
});

describe("a printed calculation", () => {
  it("shows each letter with its number, the answer, the limits and the source", () => {
    const text = workingText(working(weir, { head: millimetre.of(200), width: metre.of(3.5) }));
    expect(text.split("\n")).toEqual([
      "Q = C · b · √g · h^(3/2)",
      "  h = 200 mm = 0.2 m   head",
      "  b = 3.5 m   width",
      "  C = 0.6   coefficient (assumed)",
      "  g = 9.80665 m/s²   gravity (assumed)",
      "→ Q = 0.5881995 m³/s",
      "  within: 60 mm ≤ head ≤ 1.25 ft (A Book, Of Water, 1st ed., p. 2)",
      "  within: head/width ≤ 0.5 (A Book, Of Water, 1st ed., p. 3)",
      "  BEYOND: square of the width over a square metre ≤ 9 (A Book, Of Water, 1st ed., p. 4)",
      "  source: A Book, Of Water, 1st ed., eq. 1; planted-weir, revision 3",
    ]);
    // By pocket calculator: 2.1 × 3.1315571 × 0.08944272 = 0.5881995.
    expect(2.1 * 3.1315571 * 0.08944272).toBeCloseTo(0.5881995, 7);
  });
});

describe("a table", () => {
  const wires = table(() => ({
    id: "planted-wires",
    key: "size",
    units: { diameter: millimetre },
    source: book.at("table 1"),
    rows: [
      { size: "2/0", diameter: 9.27 },
      { size: "4", diameter: undefined },
    ],
  }));

  it("gives rows as printed and numbers with their unit", () => {
    expect(wires.keys()).toEqual(["2/0", "4"]);
    expect(wires.row("2/0").diameter).toBe(9.27);
    expect(wires.get("2/0", "diameter").in(millimetre)).toBe(9.27);
  });

  it("refuses another key and what the source leaves out: there is no fuzzy look-up", () => {
    expect(() => wires.row("00" as never)).toThrow(
      "planted-wires: 00 is not in the table; it has 2/0, 4.",
    );
    expect(() => wires.get("4", "diameter")).toThrow(
      "planted-wires: the source gives no diameter for 4.",
    );
  });
});

describe("a source", () => {
  it("is cited with its place and how sure it is", () => {
    expect(cite(book.at("p. 1"))).toBe("A Book, Of Water, 1st ed., p. 1");
    expect(cite(book.at("p. 1", "memory"))).toBe(
      "A Book, Of Water, 1st ed., p. 1 (from memory, to be confirmed)",
    );
    expect(cite(book.at("p. 1", "secondary"))).toBe(
      "A Book, Of Water, 1st ed., p. 1 (read in a second text)",
    );
    expect(cite(commonPractice.at("x", "practice"))).toBe("common practice, no source, x");
    expect(cite(firstPrinciples.at("continuity"))).toBe("physics, first principles, continuity");
  });
});
