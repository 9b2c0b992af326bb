import { TimeAxis } from "@leat/quantity/column";
import * as z from "zod";

import type { CalibrationSpec } from "./calibration.ts";
import type { Delimiter } from "./csv.ts";
import { type DateColumn, dateForm, type DateParts } from "./date.ts";
import { Bound, count, type Field, FieldError, named, oneOf, words } from "./field.ts";
import type { GaugingsSpec } from "./gaugings.ts";
import type { DecimalMark } from "./number-cell.ts";
import type { NumberColumn } from "./quantity-cell.ts";
import { type DailyRecordSpec, type FlagMeaning, flagMeanings } from "./record.ts";
import type { ConductivityReads, ConductivitySpec } from "./series.ts";
import type { TableForm } from "./table.ts";
import { temperatureScale, unitOfKind } from "./unit-cell.ts";

// What a survey says of the tables that stand in files beside it. A schema checks it where it stands in the survey,
// and its reader (recordOf and the like) makes of the bound values what the reader of the table takes.

/** What a survey says of a table: its file, and how that is written. */
export interface TableOf<Spec> {
  /** Name of the file, relative to the survey: no way out of its folder. */
  readonly file: string;
  /** How it is written. */
  readonly spec: Spec;
}

/** A section of a survey, its values bound to their paths and its keys one word each: `dateForm`. */
export type Section = Readonly<Record<string, unknown>>;

const heading = (says: string, example: string): Field =>
  words(`column of ${says}: its heading, or its number such as column 2`, [example, "column 2"]);

const unit = (says: string, kind: string, example: string): Field =>
  named(`unit of ${says}`, [example], (written) => {
    unitOfKind(written, kind, example);
  });

const degrees = (): Field =>
  named("unit of the temperature", ["°C", "°F", "K"], (written) => {
    temperatureScale(written);
  });

const form = (says: string, examples: readonly string[], needs: DateParts): Field =>
  named(
    `${says}: YYYY or YY, MM or M or MMM, DD or D, HH or H and MM, SS or SS.S, AM, and what stands between`,
    examples,
    (written) => {
      dateForm(written, undefined, needs);
    },
  );

const yearsFrom = (): Field =>
  named("first of the hundred years that two digits stand for", ["1930"], (written) => {
    if (!/^\d{4}$/.test(written))
      throw new FieldError("year", `${written} is not a year of four digits, such as 1930.`);
    dateForm("YYYY-MM-DD", Number(written));
  });

const fileName = (): Field =>
  named("name of the file, in the folder of the survey or below it", ["record.csv"], (written) => {
    const fault = pathFault(written);
    if (fault)
      throw new FieldError(
        "path",
        `${written.slice(0, 100)} ${fault}; write the name of a file beside the survey, such as record.csv or data/record.csv.`,
      );
  });

/** Why a path is not a plain name below the folder that it is read from. */
function pathFault(path: string): string | undefined {
  if (path.length > 200) return "is longer than 200 characters";
  if (path.includes("\\")) return "has a backslash";
  // oxlint-disable-next-line no-control-regex -- a name has none
  if (/[\u0000-\u001F\u007F]/.test(path)) return "has a character that cannot be seen";
  if (/^[/~]/.test(path)) return "begins at another folder than the survey's";
  if (/^[a-z][a-z\d+.-]*:/i.test(path)) return "begins with a drive or an address";
  const parts = path.split("/");
  if (parts.includes("..")) return "leaves the folder of the survey (..)";
  if (parts.some((part) => part === "" || part === ".")) return "is not a plain name";
  return undefined;
}

/** A map whose keys are the file's own words: one value, so that they are not taken for keys of the survey. */
const kept = (map: z.ZodType<Record<string, Bound>>): z.ZodType<Bound> =>
  map.transform(
    (pairs) =>
      new Bound((path) =>
        Object.fromEntries(Object.entries(pairs).map(([key, value]) => [key, value.make(path)])),
      ),
  );

const tableKeys = {
  file: fileName(),
  delimiter: oneOf("what parts the cells, where the file could be read in two ways", [
    "comma",
    "semicolon",
    "tab",
  ]).optional(),
  decimal: oneOf("decimal mark, where the numbers could be read in two ways", [
    "point",
    "comma",
  ]).optional(),
  header: count("line of the headings, where they are not found by the columns' names").optional(),
  "first row": count(
    "line of the first row, where it is not the one after the headings",
  ).optional(),
};

const temperatureKeys = {
  temperature: heading("the water's temperature", "Temperature (°C)").optional(),
  "temperature unit": degrees().optional(),
};

