import type { AnyPoint, AnyQuantity, Point, Quantity } from "@leat/quantity";
import { isPoint } from "@leat/quantity";
import { closest } from "fastest-levenshtein";
import type * as z from "zod";

import type { Assumed } from "../assume.ts";
import type { FallSurvey, FieldSurvey, ReachSurvey, StreamSurvey, Survey } from "../survey.ts";
import { Bound } from "./field.ts";
import { FileError, type Problem } from "./problem.ts";
import { fieldSurveySchema, schemaAt, shorthands, surveySchema } from "./schema.ts";
import type { Section } from "./table-schema.ts";
import { type OpenFile, Tables } from "./tables.ts";
import { besideMeasured, flowWays, headWays, monthNumber, wayOfFlow } from "./ways.ts";
import { type Parsed, parseYaml } from "./yaml.ts";

/** A survey with what was taken for granted in reading it. */
export interface ReadSurvey {
  /** The survey. */
  readonly survey: Survey;
  /** What reading took for granted. */
  readonly assumed: readonly Assumed[];
  /** Where a path stands in the file, or the nearest place above it. */
  readonly place: (path: readonly (string | number)[]) => Place;
}

/** A place in a file, from 1. */
export interface Place {
  /** Line. */
  readonly line: number;
  /** Column. */
  readonly column: number;
}

/** What was measured, with what was taken for granted in reading it. */
export interface ReadFieldSurvey {
  /** What was measured, and what is chosen already. */
  readonly survey: FieldSurvey & Partial<Survey>;
  /** What reading took for granted. */
  readonly assumed: readonly Assumed[];
  /** Where a path stands in the file, or the nearest place above it. */
  readonly place: (path: readonly (string | number)[]) => Place;
}

/**
 * Reads a survey file.
 *
 * @param text - Its text.
 * @param file - Its name, for problems and for the ids of sources of uncertainty.
 * @param open - Gives the text of a file that the survey names, by the name that stands there.
 * @returns The survey.
 * @throws {@link FileError} with every problem at once, each with its line and column.
 */
export function readSurvey(text: string, file = "survey", open?: OpenFile): ReadSurvey {
  return readWith(text, file, surveySchema, open) as ReadSurvey;
}

/**
 * Reads what was measured from a survey file, which need not have pipe, cable and the rest yet.
 *
 * @param text - Its text.
 * @param file - Its name, for problems and for the ids of sources of uncertainty.
 * @param open - Gives the text of a file that the survey names, by the name that stands there.
 * @returns What was measured.
 * @throws {@link FileError} with every problem at once, each with its line and column.
 */
export function readFieldSurvey(text: string, file = "survey", open?: OpenFile): ReadFieldSurvey {
  return readWith(text, file, fieldSurveySchema, open);
}

function readWith(
  text: string,
  file: string,
  schema: z.ZodType,
  open: OpenFile | undefined,
): ReadFieldSurvey {
  const parsed = parseYaml(text, file);
  if (parsed.value === undefined || parsed.value === null) throw new FileError(parsed.problems);
  const problems: Problem[] = [...parsed.problems];
  const root = expand(parsed.value, file, parsed, problems);
  const outcome = root && schema.safeParse(root);
  if (outcome && !outcome.success) {
    for (const issue of outcome.error.issues) problems.push(...fromIssue(issue, file, parsed));
  }
  if (outcome?.success)
    problems.push(...relations(outcome.data as Raw, file, parsed, schema === surveySchema));
  if (problems.length > 0 || !outcome?.success) {
    throw new FileError(problems.toSorted((a, b) => a.line - b.line || a.column - b.column));
  }
  const tables = new Tables(file, parsed, open);
  const made = assemble(outcome.data as Raw, file, tables);
  tables.throwIfAny();
  return { ...made, place: (path) => parsed.place(path) };
}

/** The parsed shape: sections of values that wait for their paths. */
type Raw = Record<string, unknown> & {
  stream: Record<string, unknown>;
  fall?: Record<string, unknown>;
};

/** Writes out sections that stand as one value. */
function expand(
  value: unknown,
  file: string,
  parsed: Parsed,
  problems: Problem[],
): Record<string, unknown> | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    problems.push({
      file,
      ...parsed.place([]),
      code: "file/not-a-survey",
      path: [],
      message: "this is not a survey: it has no sections. Write lines such as fall: 110 ft.",
    });
    return undefined;
  }
  const root = { ...value } as Record<string, unknown>;
  for (const [section, { key, list }] of Object.entries(shorthands)) {
    const written = root[section];
    if (typeof written === "string")
      root[section] = list ? [{ [key]: written }] : { [key]: written };
    else if (list && typeof written === "object" && written !== null && !Array.isArray(written))
      root[section] = [written];
  }
  return root;
}

