import {
  ampere,
  centimetre,
  coherentUnit,
  cubicMetrePerSecond,
  exponentsOf,
  foot,
  horsepower,
  isQuantity,
  kilowatt,
  litrePerSecond,
  metre,
  metrePerSecond,
  millimetre,
  one,
  pascal,
  percent,
  poundPerSquareInch,
  type Quantity,
  revolutionPerMinute,
  second,
  squareMetre,
  type Unit,
  unit,
  volt,
  watt,
} from "@leat/quantity";
import fc from "fast-check";
import { all, create, type Unit as MathUnit } from "mathjs";
import { describe, expect, it } from "vitest";

import { exponentsIn as exponentsOfRow, table } from "./table.ts";
import { thrown, untyped } from "./thrown.ts";

const math = create(all!);
const usd = unit("money", "USD", 1, 1, "USD");
const eur = unit("money", "EUR", 1, 1, "EUR");

describe("arithmetic", () => {
  it("adds and subtracts what is of one kind", () => {
    expect(metre.of(2).plus(foot.of(1)).in(metre)).toBe(2.3048);
    expect(metre.of(2).minus(centimetre.of(50)).in(metre)).toBe(1.5);
  });

  it("names products, quotients, squares and roots", () => {
    expect(volt.of(120).times(ampere.of(15.5))).toMatchObject({ kind: "power" });
    expect(volt.of(120).times(ampere.of(15.5)).in(watt)).toBe(1860);
    expect(metre.of(3).squared()).toMatchObject({ kind: "area" });
    expect(squareMetre.of(9).sqrt().in(metre)).toBe(3);
    expect(metre.of(6).dividedBy(metre.of(3))).toMatchObject({ kind: "ratio" });
    expect(metre.of(4).sqrt().dividedBy(second.of(1)).kind).toBe("m^0.5·s^-1");
  });

  it("keeps the kind of what is multiplied by a number", () => {
    const head = metre.of(33.5).as("net head");
    expect(head.times(2)).toMatchObject({ kind: "net head" });
    expect(head.dividedBy(2).in(metre)).toBe(16.75);
    expect(head.negate().abs().in(metre)).toBe(33.5);
  });

  it("compares", () => {
    expect(foot.of(3).lessThan(metre.of(1))).toBe(true);
    expect(foot.of(4).greaterThan(metre.of(1))).toBe(true);
    expect(millimetre.of(200).equals(metre.of(0.2))).toBe(true);
  });

  it("gives a number back as it was written", () => {
    expect(foot.of(110).in(foot)).toBe(110);
    expect(String(foot.of(110))).toBe("110 ft");
    expect(String(metre.of(0.1).plus(metre.of(0.2)))).toBe("0.3 m");
  });

  // SP 811 (NIST, 2008), appendix B: 1 ft = 0.3048 m, 1 psi = 6894.757 Pa, 1 hp = 745.6999 W,
  // 1 r/min = 0.1047198 rad/s, as many digits as are printed there. From memory, to be confirmed.
  it.each([
    [foot.of(1).in(metre), 0.3048, 0],
    [poundPerSquareInch.of(1).in(pascal), 6894.757, 0.0005],
    [horsepower.of(1).in(watt), 745.6999, 0.00005],
    [revolutionPerMinute.of(1).in(coherentUnit("angular velocity")), 0.1047198, 0.00000005],
  ])("converts by factors as printed: %s", (value, printed, half) => {
    expect(Math.abs(value - printed)).toBeLessThanOrEqual(half);
  });
});

