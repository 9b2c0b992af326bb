import { existsSync, readFileSync } from "node:fs";

import { Quality } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import {
  type ConductivitySeries,
  type ConductivitySpec,
  readConductivity,
} from "../../../packages/scheme/src/read/series.ts";
import { problemsOf } from "./problems-of.ts";

const spec: ConductivitySpec = {
  time: { column: "Time", unit: "s" },
  conductivity: { column: "EC", unit: "µS/cm" },
  reads: "raw",
};
const clock: ConductivitySpec = { ...spec, time: { column: "Time", form: "HH:MM:SS" } };
const dated: ConductivitySpec = { ...spec, time: { column: "Time", form: "DD/MM/YY HH:MM:SS.S" } };

const series = (rows: readonly string[], how: ConductivitySpec = spec): ConductivitySeries =>
  readConductivity([how.temperature ? "Time,EC,T" : "Time,EC", ...rows].join("\n"), "ec.csv", how);
const refused = (rows: readonly string[], how: ConductivitySpec = spec): string[] =>
  problemsOf(() => series(rows, how));

describe("a series of conductivity", () => {
  it("is handed on as it stands, in the coherent unit", () => {
    const read = series(["0,100", "5,-1", "10.5,9999", "11,ERR", "12,", "13,101.5"]);
    expect([...read.seconds]).toEqual([0, 5, 10.5, 11, 12, 13]);
    expect([...read.conductivity]).toEqual([0.01, -0.0001, 0.9999, 0, 0, 0.01015]);
    expect([...read.quality]).toEqual([0, 0, 0, Quality.gap, Quality.gap, 0]);
    expect(read.faults).toEqual([
      { row: 3, line: 5, column: "conductivity", text: "ERR" },
      { row: 4, line: 6, column: "conductivity", text: "" },
    ]);
    expect([...read.lines]).toEqual([2, 3, 4, 5, 6, 7]);
    expect(read.from).toBe("0 s of the file");
    expect(read.reads).toBe("raw");
    expect(read.counts).toMatchObject({ rows: 6, midnights: 0 });
    expect(read).not.toHaveProperty("temperature");
  });

  it.each([
    ["°C", "10", 283.15],
    ["°F", "50", 283.15],
    ["K", "283.15", 283.15],
  ])("has its temperature in kelvins, from %s", (unit, cell, kelvins) => {
    const read = series([`0,100,${cell}`, "1,100,open", "2,bad,"], {
      ...spec,
      temperature: { column: "T", unit },
      reads: "compensated",
    });
    expect(read.temperature?.[0]).toBeCloseTo(kelvins, 10);
    expect([...read.quality]).toEqual([0, 0, Quality.gap]);
    expect([...(read.temperatureQuality ?? [])]).toEqual([0, Quality.gap, Quality.gap]);
    expect([...(read.temperature ?? [])].slice(1)).toEqual([0, 0]);
    expect(read.faults).toEqual([
      { row: 1, line: 3, column: "temperature", text: "open" },
      { row: 2, line: 4, column: "conductivity", text: "bad" },
      { row: 2, line: 4, column: "temperature", text: "" },
    ]);
    expect(read.reads).toBe("compensated");
  });

  it("counts its times in any unit, and in so many of one", () => {
    const of = (unit: string): number[] => [
      ...series(["1,5", "2,5"], { ...spec, time: { column: "Time", unit } }).seconds,
    ];
    expect(of("min")).toEqual([60, 120]);
    expect(of("5 s")).toEqual([5, 10]);
  });

  it("reads clock times, past midnight, and says so", () => {
    const read = series(
      ["23:59:58,5", "23:59:59,5", "00:00:01,5", "12:00:01,5", "00:00:00,5"],
      clock,
    );
    expect([...read.seconds]).toEqual([86_398, 86_399, 86_401, 129_601, 172_800]);
    expect(read.counts.midnights).toBe(2);
    expect(read.from).toBe("midnight before the first row");
    expect(read.notes.map(({ line, code, message }) => [line, code, message])).toEqual([
      [
        4,
        "series/midnight",
        "Time falls here, by more than half a day: taken as midnight, the first of 2.",
      ],
    ]);
  });

  it("passes one midnight", () => {
    const [note] = series(["23:00:00,5", "01:00:00,5"], clock).notes;
    expect(note?.message).toBe("Time falls here, by more than half a day: taken as midnight.");
  });

  it("has no negative zero", () => {
    const read = series(["-1,-0,0", "0,-0.0,0"], {
      ...spec,
      temperature: { column: "T", unit: "K" },
    });
    expect([...read.conductivity]).toEqual([0, 0]);
  });

  it("reads dates with times, from the first midnight", () => {
    const read = series(["26/09/10 23:59:59.5,5", "27/09/10 00:00:00.25,5"], dated);
    expect([...read.seconds]).toEqual([86_399.5, 86_400.25]);
    expect(read.from).toBe("2010-09-26");
    expect(read.notes.map(({ code }) => code)).toEqual(["file/short-years"]);
    expect(read.counts.midnights).toBe(0);
  });

  it("reads a decimal comma", () => {
    const text = "Time;EC\n0;100,5\n1;101,25";
    expect([...readConductivity(text, "ec.csv", spec).conductivity]).toEqual([0.01005, 0.010125]);
  });

  it("has the same times from any clock that shows them", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 86_399 }),
        fc.array(fc.integer({ min: 1, max: 43_199 }), { maxLength: 20 }),
        (first, steps) => {
          const times = [first];
          for (const step of steps) times.push((times.at(-1) as number) + step);
          const two = (n: number): string => String(n).padStart(2, "0");
          const shown = times.map((t) => {
            const s = t % 86_400;
            return `${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)},7`;
          });
          expect([...series(shown, clock).seconds]).toEqual(times);
        },
      ),
    );
  });
});