type Issue = z.core.$ZodIssue;

function fromIssue(issue: Issue, file: string, parsed: Parsed): Problem[] {
  const path = issue.path as (string | number)[];
  const at = where(path);
  if (issue.code === "unrecognized_keys") {
    const known = schemaAt(path).keys;
    return issue.keys.map((key) => {
      const near = closest(key, [...known]);
      return {
        file,
        ...parsed.keyPlace([...path, key]),
        code: "survey/unknown-key",
        path: [...path, key],
        message: `${where([...path, key])} is not known here; is it ${near}? Known are ${known.join(", ")}.`,
      };
    });
  }
  const own =
    issue.code === "custom" ? (issue.params as { code?: string } | undefined)?.code : undefined;
  const absent = issue.code === "invalid_type" && valueAt(parsed.value, path) === undefined;
  return [
    {
      file,
      ...parsed.place(path),
      code: `survey/${own ?? (absent ? "missing" : "shape")}`,
      path,
      message:
        own === "empty"
          ? `${at} is empty; ${issue.message.replace(/^.*; /, "")}`
          : own
            ? `${at} = ${issue.message}`
            : `${at} ${absent ? missing(path) : misshapen(issue, valueAt(parsed.value, path))}`,
    },
  ];
}

function missing(path: readonly (string | number)[]): string {
  const at = schemaAt(path);
  const shorthand = path.length === 1 ? shorthands[String(path[0])] : undefined;
  const one =
    shorthand === undefined
      ? at
      : schemaAt([...path, ...(shorthand.list ? [0] : []), shorthand.key]);
  if (one.example === undefined) return `is missing; write its keys ${at.keys.join(", ")}.`;
  return `is missing; write the ${one.says}, such as ${String(path.at(-1))}: ${one.example}.`;
}

function misshapen(issue: Issue, value: unknown): string {
  if (issue.code === "too_small") return "is an empty list; write one row at least.";
  if (issue.code !== "invalid_type") return `is refused: ${issue.message}.`;
  const got = Array.isArray(value)
    ? "a list"
    : typeof value === "object"
      ? "a map of keys"
      : `the value ${JSON.stringify(String(value).slice(0, 60))}`;
  const wanted =
    issue.expected === "array"
      ? "a list"
      : issue.expected === "object" || issue.expected === "record"
        ? "a map of keys"
        : "one value";
  return `is ${got}; ${wanted} is needed.`;
}

/** What must be told of keys together. */
function relations(raw: Raw, file: string, parsed: Parsed, whole: boolean): Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (path, code, message) => {
    problems.push({
      file,
      ...parsed.place(path),
      code: `survey/${code}`,
      path,
      message: `${where(path)} ${message}`,
    });
  };
  for (const [name, ways] of [
    ["stream", flowWays],
    ["fall", headWays],
  ] as const) {
    const section = raw[name];
    if (!section) continue;
    // What was never measured may be known by a record, but no scheme is made for it.
    const known =
      !whole && name === "stream" && (section["record"] ?? section["gauged"]) !== undefined;
    if (!known || [...ways, "measured"].some((way) => section[way] !== undefined))
      one([name], section, [...ways, "measured"]);
    const rows = (section["measured"] ?? []) as Record<string, unknown>[];
    rows.forEach((row, i) => one([name, "measured", i], row, ways));
    for (const key of section["measured"] ? besideMeasured[name] : []) {
      if (section[key] !== undefined)
        tell([name, key], "two-ways", "stands beside measured; write it into a row of the list.");
    }
  }
  function one(
    path: (string | number)[],
    section: Record<string, unknown>,
    ways: readonly string[],
  ): void {
    const given = ways.filter((way) => section[way] !== undefined);
    if (given.length === 0) tell(path, "missing", `has no ${ways.join(", ")}; write one of them.`);
    if (given.length > 1)
      tell(
        [...path, given[1] as string],
        "two-ways",
        `stands beside ${given[0]}; give one way of measuring.`,
      );
  }
  yearRelations(raw.stream, tell);
  notchRelations(
    ["stream", "board"],
    raw.stream["board"] as Record<string, unknown> | undefined,
    tell,
  );
  boardRelations(raw.stream["board"] as Record<string, unknown> | undefined, tell);
  for (const [path, row] of rowsOf(raw, "stream")) {
    notchRelations([...path, "notch"], row["notch"] as Record<string, unknown> | undefined, tell);
    staffRelations(path, row, tell);
    floatRelations(path, row, tell);
    meterRelations(path, row, tell);
    saltRelations(path, row, tell);
  }
  ((raw["reaches"] ?? []) as Record<string, unknown>[]).forEach((reach, i) => {
    ((reach["fittings"] as Record<string, unknown>[] | undefined) ?? []).forEach((fitting, j) => {
      if ((fitting["what"] === undefined) === (fitting["k"] === undefined)) {
        tell(
          ["reaches", i, "fittings", j],
          "two-ways",
          "needs either a named fitting (what) or a loss coefficient (k).",
        );
      }
    });
  });
  for (const [path, row] of rowsOf(raw, "fall")) gaugeRelations(path, row, tell);
  const jets = raw["jets"] as Record<string, unknown> | undefined;
  if (jets?.["nozzles"] && jets["count"])
    tell(["jets", "count"], "two-ways", "stands beside nozzles; the list has its own count.");
  return problems;
}

