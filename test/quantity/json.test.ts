import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";

import {
  type AnyPoint,
  type AnyQuantity,
  celsius,
  coherentUnit,
  currency,
  fahrenheit,
  foot,
  gallonPerMinute,
  isPoint,
  isQuantity,
  kelvin,
  litrePerSecond,
  metre,
  millimetre,
  point,
  poundPerSquareInch,
  second,
  unit,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import { fromJSON, pointFromJSON, read } from "@leat/quantity/text";
import { build } from "esbuild";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";
import * as here from "./whole.ts";

const viaText = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const viaClone = (value: { toJSON(): unknown }): unknown => structuredClone(value.toJSON());

/** All that a value is, whichever way it is asked; a coherent unit need not be remembered to be printed. */
function allOf(value: AnyQuantity | AnyPoint): unknown {
  const { "~unit": of, "~number": n, ...rest } = value as AnyQuantity;
  const coherent = of === undefined || of.symbol === value.toJSON().u;
  return { ...rest, ...(!coherent && { of, n }), text: String(value), json: value.toJSON() };
}

/** A second copy of the package, as another dependency brings it along. */
let folder = "";
let there: typeof here;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "two-copies-"));
  const outfile = join(folder, "copy.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("./whole.ts", import.meta.url))],
    conditions: ["@leat/source"],
    bundle: true,
    format: "esm",
    outfile,
    logLevel: "silent",
  });
  there = (await import(/* @vite-ignore */ pathToFileURL(outfile).href)) as typeof here;
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const written: [string, AnyQuantity][] = [
  ["as written", foot.of(110)],
  ["in the coherent unit", metre.of(33.5)],
  ["of a kind", foot.of(110).as("gross head")],
  ["with a reading", read("110 ± 2 ft", "gross head") as AnyQuantity],
  ["with a fraction", read(`3 1/2"`, "length") as AnyQuantity],
  [
    "with sources",
    gallonPerMinute
      .of(315)
      .plusMinus(gallonPerMinute.of(10), "creek/bucket/timing")
      .within(litrePerSecond.of(0.1), "creek/bucket/volume"),
  ],
  ["computed", metre.of(0.1).plus(metre.of(0.2))],
  ["without a name", metre.of(4).sqrt().dividedBy(second.of(3)) as AnyQuantity],
  ["money", currency("USD").of(12.5)],
  ["a price", currency("USD").per(foot).of(3.2)],
  ["an unnamed price", currency("NZD").of(3).dividedBy(metre.of(7).squared()) as AnyQuantity],
  ["a rounding error", foot.of(0.1).times(3)],
];

describe("a quantity", () => {
  it.each(written)("%s comes back as it went", (_, value) => {
    for (const json of [viaText(value), viaClone(value)]) {
      const back = fromJSON(json, value.kind) as AnyQuantity;
      expect(allOf(back)).toEqual(allOf(value));
    }
  });

  // JSON has no negative zero, and the smallest numbers would come to one.
  it("comes back as it went, whatever it is", () => {
    const number = fc
      .double({ min: -1e15, max: 1e15, noNaN: true })
      .filter((n) => Object.is(n, 0) || Math.abs(n) > 1e-99);
    const units = Object.values(here).filter(
      (value) => value instanceof here.Unit,
    ) as here.Unit<string>[];
    const sources = fc.dictionary(
      fc.string({ maxLength: 12 }),
      fc.double({ min: 1e-9, max: 1e3, noNaN: true }),
    );
    fc.assert(
      fc.property(number, fc.constantFrom(...units), sources, (n, of, parts) => {
        let value: AnyQuantity = of.of(n);
        for (const [id, half] of Object.entries(parts))
          value = (value as here.Quantity<string>).plusMinus(coherentUnit(value.kind).of(half), id);
        const back = fromJSON(viaText(value), value.kind);
        expect(allOf(back)).toEqual(allOf(value));
        expect(back.in(of as never)).toBe(n);
      }),
    );
  });

  it("says what it is, for whoever reads the file", () => {
    expect(viaText(foot.of(110).as("gross head"))).toEqual({
      v: 1,
      q: 33.528,
      u: "m",
      k: "gross head",
      w: [110, "ft"],
    });
  });

  it("keeps the value of what was written in a unit of one's own, in the coherent unit", () => {
    const rod = unit("length", "rod", 5.0292);
    expect(String(rod.of(3))).toBe("3 rod");
    const back = fromJSON(viaText(rod.of(3)), "length");
    expect(back.in(rod)).toBe(3);
    expect(String(back)).toBe("15.0876 m");
  });
});

