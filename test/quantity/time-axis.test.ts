import { hour, metre, minute, second } from "@leat/quantity";
import { TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";

const zone = { utcOffset: "+10:00" };
const daily = (start: string, count: number, waterYearStart?: number): TimeAxis =>
  TimeAxis.regular({
    start,
    step: hour.of(24),
    count,
    ...zone,
    ...(waterYearStart !== undefined && { waterYearStart }),
  });

describe("the calendar", () => {
  // Date.UTC is the oracle: the proleptic Gregorian calendar of ECMA-262, in code that is not ours.
  it("is that of Date.UTC on every day from 1600 to 2400", () => {
    const start = Date.UTC(1600, 0, 1) / 1000;
    const days = (Date.UTC(2401, 0, 1) / 1000 - start) / 86_400;
    const axis = daily("1600-01-01", days);
    expect(axis.secondsAt(0)).toBe(start);
    let wrong = 0;
    for (let row = 0; row < days; row += 1) {
      const date = new Date((start + row * 86_400) * 1000);
      const { year, month, day, hour: h, minute: m, second: s } = axis.civilAt(row);
      const ofYear = (date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 1)) / 86_400_000 + 1;
      const right =
        year === date.getUTCFullYear() &&
        month === date.getUTCMonth() + 1 &&
        day === date.getUTCDate() &&
        h + m + s === 0 &&
        axis.dayOfYear(row) === ofYear &&
        axis.isoAt(row) === date.toISOString().slice(0, 16);
      if (!right) wrong += 1;
    }
    // Two cycles of 400 years and the leap year 2400.
    expect(days).toBe(2 * 146_097 + 366);
    expect(wrong).toBe(0);
  });

  it("is that of Date.UTC from year 0 to 9999, and to the millisecond", () => {
    fc.assert(
      fc.property(fc.integer({ min: -62_167_219_200_000, max: 253_402_300_799_999 }), (ms) => {
        const iso = new Date(ms).toISOString().slice(0, 23);
        const axis = TimeAxis.irregular([iso], zone);
        expect(axis.secondsAt(0)).toBeCloseTo(ms / 1000, 4);
        const { year, month, day, hour: h, minute: m, second: s } = axis.civilAt(0);
        expect([year, month, day, h, m, s]).toEqual([
          Number(iso.slice(0, 4)),
          Number(iso.slice(5, 7)),
          Number(iso.slice(8, 10)),
          Number(iso.slice(11, 13)),
          Number(iso.slice(14, 16)),
          Number(iso.slice(17)),
        ]);
        expect(
          axis
            .isoAt(0)
            .padEnd(19, ":00")
            .padEnd(23, iso.slice(19) === ".000" ? ".000" : "0"),
        ).toBe(iso);
      }),
    );
  });

  it("has its leap days", () => {
    const axis = daily("2024-02-28", 3);
    expect([0, 1, 2].map((row) => axis.isoAt(row))).toEqual([
      "2024-02-28T00:00",
      "2024-02-29T00:00",
      "2024-03-01T00:00",
    ]);
    expect(daily("1900-02-28", 2).isoAt(1)).toBe("1900-03-01T00:00");
    expect(daily("2000-02-28", 2).isoAt(1)).toBe("2000-02-29T00:00");
    expect(daily("2024-12-31", 1).dayOfYear(0)).toBe(366);
    expect(daily("2023-12-31", 1).dayOfYear(0)).toBe(365);
  });
});

describe("an axis of equal steps", () => {
  it("takes its step as a time or in seconds", () => {
    const quarter = TimeAxis.regular({
      start: "2024-02-28T23:45",
      step: minute.of(15),
      count: 3,
      ...zone,
    });
    expect([0, 1, 2].map((row) => quarter.isoAt(row))).toEqual([
      "2024-02-28T23:45",
      "2024-02-29T00:00",
      "2024-02-29T00:15",
    ]);
    expect(
      TimeAxis.regular({ start: "2024-02-28T23:45", step: 900, count: 3, ...zone }).toJSON(),
    ).toEqual(quarter.toJSON());
  });

  it("tells the fractions of a second", () => {
    const fast = TimeAxis.regular({
      start: "2024-02-28T23:59:59",
      step: second.of(0.1),
      count: 21,
      ...zone,
    });
    expect([1, 9, 10, 11].map((row) => fast.isoAt(row))).toEqual([
      "2024-02-28T23:59:59.1",
      "2024-02-28T23:59:59.9",
      "2024-02-29T00:00",
      "2024-02-29T00:00:00.1",
    ]);
    expect(fast.civilAt(10)).toEqual({
      year: 2024,
      month: 2,
      day: 29,
      hour: 0,
      minute: 0,
      second: 0,
    });
  });

  it("finds a row by its time", () => {
    const axis = daily("2024-02-28", 5);
    expect(axis.indexAtOrAfter("2024-02-27")).toBe(0);
    expect(axis.indexAtOrAfter("2024-02-29")).toBe(1);
    expect(axis.indexAtOrAfter("2024-02-29T00:01")).toBe(2);
    expect(axis.indexAtOrAfter(axis.secondsAt(4))).toBe(4);
    expect(axis.indexAtOrAfter("2024-03-04")).toBe(5);
    expect(daily("2024-02-28", 0).indexAtOrAfter("2024-02-28")).toBe(0);
  });
});