type Tell = (path: (string | number)[], code: string, message: string) => void;

/** Measurements of a section, each with its path: those of the list, or the one straight under it. */
function rowsOf(
  raw: Raw,
  name: "stream" | "fall",
): [path: (string | number)[], row: Record<string, unknown>][] {
  const section = raw[name] ?? {};
  const list = section["measured"] as Record<string, unknown>[] | undefined;
  return list ? list.map((row, i) => [[name, "measured", i], row]) : [[[name], section]];
}

/** What the keys of a notch ask of one another. */
function notchRelations(
  at: readonly (string | number)[],
  notch: Record<string, unknown> | undefined,
  tell: Tell,
): void {
  if (!notch) return;
  const shape = (notch["shape"] as Bound).make("") as string;
  for (const key of shape === "V" ? ["angle", "sill", "channel"] : ["width"]) {
    if (notch[key] === undefined)
      tell([...at], "missing", `is a ${shape} notch and has no ${key}; write it.`);
  }
  const strange = shape === "V" ? "width" : "angle";
  if (notch[strange] !== undefined)
    tell([...at, strange], "two-ways", `is not of a ${shape} notch; leave it out.`);
  const [width, channel] = ["width", "channel"].map((key) =>
    notch[key] instanceof Bound ? (notch[key].make("") as AnyQuantity) : undefined,
  );
  if (shape !== "V" && width && channel && channel["~si"] < width["~si"])
    tell(
      [...at, "channel"],
      "range",
      `= ${channel.toString()} is narrower than the notch in it (${width.toString()}); write the width of the channel that brings the water.`,
    );
}

/** More lines than anybody pins up beside a weir. */
const mostBoardLines = 500;

/** A board begins below where it ends, and fits on a board. */
function boardRelations(board: Record<string, unknown> | undefined, tell: Tell): void {
  if (!board) return;
  const [from, to, division] = ["from", "to", "division"].map(
    (key) => (board[key] as Bound).make("") as AnyQuantity,
  ) as [AnyQuantity, AnyQuantity, AnyQuantity];
  const lines = Math.floor((to["~si"] - from["~si"]) / division["~si"]) + 1;
  if (!(to["~si"] > from["~si"]))
    tell(
      ["stream", "board", "to"],
      "range",
      `= ${to.toString()} is not above from (${from.toString()}); write the highest mark of the ruler.`,
    );
  else if (lines > mostBoardLines)
    tell(
      ["stream", "board", "division"],
      "range",
      `= ${division.toString()} makes ${lines} lines, and a board has at most ${mostBoardLines}; write a coarser division.`,
    );
}

/** What the keys of a stream through the year ask of one another. */
function yearRelations(stream: Record<string, unknown>, tell: Tell): void {
  const together = (first: string, second: string, at: string[]): void => {
    if (stream[first] !== undefined && stream[second] !== undefined)
      tell([...at, second], "two-ways", `stands beside ${first}; give one of them.`);
  };
  together("record", "gauged", ["stream"]);
  together("leave", "leave by rules", ["stream"]);
  const rules = stream["leave by rules"] as Record<string, unknown> | undefined;
  for (const [key, beside] of [
    ["tennant", "low months"],
    ["hands off", "take above"],
  ] as const) {
    const [first, second] = [rules?.[key], rules?.[beside]];
    if ((first === undefined) === (second === undefined)) continue;
    tell(
      ["stream", "leave by rules"],
      "missing",
      first === undefined
        ? `has ${beside} and no ${key}; write it.`
        : `has ${key} and no ${beside}; write it.`,
    );
  }
  if (rules && Object.keys(rules).every((key) => key === "most"))
    tell(
      ["stream", "leave by rules"],
      "missing",
      "says of nothing that it must stay; write a rule, or flow: 0 L/s.",
    );
}

