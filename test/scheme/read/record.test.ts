import { existsSync, readFileSync } from "node:fs";

import { cubicMetrePerSecond } from "@leat/quantity";
import { Quality, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import {
  type DailyRecord,
  type DailyRecordSpec,
  readDailyRecord,
} from "../../../packages/scheme/src/read/record.ts";
import { problemsOf } from "./problems-of.ts";

const spec: DailyRecordSpec = {
  date: { column: "Date", form: "YYYY-MM-DD" },
  flow: { column: "Flow", unit: "L/s" },
};
const flagged: DailyRecordSpec = {
  ...spec,
  flag: {
    column: "Flag",
    meanings: { A: "good", P: "partial", I: "ice", E: "estimated", S: "suspect", X: "gap" },
  },
  gaps: ["-999", "ERR"],
};

const record = (rows: readonly string[], how: DailyRecordSpec = spec): DailyRecord =>
  readDailyRecord([how.flag ? "Date,Flow,Flag" : "Date,Flow", ...rows].join("\n"), "q.csv", how);
const refused = (rows: readonly string[], how: DailyRecordSpec = spec): string[] =>
  problemsOf(() => record(rows, how));

describe("a record of daily flows", () => {
  it("has a row for each day, in the coherent unit, with what each flag means", () => {
    const rows = [
      "2020-02-27,1.5,",
      "2020-02-28,2,A",
      "2020-02-29,3,P",
      "2020-03-01,4,I",
      "2020-03-02,5,E",
      "2020-03-03,6,S",
      "2020-03-04,7,X",
      "2020-03-05,-999.0,I",
      "2020-03-06,ERR,",
      "2020-03-07,,E",
      "2020-03-10,0,",
    ];
    const { flow, lines, counts } = record(rows, flagged);
    const { gap, partial, ice, estimated, suspect } = Quality;
    const asLitres = [1.5, 2, 3, 4, 5, 6, 0, 0, 0, 0, 0, 0, 0];
    expect([...flow.values]).toEqual(asLitres.map((litres) => litres / 1000));
    expect([...flow.quality]).toEqual(
      [0, 0, partial, ice, estimated, suspect].concat(
        [gap, gap | ice, gap, gap | estimated],
        [gap, gap, 0],
      ),
    );
    expect([...lines]).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 0, 0, 12]);
    expect(flow.axis?.isoAt(2)).toBe("2020-02-29T00:00");
    expect(flow.axis?.utcOffset).toBe("+00:00");
    expect(counts).toMatchObject({
      rows: 11,
      days: 13,
      recorded: 7,
      absent: 2,
      empty: 1,
      coded: 2,
      flaggedAsGap: 1,
      flags: { A: 1, P: 1, I: 2, E: 2, S: 1, X: 1 },
    });
  });

  it("has no negative zero", () => {
    expect([...record(["2020-01-01,-0.0"]).flow.values]).toEqual([0]);
  });

  it("carries the water year and the clock that are stated", () => {
    const { flow } = record(["2020-09-30,1", "2020-10-01,1"], {
      ...spec,
      waterYearStart: 10,
      utcOffset: "-08:00",
    });
    expect([0, 1].map((row) => flow.axis?.waterYearAt(row))).toEqual([2020, 2021]);
    expect(flow.axis?.utcOffset).toBe("-08:00");
  });

  it("keeps the rows that are asked for, and counts the others", () => {
    const text =
      "Site;Date;Kind;Flow\na;2020-01-01;1;5,5\na;2020-01-01;2;0,3\nb;2020-01-01;1;7\na;2020-01-02;1;6\n";
    const { flow, counts } = readDailyRecord(text, "q.csv", {
      ...spec,
      where: { Kind: "1", "column 1": "a" },
    });
    expect([...flow.values]).toEqual([0.0055, 0.006]);
    expect(counts).toMatchObject({ rows: 4, rowsLeftOut: 2, days: 2 });
  });

  it("says where days are absent", () => {
    expect(record(["2020-01-01,1", "2020-01-03,1", "2020-01-07,1", "2020-01-08,1"]).notes).toEqual([
      {
        file: "q.csv",
        line: 3,
        column: 1,
        code: "record/absent-days",
        path: [1, "date"],
        message: "4 days without a row, in 2 gaps; the longest is of 3 days, after 2020-01-03.",
      },
    ]);
    expect(record(["2020-01-01,1", "2020-01-03,1"]).notes[0]?.message).toBe(
      "1 day without a row, in 1 gap; the longest is of 1 day, after 2020-01-01.",
    );
  });

  it("is put in order where only the order is another, and says so", () => {
    const { flow, counts, notes, lines } = record(["2020-01-03,3", "2020-01-01,1", "2020-01-02,2"]);
    expect([...flow.values]).toEqual([0.001, 0.002, 0.003]);
    expect([...lines]).toEqual([3, 4, 2]);
    expect(counts.rowsMoved).toBe(2);
    expect(notes.map(({ line, code, message }) => [line, code, message])).toEqual([
      [
        3,
        "record/order",
        "2020-01-01 stands after a later day, the first of 2 that do. The rows were put in the order of their dates.",
      ],
    ]);
  });

  it("says which years two digits were taken for, unless that is stated", () => {
    const form = { column: "Date", form: "DD-MMM-YY" };
    const { flow, notes } = record(["31-Dec-68,1"], { ...spec, date: form });
    expect(flow.axis?.isoAt(0)).toBe("2068-12-31T00:00");
    expect(notes.map(({ code, message }) => [code, message])).toEqual([
      [
        "file/short-years",
        "years of two digits are taken within 1969 to 2068, as POSIX has it. Where they are others, state the year that they begin from (years from).",
      ],
    ]);
    const stated = record(["31-Dec-68,1"], { ...spec, date: { ...form, yearsFrom: 1930 } });
    expect(stated.flow.axis?.isoAt(0)).toBe("1968-12-31T00:00");
    expect(stated.notes).toEqual([]);
  });

  it("takes the day of a date with a time", () => {
    const { flow } = record(["2020-01-01 23:45,1"], {
      ...spec,
      date: { column: "Date", form: "YYYY-MM-DD HH:MM" },
    });
    expect(flow.axis?.isoAt(0)).toBe("2020-01-01T00:00");
  });

  it("is the same in any order, and its days add up", () => {
    const day = fc.record({
      offset: fc.integer({ min: 0, max: 400 }),
      flow: fc.constantFrom("", "-999", "ERR", "0", "1.25", "3"),
      flag: fc.constantFrom("", "A", "P", "I", "E", "S", "X"),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(day, { selector: ({ offset }) => offset, minLength: 1, maxLength: 60 }),
        (days) => {
          fc.pre(days.some(({ flow, flag }) => /^\d/.test(flow) && flag !== "X"));
          const axis = TimeAxis.regular({
            start: "2019-06-01",
            step: 86_400,
            count: 401,
            utcOffset: "+00:00",
          });
          const row = ({ offset, flow, flag }: (typeof days)[number]): string =>
            `${axis.isoAt(offset).slice(0, 10)},${flow},${flag}`;
          const { flow, counts } = record(days.map(row), flagged);
          const sorted = record(days.toSorted((a, b) => a.offset - b.offset).map(row), flagged);
          expect(flow).toEqual(sorted.flow);
          expect(sorted.counts.rowsMoved).toBe(0);
          const { recorded, absent, empty, coded, flaggedAsGap } = counts;
          expect(recorded + absent + empty + coded + flaggedAsGap).toBe(counts.days);
          expect(counts.days).toBe(flow.length);
          const gaps = flow.quality.filter((bits) => bits & Quality.gap).length;
          expect(gaps).toBe(counts.days - recorded);
          const first = Math.min(...days.map(({ offset }) => offset));
          for (const each of days) {
            const read = flow.at(each.offset - first);
            const number = /^\d/.test(each.flow) && each.flag !== "X" ? Number(each.flow) : NaN;
            if (Number.isNaN(number)) expect(read).toBeUndefined();
            else expect(read?.in(cubicMetrePerSecond)).toBe(number / 1000);
          }
        },
      ),
    );
  });
});