describe("an axis of unequal steps", () => {
  const axis = TimeAxis.irregular(
    ["2024-02-28T06:30", "2024-02-29", "2024-02-29T00:00:00.5"],
    zone,
  );
  it("keeps its times", () => {
    expect(axis.length).toBe(3);
    expect(axis.isoAt(2)).toBe("2024-02-29T00:00:00.5");
    expect(axis.secondsAt(2) - axis.secondsAt(1)).toBe(0.5);
    expect(axis.indexAtOrAfter("2024-02-28T06:31")).toBe(1);
  });

  it("is found as a plain search finds it", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 200 }), { maxLength: 40 }),
        fc.integer({ min: -5, max: 205 }),
        (list, at) => {
          const seconds = Float64Array.from(list).toSorted();
          const first = seconds.findIndex((s) => s >= at);
          expect(TimeAxis.irregular(seconds, zone).indexAtOrAfter(at)).toBe(
            first < 0 ? list.length : first,
          );
        },
      ),
    );
  });
});

describe("the water year", () => {
  // U.S. Geological Survey: from 1 October, called by the calendar year in which it ends.
  it.each([
    ["2023-09-30", 10, 2023],
    ["2023-10-01", 10, 2024],
    ["2024-09-30", 10, 2024],
    ["2024-06-30", 7, 2024],
    ["2024-07-01", 7, 2025],
    ["2024-01-01", 1, 2024],
    ["2024-12-31", 1, 2024],
  ])("of %s, from month %d, is %d", (date, start, year) => {
    expect(daily(date, 1, start).waterYearAt(0)).toBe(year);
  });
});