/** A staff has gaugings in the survey or in a file. */
function staffRelations(
  path: readonly (string | number)[],
  row: Record<string, unknown>,
  tell: Tell,
): void {
  const staff = row["staff"] as Record<string, unknown> | undefined;
  if (!staff || (staff["gaugings"] === undefined) !== (staff["gaugings file"] === undefined))
    return;
  tell(
    [...path, "staff"],
    staff["gaugings"] === undefined ? "missing" : "two-ways",
    "needs the flows that were measured at its readings, in one place: gaugings, or gaugings file.",
  );
}

/** A cross-section is sounded, or its area is known; floats need something to take their coefficient from. */
function floatRelations(
  path: readonly (string | number)[],
  row: Record<string, unknown>,
  tell: Tell,
): void {
  const floats = row["floats"] as Record<string, unknown> | undefined;
  if (!floats) return;
  const at = [...path, "floats"];
  (floats["sections"] as Record<string, unknown>[]).forEach(({ area, width, depths }, i) => {
    const sounded = [width, depths].filter((key) => key !== undefined).length;
    if (area === undefined ? sounded < 2 : sounded > 0)
      tell([...at, "sections", i], "two-ways", "needs either an area, or a width and depths.");
  });
  const given = ["coefficient", "bed", "depth"].filter((key) => floats[key] !== undefined);
  if (given.length !== 1)
    tell(
      at,
      given.length === 0 ? "missing" : "two-ways",
      "needs one thing to take the coefficient from: coefficient, bed or depth.",
    );
}

/** Where a meter may be held in a vertical: depths that go together. */
const points = /* @__PURE__ */ new Set([
  "",
  "surface",
  "six tenths",
  "two tenths, eight tenths",
  "two tenths, six tenths, eight tenths",
]);

/** Readings in a vertical go together, and a share is of the depth at an upright bank. */
function meterRelations(
  path: readonly (string | number)[],
  row: Record<string, unknown>,
  tell: Tell,
): void {
  const meter = row["meter"] as Record<string, Record<string, unknown>[]> | undefined;
  if (!meter) return;
  const at = [...path, "meter"];
  meter["verticals"]?.forEach((vertical, i) => {
    const given = ["surface", "two tenths", "six tenths", "eight tenths"].filter(
      (key) => vertical[key] !== undefined,
    );
    if (!points.has(given.join(", ")))
      tell(
        [...at, "verticals", i],
        given.length > 1 && given.includes("surface") ? "two-ways" : "missing",
        `has ${given.join(", ")}; a vertical is read at the surface, at six tenths, or at two and eight tenths, with six tenths between them or without.`,
      );
  });
  meter["edges"]?.forEach((edge, i) => {
    if (edge["share"] !== undefined && edge["depth"] === undefined)
      tell(
        [...at, "edges", i, "share"],
        "missing",
        "is of the velocity at an upright bank; write the depth there, or leave it out.",
      );
  });
}

/** One temperature for all rows has no place where the loggers wrote theirs. */
function saltRelations(
  path: readonly (string | number)[],
  row: Record<string, unknown>,
  tell: Tell,
): void {
  for (const way of ["salt", "salt feed"]) {
    const salt = row[way] as Record<string, unknown> | undefined;
    const probes = (salt?.["probes"] ?? []) as Record<string, unknown>[];
    if (salt?.["temperature"] && probes.every(({ temperature }) => temperature !== undefined))
      tell(
        [...path, way, "temperature"],
        "two-ways",
        "stands beside the temperatures in the files of the probes; give one of them.",
      );
    const [first, second] = probes.map(({ file }) => (file as Bound).make(""));
    if (first !== undefined && first === second)
      tell(
        [...path, way, "probes", 1, "file"],
        "two-ways",
        "is the file of the first probe; write that of the second, or leave it out.",
      );
  }
}