describe("a record is refused", () => {
  it.each<[string, readonly string[], DailyRecordSpec, readonly string[]]>([
    [
      "with a date that does not exist",
      ["2019-02-28,1", "2019-02-29,1"],
      spec,
      ['3:1: record/date: Date "2019-02-29" does not exist: February 2019 has 28 days.'],
    ],
    [
      "with a date in another form",
      ["01/02/2019,1"],
      spec,
      ['2:1: record/date: Date "01/02/2019" is not of the form YYYY-MM-DD.'],
    ],
    [
      "with a date twice",
      ["2019-02-01,1", "2019-02-02,1", "2019-02-01,2"],
      spec,
      ["4:1: record/twice: 2019-02-01 stands on line 2 already. Keep one of the two rows."],
    ],
    [
      "with a flow that is no number",
      ["2019-02-01,n/a"],
      spec,
      [
        '2:12: record/number: Flow "n/a" is not a number. If it stands for a missing flow, list it under gaps.',
      ],
    ],
    [
      "with a negative flow",
      ["2019-02-01,-0.5"],
      spec,
      [
        '2:12: record/negative: Flow "-0.5" is negative. If it stands for a missing flow, list it under gaps.',
      ],
    ],
    [
      "with flags that have no meaning",
      ["2019-02-01,1,B", "2019-02-02,1,A", "2019-02-03,1,B", "2019-02-04,1,e"],
      flagged,
      [
        '2:14: record/flag: Flag "B" has no meaning here, and stands in 2 rows, the first of them here. Add it to flags with one of good, partial, ice, estimated, suspect, gap.',
        '5:14: record/flag: Flag "e" has no meaning here, and stands in this row. Add it to flags with one of good, partial, ice, estimated, suspect, gap.',
      ],
    ],
    [
      "with a flag named like what every object has",
      ["2019-02-01,1,constructor"],
      flagged,
      [
        '2:14: record/flag: Flag "constructor" has no meaning here, and stands in this row. Add it to flags with one of good, partial, ice, estimated, suspect, gap.',
      ],
    ],
    [
      "without any flow",
      ["2019-02-01,,", "2019-02-02,5,X"],
      flagged,
      ["2:12: record/no-flow: Flow has no flow in any of 2 rows. Is it the right column?"],
    ],
    [
      "over a thousand years",
      ["2019-02-01,1", "2919-02-02,1"],
      spec,
      [
        "3:1: record/span: the record runs from 2019-02-01 (line 2) to 2919-02-02, over three hundred years. Is a year mistyped?",
      ],
    ],
    [
      "with a unit of something else",
      ["2019-02-01,1"],
      { ...spec, flow: { column: "Flow", unit: "m" } },
      [
        "1:1: record/unit: flow unit: m is a unit of length; a unit of volume flow is needed, such as m3/s.",
      ],
    ],
    [
      "with a form that is none",
      ["2019-02-01,1"],
      { ...spec, date: { column: "Date", form: "HH:MM" } },
      [
        '1:1: record/date-form: date form: "HH:MM" has no date; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals.',
      ],
    ],
    [
      "with no row that is asked for",
      ["2019-02-01,1,A", "2019-02-02,1,P"],
      { ...spec, flag: undefined, where: { Flag: "a" } },
      ['2:1: record/where: no row has Flag "a": Flag holds "A", "P".'],
    ],
    [
      "with everything that is wrong at once",
      ["2019-02-01,x,?", "2019-02-30,1,A"],
      flagged,
      [
        '2:12: record/number: Flow "x" is not a number. If it stands for a missing flow, list it under gaps.',
        '2:14: record/flag: Flag "?" has no meaning here, and stands in this row. Add it to flags with one of good, partial, ice, estimated, suspect, gap.',
        '3:1: record/date: Date "2019-02-30" does not exist: February 2019 has 28 days.',
      ],
    ],
  ])("%s", (_, rows, how, problems) => {
    const headed = how.where ? { ...how, flag: flagged.flag } : how;
    const text = [headed.flag ? "Date,Flow,Flag" : "Date,Flow", ...rows].join("\n");
    expect(problemsOf(() => readDailyRecord(text, "q.csv", how))).toEqual(
      problems.map((problem) => `q.csv:${problem}`),
    );
  });

  it.each([
    [10, '"9".'],
    [11, '"9" and more.'],
  ])("with no row that is asked for, of %d values", (count, end) => {
    const rows = Array.from({ length: count }, (_, i) => `2020-01-01,${i}`);
    const [problem] = refused(rows, { ...spec, where: { Flow: "x" } });
    expect(problem?.slice(-end.length)).toBe(end);
  });

  it("with a unit that is none", () => {
    const how = { ...spec, flow: { column: "Flow", unit: "furlongs" } };
    expect(refused(["2019-02-01,1"], how)).toEqual([
      expect.stringMatching(
        /^q\.csv:1:1: record\/unit: flow unit: furlong is not a unit; the nearest is .+\.$/,
      ),
    ]);
  });

  it("with a meaning that is none", () => {
    const how = { ...flagged, flag: { column: "Flag", meanings: { A: "fine" as "good" } } };
    expect(refused(["2019-02-01,1,"], how)).toEqual([
      'q.csv:1:1: record/meaning: flag meanings: "fine", of "A", is not known here; write one of good, partial, ice, estimated, suspect, gap.',
    ]);
  });

  it("over more than three hundred years, of 365.25 days each", () => {
    expect(refused(["1700-01-01,1", "1999-12-31,1"])).toEqual([]);
    expect(refused(["1700-01-01,1", "2000-01-03,1"])).toEqual([]);
    expect(refused(["1700-01-01,1", "2000-01-04,1"])).toHaveLength(1);
  });

  it("under the heading of a column that is named by its number", () => {
    const numbers = {
      ...spec,
      flow: { column: 2, unit: "L/s" },
      date: { ...spec.date, column: 1 },
    };
    expect(refused(["2019-02-01,x"], { ...numbers, header: 1 })[0]).toContain('Flow "x" is not');
    expect(problemsOf(() => readDailyRecord("2019-02-01,x\n", "q.csv", numbers))[0]).toContain(
      'column 2 "x" is not a number',
    );
  });

  it("where the heading names another unit than the one that is stated", () => {
    const read = (heading: string, unit: string): string[] =>
      problemsOf(() =>
        readDailyRecord(`Date,${heading}\n2020-01-01,1`, "q.csv", {
          ...spec,
          flow: { column: heading, unit },
        }),
      );
    expect(read("Flow (m3/s)", "L/s")).toEqual([
      'q.csv:1:1: record/unit: the heading "Flow (m3/s)" names m³/s, and L/s is stated. Which is it?',
    ]);
    expect(read("Flow [cfs]", "m3/s")).toHaveLength(1);
    expect(read("Flow (m³/s)", "m3/s")).toEqual([]);
    expect(read("Flow (daily mean)", "m3/s")).toEqual([]);
    expect(read("Flow (m)", "m3/s")).toEqual([]);
  });

  it("with twenty rows of a kind, and the rest counted", () => {
    const problems = refused(Array.from({ length: 100 }, (_, i) => `20${i}-13-01,-1`));
    expect(problems.filter((line) => line.includes(" record/date: Date"))).toHaveLength(20);
    expect(problems.filter((line) => line.includes("record/negative: Flow"))).toHaveLength(20);
    expect(problems.slice(-2)).toEqual([
      "q.csv:22:1: record/date: and 80 more like these, the first of them here.",
      expect.stringMatching(
        /^q\.csv:22:\d+: record\/negative: and 80 more like these, the first of them here\.$/,
      ),
    ]);
  });
});