describe("messages", () => {
  const axis = daily("2024-02-28", 3);
  const at = (text: unknown) => () => daily(untyped(text), 1);
  const says = (text: string): string =>
    `time: ${text} is not a time without a zone, such as 2024-02-28T06:30`;
  it.each([
    [says("2023-02-29T00:00"), at("2023-02-29")],
    [says("1900-02-29T00:00"), at("1900-02-29")],
    [says("2024-02-28T24:00"), at("2024-02-28T24:00")],
    [says("2024-02-28T23:60"), at("2024-02-28T23:60")],
    [says("2024-02-28T23:59:60"), at("2024-02-28T23:59:60")],
    [says("2024-13-01T00:00"), at("2024-13-01")],
    [says("2024-00-01T00:00"), at("2024-00-01")],
    [says("2024-04-31T00:00"), at("2024-04-31")],
    [says("2024-01-00T00:00"), at("2024-01-00")],
    [says("2024-02-28T06:30Z"), at("2024-02-28T06:30Z")],
    [says("2024-02-28T06:30+10:00"), at("2024-02-28T06:30+10:00")],
    [says("2024-02-28 06:30"), at("2024-02-28 06:30")],
    [says("28/02/2024"), at("28/02/2024")],
    [says("20240228"), at("20240228")],
    [says("undefined"), at(undefined)],
    [says("2024-2-28T6:30"), at("2024-2-28T6:30")],
    [
      "time: utcOffset AEST is not an offset such as +10:00",
      () => TimeAxis.irregular([], { utcOffset: "AEST" }),
    ],
    [
      "time: utcOffset -00:00 is not an offset such as +10:00",
      () => TimeAxis.irregular([], { utcOffset: "-00:00" }),
    ],
    [
      "time: utcOffset +15:00 is not an offset such as +10:00",
      () => TimeAxis.irregular([], { utcOffset: "+15:00" }),
    ],
    ["time: waterYearStart 13 is not a month, 1 to 12", () => daily("2024-02-28", 1, 13)],
    ["time: waterYearStart 1.5 is not a month, 1 to 12", () => daily("2024-02-28", 1, 1.5)],
    ["time: state waterYearStart to ask for a water year", () => axis.waterYearAt(0)],
    [
      "time: step 0 is not a time of a millisecond or more",
      () => TimeAxis.regular({ start: "2024-02-28", step: 0, count: 1, ...zone }),
    ],
    [
      "time: step NaN is not a time of a millisecond or more",
      () => TimeAxis.regular({ start: "2024-02-28", step: NaN, count: 1, ...zone }),
    ],
    [
      "time: step 3 m is not a time of a millisecond or more",
      () =>
        TimeAxis.regular({ start: "2024-02-28", step: untyped(metre.of(3)), count: 1, ...zone }),
    ],
    ["time: count 1.5 is not a number of rows", () => daily("2024-02-28", 1.5)],
    ["time: count -1 is not a number of rows", () => daily("2024-02-28", -1)],
    ["time: count 1000000000000 is not a number of rows", () => daily("2024-02-28", 1e12)],
    ["time: row 3 is not in an axis of 3", () => axis.isoAt(3)],
    ["time: row -1 is not in an axis of 3", () => axis.secondsAt(-1)],
    ["time: row 0.5 is not in an axis of 3", () => axis.civilAt(0.5)],
    [
      "time: row 2, 2024-02-28, is not later than row 1",
      () => TimeAxis.irregular(["2024-02-27", "2024-02-28", "2024-02-28"], zone),
    ],
    [
      "time: row 1, 2, is not later than row 0",
      () => TimeAxis.irregular(Float64Array.of(3, 2), zone),
    ],
    [
      "time: row 1, NaN, is not later than row 0",
      () => TimeAxis.irregular(Float64Array.of(3, NaN), zone),
    ],
    [
      "time: row 0, Infinity, is not a time",
      () => TimeAxis.irregular(Float64Array.of(Infinity), zone),
    ],
    [
      "time: row 1, 2023-02-29T00:00 is not a time without a zone, such as 2024-02-28T06:30",
      () => TimeAxis.irregular(["2023-02-28", "2023-02-29"], zone),
    ],
    [
      "json: a time axis of version undefined is not read, only version 1",
      () => TimeAxis.fromJSON({}),
    ],
    [
      "json: a time axis of version 2 is not read, only version 1",
      () => TimeAxis.fromJSON({ ...axis.toJSON(), v: 2 }),
    ],
    ["json: a time axis cannot be null", () => TimeAxis.fromJSON(null)],
    ["json: times cannot be 3", () => TimeAxis.fromJSON({ v: 1, ...zone, times: 3 })],
    ["json: a time cannot be 1", () => TimeAxis.fromJSON({ v: 1, ...zone, times: ["1"] })],
    [
      "time: utcOffset undefined is not an offset such as +10:00",
      () => TimeAxis.fromJSON({ v: 1, times: [] }),
    ],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });
});

describe("as JSON", () => {
  const irregular = fc
    .uniqueArray(
      fc.double({ min: -1e11, max: 1e11, noNaN: true, noDefaultInfinity: true }).map((s) => s + 0),
      { maxLength: 30 },
    )
    .map((list) =>
      TimeAxis.irregular(Float64Array.from(list).toSorted(), {
        utcOffset: "-07:00",
        waterYearStart: 10,
      }),
    );
  const regular = fc
    .tuple(
      fc.date({ min: new Date("0000-01-01"), max: new Date("9999-12-31"), noInvalidDate: true }),
      fc.double({ min: 0.001, max: 1e5, noNaN: true }),
      fc.nat(10_000),
    )
    .map(([date, step, count]) =>
      TimeAxis.regular({ start: date.toISOString().slice(0, 23), step, count, ...zone }),
    );

  it("comes back as it went", () => {
    fc.assert(
      fc.property(fc.oneof(irregular, regular), (axis) => {
        for (const json of [
          JSON.parse(JSON.stringify(axis)),
          structuredClone(axis.toJSON()),
        ] as unknown[]) {
          const back = TimeAxis.fromJSON(json);
          expect(back).toEqual(axis);
          if (axis.length > 0)
            expect(back.secondsAt(axis.length - 1)).toBe(axis.secondsAt(axis.length - 1));
        }
      }),
    );
  });
});
