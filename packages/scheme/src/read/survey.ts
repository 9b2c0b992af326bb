import type { AnyPoint, AnyQuantity, Point, Quantity } from "@leat/quantity";
import { isPoint } from "@leat/quantity";
import { closest } from "fastest-levenshtein";
import type * as z from "zod";

import type { Assumed } from "../assume.ts";
import type { FallSurvey, NotchSurvey, ReachSurvey, StreamSurvey, Survey } from "../survey.ts";
import { Bound } from "./field.ts";
import { FileError, type Problem } from "./problem.ts";
import { schemaAt, shorthands, surveySchema } from "./schema.ts";
import { type Parsed, parseYaml } from "./yaml.ts";

/** A survey with what was taken for granted in reading it. */
export interface ReadSurvey {
  /** The survey. */
  readonly survey: Survey;
  /** What reading took for granted. */
  readonly assumed: readonly Assumed[];
}

/**
 * Reads a survey file.
 *
 * @param text - Its text.
 * @param file - Its name, for problems and for the ids of sources of uncertainty.
 * @returns The survey.
 * @throws {@link FileError} with every problem at once, each with its line and column.
 */
export function readSurvey(text: string, file = "survey"): ReadSurvey {
  const parsed = parseYaml(text, file);
  if (parsed.value === undefined || parsed.value === null) throw new FileError(parsed.problems);
  const problems: Problem[] = [...parsed.problems];
  const root = expand(parsed.value, file, parsed, problems);
  const outcome = root && surveySchema.safeParse(root);
  if (outcome && !outcome.success) {
    for (const issue of outcome.error.issues) problems.push(...fromIssue(issue, file, parsed));
  }
  if (outcome?.success) problems.push(...relations(outcome.data as Raw, file, parsed));
  if (problems.length > 0 || !outcome?.success) {
    throw new FileError(problems.toSorted((a, b) => a.line - b.line || a.column - b.column));
  }
  return assemble(outcome.data as Raw, file);
}