/** What a survey says of a file of daily flows. */
export const recordSpec: z.ZodType = z
  .strictObject({
    ...tableKeys,
    date: heading("the dates", "Date"),
    "date form": form("form of the dates", ["YYYY-MM-DD", "DD/MM/YYYY", "DD-MMM-YY"], "date"),
    "years from": yearsFrom().optional(),
    flow: heading("the flows", "Flow"),
    "flow unit": unit("the flows", "volume flow", "m3/s"),
    where: kept(
      z
        .record(z.string(), words("value of the rows that are kept", ["1"]))
        .meta({ description: "columns, and the value that each has in the rows that are kept" }),
    ).optional(),
    flag: heading("the flags", "SYM").optional(),
    flags: kept(
      z
        .record(z.string(), oneOf("what the flag means", flagMeanings))
        .meta({ description: "the flags as they stand in the file, and what each means" }),
    ).optional(),
    gaps: z
      .array(words("what stands for a missing flow", ["-999"]))
      .min(1)
      .optional(),
    "water year": named("month that the water year begins with, 1 to 12", ["10"], (written) => {
      if (!/^([1-9]|1[0-2])$/.test(written))
        throw new FieldError("month", `${written} is not a month; write a number from 1 to 12.`);
    }).optional(),
    clock: named("what the station's clock is ahead of UTC", ["+10:00", "-08:00"], (written) => {
      TimeAxis.regular({ start: "2000-01-01", step: 1, count: 0, utcOffset: written });
    }).optional(),
  })
  .superRefine((section, context) => {
    pair(section, context, "flag", "flags", "{ A: partial, B: ice }");
    if (section.flags !== undefined && section.flag === undefined)
      tell(context, "flags", "missing", "meanings without a column; write it, such as flag: SYM.");
    yearsOfForm(section, context);
  })
  .meta({ description: "a file of daily flows" });

/** What a survey says of the file of a conductivity logger. */
export const seriesSpec: z.ZodType = z
  .strictObject({
    ...tableKeys,
    time: heading("the times", "Time"),
    "time unit": unit("the times, where they are numbers", "time", "s").optional(),
    "time form": form(
      "form of the times, where they are clock times",
      ["HH:MM:SS", "YYYY-MM-DD HH:MM:SS"],
      "time of day",
    ).optional(),
    "years from": yearsFrom().optional(),
    conductivity: heading("the conductivity", "EC"),
    "conductivity unit": unit("the conductivity", "conductivity", "µS/cm"),
    reads: oneOf(
      "whether the meter shows the conductivity that it finds, or what that would be at another temperature",
      ["raw", "compensated"],
    ),
    ...temperatureKeys,
  })
  .superRefine((section, context) => {
    const { time, "time unit": ofUnit, "time form": ofForm } = section;
    if (ofUnit === undefined && ofForm === undefined)
      tell(
        context,
        "time",
        "missing",
        `${asWritten(time)} has neither a unit nor a form; write one, such as time unit: s or time form: HH:MM:SS.`,
      );
    if (ofUnit !== undefined && ofForm !== undefined)
      tell(
        context,
        "time form",
        "two-ways",
        `${asWritten(ofForm)} stands beside time unit; times are numbers of a unit or have a form.`,
      );
    pair(section, context, "temperature", "temperature unit", "°C");
    yearsOfForm(section, context);
  })
  .meta({ description: "the file of a conductivity logger" });

/** What a survey says of the file of a calibration with salt solution. */
export const calibrationSpec: z.ZodType = z
  .strictObject({
    ...tableKeys,
    added: heading("the volume of salt solution added so far, in all", "Added"),
    "added unit": unit("the volume added", "volume", "L"),
    conductivity: heading("the conductivity", "EC"),
    "conductivity unit": unit("the conductivity", "conductivity", "µS/cm"),
    ...temperatureKeys,
  })
  .superRefine((section, context) => {
    pair(section, context, "temperature", "temperature unit", "°C");
  })
  .meta({ description: "the file of a calibration: salt solution added, and the conductivity" });

/** What a survey says of a file of gaugings. */
export const gaugingsSpec: z.ZodType = z
  .strictObject({
    ...tableKeys,
    date: heading("the dates", "Date").optional(),
    "date form": form("form of the dates", ["YYYY-MM-DD", "DD-MMM-YY"], "date").optional(),
    "years from": yearsFrom().optional(),
    stage: heading("the stages", "Stage"),
    "stage unit": unit("the stages", "length", "m"),
    flow: heading("the flows", "Flow"),
    "flow unit": unit("the flows", "volume flow", "m3/s"),
  })
  .superRefine((section, context) => {
    pair(section, context, "date", "date form", "YYYY-MM-DD");
    yearsOfForm(section, context);
  })
  .meta({ description: "a file of gaugings: stages, and the flows measured at them" });

interface Told {
  addIssue(issue: {
    code: "custom";
    path: string[];
    message: string;
    params: { code: string };
  }): void;
}