/** A division is of the instrument that was read, and what stands on a dial is of a gauge. */
function gaugeRelations(
  path: readonly (string | number)[],
  row: Record<string, unknown>,
  tell: Tell,
): void {
  const reading = row["gauge"] ?? row["gross"];
  const kind = reading instanceof Bound ? kindOf(reading) : undefined;
  for (const key of ["gauge above nozzles", "gauge zero", "full scale", "class"]) {
    if (row[key] !== undefined && kind !== "pressure")
      tell([...path, key], "two-ways", "is of a gauge, and no gauge was read; leave it out.");
  }
  for (const [key, other] of [
    ["class", "full scale"],
    ["full scale", "class"],
  ] as const) {
    if (kind === "pressure" && row[key] !== undefined && row[other] === undefined)
      tell(
        [...path, key],
        "missing",
        `stands without ${other}; write both, as they stand on the dial.`,
      );
  }
  const to = row["read to"];
  if (!(to instanceof Bound)) return;
  if (kind === undefined) {
    tell(
      [...path, "read to"],
      "two-ways",
      "is of a gauge or of a stated fall, and neither is here; leave it out.",
    );
    return;
  }
  const [a, b] = [kind, kindOf(to)];
  if (a !== b)
    tell(
      [...path, "read to"],
      "dimension",
      `is a ${b}, and the reading a ${a}; write a division of the instrument that was read.`,
    );
}

function kindOf(value: Bound): string {
  const made = value.make("");
  return isPoint(made) ? "pressure" : (made as AnyQuantity).kind;
}

/** `velocity coefficient` → `velocityCoefficient`: a source is named alike in the file and in the scheme. */
function oneWord(key: string): string {
  return key.replaceAll(/ (\w)/g, (_, letter: string) => letter.toUpperCase());
}

/** Gives every value its path. */
function bind(value: unknown, path: string): unknown {
  if (value instanceof Bound) return value.make(path);
  if (Array.isArray(value)) return value.map((item, i) => bind(item, `${path}.${i + 1}`));
  if (typeof value === "object" && value !== null) {
    return Object.fromEntries(
      Object.entries(value).map(([key, child]) => [
        oneWord(key),
        bind(child, `${path}.${oneWord(key)}`),
      ]),
    );
  }
  return value;
}

function assemble(raw: Raw, file: string, tables: Tables): Omit<ReadSurvey, "place"> {
  const id = file.replace(/^.*[\\/]/, "").replace(/\.ya?ml$/i, "");
  const all = bind(raw, id) as Record<string, Record<string, unknown>>;
  const assumed: Assumed[] = [];
  if (raw["leat"] === undefined) {
    assumed.push({
      path: ["leat"],
      what: "version of the form of the file",
      value: "1",
      because: undefined,
    });
  }
  const { site = {}, jets = {}, wheel = {}, machine = {}, divert = {} } = all;
  const stream = all["stream"] as Record<string, unknown>;
  const fall = all["fall"];
  const survey = {
    id,
    site,
    stream: {
      ...measuredOf(stream, (row, path) => flowOf(row, `${id}.stream`, path, tables)),
      ...throughTheYearOf(stream, tables),
    } as unknown as StreamSurvey,
    ...(fall && {
      fall: measuredOf(fall, (row, path) => fallOf(row, path, assumed)) as unknown as FallSurvey,
    }),
    reaches: ((all["reaches"] ?? []) as unknown as Record<string, unknown>[]).map(
      (reach) =>
        ({
          ...reach,
          ...(reach["fittings"] !== undefined && {
            fittings: (reach["fittings"] as Record<string, unknown>[]).map((fitting) => ({
              count: 1,
              ...fitting,
            })),
          }),
        }) as unknown as ReachSurvey,
    ),
    jets,
    wheel,
    machine,
    cable: all["cable"],
    bank: all["bank"],
    divert,
  } as unknown as Survey;
  return { survey, assumed };
}

/** Measurements in a list of their own, or the one that stands straight under its section. */
function measuredOf(
  section: Record<string, unknown>,
  row: (written: Record<string, unknown>, path: (string | number)[]) => unknown,
): { measured: unknown[]; listed: boolean } {
  const list = section["measured"] as Record<string, unknown>[] | undefined;
  const written = [...flowWays, ...headWays].some((way) => section[oneWord(way)] !== undefined);
  return {
    measured: list
      ? list.map((each, i) => row(each, ["measured", i]))
      : written
        ? [row(section, [])]
        : [],
    listed: list !== undefined,
  };
}

