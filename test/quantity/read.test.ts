import {
  type AnyPoint,
  type AnyQuantity,
  celsius,
  coherentUnit,
  currency,
  exponentsOf,
  fahrenheit,
  foot,
  format,
  inch,
  isPoint,
  metre,
  millimetre,
  percent,
  poundPerSquareInch,
  QuantityError,
} from "@leat/quantity";
import { read, type ReadOptions, unitOf } from "@leat/quantity/text";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { table } from "./table.ts";
import { thrown, untyped } from "./thrown.ts";

/** Number, unit and kind or origin, as they were read. */
function said(value: AnyQuantity | AnyPoint): string {
  return isPoint(value)
    ? `${value.toString()} [${value.origin}]`
    : `${value.toString()} [${value.kind}]`;
}

describe("field text", () => {
  it.each([
    [`3 1/2"`, "3.5 in [length]"],
    ["3-1/2 in", "3.5 in [length]"],
    ["3½ in", "3.5 in [length]"],
    ["½ in", "0.5 in [length]"],
    ["1/2 in", "0.5 in [length]"],
    ["16 in", "16 in [length]"],
    ["1/3 hp", `${1 / 3} hp [power]`.replace("0.3333333333333333", "0.333333333333333")],
    [`5'-7 1/4"`, "67.25 in [length]"],
    [`5' 7"`, "67 in [length]"],
    ["5′ 7″", "67 in [length]"],
    ["5 ft 7 1/4 in", "67.25 in [length]"],
    [`-5'-7"`, "-67 in [length]"],
    ["110 ft", "110 ft [length]"],
    ["110 ft.", "110 ft [length]"],
    ["−2.5 m", "-2.5 m [length]"],
    ["+2.5 meters", "2.5 m [length]"],
    ["-0 m", "0 m [length]"],
    ["1.2e3 m", "1200 m [length]"],
    [".5 m", "0.5 m [length]"],
    ["15.5 A", "15.5 A [current]"],
    ["12 L/s", "12 L/s [volume flow]"],
    ["315 gal/min", "315 gal/min [volume flow]"],
    ["315 gallons per minute", "315 gal/min [volume flow]"],
    ["315 gpm", "315 gal/min [volume flow]"],
    ["12 imp gal", "12 imp gal [volume]"],
    ["3 m3/h", "3 m³/h [volume flow]"],
    ["3 m^3/h", "3 m³/h [volume flow]"],
    ["3.20 USD/ft", "3.2 USD/ft [price per length]"],
    ["12 USD each", "12 USD/each [money]"],
    ["0.11 EUR/kWh", "0.11 EUR/kWh [price per energy]"],
    ["4186 J/(kg·K)", "4186 J/(kg·K) [specific heat]"],
    ["4186 J/(kg*K)", "4186 J/(kg·K) [specific heat]"],
    ["1.2 ft^0.5/s", "1.2 ft^0.5/s [m^0.5·s^-1]"],
    ["2 s⁻¹", "2 s^-1 [frequency]"],
    ["3 /s", "3 1/s [frequency]"],
    ["0.4 Ω/1000 ft", "0.4 Ω/1000 ft [resistance per length]"],
    ["5 \u2126", "5 Ω [resistance]"],
    ["50 \u03bcS/cm", "50 µS/cm [conductivity]"],
    ["45°", "45° [angle]"],
    ["5 K", "5 K [temperature difference]"],
    ["20 C", "20 C [charge]"],
    ["50 psi", "50 psi [pressure]"],
    ["50 psig", "50 psi over local atmosphere [local atmosphere]"],
    ["50 psi gauge", "50 psi over local atmosphere [local atmosphere]"],
    ["50 psia", "50 psi over vacuum [vacuum]"],
    ["250 kPa(g)", "250 kPa over local atmosphere [local atmosphere]"],
    ["250 kPag", "250 kPa over local atmosphere [local atmosphere]"],
    ["-0.2 barg", "-0.2 bar over local atmosphere [local atmosphere]"],
    ["0.9 bara", "0.9 bar over vacuum [vacuum]"],
    ["72 °F", "72 °F [absolute zero]"],
    ["21.5\u00a0°C", "21.5 °C [absolute zero]"],
    ["21.5 ℃", "21.5 °C [absolute zero]"],
    ["21.5 degC", "21.5 °C [absolute zero]"],
    ["1,250 ft", "1250 ft [length]"],
    ["1,250.5 gal", "1250.5 gal [volume]"],
    ["1\u202f250 m", "1250 m [length]"],
  ])("reads %s", (text, expected) => {
    expect(said(read(text))).toBe(expected);
  });

  it("gives back the number that was written", () => {
    expect(read("110 ft").in(foot)).toBe(110);
    expect(read(`5'-7 1/4"`, "length").in(inch)).toBe(67.25);
    expect(read("72 °F", "absolute zero").in(fahrenheit)).toBe(72);
    expect(read("72 °F", "absolute zero").in(celsius)).toBeCloseTo(22.222222, 6);
    expect(read("85 %", "efficiency").in(percent)).toBe(85);
  });

  it("is taken as a kind of the quantity", () => {
    expect(read("110 ft", "gross head")).toMatchObject({ kind: "gross head" });
    expect(read("0.85", "efficiency")).toMatchObject({ kind: "efficiency" });
    expect(read("12", "count")).toMatchObject({ kind: "count" });
  });

  it("is taken as a point", () => {
    expect(said(read("5 K", "absolute zero"))).toBe("5 K [absolute zero]");
    expect(said(read("50 psi", "local atmosphere", { instance: "jet" }))).toBe(
      "50 psi over jet [local atmosphere]",
    );
    expect(read("12.5 m", "site datum", { instance: "peg 1" })).toMatchObject({
      origin: "site datum",
      instance: "peg 1",
    });
    expect(read("0.42 m", "staff zero", { instance: "bridge" }).in(metre)).toBe(0.42);
  });

  it("groups and marks decimals as the survey says", () => {
    expect(read("1,5 m", "length", { decimalMark: "," }).in(metre)).toBe(1.5);
    expect(read("1.250,5 m", "length", { decimalMark: "," }).in(metre)).toBe(1250.5);
    expect(read("1,250 m", "length", { decimalMark: "." }).in(metre)).toBe(1250);
    expect(read("1,250 ft", "length", { decimalMark: "," }).in(foot)).toBe(1.25);
  });

  it("keeps the reading", () => {
    expect(read(" 3 1/2 in ").reading()).toEqual({
      text: "3 1/2 in",
      resolution: 0.5,
      assumed: true,
    });
    expect(read("15.50 A").reading()).toEqual({ text: "15.50 A", resolution: 0.01, assumed: true });
    expect(read("1.2e3 m").reading()).toMatchObject({ resolution: 100 });
    expect(read(`5'-7 1/4"`).reading()).toMatchObject({ resolution: 0.25 });
    expect(read("50 psi").reading()).toMatchObject({ question: "gauge or absolute?" });
    expect(read("50 psig").reading()).not.toHaveProperty("question");
    expect(read("50 psi", "local atmosphere").reading()).not.toHaveProperty("question");
  });

  it("takes the resolution from the instrument that is named", () => {
    const ruler = { resolution: { value: 1 / 8, unit: "in" } };
    expect(read("3 1/2 in", ruler).reading()).toMatchObject({ resolution: 0.125, assumed: false });
    expect(
      read("3 1/2 in", "length", { resolution: millimetre.of(1) }).reading()?.resolution,
    ).toBeCloseTo(1 / 25.4, 12);
    expect(
      read("72 °F", { resolution: { value: 1, unit: "°C" } }).reading()?.resolution,
    ).toBeCloseTo(1.8, 12);
  });
});