describe("a point", () => {
  const points: [string, AnyPoint][] = [
    ["in degrees", celsius.at(20)],
    ["in degrees Fahrenheit", fahrenheit.at(72).plusMinus(kelvin.of(1), "thermometer")],
    ["in kelvin", point("absolute zero", kelvin.of(293))],
    ["gauge", point("local atmosphere", poundPerSquareInch.of(50), "nozzle")],
    ["read", read("50 psig") as AnyPoint],
    ["of a staff", point("staff zero", millimetre.of(520), "upper staff")],
  ];
  it.each(points)("%s comes back as it went", (_, value) => {
    for (const json of [viaText(value), viaClone(value)]) {
      const back = pointFromJSON(json, value.origin as here.Origin, value.instance);
      expect(allOf(back as AnyPoint)).toEqual(allOf(value));
    }
  });

  it("of any temperature comes back as it went", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -273.15, max: 1e4, noNaN: true }).filter((t) => !Object.is(t, -0)),
        (t) => {
          expect(pointFromJSON(viaText(celsius.at(t)), "absolute zero").in(celsius)).toBe(t);
          expect(pointFromJSON(viaText(fahrenheit.at(t)), "absolute zero").in(fahrenheit)).toBe(t);
        },
      ),
    );
  });

  it("is of whichever instance, where none is asked for", () => {
    expect(pointFromJSON(viaText(points[5]?.[1]), "staff zero").instance).toBe("upper staff");
  });
});