/** What is known of the stream through the year, the records that it names read. */
function throughTheYearOf(
  stream: Record<string, unknown>,
  tables: Tables,
): Record<string, unknown> {
  const { record, gauged, leaveByRules, yearFrom } = stream as Record<string, Section | undefined>;
  const { lowMonths, months, ...rules } = leaveByRules ?? {};
  return {
    ...only(stream, ["leave", "board", "area", "runoff", "builtFor"]),
    ...(yearFrom !== undefined && { yearFrom: monthNumber(String(yearFrom)) }),
    ...(record && { record: tables.record(record, ["stream", "record"]) }),
    ...(gauged && {
      gauged: {
        ...gauged,
        record: tables.record(gauged["record"] as Section, ["stream", "gauged", "record"]),
      },
    }),
    ...(leaveByRules && {
      leave: {
        ...rules,
        ...(lowMonths !== undefined && { lowMonths: (lowMonths as string[]).map(monthNumber) }),
        ...(months !== undefined && { months: Object.values(months as Record<string, unknown>) }),
      },
    }),
  };
}

/** One measurement of the flow, the tables that it names read. */
function flowOf(
  written: Record<string, unknown>,
  id: string,
  path: readonly (string | number)[],
  tables: Tables,
): unknown {
  const row = only(written, rowKeys);
  const section = (key: string): Record<string, unknown> | undefined =>
    row[key] as Record<string, unknown> | undefined;
  const [notch, crest, nozzles, staff] = ["notch", "crest", "nozzles", "staff"].map(section);
  const [salt, feed] = ["salt", "saltFeed"].map(section);
  const at = ["stream", ...path];
  const source = [id, ...path.map((part) => (typeof part === "number" ? part + 1 : part))].join(
    ".",
  );
  return {
    ...row,
    ...(notch && { notch: readTo(notch, "head") }),
    ...(crest && { crest: readTo(crest, "head") }),
    ...(nozzles && { nozzles: readTo(nozzles, "gauge") }),
    ...(salt && { salt: tables.salt(salt, `${source}.salt`, [...at, "salt"]) }),
    ...(feed && { saltFeed: tables.salt(feed, `${source}.saltFeed`, [...at, "salt feed"]) }),
    ...(staff && { staff: tables.staff(staff, `${source}.staff`, [...at, "staff"]) }),
  };
}

/** One measurement of the fall. A pressure given as the fall is a gauge reading, and that is said. */
function fallOf(
  written: Record<string, unknown>,
  path: readonly (string | number)[],
  assumed: Assumed[],
): unknown {
  const { measured: _, gross: stated, gauge: read, readTo: to, ...row } = written;
  const gross = stated as AnyQuantity | AnyPoint | undefined;
  const asPressure = gross !== undefined && (isPoint(gross) || gross.kind === "pressure");
  if (asPressure) {
    assumed.push({
      path: ["fall", ...path, "gross"],
      what: "a pressure given as the fall",
      value: `${String(gross)}, a gauge at nozzle height on the full pipe at rest; turned to head with the density of the water`,
      because: undefined,
    });
  }
  const gauge = asPressure ? gross : (read as AnyQuantity | AnyPoint | undefined);
  const pressure =
    gauge &&
    ((isPoint(gauge)
      ? (gauge as unknown as Point<"local atmosphere">).overOrigin()
      : gauge) as Quantity<"pressure">);
  return {
    ...row,
    ...(gross &&
      !asPressure && { gross: withResolution(gross as unknown as Quantity<"length">, to) }),
    ...(pressure && { gauge: withResolution(pressure, to) }),
  };
}

/** Keys of a measurement of the flow, as they are called in a survey that has been read. */
const rowKeys = Object.keys(wayOfFlow).map(oneWord);

/** A group whose `read to` is the instrument of one of its readings. */
function readTo(group: Record<string, unknown>, key: string): Record<string, unknown> {
  const { readTo: to, ...rest } = group;
  return { ...rest, [key]: withResolution(rest[key] as Quantity<"length">, to) };
}

/** The reading with the division of the instrument that was named. */
function withResolution<K extends string>(value: Quantity<K>, to: unknown): Quantity<K> {
  return to === undefined ? value : value.readTo(to as Quantity<K>);
}

function only(group: Record<string, unknown>, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(
    keys.flatMap((key) => (group[key] === undefined ? [] : [[key, group[key]]])),
  );
}

function where(path: readonly (string | number)[]): string {
  return path.map((part) => (typeof part === "number" ? part + 1 : part)).join(".") || "the file";
}

function valueAt(value: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (at, part) =>
      typeof at === "object" && at !== null
        ? (at as Record<string | number, unknown>)[part]
        : undefined,
    value,
  );
}