describe("± in field text", () => {
  it.each([
    ["110 ± 2 ft", 2, "normal"],
    ["110 ft ± 2 ft", 2, "normal"],
    ["110 ft ± 24 in", 2, "normal"],
    ["110 +/- 2 ft", 2, "normal"],
    ["(110 ± 2) ft", 2, "normal"],
    ["110 ± 2 ft (k = 1.96)", 2, "normal"],
    ["110 ft ± 2 %", 2.2, "normal"],
    ["110 ft max 2 ft", 2, "rectangle"],
    ["110 ± max 2 ft", 2, "rectangle"],
  ] as const)("is read from %s", (text, half, shape) => {
    const head = read(text, "gross head", { source: "level" });
    expect(head.in(foot)).toBe(110);
    expect(head.reading()?.spread?.half).toBeCloseTo(half, 12);
    expect(head.reading()?.spread?.shape).toBe(shape);
    const k = shape === "normal" ? 1.959963984540054 : Math.sqrt(3);
    expect(head.standardUncertainty().in(foot)).toBeCloseTo(half / k, 12);
    expect([...head.sources().keys()]).toEqual(["level"]);
  });

  it("is a difference for a temperature", () => {
    for (const text of ["72 ± 2 °F", "72 °F ± 2 °F"]) {
      expect(
        read(text, "absolute zero")
          .standardUncertainty()
          .in(coherentUnit("temperature difference")),
      ).toBeCloseTo((2 * 5) / 9 / 1.96, 4);
    }
    expect(read("20 °C ± 0.5 K", "absolute zero").reading()?.spread?.half).toBe(0.5);
  });

  it("is in percentage points after a percentage", () => {
    expect(read("85 % ± 2 %", "efficiency").reading()?.spread?.half).toBe(2);
    expect(read("0.85 ± 0.02", "efficiency").reading()?.spread?.half).toBe(0.02);
  });

  it("has the text for its source where none is named, so that a reading written twice is one", () => {
    const [once, again] = [read("110 ± 2 ft", "length"), read("110 ± 2 ft", "length")];
    expect(once.minus(again).standardUncertainty().in(metre)).toBe(0);
    expect(read("110 ± 0 ft", "length").sources().size).toBe(0);
  });
});

