import { describe, expect, it } from "vitest";
import * as z from "zod";

import { Bound } from "../../../packages/scheme/src/read/field.ts";
import { readDailyRecord } from "../../../packages/scheme/src/read/record.ts";
import { readConductivity } from "../../../packages/scheme/src/read/series.ts";
import {
  calibrationOf,
  calibrationSpec,
  gaugingsOf,
  gaugingsSpec,
  recordOf,
  recordSpec,
  type Section,
  seriesOf,
  seriesSpec,
} from "../../../packages/scheme/src/read/table-schema.ts";
import { parseYaml } from "../../../packages/scheme/src/read/yaml.ts";

const schemas = { recordSpec, seriesSpec, calibrationSpec, gaugingsSpec };

/** Gives every value its path, and every key one word, as the reader of a survey does. */
function bind(value: unknown, path: string): unknown {
  if (value instanceof Bound) return value.make(path);
  if (Array.isArray(value)) return value.map((each, i) => bind(each, `${path}.${i + 1}`));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, child]) => {
      const word = key.replaceAll(/ (\w)/g, (_, letter: string) => letter.toUpperCase());
      return [word, bind(child, `${path}.${word}`)];
    }),
  );
}

const parse = (schema: z.ZodType, yaml: string): z.ZodSafeParseResult<unknown> =>
  schema.safeParse(parseYaml(yaml, "s.yaml").value);

function section(schema: z.ZodType, yaml: string): Section {
  const { data, error } = parse(schema, yaml);
  expect(error).toBeUndefined();
  return bind(data, "s") as Section;
}

/** What is wrong, as `key: code: message`. */
function faults(schema: z.ZodType, yaml: string): string[] {
  return (parse(schema, yaml).error?.issues ?? []).map((issue) => {
    const own = issue.code === "custom" ? (issue.params?.["code"] as string) : issue.code;
    return `${issue.path.join(".")}: ${own}: ${issue.message}`;
  });
}

const record = `
file: data/creek.csv
date: Date
date form: DD/MM/YY
years from: 1930
flow: column 4
flow unit: ft3/s
where: { PARAM: 1, Station ID: A 1 }
flag: SYM
flags: { A e: partial, B: ice }
gaps: [-999, ERR]
water year: 10
clock: -08:00
delimiter: semicolon
decimal: comma
header: 3
first row: 5
`;
const series = "file: ec.csv\ntime: Time\nconductivity: EC\nconductivity unit: µS/cm\nreads: raw\n";
const calibration =
  "file: c.csv\nadded: V\nadded unit: L\nconductivity: EC\nconductivity unit: µS/cm\n";
const gaugings = "file: r.csv\nstage: h\nstage unit: ft\nflow: Q\nflow unit: gal/min\n";