describe("kinds", () => {
  it("mix only as the table says", () => {
    const gross = metre.of(40).as("gross head");
    const loss = metre.of(3).as("head loss");
    const net = gross.minus(loss);
    expect(net).toMatchObject({ kind: "net head" });
    expect(net.in(metre)).toBe(37);
    expect(net.plus(loss)).toMatchObject({ kind: "gross head" });
    expect(
      kilowatt.of(3).as("shaft power").minus(kilowatt.of(2).as("electric power")),
    ).toMatchObject({ kind: "power" });
  });

  it("enter a product as their plain quantity", () => {
    expect(metre.of(3).as("gross head").times(metre.of(2))).toMatchObject({ kind: "area" });
    expect(percent.of(80).as("efficiency").times(watt.of(100))).toMatchObject({ kind: "power" });
    expect(metre.of(3).as("gross head").times(metre.of(2).as("pipe length")).sqrt()).toMatchObject({
      kind: "length",
    });
  });

  it.each(table.kinds)("of the table have the exponents that it says: $name", (kind) => {
    expect(exponentsOf(kind.name)).toEqual(exponentsOfRow(kind));
    expect(coherentUnit(kind.name, "USD").kind).toBe(kind.name);
  });

  it("have one name each", () => {
    expect(thrown(() => coherentUnit("m·m"))).toBe("kind: m·m is called area");
    expect(thrown(() => coherentUnit("m^1"))).toBe("kind: m^1 is called length");
    expect(thrown(() => coherentUnit("s^-1·m"))).toBe("kind: s^-1·m is called velocity");
    // Four eighths in halves would be 64, which is one of the next base.
    expect(thrown(() => coherentUnit("m^8·m^8·m^8·m^8"))).toBe(
      "kind: m^8·m^8·m^8·m^8 is called kg^0.5",
    );
    expect(thrown(() => coherentUnit("toString"))).toBe("kind: toString is not a kind of quantity");
    expect(thrown(() => coherentUnit(untyped(undefined)))).toBe(
      "kind: undefined is not a kind of quantity",
    );
  });
});

describe("messages", () => {
  const head = metre.of(33.5).as("gross head");
  const flow = litrePerSecond.of(12);
  it.each([
    [
      "kind: cannot add 12 L/s (volume flow) to 33.5 m (gross head)",
      () => head.plus(untyped(flow)),
    ],
    [
      "kind: cannot subtract 12 L/s (volume flow) from 33.5 m (gross head)",
      () => head.minus(untyped(flow)),
    ],
    [
      "kind: cannot add 2 m (pipe length) to 33.5 m (gross head)",
      () => head.plus(untyped(metre.of(2).as("pipe length"))),
    ],
    ["kind: cannot add 5 (not a quantity) to 33.5 m (gross head)", () => head.plus(untyped(5))],
    [
      "kind: cannot multiply 12 L/s (volume flow) by 3 (not a quantity)",
      () => flow.times(untyped("3")),
    ],
    [
      "kind: cannot divide 12 L/s (volume flow) by null (not a quantity)",
      () => flow.dividedBy(untyped(null)),
    ],
    [
      "kind: cannot compare 12 L/s (volume flow) with 33.5 m (gross head)",
      () => flow.lessThan(untyped(head)),
    ],
    ["kind: 33.5 m (gross head) has no L/s (volume flow)", () => head.in(untyped(litrePerSecond))],
    ["kind: 33.5 m (gross head) cannot be taken as power", () => head.as(untyped("power"))],
    [
      "kind: cannot spread 33.5 m (gross head) by 12 L/s (volume flow)",
      () => head.plusMinus(untyped(flow), "level"),
    ],
    ["not-finite: ± -1 m (length) is negative", () => head.plusMinus(metre.of(-1), "level")],
    ["not-finite: NaN m is not a finite number", () => metre.of(NaN)],
    ["not-finite: Infinity m is not a finite number", () => metre.of(Infinity)],
    ["not-finite: 3 m is not a finite number", () => metre.of(untyped("3"))],
    ["not-finite: 12 L/s (volume flow) ÷ 0 is not finite", () => flow.dividedBy(0)],
    [
      "not-finite: 12 L/s (volume flow) ÷ 0 m³/s (volume flow) is not finite",
      () => flow.dividedBy(cubicMetrePerSecond.of(0)),
    ],
    ["not-finite: 12 L/s (volume flow) × NaN is not finite", () => flow.times(NaN)],
    ["not-finite: the root of -4 m² (area) is not finite", () => squareMetre.of(-4).sqrt()],
    [
      "not-finite: 1e+308 m (length) + 1e+308 m (length) is not finite",
      () => metre.of(1e308).plus(metre.of(1e308)),
    ],
    [
      "not-finite: the uncertainty from weir is not finite",
      () => squareMetre.of(0).plusMinus(squareMetre.of(1), "weir").sqrt(),
    ],
    [
      "exponent: m^6 has an exponent beyond 5",
      () => metre.of(1).squared().squared().times(squareMetre.of(1)),
    ],
    ["exponent: the root of m^0.5 has a quarter exponent", () => metre.of(4).sqrt().sqrt()],
    ["currency: USD and EUR do not combine: exchange one first", () => usd.of(1).plus(eur.of(1))],
    ["currency: money needs a currency, such as USD", () => coherentUnit("money")],
    ["kind: 33.5 m is not a plain number: use in(unit), plus or lessThan", () => Number(head)],
    [
      "kind: 12 L/s is not a plain number: use in(unit), plus or lessThan",
      () => untyped(flow) < untyped(flow),
    ],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });
});