describe("refusals", () => {
  const cases: [
    text: string,
    as: string | undefined,
    options: ReadOptions | undefined,
    message: string,
  ][] = [
    ["", undefined, undefined, "empty: field text is empty"],
    [" \t\u00a0", undefined, undefined, "empty: field text is empty"],
    ["1".repeat(201), undefined, undefined, "too-long: field text is longer than 200 characters"],
    ["about 5 m", undefined, undefined, "no-number: about 5 m does not begin with a number"],
    ["NaN m", undefined, undefined, "no-number: NaN m does not begin with a number"],
    ["Infinity m", undefined, undefined, "no-number: Infinity m does not begin with a number"],
    ["± 2 ft", undefined, undefined, "no-number: nothing does not begin with a number"],
    ["1e400 m", undefined, undefined, "not-finite: 1e400 m is beyond what a number holds"],
    ["1e-400 m", undefined, undefined, "not-finite: 1e-400 m is beyond what a number holds"],
    ["1e308 km", undefined, undefined, "not-finite: 1e308 km is beyond what a number holds"],
    ["110", undefined, undefined, "no-unit: 110 has no unit"],
    [
      "110",
      "area",
      undefined,
      "no-unit: 110 has no unit: area takes m², mm², cm², km², ha, in², ft², acre, mi²",
    ],
    ["110 ft ± 2", undefined, undefined, "no-unit: ± 2 has no unit"],
    ["110 ft ± -2 ft", undefined, undefined, "number: ± -2 ft is negative"],
    ["110 ± 2 %", undefined, undefined, "ambiguous: 110 ± %: write the unit of 110"],
    [
      "20 °C ± 2 %",
      undefined,
      undefined,
      "ambiguous: 20 °C ± 2 %: a percentage of a temperature depends on its zero",
    ],
    ["110 ft ± 2 psi", undefined, undefined, "kind: 2 psi (pressure) does not go with ft (length)"],
    [
      "12 USD ± 1 EUR",
      undefined,
      undefined,
      "currency: EUR and USD do not combine: exchange one first",
    ],
    ["12 fet", undefined, undefined, "unknown-unit: fet is not a unit; the nearest is ft"],
    ["50 Psi", undefined, undefined, "unknown-unit: Psi is not a unit; the nearest is psi"],
    ["12 gal/minit", undefined, undefined, "unknown-unit: minit is not a unit; the nearest is min"],
    ["12 (m", undefined, undefined, "unknown-unit: (m is not a unit; the nearest is m"],
    ["12 m)", undefined, undefined, "unknown-unit: m) is not a unit; the nearest is m"],
    ["12 m/", undefined, undefined, "unknown-unit: nothing is not a unit; the nearest is m"],
    ["12 m^9", undefined, undefined, "exponent: m^9: exponents go from -5 to 5 in halves"],
    ["12 m^0.3", undefined, undefined, "exponent: m^0.3: exponents go from -5 to 5 in halves"],
    [
      "1 J/kg·K",
      undefined,
      undefined,
      "ambiguous: J/kg·K: put what is below the line in parentheses",
    ],
    [
      "1,5 m",
      undefined,
      undefined,
      "ambiguous: 1,5 can be read in two ways: say which is the decimal mark",
    ],
    [
      "1,250 m",
      undefined,
      undefined,
      "ambiguous: 1,250 can be read in two ways: say which is the decimal mark",
    ],
    [
      "1,5 ft",
      undefined,
      undefined,
      "ambiguous: 1,5 can be read in two ways: say which is the decimal mark",
    ],
    [
      "1.5 m",
      undefined,
      { decimalMark: "," },
      "ambiguous: 1.5 can be read in two ways: say which is the decimal mark",
    ],
    [
      "3 miner's inches",
      undefined,
      undefined,
      "ambiguous: miner's inches: a miner's inch differs from state to state; write gal/min or ft³/s",
    ],
    ["$3", undefined, undefined, "ambiguous: $3: write the code of the currency, such as USD"],
    [
      "3 $/ft",
      undefined,
      undefined,
      "ambiguous: 3 $/ft: write the code of the currency, such as USD",
    ],
    ["2/0 AWG", undefined, undefined, "size: 2/0 AWG is a size: readSize reads it"],
    ["#2", undefined, undefined, "size: #2 is a size: readSize reads it"],
    ["250 kcmil", undefined, undefined, "size: 250 kcmil is a size: readSize reads it"],
    [
      "12/24 V",
      undefined,
      undefined,
      "number: 12/24 V: 12/24 is not a fraction such as 1/2 or 3/16",
    ],
    [`5' 13"`, undefined, undefined, `number: 5' 13" is not feet and inches`],
    [`5.5' 3"`, undefined, undefined, `number: 5.5' 3" is not feet and inches`],
    ["5' 3 m", undefined, undefined, "number: 5' 3 m is not feet and inches"],
    [
      "110 ft",
      "pressure",
      undefined,
      "kind: 110 ft is a length, and pressure takes Pa, hPa, kPa, MPa, GPa, bar, atm, psi, ksi, inHg",
    ],
    [
      "12 each",
      "efficiency",
      undefined,
      "kind: 12 each is a count, and efficiency takes 1, %, each",
    ],
    [
      "20 C",
      "absolute zero",
      undefined,
      "kind: 20 C is a charge, and a point over absolute zero takes K, °C, °F",
    ],
    [
      "72 °F",
      "temperature difference",
      undefined,
      "origin: 72 °F is a point over absolute zero, and temperature difference is asked for",
    ],
    [
      "50 psig",
      "vacuum",
      undefined,
      "origin: 50 psig is a point over local atmosphere, and vacuum is asked for",
    ],
    ["-1 psia", undefined, undefined, "not-finite: -6894.75729316836 Pa is below vacuum"],
    ["3 m", "nonsense", undefined, "kind: nonsense is not a kind of quantity"],
    [
      "3 m",
      undefined,
      { resolution: { value: 0, unit: "m" } },
      "number: a resolution of 0 m is not a step",
    ],
    [
      "3 m",
      undefined,
      { resolution: { value: 1, unit: "s" } },
      "kind: 1 s (time) does not go with m (length)",
    ],
  ];
  it.each(cases)("%s as %s with %o", (text, as, options, message) => {
    expect(thrown(() => (as === undefined ? read(text, options) : read(text, as, options)))).toBe(
      message,
    );
  });

  it("take no options for none", () => {
    expect(said(read("3 m", untyped(null)))).toBe("3 m [length]");
    expect(said(read("3 m", "length", untyped(null)))).toBe("3 m [length]");
    expect(thrown(() => read("3 m", untyped(7)))).toMatch(/^kind: /);
    expect(thrown(() => read("3 m", { resolution: { value: untyped("1"), unit: "m" } }))).toBe(
      "number: a resolution of 1 m is not a step",
    );
  });

  it("are of this package also where the text is no text", () => {
    expect(thrown(() => read(untyped(12)))).toBe("no-number: field text is a string, not number");
    expect(thrown(() => read(untyped(null)))).toBe("no-number: field text is a string, not object");
    expect(thrown(() => unitOf(untyped(undefined)))).toBe(
      "no-number: field text is a string, not undefined",
    );
  });
});