const data = "../shared/reference/data/";

describe.skipIf(!existsSync(`${data}wsc_08MG026_daily.csv`))(
  "a record of a mountain creek (wsc_08MG026_daily.csv, absent: skipped)",
  () => {
    const creek = (): DailyRecord =>
      readDailyRecord(
        readFileSync(`${data}wsc_08MG026_daily.csv`, "utf8"),
        "wsc_08MG026_daily.csv",
        {
          date: { column: "Date", form: "YYYY/MM/DD" },
          flow: { column: "Value", unit: "m3/s" },
          where: { PARAM: "1" },
          flag: { column: "SYM", meanings: { A: "partial", B: "ice", E: "estimated" } },
        },
      );

    it("has the rows and the flags that python3-csv counts", () => {
      const { counts, flow, notes } = creek();
      expect(counts).toEqual({
        linesBefore: 1,
        rowsSkipped: 0,
        rowsEmpty: 0,
        rowsElsewhere: 0,
        rowsShort: 0,
        rows: 12_899,
        rowsLeftOut: 3287,
        rowsMoved: 0,
        days: 9612,
        recorded: 8585,
        absent: 0,
        empty: 1027,
        coded: 0,
        flaggedAsGap: 0,
        flags: { A: 109, B: 394, E: 1189 },
      });
      expect(notes).toEqual([]);
      expect(flow.axis?.isoAt(0)).toBe("1993-09-07T00:00");
      expect(flow.axis?.isoAt(flow.length - 1)).toBe("2019-12-31T00:00");
      expect(flow.values.reduce((sum, each) => sum + each, 0)).toBeCloseTo(34_041.467, 6);
      const marked = (bit: number): number => flow.quality.filter((bits) => bits & bit).length;
      expect([Quality.partial, Quality.ice, Quality.estimated].map(marked)).toEqual([
        109, 394, 1189,
      ]);
    });

    it("has the flows that are exceeded half the time and 95 % of it", () => {
      // Published with the data, computed of daily flows at positions m/(n + 1): 2.54 and 0.914 m³/s.
      const { flow } = creek();
      const recorded = flow.values
        .filter((_, row) => ((flow.quality[row] as number) & Quality.gap) === 0)
        .toSorted((a, b) => b - a);
      const exceeded = (share: number): number | undefined =>
        recorded[Math.round(share * (recorded.length + 1)) - 1];
      expect(exceeded(0.5)).toBeCloseTo(2.54, 3);
      expect(exceeded(0.95)).toBeCloseTo(0.914, 3);
    });

    it("is refused without the meaning of its flags, and without its levels left out", () => {
      const text = readFileSync(`${data}wsc_08MG026_daily.csv`, "utf8");
      const whole = { ...spec, date: { column: "Date", form: "YYYY/MM/DD" } };
      const problems = problemsOf(() =>
        readDailyRecord(text, "w.csv", {
          ...whole,
          flow: { column: "Value", unit: "m3/s" },
          where: { PARAM: "1" },
          flag: { column: "SYM", meanings: { A: "partial", E: "estimated" } },
        }),
      );
      expect(problems).toHaveLength(1);
      expect(problems[0]).toContain('SYM "B" has no meaning here, and stands in 394 rows');
      const levels = problemsOf(() =>
        readDailyRecord(text, "w.csv", { ...whole, flow: { column: "Value", unit: "m3/s" } }),
      );
      expect(levels).toHaveLength(21);
      expect(levels[0]).toMatch(/record\/twice: \d{4}-\d\d-\d\d stands on line \d+ already/);
    });
  },
);

describe.skipIf(!existsSync(`${data}choptank_01491000_daily.csv`))(
  "a record of thirty-two years (choptank_01491000_daily.csv, absent: skipped)",
  () => {
    it("has the days and the sum that python3-csv finds", () => {
      const { flow, counts } = readDailyRecord(
        readFileSync(`${data}choptank_01491000_daily.csv`, "utf8"),
        "choptank_01491000_daily.csv",
        { date: { column: "date", form: "YYYY-MM-DD" }, flow: { column: "Q_m3s", unit: "m3/s" } },
      );
      expect(counts).toMatchObject({ rows: 11_688, days: 11_688, recorded: 11_688, absent: 0 });
      expect(flow.axis?.isoAt(0)).toBe("1979-10-01T00:00");
      expect(flow.values.reduce((sum, each) => sum + each, 0)).toBeCloseTo(47_763.9069908, 6);
      const most = flow.values.indexOf(246.356563407493);
      expect(flow.axis?.isoAt(most)).toBe("2011-08-28T00:00");
    });
  },
);
