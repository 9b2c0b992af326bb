// Random expressions, worked out by this package and by mathjs. mathjs has an angle among its base
// dimensions, but counts a torque as an energy: here it is given the radian that it lacks. Where
// mathjs rounds a factor, the unit is spelled from exact ones, and the rounding is shown below.
import * as quantity from "@leat/quantity";
import { currency, exponentsOf, type Quantity, type Unit } from "@leat/quantity";
import fc from "fast-check";
import { all, create, type Unit as MathUnit } from "mathjs";
import { describe, expect, it } from "vitest";

import { table } from "./table.ts";
import { thrown } from "./thrown.ts";

const math = create(all!);
math.createUnit("USD");

/** How mathjs spells a unit, where not by the same symbol. */
const spelled: Record<string, string> = {
  kft: "1000 ft",
  "m²": "1 m^2",
  "mm²": "1 mm^2",
  "cm²": "1 cm^2",
  "km²": "1 km^2",
  ha: "1 hectare",
  "in²": "1 in^2",
  "ft²": "1 ft^2",
  acre: "43560 ft^2",
  "mi²": "1 mi^2",
  "m³": "1 m^3",
  gal: "1 gallon",
  "imp gal": "4.54609 L",
  "ft³": "1 ft^3",
  "acre-ft": "43560 ft^3",
  "m³/s": "1 m^3/s",
  "L/min": "1 L/minute",
  "m³/h": "1 m^3/hour",
  "m³/d": "1 m^3/day",
  "gal/min": "1 gallon/minute",
  "gal/d": "1 gallon/day",
  "ft³/s": "1 ft^3/s",
  "m/s²": "1 m/s^2",
  "ft/s²": "1 ft/s^2",
  "m²/s": "1 m^2/s",
  "mm²/s": "1 mm^2/s",
  t: "1 tonne",
  lb: "1 lbm",
  "kg/m³": "1 kg/m^3",
  "lb/ft³": "1 lbm/ft^3",
  "lb/ft": "1 lbm/ft",
  min: "1 minute",
  h: "1 hour",
  d: "1 day",
  yr: "1 year",
  psi: "1 lbf/in^2",
  ksi: "1000 lbf/in^2",
  inHg: "(13595.1 kg/m^3) * (9.80665 m/s^2) * (1 in)",
  Pa·s: "1 Pa s",
  mPa·s: "1 mPa s",
  Btu: "1 BTU",
  VA: "1 V A",
  kVA: "1 kV A",
  hp: "550 ft lbf/s",
  "metric hp": "75 kgf m/s",
  "°": "1 deg",
  rpm: "1 cycle/minute",
  N·m: "1 N m/rad",
  lbf·ft: "1 lbf ft/rad",
  Ah: "1 A hour",
  Ω: "1 ohm",
  mΩ: "1 mohm",
  "Ω/m": "1 ohm/m",
  "Ω/km": "1 ohm/km",
  "Ω/kft": "1 ohm/(1000 ft)",
  Ω·m: "1 ohm m",
  "µS/cm": "1 uS/cm",
  "µS·s/cm": "1 uS s/cm",
  "(mg/L)/(µS/cm)": "1 (mg/L)/(uS/cm)",
  "L/(s·km²)": "1 L/(s km^2)",
  "mm/yr": "1 mm/year",
  µF: "1 uF",
  "V/krpm": "1 V minute/(1000 cycle)",
  "1/K": "1 K^-1",
  "J/(kg·K)": "1 J/(kg K)",
  "1": "1",
  "%": "0.01",
  each: "1",
};

interface Leaf {
  name: string;
  kind: string;
  ours: Unit<string>;
  theirs: MathUnit | number;
}

const usd = currency("USD");
const leaves: Leaf[] = [
  ...table.units.map(([name, kind, symbol]) => ({
    name,
    kind,
    ours: (quantity as unknown as Record<string, Unit<string>>)[name] as Unit<string>,
    theirs: math.evaluate(spelled[symbol] ?? `1 ${symbol}`) as MathUnit | number,
  })),
  { name: "USD", kind: "money", ours: usd as unknown as Unit<string>, theirs: math.unit("1 USD") },
  {
    name: "USD/ft",
    kind: "price per length",
    ours: usd.per(quantity.foot) as unknown as Unit<string>,
    theirs: math.evaluate("1 USD/ft") as MathUnit,
  },
  {
    name: "USD/kWh",
    kind: "price per energy",
    ours: usd.per(quantity.kilowattHour) as unknown as Unit<string>,
    theirs: math.evaluate("1 USD/kWh") as MathUnit,
  },
];

const order = ["LENGTH", "MASS", "TIME", "CURRENT", "TEMPERATURE", "USD_STUFF", "ANGLE"];
const places = order.map((name) =>
  (math as unknown as { Unit: { BASE_DIMENSIONS: string[] } }).Unit.BASE_DIMENSIONS.indexOf(name),
);

const exponents = (theirs: MathUnit | number): number[] => {
  if (typeof theirs === "number") return order.map(() => 0);
  const { dimensions } = theirs as unknown as { dimensions: number[] };
  return places.map((at) => dimensions[at] ?? 0);
};
const coherent = (theirs: MathUnit | number): number =>
  typeof theirs === "number" ? theirs : (theirs as unknown as { value: number }).value;

type Expression =
  | { op: "leaf"; at: number; value: number }
  | { op: "times" | "over" | "plus"; a: Expression; b: Expression }
  | { op: "root" | "twice"; a: Expression };