describe("unitOf", () => {
  it("knows each unit of the table by its symbol and its words", () => {
    for (const [, kind, symbol, , also] of table.units) {
      for (const word of [symbol, ...also])
        expect([word, unitOf(word)]).toMatchObject([word, { kind, symbol }]);
    }
  });

  it("knows the coherent unit of each kind", () => {
    for (const { name } of table.kinds) {
      const { symbol } = coherentUnit(name, "USD");
      const unit = unitOf(symbol);
      expect([name, exponentsOf(unit.kind), unit.toSI(1)]).toEqual([name, exponentsOf(name), 1]);
    }
  });

  it("reads its own symbols again", () => {
    for (const unit of [
      currency("USD").per(unitOf("kW").times(unitOf("h"))),
      unitOf("J/(kg·K)").per(unitOf("m/s")),
      unitOf("m/s").times(unitOf("(kg·K)^-1")),
      unitOf("(ft/s)^2/(in·lb)^0.5"),
    ]) {
      const again = unitOf(unit.symbol);
      expect(again).toMatchObject({
        kind: unit.kind,
        symbol: unit.symbol,
        currency: unit.currency,
      });
      expect(again.toSI(1)).toBeCloseTo(unit.toSI(1), 12);
    }
    expect(currency("USD").per(unitOf("kW").times(unitOf("h"))).symbol).toBe("USD/(kW·h)");
  });

  it("refuses what has a zero of its own", () => {
    expect(thrown(() => unitOf("°C"))).toBe(
      "unknown-unit: °C is not a unit of a quantity, but of a point",
    );
    expect(thrown(() => unitOf("psig"))).toBe(
      "unknown-unit: psig is not a unit of a quantity, but of a point",
    );
  });
});