function tell(context: Told, key: string, code: string, message: string): void {
  context.addIssue({ code: "custom", path: [key], message, params: { code } });
}

/** The text of a value that waits for its path. */
function asWritten(value: unknown): string {
  return value instanceof Bound ? String(value.make("")) : "";
}

/** Asks for what must stand beside a key. */
function pair(section: Section, context: Told, key: string, beside: string, example: string): void {
  if (section[key] === undefined || section[beside] !== undefined) return;
  tell(
    context,
    key,
    "missing",
    `${asWritten(section[key])} has no ${beside}; write it, such as ${beside}: ${example}.`,
  );
}

/** Refuses a century for years that have four digits. */
function yearsOfForm(section: Section, context: Told): void {
  const from = section["years from"];
  if (from === undefined) return;
  const ofForm = asWritten(section["date form"] ?? section["time form"]);
  if (/(?<!Y)YY(?!Y)/.test(ofForm)) return;
  tell(
    context,
    "years from",
    "two-ways",
    `${asWritten(from)} is for years of two digits, and ${ofForm === "" ? "no form has them" : `${ofForm} has none`}; leave it out.`,
  );
}

/**
 * A record of daily flows, from its section.
 *
 * @param section - What {@link recordSpec} accepted, bound.
 * @returns Its file, and how it is written.
 */
export function recordOf(section: Section): TableOf<DailyRecordSpec> {
  const { where, flags, gaps } = section;
  return {
    file: section["file"] as string,
    spec: {
      ...tableForm(section),
      date: dateColumn(section, "date"),
      flow: numberColumn(section, "flow"),
      where: where as Record<string, string> | undefined,
      flag:
        section["flag"] === undefined
          ? undefined
          : {
              column: section["flag"] as string,
              meanings: flags as Record<string, FlagMeaning>,
            },
      gaps: gaps as string[] | undefined,
      waterYearStart: section["waterYear"] === undefined ? undefined : Number(section["waterYear"]),
      utcOffset: section["clock"] as string | undefined,
    },
  };
}

/**
 * The file of a conductivity logger, from its section.
 *
 * @param section - What {@link seriesSpec} accepted, bound.
 * @returns Its file, and how it is written.
 */
export function seriesOf(section: Section): TableOf<ConductivitySpec> {
  return {
    file: section["file"] as string,
    spec: {
      ...tableForm(section),
      time:
        section["timeForm"] === undefined
          ? numberColumn(section, "time")
          : dateColumn(section, "time"),
      conductivity: numberColumn(section, "conductivity"),
      temperature: optional(section, "temperature", numberColumn),
      reads: section["reads"] as ConductivityReads,
    },
  };
}

/**
 * A calibration, from its section.
 *
 * @param section - What {@link calibrationSpec} accepted, bound.
 * @param source - Begins the names of the sources of uncertainty: the path of the section.
 * @returns Its file, and how it is written.
 */
export function calibrationOf(section: Section, source: string): TableOf<CalibrationSpec> {
  return {
    file: section["file"] as string,
    spec: {
      ...tableForm(section),
      added: numberColumn(section, "added"),
      conductivity: numberColumn(section, "conductivity"),
      temperature: optional(section, "temperature", numberColumn),
      source,
    },
  };
}

/**
 * Gaugings, from their section.
 *
 * @param section - What {@link gaugingsSpec} accepted, bound.
 * @param source - Begins the names of the sources of uncertainty: the path of the section.
 * @returns Their file, and how it is written.
 */
export function gaugingsOf(section: Section, source: string): TableOf<GaugingsSpec> {
  return {
    file: section["file"] as string,
    spec: {
      ...tableForm(section),
      date: optional(section, "date", dateColumn),
      stage: numberColumn(section, "stage"),
      flow: numberColumn(section, "flow"),
      source,
    },
  };
}

function tableForm(section: Section): TableForm {
  return {
    delimiter: section["delimiter"] as Delimiter | undefined,
    decimal: section["decimal"] as DecimalMark | undefined,
    header: section["header"] as number | undefined,
    firstRow: section["firstRow"] as number | undefined,
  };
}

function numberColumn(section: Section, key: string): NumberColumn {
  return { column: section[key] as string, unit: section[`${key}Unit`] as string };
}

function dateColumn(section: Section, key: string): DateColumn {
  const from = section["yearsFrom"];
  return {
    column: section[key] as string,
    form: section[`${key}Form`] as string,
    yearsFrom: from === undefined ? undefined : Number(from),
  };
}

function optional<T>(
  section: Section,
  key: string,
  make: (section: Section, key: string) => T,
): T | undefined {
  return section[key] === undefined ? undefined : make(section, key);
}