/** The same expression in other units and other numbers: what may be added to it. */
function sibling(e: Expression, turn: number): Expression {
  switch (e.op) {
    case "leaf": {
      const alike = leaves.flatMap(({ kind }, at) => (kind === leaves[e.at]?.kind ? [at] : []));
      return {
        op: "leaf",
        at: alike[(alike.indexOf(e.at) + turn) % alike.length] as number,
        value: (e.value * (turn + 2)) / 3,
      };
    }
    case "root":
    case "twice":
      return { op: e.op, a: sibling(e.a, turn) };
    default:
      return { op: e.op, a: sibling(e.a, turn), b: sibling(e.b, turn) };
  }
}

const { expression } = fc.letrec<{ expression: Expression; leaf: Expression }>((tie) => ({
  leaf: fc.record({
    op: fc.constant("leaf" as const),
    at: fc.nat(leaves.length - 1),
    value: fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
  }),
  expression: fc.oneof(
    { maxDepth: 4, depthSize: "medium" },
    tie("leaf"),
    fc.record({
      op: fc.constantFrom("times" as const, "over" as const),
      a: tie("expression"),
      b: tie("expression"),
    }),
    fc.record({ op: fc.constantFrom("root" as const, "twice" as const), a: tie("expression") }),
    fc
      .tuple(tie("expression"), fc.integer({ min: 1, max: 5 }))
      .map(([a, turn]) => ({ op: "plus" as const, a, b: sibling(a, turn) })),
  ),
}));

class BeyondTheRange extends Error {}

/** Both answers. Where mathjs has an exponent that this package refuses, it must refuse it at that step. */
function both(e: Expression): { ours: Quantity<string>; theirs: MathUnit | number } {
  if (e.op === "leaf") {
    const { ours, theirs } = leaves[e.at] as Leaf;
    return { ours: ours.of(e.value), theirs: math.multiply(theirs as number, e.value) };
  }
  const a = both(e.a);
  if (!("b" in e)) {
    const theirs = (
      e.op === "root" ? math.sqrt(a.theirs as number) : math.square(a.theirs as number)
    ) as MathUnit | number;
    return step(() => (e.op === "root" ? a.ours.sqrt() : a.ours.squared()), theirs);
  }
  const b = both(e.b);
  const [x, y] = [a.theirs as number, b.theirs as number];
  switch (e.op) {
    case "times":
      return step(() => a.ours.times(b.ours), math.multiply(x, y));
    case "over":
      return step(() => a.ours.dividedBy(b.ours), math.divide(x, y));
    default:
      return step(() => a.ours.plus<string>(b.ours), math.add(x, y));
  }
}

function step(ours: () => Quantity<string>, theirs: MathUnit | number): ReturnType<typeof both> {
  if (exponents(theirs).some((e) => Math.abs(e) > 5 || !Number.isInteger(2 * e))) {
    expect(thrown(ours)).toMatch(/^exponent: /u);
    throw new BeyondTheRange();
  }
  return { ours: ours(), theirs };
}

describe("random expressions", () => {
  it("have the value and the dimension that mathjs finds", () => {
    const met = {
      compared: 0,
      beyond: 0,
      leaves: new Set<number>(),
      ops: {} as Record<string, number>,
    };
    const visit = (e: Expression): void => {
      met.ops[e.op] = (met.ops[e.op] ?? 0) + 1;
      if (e.op === "leaf") met.leaves.add(e.at);
      if ("a" in e) visit(e.a);
      if ("b" in e) visit(e.b);
    };
    fc.assert(
      fc.property(expression, fc.option(fc.integer({ min: 1, max: 5 })), (e, turn) => {
        try {
          const left = both(e);
          let { ours, theirs } = left;
          let size = Math.abs(coherent(theirs));
          // A difference only at the end: what it cancels is lost to both.
          if (turn !== null) {
            const right = both(sibling(e, turn));
            size += Math.abs(coherent(right.theirs));
            ({ ours, theirs } = {
              ours: ours.minus<string>(right.ours),
              theirs: math.subtract(theirs as number, right.theirs as number),
            });
          }
          expect(exponentsOf(ours.kind)).toEqual(exponents(theirs));
          expect(Math.abs(ours["~si"] - coherent(theirs))).toBeLessThanOrEqual(1e-12 * size);
          visit(e);
          met.compared += 1;
        } catch (error) {
          if (!(error instanceof BeyondTheRange)) throw error;
          met.beyond += 1;
        }
      }),
      { numRuns: 3000, seed: 1882 },
    );
    expect(met.compared).toBeGreaterThanOrEqual(2000);
    expect(met.beyond).toBeGreaterThan(50);
    expect(met.leaves.size).toBe(leaves.length);
    expect(
      Math.min(...["times", "over", "root", "twice", "plus"].map((op) => met.ops[op] ?? 0)),
    ).toBeGreaterThan(200);
    console.log(
      `oracle: ${met.compared} expressions compared with mathjs, ${met.beyond} refused for an exponent beyond the range`,
    );
  });
});

describe("every unit", () => {
  it.each(leaves)("is that of mathjs: $name", ({ kind, ours, theirs }) => {
    expect(ours.toSI(1) / coherent(theirs)).toBeCloseTo(1, 14);
    expect(exponentsOf(kind)).toEqual(exponents(theirs));
  });

  // mathjs 15.2 has 4046.86 m², 6894.75729276459 Pa, 745.6998715386 W and 133.322 Pa.
  it.each([
    [quantity.acre, "1 acre", 9e-7],
    [quantity.poundPerSquareInch, "1 psi", 6e-11],
    [quantity.horsepower, "1 hp", 6e-11],
    [quantity.inchOfMercury, "25.4 mmHg", 3e-6],
  ] as [Unit<string>, string, number][])(
    "of these is rounded by mathjs: %s",
    (ours, text, most) => {
      const off = Math.abs(ours.toSI(1) / coherent(math.unit(text)) - 1);
      expect(off).toBeGreaterThan(1e-12);
      expect(off).toBeLessThan(most);
    },
  );
});