describe("messages", () => {
  const good = viaText(foot.of(110).as("gross head").plusMinus(foot.of(2), "tape")) as Record<
    string,
    unknown
  >;
  const as = (change: object) => () => fromJSON({ ...good, ...change }, "gross head");
  const price = viaText(currency("USD").of(3)) as Record<string, unknown>;
  const money = (change: object) => () => fromJSON({ ...price, ...change }, "money");
  const reading = { text: "110 ft", resolution: 1, assumed: true };
  const staff = viaText(point("staff zero", millimetre.of(520), "upper staff")) as Record<
    string,
    unknown
  >;
  const pt = (change: object, instance?: string) => () =>
    pointFromJSON({ ...staff, ...change }, "staff zero", instance);
  it.each([
    ["json: a quantity of version undefined is not read, only version 1", as({ v: undefined })],
    [
      "json: a quantity of version undefined is not read, only version 1",
      () => fromJSON({ q: 3, u: "m", k: "length" }, "length"),
    ],
    ["json: a quantity of version 2 is not read, only version 1", as({ v: 2 })],
    ["json: a quantity of version 1 is not read, only version 1", as({ v: "1" })],
    ["json: a quantity cannot be null", () => fromJSON(null, "length")],
    ["json: a quantity cannot be 3", () => fromJSON(3, "length")],
    ["json: a quantity cannot be 110 ft", () => fromJSON("110 ft", "length")],
    [
      "json: a quantity of version undefined is not read, only version 1",
      () => fromJSON([good], "length"),
    ],
    [
      "kind: asked for net head, and this is stored as gross head",
      () => fromJSON(good, "net head"),
    ],
    ["kind: asked for length, and this is stored as gross head", () => fromJSON(good, "length")],
    ["kind: asked for gross head, and this is stored as undefined", as({ k: undefined })],
    [
      "kind: sadness is not a kind of quantity",
      () => fromJSON({ ...good, k: "sadness" }, "sadness"),
    ],
    ["kind: m·m is called area", () => fromJSON({ v: 1, q: 1, u: "m·m", k: "m·m" }, "m·m")],
    ["json: the unit of a stored gross head, m, cannot be ft", as({ u: "ft" })],
    ["json: the unit of a stored gross head, m, cannot be undefined", as({ u: undefined })],
    ["json: the unit of a stored gross head, m, cannot be an object", as({ u: ["m"] })],
    ["json: a gross head cannot be null", as({ q: null })],
    ["json: a gross head cannot be Infinity", as({ q: Infinity })],
    ["json: a gross head cannot be 33.5", as({ q: "33.5" })],
    ["json: the unit of a stored money, ¤, cannot be usd", money({ u: "usd" })],
    ["json: the unit of a stored money, ¤, cannot be ¤", money({ u: "¤" })],
    ["json: the unit of a stored money, ¤, cannot be USD/m", money({ u: "USD/m" })],
    ["json: 3 EUR was not written for 3 USD of money", money({ w: [3, "EUR"] })],
    ["json: 110 L/s was not written for 33.528 m of gross head", as({ w: [110, "L/s"] })],
    ["json: 111 ft was not written for 33.528 m of gross head", as({ w: [111, "ft"] })],
    ["json: a written number cannot be 110", as({ w: ["110", "ft"] })],
    ["json: a written unit cannot be 7", as({ w: [110, 7] })],
    ["json: what was written cannot be 110 ft", as({ w: "110 ft" })],
    ["json: a source cannot be 3", as({ s: 3 })],
    ["json: a source cannot be an object", as({ s: { tape: 3 } })],
    [
      "json: a source cannot be tape",
      as({
        s: [
          ["tape", 1],
          ["tape", 2],
        ],
      }),
    ],
    ["json: a source cannot be null", as({ s: [["tape", null]] })],
    ["json: a source cannot be 7", as({ s: [[7, 1]] })],
    ["json: a reading cannot be 110 ft", as({ r: "110 ft" })],
    ["json: the text of a reading cannot be 110", as({ r: { ...reading, text: 110 } })],
    [
      "json: the resolution of a reading cannot be null",
      as({ r: { ...reading, resolution: null } }),
    ],
    ["json: the assumption of a reading cannot be yes", as({ r: { ...reading, assumed: "yes" } })],
    ["json: the question of a reading cannot be why?", as({ r: { ...reading, question: "why?" } })],
    ["json: the spread of a reading cannot be 2", as({ r: { ...reading, spread: 2 } })],
    [
      "json: the shape of a spread cannot be triangle",
      as({ r: { ...reading, spread: { half: 2, shape: "triangle" } } }),
    ],
    [
      "json: half a spread cannot be -",
      as({ r: { ...reading, spread: { half: "-", shape: "normal" } } }),
    ],
    [
      "origin: asked for a point over site datum, and this is stored over staff zero (upper staff)",
      () => pointFromJSON(staff, "site datum"),
    ],
    [
      "origin: asked for a point over staff zero (lower staff), and this is stored over staff zero (upper staff)",
      pt({}, "lower staff"),
    ],
    [
      "origin: asked for a point over staff zero (upper staff), and this is stored over staff zero",
      pt({ i: undefined }, "upper staff"),
    ],
    [
      "origin: sea level is not an origin",
      () => pointFromJSON({ ...staff, o: "sea level" }, untyped("sea level")),
    ],
    [
      "origin: constructor is not an origin",
      () => pointFromJSON({ ...staff, o: "constructor" }, untyped("constructor")),
    ],
    ["json: an instance cannot be 7", pt({ i: 7 })],
    ["json: the unit of a stored length, m, cannot be K", pt({ u: "K" })],
    ["json: a point cannot be NaN", pt({ q: NaN })],
    [
      "json: a point of version undefined is not read, only version 1",
      () => pointFromJSON({ ...staff, v: undefined }, "staff zero"),
    ],
    [
      "not-finite: -3 K is below absolute zero",
      () => pointFromJSON({ v: 1, q: -3, u: "K", o: "absolute zero" }, "absolute zero"),
    ],
    [
      "json: 20 °C was not written for 20 K of temperature difference",
      () =>
        pointFromJSON({ v: 1, q: 20, u: "K", o: "absolute zero", w: [20, "°C"] }, "absolute zero"),
    ],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });

  it("are short, whatever the file holds", () => {
    expect(thrown(as({ u: "m".repeat(1e6) })).length).toBeLessThan(200);
    expect(thrown(as({ k: "m".repeat(1e6) })).length).toBeLessThan(200);
    expect(thrown(pt({ o: "m".repeat(1e6), i: "m".repeat(1e6) })).length).toBeLessThan(300);
    expect(thrown(pt({ o: Object.create(null) as unknown }))).toBe(
      "origin: asked for a point over staff zero, and this is stored over an object (upper staff)",
    );
  });
});

