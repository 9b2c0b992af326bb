import type { Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";
import { Column } from "@leat/quantity/column";

import type {
  LoggedSurvey,
  RecordSurvey,
  SaltFeedSurvey,
  SaltSurvey,
  StaffSurvey,
} from "../survey.ts";
import { readCalibration } from "./calibration.ts";
import { readGaugings } from "./gaugings.ts";
import { FileError, type Problem } from "./problem.ts";
import { readDailyRecord } from "./record.ts";
import { readConductivity } from "./series.ts";
import { calibrationOf, gaugingsOf, recordOf, type Section, seriesOf } from "./table-schema.ts";
import type { Parsed } from "./yaml.ts";

/**
 * Gives the text of a file that a survey names.
 *
 * @param name - The name, as it stands in the survey: relative to it.
 * @returns The text.
 * @throws {@link OpenError} where it cannot be opened.
 */
export type OpenFile = (name: string) => string;

/** A file that cannot be opened. */
export class OpenError extends Error {
  /** Stable code. */
  readonly code: string;

  /**
   * @param code - Stable code, such as `file/missing`.
   * @param message - What is wrong with it and what to do, to stand after its name.
   */
  constructor(code: string, message: string) {
    super(message);
    this.name = "OpenError";
    this.code = code;
  }
}

type Path = readonly (string | number)[];

/** Reads the tables that a survey names, and collects what is wrong with them. */
export class Tables {
  readonly #file: string;
  readonly #parsed: Parsed;
  readonly #open: OpenFile | undefined;
  readonly #problems: Problem[] = [];

  /**
   * @param file - Name of the survey file.
   * @param parsed - The survey, for the places of its values.
   * @param open - Gives the text of a file.
   */
  constructor(file: string, parsed: Parsed, open: OpenFile | undefined) {
    this.#file = file;
    this.#parsed = parsed;
    this.#open = open;
  }

  /**
   * Stops where a table could not be read.
   *
   * @throws {@link FileError} with everything that is wrong.
   */
  throwIfAny(): void {
    if (this.#problems.length > 0) throw new FileError(this.#problems);
  }

  /** A record of daily flows. */
  record(section: Section, path: Path): RecordSurvey {
    const { flow, notes } = this.#read(recordOf(section), path, readDailyRecord, {
      notes: [],
    });
    return { flow, notes: noticesOf(notes) };
  }

  /** Salt, with what the probes saw. */
  salt(section: Section, source: string, path: Path): SaltSurvey | SaltFeedSurvey {
    const { probes, calibration, ...rest } = section;
    const readings = (calibration as Section | undefined)?.["readings"] as Section | undefined;
    return {
      ...rest,
      probes: (probes as Section[]).map((probe, i) => this.#probe(probe, [...path, "probes", i])),
      ...(readings && {
        calibration: {
          ...(calibration as Section),
          file: readings["file"],
          readings: this.#read(
            calibrationOf(readings, `${source}.calibration`),
            [...path, "calibration", "readings"],
            readCalibration,
            { steps: [] as never[] },
          ).steps,
        },
      }),
    } as unknown as SaltSurvey | SaltFeedSurvey;
  }

  /** A staff, with its gaugings. */
  staff(section: Section, source: string, path: Path): StaffSurvey {
    const { gaugingsFile, readTo, ...rest } = section;
    const table =
      gaugingsFile === undefined
        ? undefined
        : this.#read(
            gaugingsOf(gaugingsFile as Section, `${source}.gaugings`),
            [...path, "gaugings file"],
            readGaugings,
            { gaugings: [] as never[], notes: [] },
          );
    return {
      ...rest,
      division: readTo as Quantity<"length">,
      ...(table && { gaugings: table.gaugings, notes: noticesOf(table.notes) }),
    } as unknown as StaffSurvey;
  }

  #probe(section: Section, path: Path): LoggedSurvey {
    const { file } = section as { file: string };
    const series = this.#read(seriesOf(section), path, readConductivity, undefined);
    if (!series) return undefined as never;
    const { temperature, temperatureQuality } = series;
    return {
      name: file,
      seconds: series.seconds,
      lines: series.lines,
      conductivity: Column.wrap("conductivity", series.conductivity, series.quality),
      ...(temperature && {
        celsius: Array.from(temperature, (t, row) =>
          temperatureQuality?.[row] ? null : t - 273.15,
        ),
      }),
      reads: series.reads,
      notes: noticesOf(series.notes),
    };
  }

  /** The table of a section, or a stand-in where it cannot be read: what is wrong is told. */
  #read<Spec, T>(
    { file, spec }: { readonly file: string; readonly spec: Spec },
    path: Path,
    read: (text: string, file: string, spec: Spec) => T,
    standIn: NoInfer<Partial<T>> | undefined,
  ): T {
    try {
      if (!this.#open)
        throw new OpenError(
          "survey/files",
          "cannot be opened from here: the survey is read without its folder.",
        );
      return read(this.#open(file), file, spec);
    } catch (error) {
      if (error instanceof FileError) this.#problems.push(...error.problems);
      else if (error instanceof OpenError)
        this.#problems.push({
          file: this.#file,
          ...this.#parsed.place([...path, "file"]),
          code: error.code,
          path: [...path, "file"],
          message: `${file}: ${error.message}`,
        });
      else throw error;
      return standIn as T;
    }
  }
}

/** What reading a table had to say, as notices that name the line. */
function noticesOf(notes: readonly Problem[]): Notice[] {
  return notes.map(({ file, line, code, message }) => ({
    code,
    severity: "note",
    path: [],
    message: `${file}, line ${line}: ${message}`,
  }));
}
