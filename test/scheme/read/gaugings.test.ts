import { existsSync, readFileSync } from "node:fs";

import { cubicMetrePerSecond, litrePerSecond, metre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import {
  type Gaugings,
  type GaugingsSpec,
  readGaugings,
} from "../../../packages/scheme/src/read/gaugings.ts";
import { problemsOf } from "./problems-of.ts";

const spec: GaugingsSpec = {
  date: { column: "Date", form: "DD/MM/YYYY" },
  stage: { column: "Stage", unit: "m" },
  flow: { column: "Flow", unit: "L/s" },
};
const gaugings = (rows: readonly string[], more: Partial<GaugingsSpec> = {}): Gaugings =>
  readGaugings(["Date,Stage,Flow", ...rows].join("\n"), "rating.csv", { ...spec, ...more });

describe("gaugings", () => {
  it("have their day, stage and flow, in the order of the file", () => {
    const { gaugings: read, notes } = gaugings([
      "02/03/2021,0.25,12 ± 0.5",
      "01/03/2021,-0.02,0",
      "01/03/2021,0.3,15",
    ]);
    expect(read.map(({ on }) => on)).toEqual(["2021-03-02", "2021-03-01", "2021-03-01"]);
    expect(read.map(({ stage }) => stage.in(metre))).toEqual([0.25, -0.02, 0.3]);
    expect(read.map(({ flow }) => flow.in(litrePerSecond))).toEqual([12, 0, 15]);
    expect(read.map(({ line }) => line)).toEqual([2, 3, 4]);
    expect(read.map(({ flow }) => [...flow.sources().keys()])).toEqual([["rating.1.flow"], [], []]);
    expect(notes).toEqual([]);
  });

  it("need no date", () => {
    expect(gaugings(["x,0.25,12"], { date: undefined }).gaugings[0]).not.toHaveProperty("on");
  });

  it.each<[string, readonly string[], Partial<GaugingsSpec>, readonly string[]]>([
    [
      "a day that does not exist",
      ["31/02/2021,0.25,12"],
      {},
      ['2:1: gaugings/date: Date "31/02/2021" does not exist: February 2021 has 28 days.'],
    ],
    ["a stage that is missing", ["01/02/2021,,12"], {}, ["2:12: gaugings/number: Stage is empty."]],
    [
      "a flow that is negative",
      ["01/02/2021,0.2,-12"],
      {},
      ['2:16: gaugings/number: Flow "-12" is negative.'],
    ],
    [
      "a unit of something else",
      ["01/02/2021,0.2,-12"],
      { stage: { column: "Stage", unit: "s" } },
      [
        "1:1: gaugings/unit: stage unit: s is a unit of time; a unit of length is needed, such as m.",
      ],
    ],
    [
      "a form that is none",
      ["01/02/2021,0.2,-12"],
      { date: { column: "Date", form: "dd.mm.yyyy" } },
      [
        '1:1: gaugings/date-form: date form: "dd.mm.yyyy" holds "d", which is no part of a date; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals.',
      ],
    ],
  ])("are refused for %s", (_, rows, more, problems) => {
    expect(problemsOf(() => gaugings(rows, more))).toEqual(
      problems.map((problem) => `rating.csv:${problem}`),
    );
  });

  it("are refused where a heading names another unit", () => {
    const text = "Stage (ft),Flow (m3/s)\n1,2";
    const read = (stage: string, flow: string): string[] =>
      problemsOf(() =>
        readGaugings(text, "rating.csv", {
          stage: { column: "Stage (ft)", unit: stage },
          flow: { column: "Flow (m3/s)", unit: flow },
        }),
      );
    expect(read("ft", "m3/s")).toEqual([]);
    expect(read("m", "ft3/s")).toEqual([
      'rating.csv:1:1: gaugings/unit: the heading "Stage (ft)" names ft, and m is stated. Which is it?',
      'rating.csv:1:1: gaugings/unit: the heading "Flow (m3/s)" names m³/s, and ft³/s is stated. Which is it?',
    ]);
  });
});

const file = "../shared/reference/data/rating_gaugings.csv";

describe.skipIf(!existsSync(file))(
  "gaugings of a course (rating_gaugings.csv, absent: skipped)",
  () => {
    it("are the nine that the course prints", () => {
      const { gaugings: read, notes } = readGaugings(readFileSync(file, "utf8"), file, {
        date: { column: "Date", form: "DD-MMM-YY" },
        stage: { column: "Water level (m)", unit: "m" },
        flow: { column: "Flow (m3/s)", unit: "m3/s" },
      });
      expect(read.map(({ stage }) => stage.in(metre))).toEqual([
        0.236, 0.267, 0.224, 0.707, 0.468, 0.589, 0.296, 0.3, 0.632,
      ]);
      expect(read.map(({ flow }) => flow.in(cubicMetrePerSecond))).toEqual([
        1.565, 1.53, 0.967, 5.133, 3.402, 4.474, 1.297, 1.823, 4.682,
      ]);
      expect([read[0]?.on, read.at(-1)?.on]).toEqual(["2009-01-02", "2010-08-25"]);
      expect(notes.map(({ code }) => code)).toEqual(["file/short-years"]);
    });
  },
);
