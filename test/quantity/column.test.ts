import { existsSync, readFileSync } from "node:fs";

import {
  coherentUnit,
  cubicFootPerSecond,
  cubicMetrePerSecond,
  currency,
  degree,
  foot,
  litrePerSecond,
  metre,
  millimetre,
} from "@leat/quantity";
import { Column, Quality, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";

const axis = TimeAxis.regular({ start: "2024-02-28", step: 86_400, count: 3, utcOffset: "+10:00" });

describe("a column", () => {
  const flow = Column.of(litrePerSecond, [12, null, undefined, 0], {
    uncertainty: {
      offset: [["zero of the staff", 1e-4]],
      scale: [
        ["rating", 0.05],
        ["zero of the staff", 0.01],
      ],
      noise: [["reading", 2e-4]],
    },
  });

  it("holds coherent numbers, and gaps as flags", () => {
    expect([...flow.values]).toEqual([0.012, 0, 0, 0]);
    expect([...flow.quality]).toEqual([0, Quality.gap, Quality.gap, 0]);
    expect(flow.length).toBe(4);
    expect(flow.kind).toBe("volume flow");
  });

  it("takes nine bytes a sample", () => {
    expect((flow.values.byteLength + flow.quality.byteLength) / flow.length).toBe(9);
  });

  it("gives its numbers in any unit, in an array of the caller's own", () => {
    const out = flow.in(litrePerSecond);
    expect([...out]).toEqual([12, 0, 0, 0]);
    out[0] = 99;
    expect(flow.values[0]).toBe(0.012);
    const feet = Column.of(foot, [1]);
    expect(feet.as("gross head").in(metre)[0]).toBe(0.3048);
    expect(Column.of(cubicFootPerSecond, [1]).in(cubicMetrePerSecond)[0]).toBe(0.028316846592);
  });

  it("gives a sample with the sources of its uncertainty", () => {
    expect(flow.at(1)).toBeUndefined();
    const sample = flow.at(0);
    expect(sample).toMatchObject({ kind: "volume flow" });
    const parts = [...(sample?.sources() ?? [])].map(([id, part]) => [
      id,
      part.in(cubicMetrePerSecond),
    ]);
    // The source that is in two lists moves the sample by both at once.
    expect(parts).toEqual([
      ["zero of the staff", 1e-4 + 0.01 * 0.012],
      ["rating", 0.05 * 0.012],
      ["reading[0]", 2e-4],
    ]);
    expect([...(flow.at(3)?.sources().keys() ?? [])]).toEqual(["zero of the staff", "reading[3]"]);
    expect(Column.of(metre, [1]).at(0)?.sources().size).toBe(0);
  });

  it("correlates its rows by what they share, and not by their noise", () => {
    const two = Column.of(metre, [1, 3], {
      uncertainty: { offset: [["datum", 0.3]], noise: [["level", 0.4]] },
    });
    const [a, b] = [two.at(0), two.at(1)];
    if (!a || !b) throw new Error("no gaps were written");
    expect(b.minus(a).standardUncertainty().in(metre)).toBeCloseTo(Math.hypot(0.4, 0.4), 12);
    expect(a.plus(b).standardUncertainty().in(metre)).toBeCloseTo(Math.hypot(0.6, 0.4, 0.4), 12);
    expect(a.minus(a).standardUncertainty().in(metre)).toBe(0);
  });

  it("shares its arrays with the same column of another kind", () => {
    const lengths = Column.of(metre, [1, null], {});
    const heads = lengths.as("gross head");
    expect(heads.kind).toBe("gross head");
    expect(heads.values).toBe(lengths.values);
    expect(heads.quality).toBe(lengths.quality);
  });

  it("takes flags in a new column, and loses the value where one is a gap", () => {
    const flagged = flow.withQuality(Quality.suspect | Quality.ice, [0, 3]);
    expect([...flagged.quality]).toEqual([18, 1, 1, 18]);
    expect(flagged.values).toBe(flow.values);
    const gaps = flow.withQuality(Quality.gap, [0]);
    expect([...gaps.values]).toEqual([0, 0, 0, 0]);
    expect(gaps.at(0)).toBeUndefined();
    expect([flow.values[0], flow.quality[0]]).toEqual([0.012, 0]);
    expect(gaps.uncertainty).toEqual(flow.uncertainty);
  });

  it("is wrapped round arrays without a copy", () => {
    const values = Float64Array.of(1, 0);
    const quality = Uint8Array.of(0, 1);
    const wrapped = Column.wrap("length", values, quality);
    expect(wrapped.values).toBe(values);
    expect(wrapped.quality).toBe(quality);
    expect(wrapped.at(0)?.in(metre)).toBe(1);
  });

  it("goes with its times", () => {
    const dated = Column.of(metre, [1, 2, 3], { axis });
    expect(dated.axis?.isoAt(1)).toBe("2024-02-29T00:00");
    expect(dated.as("gross head").axis).toBe(axis);
  });

  it("holds money of one currency", () => {
    const usd = currency("USD");
    const prices = Column.of(usd.per(foot), [3.2, null]);
    expect(prices.currency).toBe("USD");
    expect(prices.at(0)?.currency()).toBe("USD");
    expect(prices.in(usd.per(metre))[0]).toBeCloseTo(3.2 / 0.3048, 12);
  });

  it("has a bit for each flag", () => {
    const bits = Object.values(Quality);
    expect(bits.every((bit) => Number.isInteger(Math.log2(bit)) && bit < 256)).toBe(true);
    expect(new Set(bits).size).toBe(bits.length);
  });

  it("has no arithmetic", () => {
    for (const name of ["plus", "minus", "times", "dividedBy"])
      expect(flow).not.toHaveProperty(name);
  });
});

describe("messages", () => {
  const lengths = Column.of(metre, [1, null]);
  const stored = lengths.toJSON();
  const read = (change: object) => () => Column.fromJSON({ ...stored, ...change }, "length");
  const quality = new Uint8Array(1);
  const one = Float64Array.of(1);
  it.each([
    ["column: row 1 of length is not a finite number", () => Column.of(metre, [1, NaN])],
    ["column: row 0 of length is not a finite number", () => Column.of(metre, [Infinity])],
    [
      "column: row 2 of length is not a finite number",
      () => Column.of(metre, untyped([1, 2, "3"])),
    ],
    [
      "column: row 0 of length is not a finite number",
      () => Column.of(foot, [Number.MAX_VALUE]) && Column.of(coherentUnit("length"), [1e999]),
    ],
    [
      "column: row 0 of length is not a finite number",
      () => Column.wrap("length", Float64Array.of(NaN), quality),
    ],
    [
      "column: row 0 of length is a gap and holds 1",
      () => Column.wrap("length", one, Uint8Array.of(1)),
    ],
    [
      "column: 1 values, but 2 rows of quality",
      () => Column.wrap("length", one, new Uint8Array(2)),
    ],
    ["column: 2 values, but 3 rows of time", () => Column.of(metre, [1, 2], { axis })],
    ["column: row 2 is not in a column of 2", () => lengths.at(2)],
    ["column: row -1 is not in a column of 2", () => lengths.at(-1)],
    ["column: row 7 is not in a column of 2", () => lengths.withQuality(Quality.suspect, [0, 7])],
    [
      "kind: a column of length has no L/s (volume flow)",
      () => lengths.in(untyped(litrePerSecond)),
    ],
    ["kind: a column of length cannot be taken as power", () => lengths.as(untyped("power"))],
    ["kind: sadness is not a kind of quantity", () => Column.wrap("sadness", one, quality)],
    ["currency: a column of money needs a currency", () => Column.wrap("money", one, quality)],
    [
      "currency: a column of length has no USD",
      () => Column.wrap("length", one, quality, { currency: "USD" }),
    ],
    [
      "currency: USD and EUR do not combine: exchange one first",
      () => Column.of(currency("USD"), [1]).in(currency("EUR")),
    ],
    [
      "currency: USD and EUR do not combine: exchange one first",
      () => Column.of(currency("USD"), [1], { currency: "EUR" }),
    ],
    [
      "json: noise cannot be NaN",
      () => Column.of(metre, [1], { uncertainty: { noise: [["level", NaN]] } }),
    ],
    [
      "json: an offset cannot be datum",
      () =>
        Column.of(metre, [1], {
          uncertainty: {
            offset: [
              ["datum", 1],
              ["datum", 2],
            ],
          },
        }),
    ],
    [
      "json: a column of version undefined is not read, only version 1",
      () => Column.fromJSON({ k: "length" }, "length"),
    ],
    ["json: a column of version 2 is not read, only version 1", read({ v: 2 })],
    [
      "kind: asked for gross head, and this is stored as length",
      () => Column.fromJSON(stored, "gross head"),
    ],
    ["json: the unit of a stored length, m, cannot be ft", read({ u: "ft" })],
    ["json: row 1 of length cannot be null", read({ f: [0, 0] })],
    ["column: row 1 of length is a gap and holds 2", read({ n: [1, 2] })],
    ["json: row 0 of length cannot be 1", read({ n: ["1", null] })],
    ["column: row 0 of length has no quality", read({ f: [256, 1] })],
    ["column: 2 values, but 1 rows of quality", read({ n: [1, 2], f: [0] })],
    ["column: 2 values, but 3 rows of quality", read({ f: [0, 1, 0] })],
    ["json: the numbers of a column cannot be 3", read({ n: 3 })],
    ["json: a scale cannot be 7", read({ s: { scale: 7 } })],
    ["json: a column cannot be 3", () => Column.fromJSON(3, "length")],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });
});

describe("as JSON", () => {
  const number = fc.oneof(fc.double({ min: -1e12, max: 1e12, noNaN: true }), fc.constant(null));
  const source = fc.tuple(fc.string({ maxLength: 8 }), fc.double({ min: 0, max: 1, noNaN: true }));
  const sources = fc.uniqueArray(source, { maxLength: 3, selector: ([id]) => id });
  it("comes back as it went", () => {
    fc.assert(
      fc.property(
        fc.array(number, { maxLength: 30 }),
        sources,
        sources,
        sources,
        fc.nat(255),
        (numbers, offset, scale, noise, flags) => {
          const times = TimeAxis.regular({
            start: "2024-02-28",
            step: 60,
            count: numbers.length,
            utcOffset: "-07:00",
            waterYearStart: 10,
          });
          const column = Column.of(millimetre, numbers, {
            axis: times,
            uncertainty: { offset, scale, noise },
          })
            .as("gross head")
            .withQuality(flags, numbers.keys());
          for (const json of [
            JSON.parse(JSON.stringify(column)),
            structuredClone(column.toJSON()),
          ] as unknown[]) {
            const back = Column.fromJSON(json, "gross head");
            expect(back).toEqual(column);
            expect(back.toJSON()).toEqual(column.toJSON());
          }
        },
      ),
    );
  });

  it("keeps a currency and asks for no axis", () => {
    const money = Column.of(currency("USD").per(metre), [1.5, null]);
    expect(Column.fromJSON(JSON.parse(JSON.stringify(money)), "price per length")).toEqual(money);
    expect(
      thrown(() =>
        Column.fromJSON(JSON.parse(JSON.stringify(money)), "price per length").in(
          currency("EUR").per(metre),
        ),
      ),
    ).toBe("currency: USD and EUR do not combine: exchange one first");
  });
});

const record = new URL(
  "../../../shared/reference/data/choptank_01491000_daily.csv",
  import.meta.url,
);
describe.skipIf(!existsSync(record))(
  "a record of thirty-two years (choptank_01491000_daily.csv, absent: skipped)",
  () => {
    it("has its days, its leap days and its water years", () => {
      const [header = "", ...lines] = readFileSync(record, "utf8").trim().split("\n");
      const rows = lines.map((line) => line.split(",").map((cell) => cell.replaceAll('"', "")));
      const names = header.split(",").map((cell) => cell.replaceAll('"', ""));
      const [date, flow] = [
        names.findIndex((name) => /date/iu.test(name)),
        names.findIndex((name) => /^(?:q|flow)/iu.test(name)),
      ];
      const days = TimeAxis.regular({
        start: "1979-10-01",
        step: 86_400,
        count: rows.length,
        utcOffset: "-05:00",
        waterYearStart: 10,
      });
      const column = Column.of(
        cubicMetrePerSecond,
        rows.map((row) => Number(row[flow])),
        { axis: days },
      );
      expect(column.length).toBe(11_688);
      // The dates of the file are the check: nothing of them went into the axis but the first.
      expect(rows.map((row) => row[date])).toEqual(
        rows.map((_, row) => days.isoAt(row).slice(0, 10)),
      );
      expect([days.waterYearAt(0), days.waterYearAt(rows.length - 1)]).toEqual([1980, 2011]);
    });
  },
);

it("takes the degrees of a wheel", () => {
  expect(Column.of(degree, [180]).values[0]).toBe(Math.PI);
});