/** The parsed shape: sections of values that wait for their paths. */
type Raw = Record<string, unknown> & {
  stream: Record<string, unknown>;
  fall: Record<string, unknown>;
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
function relations(raw: Raw, file: string, parsed: Parsed): Problem[] {
  const problems: Problem[] = [];
  const tell = (path: (string | number)[], code: string, message: string): void => {
    problems.push({
      file,
      ...parsed.place(path),
      code: `survey/${code}`,
      path,
      message: `${where(path)} ${message}`,
    });
  };
  one(["stream"], raw.stream, ["flow", "notch", "bucket"]);
  one(["fall"], raw.fall, ["gross", "gauge"]);
  function one(path: string[], section: Record<string, unknown>, ways: string[]): void {
    const given = ways.filter((way) => section[way] !== undefined);
    if (given.length === 0) tell(path, "missing", `has no ${ways.join(", ")}; write one of them.`);
    if (given.length > 1)
      tell(
        [...path, given[1] as string],
        "two-ways",
        `stands beside ${given[0]}; give one way of measuring.`,
      );
  }
  const notch = raw.stream["notch"] as Record<string, unknown> | undefined;
  if (notch) {
    const shape = (notch["shape"] as Bound).make("") as string;
    const needs = shape === "V" ? ["angle", "sill", "channel"] : ["width"];
    for (const key of needs) {
      if (notch[key] === undefined)
        tell(["stream", "notch"], "missing", `is a ${shape} notch and has no ${key}; write it.`);
    }
    const [width, channel] = ["width", "channel"].map((key) =>
      notch[key] instanceof Bound ? (notch[key].make("") as AnyQuantity) : undefined,
    );
    if (shape !== "V" && width && channel && channel["~si"] < width["~si"])
      tell(
        ["stream", "notch", "channel"],
        "range",
        `= ${channel.toString()} is narrower than the notch in it (${width.toString()}); write the width of the channel that brings the water.`,
      );
  }
  (raw["reaches"] as Record<string, unknown>[]).forEach((reach, i) => {
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
  const fall = raw.fall;
  const reading = fall["gauge"] ?? fall["gross"];
  if (reading instanceof Bound && fall["read to"] instanceof Bound) {
    const [a, b] = [reading.make(""), fall["read to"].make("")].map((value) =>
      isPoint(value) ? "pressure" : (value as AnyQuantity).kind,
    );
    if (a !== b)
      tell(
        ["fall", "read to"],
        "dimension",
        `is a ${b}, and the reading a ${a}; write a division of the instrument that was read.`,
      );
  }
  const jets = raw["jets"] as Record<string, unknown> | undefined;
  if (jets?.["nozzles"] && jets["count"])
    tell(["jets", "count"], "two-ways", "stands beside nozzles; the list has its own count.");
  return problems;
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
      Object.entries(value).map(([key, child]) => [key, bind(child, `${path}.${oneWord(key)}`)]),
    );
  }
  return value;
}

function assemble(raw: Raw, file: string): ReadSurvey {
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
  const fall = all["fall"] as Record<string, unknown>;
  const cable = all["cable"] as Record<string, unknown>;
  const notch = stream["notch"] as Record<string, unknown> | undefined;
  const survey = {
    id,
    site: renamed(site, { "water temperature": "waterTemperature" }),
    stream: {
      ...only(stream, ["flow", "bucket", "leave"]),
      ...(notch && { notch: readTo(notch, "head") as unknown as NotchSurvey }),
    } as StreamSurvey,
    fall: fallOf(fall, assumed),
    reaches: (all["reaches"] as unknown as Record<string, unknown>[]).map(
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
    jets: renamed(jets, { "velocity coefficient": "velocityCoefficient" }),
    wheel: renamed(wheel, { "speed ratio": "speedRatio" }),
    machine,
    cable,
    bank: all["bank"],
    divert,
  } as unknown as Survey;
  return { survey, assumed };
}

/** A pressure given as the fall is a gauge reading, and that is said. */
function fallOf(fall: Record<string, unknown>, assumed: Assumed[]): FallSurvey {
  const gross = fall["gross"] as AnyQuantity | AnyPoint | undefined;
  const asPressure = gross !== undefined && (isPoint(gross) || gross.kind === "pressure");
  if (asPressure) {
    assumed.push({
      path: ["fall", "gross"],
      what: "a pressure given as the fall",
      value: `${String(gross)}, a gauge at nozzle height on the full pipe at rest; turned to head with the density of the water`,
      because: undefined,
    });
  }
  const gauge = asPressure ? gross : (fall["gauge"] as AnyQuantity | AnyPoint | undefined);
  const pressure =
    gauge &&
    ((isPoint(gauge)
      ? (gauge as unknown as Point<"local atmosphere">).overOrigin()
      : gauge) as Quantity<"pressure">);
  const above = fall["gauge above nozzles"] as Quantity<"length"> | undefined;
  return {
    ...(gross &&
      !asPressure && {
        gross: withResolution(gross as unknown as Quantity<"length">, fall["read to"]),
      }),
    ...(pressure && { gauge: withResolution(pressure, fall["read to"]) }),
    ...(above && { gaugeAbove: above }),
  };
}

/** A group whose `read to` is the instrument of one of its readings. */
function readTo(group: Record<string, unknown>, key: string): Record<string, unknown> {
  const { "read to": to, ...rest } = group;
  return { ...rest, [key]: withResolution(rest[key] as Quantity<"length">, to) };
}

/** The reading with the division of the instrument that was named. */
function withResolution<K extends string>(value: Quantity<K>, to: unknown): Quantity<K> {
  return to === undefined ? value : value.readTo(to as Quantity<K>);
}

function renamed(
  group: Record<string, unknown>,
  names: Record<string, string>,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(group).map(([key, value]) => [names[key] ?? key, value]),
  );
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