describe("money", () => {
  it("is a base quantity of its own currency", () => {
    const price = usd.per(foot).of(3.2);
    expect(price).toMatchObject({ kind: "price per length" });
    const total = price.times(foot.of(100));
    expect(total).toMatchObject({ kind: "money" });
    expect(total.currency()).toBe("USD");
    expect(total.in(usd)).toBeCloseTo(320, 10);
  });

  it("leaves a ratio without a currency, and two currencies in no quotient", () => {
    expect(usd.of(3).dividedBy(usd.of(2)).currency()).toBeUndefined();
    expect(thrown(() => usd.of(3).dividedBy(eur.of(2)))).toBe(
      "currency: USD and EUR do not combine: exchange one first",
    );
    expect(thrown(() => usd.of(3).lessThan(eur.of(2)))).toBe(
      "currency: USD and EUR do not combine: exchange one first",
    );
    expect(thrown(() => usd.of(3).in(eur))).toBe(
      "currency: USD and EUR do not combine: exchange one first",
    );
  });
});

describe("a quantity in plain JavaScript", () => {
  const head = metre.of(33.5);
  it("prints where text is wanted", () => {
    expect(String(head)).toBe("33.5 m");
    expect(`at ${untyped(head) as string}`).toBe("at 33.5 m");
    expect((untyped(head) as string) + " of fall").toBe("33.5 m of fall");
    expect([head].join()).toBe("33.5 m");
  });

  it("is not a number", () => {
    expect(thrown(() => (untyped(head) as number) * 2)).toMatch(
      /^kind: 33.5 m is not a plain number/u,
    );
    expect(thrown(() => Math.max(untyped(head)))).toMatch(/^kind: 33.5 m is not a plain number/u);
    expect(thrown(() => untyped(head) > 3)).toMatch(/^kind: 33.5 m is not a plain number/u);
  });

  it("is known by its mark", () => {
    expect(isQuantity(head)).toBe(true);
    expect([undefined, null, 3, "3 m", {}, metre].map(isQuantity)).toEqual([
      false,
      false,
      false,
      false,
      false,
      false,
    ]);
  });
});