describe("a series is refused", () => {
  it.each<[string, readonly string[], ConductivitySpec, readonly string[]]>([
    [
      "with a time that is no number",
      ["0,5", "x,5"],
      spec,
      ['3:1: series/time: Time "x" is not a number.'],
    ],
    [
      "with a clock that does not exist",
      ["24:00:00,5", "1:00:00,5"],
      clock,
      [
        '2:1: series/time: Time "24:00:00" has an hour 24, of 0 to 23.',
        '3:1: series/time: Time "1:00:00" is not of the form HH:MM:SS.',
      ],
    ],
    [
      "with a time twice",
      ["3,5", "3,5"],
      spec,
      [
        "3:1: series/time-twice: Time 3 stands on line 2 already. Write the fraction of the second, or leave one of the rows out.",
      ],
    ],
    [
      "with a time before the last",
      ["12:00:00,5", "11:59:59,5"],
      clock,
      [
        "3:1: series/time-order: Time 11:59:59 is before that of line 2, 12:00:00. Put the rows in the order of their times.",
      ],
    ],
    [
      "with a fall of half a day, which is no midnight",
      ["12:00:00,5", "00:00:00,5"],
      clock,
      [
        "3:1: series/time-order: Time 00:00:00 is before that of line 2, 12:00:00. Put the rows in the order of their times.",
      ],
    ],
    [
      "with a date before the last, however far",
      ["27/09/10 00:00:01,5", "26/09/10 00:00:00,5"],
      dated,
      [
        "3:1: series/time-order: Time 26/09/10 00:00:00 is before that of line 2, 27/09/10 00:00:01. Put the rows in the order of their times.",
      ],
    ],
    [
      "without any number",
      ["0,low", "1,low"],
      spec,
      [
        '2:3: series/no-numbers: EC has no number in any of its 2 rows, but text such as "low". Is it the right column?',
      ],
    ],
    [
      "with a unit of conductivity that is another",
      ["0,5"],
      { ...spec, conductivity: { column: "EC", unit: "m/s" } },
      [
        "1:1: series/unit: conductivity unit: m/s is a unit of velocity; a unit of conductivity is needed, such as µS/cm.",
      ],
    ],
    [
      "with a unit of time that is another",
      ["0,5"],
      { ...spec, time: { column: "Time", unit: "m" } },
      ["1:1: series/unit: time unit: m is a unit of length; a unit of time is needed, such as s."],
    ],
    [
      "with a unit of temperature that has no zero",
      ["0,5,5"],
      { ...spec, temperature: { column: "T", unit: "C" } },
      ["1:1: series/unit: temperature unit: C is not a scale of temperature; write °C, °F or K."],
    ],
    [
      "with a form without a time of day",
      ["2020-01-01,5"],
      { ...spec, time: { column: "Time", form: "YYYY-MM-DD" } },
      [
        '1:1: series/time-form: time form: "YYYY-MM-DD" has no time of day; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals.',
      ],
    ],
  ])("%s", (_, rows, how, problems) => {
    expect(refused(rows, how)).toEqual(problems.map((problem) => `ec.csv:${problem}`));
  });

  it.each([
    ["Time (min)", "EC (µS/cm)", "names min, and s is stated"],
    ["Time (s)", "EC (S/m)", "names S/m, and µS/cm is stated"],
  ])("where a heading names another unit: %s, %s", (time, conductivity, fault) => {
    expect(
      problemsOf(() =>
        readConductivity(`${time},${conductivity}\n0,5`, "ec.csv", {
          ...spec,
          time: { column: time, unit: "s" },
          conductivity: { column: conductivity, unit: "µS/cm" },
        }),
      ),
    ).toEqual([expect.stringContaining(fault)]);
  });
});

const slug = "../shared/reference/data/salt_slug_2010-09-26_ec.csv";

describe.skipIf(!existsSync(slug))(
  "a slug of salt (salt_slug_2010-09-26_ec.csv, absent: skipped)",
  () => {
    it("has the readings that python3-csv finds, and the flow that was published of them", () => {
      const read = readConductivity(readFileSync(slug, "utf8"), "ec.csv", {
        time: { column: "Time (s)", unit: "s" },
        conductivity: { column: "ECT (uS/cm)", unit: "µS/cm" },
        temperature: { column: "Temperature (C)", unit: "°C" },
        reads: "compensated",
      });
      expect(read.counts.rows).toBe(868);
      expect(read.faults).toEqual([]);
      expect(read.notes).toEqual([]);
      expect([read.seconds[0], read.seconds.at(-1)]).toEqual([1, 868]);
      const most = read.conductivity.indexOf(Math.max(...read.conductivity));
      expect([most, read.conductivity[most]]).toEqual([264, 0.0443]);
      expect(read.temperature?.[0]).toBeCloseTo(283.95, 10);
      // 100 kg, background of the first 150 samples, window from 190 s to 700 s, 0.4865 mg/L per µS/cm: the course
      // that published the data prints 11.9 m³/s.
      const background = read.conductivity.slice(0, 150).reduce((sum, x) => sum + x, 0) / 150;
      const area = read.conductivity.reduce((sum, x, row) => {
        const t = read.seconds[row] as number;
        return t > 190 && t < 700 ? sum + (x - background) : sum;
      }, 0);
      expect(100 / (0.4865 * 1e-3 * 1e4 * area)).toBeCloseTo(11.9, 1);
    });
  },
);