describe("a file that is up to no good", () => {
  it("has no say through a prototype", () => {
    const good = foot.of(110).toJSON();
    expect(
      thrown(() => fromJSON(JSON.parse(`{"__proto__": ${JSON.stringify(good)}}`), "length")),
    ).toBe("json: a quantity of version undefined is not read, only version 1");
    expect(thrown(() => fromJSON(Object.create(good), "length"))).toBe(
      "json: a quantity of version undefined is not read, only version 1",
    );
    const back = fromJSON(JSON.parse(JSON.stringify({ ...good, s: [["__proto__", 1]] })), "length");
    expect([...back.sources().keys()]).toEqual(["__proto__"]);
    expect({}).not.toHaveProperty("q");
  });

  it("is refused by an error of this package, whatever it holds", () => {
    const good = foot.of(110).plusMinus(foot.of(1), "tape").toJSON();
    const keys = ["v", "q", "u", "k", "w", "r", "s"];
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.jsonValue(), (key, value) => {
        // It is read or refused: `thrown` lets no other error pass.
        thrown(() => fromJSON({ ...good, [key]: value }, "length"));
        thrown(() => pointFromJSON({ ...celsius.at(20).toJSON(), [key]: value }, "absolute zero"));
        thrown(() =>
          Column.fromJSON(
            {
              ...Column.of(metre, [1]).toJSON(),
              [key === "q" ? "n" : key === "r" ? "f" : key === "w" ? "t" : key]: value,
            },
            "length",
          ),
        );
        expect(thrown(() => fromJSON(value, "length"))).toMatch(/^json: /u);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("two installed copies", () => {
  const made = () => read("110 ± 2 ft", "gross head");
  it("are two", () => {
    expect(there.Quantity).not.toBe(here.Quantity);
    expect(there.metre).not.toBe(here.metre);
  });

  it("know each other's values", () => {
    expect(isQuantity(there.metre.of(3))).toBe(true);
    expect(there.isQuantity(metre.of(3))).toBe(true);
    expect(isPoint(there.celsius.at(3))).toBe(true);
    expect(there.isPoint(celsius.at(3))).toBe(true);
  });

  it("read each other's JSON", () => {
    const back = there.fromJSON(viaText(made()), "gross head");
    expect(back).toBeInstanceOf(there.Quantity);
    expect(back.toJSON()).toEqual(made().toJSON());
    expect(fromJSON(viaText(back), "gross head")).toEqual(made());
    const temperature = there.pointFromJSON(viaText(celsius.at(20)), "absolute zero");
    expect(temperature.in(celsius)).toBe(20);
    const column = Column.of(millimetre, [1, null], {
      axis: there.TimeAxis.regular({
        start: "2024-02-28",
        step: second.of(60),
        count: 2,
        utcOffset: "+10:00",
      }),
    });
    expect(there.Column.fromJSON(viaText(column), "length").toJSON()).toEqual(column.toJSON());
  });

  it("compute together", () => {
    const loss = there.metre.of(3).as("head loss");
    const net = made().minus(loss);
    expect(net).toMatchObject({ kind: "net head" });
    expect(net.in(there.metre)).toBeCloseTo(110 * 0.3048 - 3, 12);
    expect(there.volt.of(120).times(here.ampere.of(15.5)).in(here.watt)).toBe(1860);
    expect(celsius.at(20).minus(there.celsius.at(5)).in(there.kelvin)).toBe(15);
    expect(there.metre.of(3).lessThan(foot.of(3))).toBe(false);
  });

  it("have one uncertainty between them: y − y and y ÷ y have none", () => {
    const y = made();
    const twin = there.fromJSON(viaText(y), "gross head");
    for (const none of [y.minus(twin), twin.minus(y), y.dividedBy(twin), twin.dividedBy(y)]) {
      expect(none.sources().size).toBe(0);
    }
    expect(y.sources().size).toBe(1);
    expect(y.plus(twin).standardUncertainty().in(metre)).toBe(
      2 * y.standardUncertainty().in(metre),
    );
  });

  it("refuse with the same words", () => {
    const said = (call: () => unknown): string => {
      try {
        call();
      } catch (error) {
        const { code, message, name } = error as here.QuantityError;
        return `${name} ${code}: ${message}`;
      }
      return "nothing was thrown";
    };
    const mistakes: [string, (a: typeof here, b: typeof here) => unknown][] = [
      [
        "QuantityError kind: cannot add 12 L/s (volume flow) to 33.5 m (length)",
        (a, b) => a.metre.of(33.5).plus(untyped(b.litrePerSecond.of(12))),
      ],
      [
        "QuantityError kind: cannot compare 3 m (net head) with 3 m (gross head)",
        (a, b) =>
          a.metre
            .of(3)
            .as("net head")
            .lessThan(untyped(b.metre.of(3).as("gross head"))),
      ],
      [
        "QuantityError kind: 3 m (length) has no L/s (volume flow)",
        (a, b) => a.metre.of(3).in(untyped(b.litrePerSecond)),
      ],
      [
        "QuantityError currency: USD and EUR do not combine: exchange one first",
        (a, b) => a.currency("USD").of(1).plus(b.currency("EUR").of(1)),
      ],
      [
        "QuantityError origin: cannot subtract 1 m over a (a point over staff zero) and 1 m over b: two origins",
        (a, b) =>
          a
            .point("staff zero", a.metre.of(1), "a")
            .minus(b.point("staff zero", b.metre.of(1), "b")),
      ],
      [
        "QuantityError kind: asked for net head, and this is stored as gross head",
        (a, b) => a.fromJSON(b.metre.of(1).as("gross head").toJSON(), "net head"),
      ],
    ];
    for (const [message, mistake] of mistakes) {
      for (const [a, b] of [
        [here, here],
        [here, there],
        [there, here],
        [there, there],
      ] as const) {
        expect(said(() => mistake(a, b))).toBe(message);
      }
    }
  });
});

describe("a worker thread", () => {
  it("takes plain data, computes and gives plain data back", async () => {
    const y = read("110 ± 2 ft", "gross head");
    const column = Column.of(millimetre, [520, null], {
      uncertainty: { offset: [["datum", 0.01]] },
    });
    const source = `
      import { parentPort, workerData } from "node:worker_threads";
      import { Column, fromJSON, metre } from ${JSON.stringify(pathToFileURL(join(folder, "copy.mjs")).href)};
      const y = fromJSON(workerData.y, "gross head");
      const column = Column.fromJSON(workerData.column, "length");
      parentPort.postMessage({
        y: y.toJSON(),
        net: y.minus(metre.of(3).as("head loss")).toJSON(),
        column: column.toJSON(),
      });`;
    const worker = new Worker(new URL(`data:text/javascript,${encodeURIComponent(source)}`), {
      workerData: { y: y.toJSON(), column: column.toJSON() },
    });
    const answer = await new Promise<Record<string, unknown>>((resolve, reject) => {
      worker.once("message", resolve).once("error", reject);
    });
    await worker.terminate();
    expect(fromJSON(answer["y"], "gross head")).toEqual(y);
    expect(Column.fromJSON(answer["column"], "length")).toEqual(column);
    // What came back from the thread is correlated with what stayed here.
    expect(y.minus(fromJSON(answer["net"], "net head")).sources().size).toBe(0);
  });
});