describe("uncertainty", () => {
  // Half of a 95 % interval over 1.96 (GUM, JCGM 100:2008, table G.1); a rectangle's half width over √3 (its 4.3.7).
  it("takes ± as 95 % of a normal, and a limit as a rectangle", () => {
    expect(
      metre.of(110).plusMinus(metre.of(1.96), "tape").standardUncertainty().in(metre),
    ).toBeCloseTo(1, 4);
    expect(
      metre
        .of(110)
        .within(metre.of(Math.sqrt(3)), "tape")
        .standardUncertainty()
        .in(metre),
    ).toBeCloseTo(1, 12);
  });

  const any = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
  it("is none in y − y and in y ÷ y, exactly", () => {
    fc.assert(
      fc.property(any, any, any, (value, half, other) => {
        const x = metre.of(value).plusMinus(metre.of(half), "a").plusMinus(metre.of(other), "b");
        const y = x.times(second.of(other)).dividedBy(metrePerSecond.of(value)).squared();
        for (const none of [y.minus(y), y.dividedBy(y), x.minus(x), x.dividedBy(x)]) {
          expect(none.sources().size).toBe(0);
          expect(none.standardUncertainty().in(coherentUnit(none.kind as string) as never)).toBe(0);
        }
      }),
    );
  });

  it("adds in squares where sources differ, and plainly where they are shared", () => {
    const at = (source: string) => metre.of(10).plusMinus(metre.of(1), source);
    const u = at("a").standardUncertainty().in(metre);
    expect(at("a").plus(at("b")).standardUncertainty().in(metre)).toBeCloseTo(u * Math.SQRT2, 12);
    expect(at("a").plus(at("a")).standardUncertainty().in(metre)).toBeCloseTo(2 * u, 12);
    // A product of two equal correlated values has twice the relative uncertainty, their ratio none.
    expect(at("a").times(at("a")).standardUncertainty().in(squareMetre)).toBeCloseTo(20 * u, 12);
  });

  it("goes through products and roots as the derivative says", () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        const relative = (q: Quantity<string>, si: number) =>
          (q.sources().get("s") as Quantity<string>)["~si"] / si;
        const x = metre.of(a).plusMinus(metre.of(a * 0.01), "s");
        const r = relative(x as never, a);
        expect(relative(x.times(second.of(b)) as never, a * b) / r).toBeCloseTo(1, 9);
        expect(relative(second.of(b).dividedBy(x) as never, b / a) / r).toBeCloseTo(-1, 9);
        expect(relative(x.squared() as never, a * a) / r).toBeCloseTo(2, 9);
        expect(relative(x.sqrt() as never, Math.sqrt(a)) / r).toBeCloseTo(0.5, 9);
      }),
    );
  });
});

describe("exponents", () => {
  // The oracle adds exponents as plain numbers, in no packed field that could overflow.
  const named: [Unit<never>, MathUnit][] = [
    [metre as never, math.unit("m")],
    [coherentUnit("mass") as never, math.unit("kg")],
    [second as never, math.unit("s")],
    [ampere as never, math.unit("A")],
    [coherentUnit("force") as never, math.unit("N")],
    [coherentUnit("voltage") as never, math.unit("V")],
    [coherentUnit("capacitance") as never, math.unit("F")],
    [coherentUnit("temperature difference") as never, math.unit("K")],
  ];
  const order = ["LENGTH", "MASS", "TIME", "CURRENT", "TEMPERATURE"];
  const exponentsIn = (value: MathUnit): number[] => {
    const { dimensions } = value as unknown as { dimensions: number[] };
    const names = (math as unknown as { Unit: { BASE_DIMENSIONS: string[] } }).Unit.BASE_DIMENSIONS;
    return order.map((name) => dimensions[names.indexOf(name)] ?? 0);
  };

  it("are those of mathjs, or refused beyond ±5", () => {
    let refused = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(named.length - 1), fc.boolean()), { minLength: 1, maxLength: 12 }),
        (factors) => {
          let ours: Quantity<string> = one.of(1) as never;
          let theirs = math.unit("m").divide(math.unit("m")) as unknown as MathUnit;
          let sum = order.map(() => 0);
          for (const [at, up] of factors) {
            const [q, m] = named[at] as (typeof named)[number];
            sum = sum.map((e, i) => e + (up ? 1 : -1) * (exponentsIn(m)[i] as number));
            const step = () => (up ? ours.times(q.of(1)) : ours.dividedBy(q.of(1)));
            if (sum.some((e) => Math.abs(e) > 5)) {
              refused += 1;
              expect(thrown(step)).toMatch(/^exponent: .* has an exponent beyond 5$/u);
              return;
            }
            ours = step();
            theirs = (up ? math.multiply(theirs, m) : math.divide(theirs, m)) as MathUnit;
          }
          if (theirs instanceof (math as unknown as { Unit: typeof Object }).Unit)
            expect(exponentsIn(theirs)).toEqual(sum);
          expect(exponentsOf(ours.kind).slice(0, 5)).toEqual(sum);
        },
      ),
      { numRuns: 2000, seed: 7 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});

describe("velocity head", () => {
  it("has the form that hydraulics gives it: v²/2g", () => {
    const g = coherentUnit("acceleration").of(9.81);
    const head = metrePerSecond.of(2).squared().dividedBy(g.times(2));
    expect(head).toMatchObject({ kind: "length" });
    expect(head.in(metre)).toBeCloseTo(4 / 19.62, 12);
  });
});