describe("what a survey says of a table", () => {
  it("becomes what its reader takes", () => {
    expect(recordOf(section(recordSpec, record))).toEqual({
      file: "data/creek.csv",
      spec: {
        delimiter: "semicolon",
        decimal: "comma",
        header: 3,
        firstRow: 5,
        date: { column: "Date", form: "DD/MM/YY", yearsFrom: 1930 },
        flow: { column: "column 4", unit: "ft3/s" },
        where: { PARAM: "1", "Station ID": "A 1" },
        flag: { column: "SYM", meanings: { "A e": "partial", B: "ice" } },
        gaps: ["-999", "ERR"],
        waterYearStart: 10,
        utcOffset: "-08:00",
      },
    });
    expect(seriesOf(section(seriesSpec, `${series}time unit: min\n`))).toEqual({
      file: "ec.csv",
      spec: {
        time: { column: "Time", unit: "min" },
        conductivity: { column: "EC", unit: "µS/cm" },
        reads: "raw",
      },
    });
    expect(
      seriesOf(
        section(
          seriesSpec,
          `${series}time form: YY-MM-DD HH:MM\nyears from: 1999\ntemperature: T\ntemperature unit: °F\n`,
        ),
      ).spec,
    ).toMatchObject({
      time: { column: "Time", form: "YY-MM-DD HH:MM", yearsFrom: 1999 },
      temperature: { column: "T", unit: "°F" },
    });
    expect(calibrationOf(section(calibrationSpec, calibration), "s.salt.calibration")).toEqual({
      file: "c.csv",
      spec: {
        added: { column: "V", unit: "L" },
        conductivity: { column: "EC", unit: "µS/cm" },
        source: "s.salt.calibration",
      },
    });
    expect(
      gaugingsOf(section(gaugingsSpec, `${gaugings}date: D\ndate form: YYYYMMDD\n`), "s.rating"),
    ).toEqual({
      file: "r.csv",
      spec: {
        date: { column: "D", form: "YYYYMMDD" },
        stage: { column: "h", unit: "ft" },
        flow: { column: "Q", unit: "gal/min" },
        source: "s.rating",
      },
    });
    expect(gaugingsOf(section(gaugingsSpec, gaugings), "s").spec.date).toBeUndefined();
  });

  it("is enough to read by", () => {
    const { file, spec } = recordOf(
      section(
        recordSpec,
        "file: q.csv\ndate: Day\ndate form: YYYY-MM-DD\nflow: Q\nflow unit: L/s\n",
      ),
    );
    expect(readDailyRecord("Day;Q\n2020-01-01;1,5", file, spec).flow.values[0]).toBe(0.0015);
    const log = seriesOf(section(seriesSpec, `${series}time form: HH:MM\n`));
    expect([...readConductivity("Time,EC\n00:01,100", log.file, log.spec).seconds]).toEqual([60]);
  });

  it.each([
    ["../creek.csv", "leaves the folder of the survey (..)"],
    ["a/../../creek.csv", "leaves the folder of the survey (..)"],
    ["/etc/creek.csv", "begins at another folder than the survey's"],
    ["~/creek.csv", "begins at another folder than the survey's"],
    ["C:/creek.csv", "begins with a drive or an address"],
    ["http://example.org/creek.csv", "begins with a drive or an address"],
    ["a\\creek.csv", "has a backslash"],
    ["a\u0007.csv", "has a character that cannot be seen"],
    ["./creek.csv", "is not a plain name"],
    ["a//creek.csv", "is not a plain name"],
    ["data/", "is not a plain name"],
    ["x".repeat(201), "is longer than 200 characters"],
  ])("keeps to the folder of the survey: %j", (path, fault) => {
    expect(faults(recordSpec, record.replace("data/creek.csv", JSON.stringify(path)))).toEqual([
      `file: path: ${path.slice(0, 100)} ${fault}; write the name of a file beside the survey, such as record.csv or data/record.csv.`,
    ]);
  });

  it.each(["creek.csv", "data/creek 2.csv", "..creek.csv", "a..b/été.csv"])(
    "takes a plain name: %s",
    (path) => {
      expect(faults(recordSpec, record.replace("data/creek.csv", path))).toEqual([]);
    },
  );

  it.each<[z.ZodType, string, string]>([
    [
      recordSpec,
      record.replace("flow unit: ft3/s", "flow unit: m/s"),
      "flow unit: kind: m/s is a unit of velocity; a unit of volume flow is needed, such as m3/s",
    ],
    [
      recordSpec,
      record.replace("DD/MM/YY", "HH:MM").replace("years from: 1930\n", ""),
      'date form: time: "HH:MM" has no date; write a form such as YYYY-MM-DD, DD/MM/YYYY, DD-MMM-YY or HH:MM:SS, in capitals',
    ],
    [
      recordSpec,
      record.replace("DD/MM/YY", "DD/MM/YYYY"),
      "years from: two-ways: 1930 is for years of two digits, and DD/MM/YYYY has none; leave it out.",
    ],
    [
      recordSpec,
      record.replace("1930", "30"),
      "years from: year: 30 is not a year of four digits, such as 1930.",
    ],
    [
      recordSpec,
      record.replace("1930", "1066"),
      "years from: time: 1066 is not a year that a hundred years can begin with; write one such as 1930",
    ],
    [
      recordSpec,
      record.replace(/flags: .*\n/, ""),
      "flag: missing: SYM has no flags; write it, such as flags: { A: partial, B: ice }.",
    ],
    [
      recordSpec,
      record.replace(/flag: .*\n/, ""),
      "flags: missing: meanings without a column; write it, such as flag: SYM.",
    ],
    [
      recordSpec,
      record.replace("B: ice", "B: snow"),
      'flags.B: word: "snow" is not known here; write one of good, partial, ice, estimated, suspect, gap.',
    ],
    [
      recordSpec,
      record.replace("water year: 10", "water year: Oct"),
      "water year: month: Oct is not a month; write a number from 1 to 12.",
    ],
    [
      recordSpec,
      record.replace("-08:00", "PST"),
      "clock: time: utcOffset PST is not an offset such as +10:00",
    ],
    [
      seriesSpec,
      series,
      "time: missing: Time has neither a unit nor a form; write one, such as time unit: s or time form: HH:MM:SS.",
    ],
    [
      seriesSpec,
      `${series}time unit: s\ntime form: HH:MM:SS\n`,
      "time form: two-ways: HH:MM:SS stands beside time unit; times are numbers of a unit or have a form.",
    ],
    [
      seriesSpec,
      `${series}time unit: s\nyears from: 1930\n`,
      "years from: two-ways: 1930 is for years of two digits, and no form has them; leave it out.",
    ],
    [
      seriesSpec,
      `${series}time unit: s\ntemperature: T\n`,
      "temperature: missing: T has no temperature unit; write it, such as temperature unit: °C.",
    ],
    [
      seriesSpec,
      `${series}time unit: s\ntemperature: T\ntemperature unit: psi\n`,
      "temperature unit: unknown-unit: psi is not a scale of temperature; write °C, °F or K",
    ],
    [
      calibrationSpec,
      `${calibration}temperature: T\n`,
      "temperature: missing: T has no temperature unit; write it, such as temperature unit: °C.",
    ],
    [
      gaugingsSpec,
      `${gaugings}date: D\n`,
      "date: missing: D has no date form; write it, such as date form: YYYY-MM-DD.",
    ],
  ])("is refused where it says too little or another thing (%#)", (schema, yaml, fault) => {
    expect(faults(schema, yaml)).toEqual([fault]);
  });

  it.each(Object.entries(schemas))("has examples that %s takes", (_, schema) => {
    interface Node {
      readonly properties?: Record<string, Node>;
      readonly examples?: readonly string[];
      readonly description?: string;
    }
    const { properties = {} } = z.toJSONSchema(schema, { io: "input" }) as Node;
    expect(Object.keys(properties).length).toBeGreaterThan(5);
    for (const [key, { examples = [] }] of Object.entries(properties)) {
      for (const example of examples) {
        const issues = schema.safeParse({ [key]: example }).error?.issues ?? [];
        expect(
          issues.filter(({ path }) => path[0] === key),
          `${key}: ${example}`,
        ).toEqual([]);
      }
    }
  });
});