describe("random text", () => {
  const words = table.units.flatMap(([, , symbol, , also]) => [symbol, ...also]);
  const bits = fc.constantFrom(
    ...Array.from("0123456789.,+-−/±'\"′″½¾°^²³·*() \t%#$e"),
    "1/2",
    "3 1/2",
    " max ",
    "e4",
    "e400",
    "1,250",
    "1.5",
    "+/-",
    " per ",
    "psig",
    "kPa(g)",
    "AWG",
    "kcmil",
    "USD",
    "EUR",
    "°C",
    "°F",
    "(k = 1.96)",
    ...words,
  );
  const text = fc.oneof(
    fc.string({ unit: "binary", maxLength: 30 }),
    fc.string({ maxLength: 210 }),
    fc.string({ unit: fc.oneof(bits), maxLength: 12 }),
    fc
      .tuple(fc.integer(), fc.string({ unit: bits, maxLength: 3 }))
      .map(([n, rest]) => `${n} ${rest}`),
    fc
      .tuple(
        fc.oneof(fc.double({ noNaN: true }), fc.nat()),
        fc.constantFrom("", " ", "-"),
        fc.constantFrom(...words),
        fc.constantFrom("", "", " ± 2", " max 1/2", "/", "·", "^0.5"),
        fc.constantFrom("", "", ...words),
      )
      .map((parts) => parts.join("")),
  );
  const as = fc.option(
    fc.constantFrom(
      "gross head",
      "pressure",
      "efficiency",
      "absolute zero",
      "vacuum",
      "constructor",
    ),
    { nil: undefined, freq: 1 },
  );
  const mark = fc.constantFrom(undefined, "." as const, "," as const);

  it("is read, or refused with the one error; what is read is finite", () => {
    let reads = 0;
    fc.assert(
      fc.property(text, as, mark, (line, kind, decimalMark) => {
        try {
          const value =
            kind === undefined ? read(line, { decimalMark }) : read(line, kind, { decimalMark });
          if (!Number.isFinite(value.toJSON().q)) throw new Error(`${line} is not finite`);
          reads++;
        } catch (error) {
          if (!(error instanceof QuantityError) || error.message.includes("\n")) throw error;
        }
      }),
      { numRuns: 100_000 },
    );
    // The texts are near enough to the grammar to get through it.
    expect(reads).toBeGreaterThan(5000);
  }, 30_000);

  it("written by format is read again as it was", () => {
    const number = fc
      .double({ min: 1e-9, max: 1e12, noNaN: true })
      .map((x) => Number(x.toPrecision(12)));
    const unit = fc
      .constantFrom(...table.units.map(([, , symbol]) => symbol), "J/(kg·K)", "USD/ft", "m^0.5/s")
      .map(unitOf);
    fc.assert(
      fc.property(
        fc.oneof(
          number,
          number.map((x) => -x),
          fc.integer(),
        ),
        unit,
        (x, of) => {
          const value = of.of(x);
          const again = read(format(value, of), of.kind);
          expect(again.in(of)).toBe(Number(x.toPrecision(15)));
          expect(read(format(value, of, { grouping: " " }), of.kind).in(of)).toBe(
            Number(x.toPrecision(15)),
          );
          const spread = value.plusMinus(of.of(0.25), "level");
          expect(
            read(format(spread, of, { plusMinus: true }), of.kind).reading()?.spread?.half,
          ).toBe(0.25);
        },
      ),
      { numRuns: 2000 },
    );
    expect(format(read("50 psig", "local atmosphere"), poundPerSquareInch)).toBe("50 psig");
  });
});
