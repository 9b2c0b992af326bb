import { dirname, join } from "node:path";

import { NonPhysicalError, type Working, workingText } from "@leat/formula";
import {
  designScheme,
  isCustomary,
  measureSurvey,
  streamYear,
  type Result,
  toPlain,
  UnbuildableError,
} from "@leat/scheme";
import {
  FileError,
  OpenError,
  type OpenFile,
  problemText,
  readFieldSurvey,
  type ReadFieldSurvey,
  readSurvey,
} from "@leat/scheme/read";

import { readText } from "./files.ts";
import { exit, type Streams } from "./index.ts";
import { measurePage } from "./measure-page.ts";
import { page } from "./page.ts";
import { streamPage } from "./stream-page.ts";

/** A survey file. */
export interface SurveyFile {
  /** Its name, as it was given. */
  readonly file: string;
  /** Its text. */
  readonly text: string;
}

/** What is wanted of an answer. */
export interface Asked {
  /** As data. */
  readonly json?: boolean;
  /** With the calculation sheet. */
  readonly working?: boolean;
}

/** What a command has to say of a survey. */
interface Answer {
  /** As data. */
  readonly data: object;
  /** What it is. */
  readonly is: Result;
  /** As a page for a terminal. */
  readonly page: string;
  /** The calculation sheet. */
  readonly working: () => readonly Working[];
  /** Whether it must not be built as it is. */
  readonly stopped: boolean;
}

/** Opens the files that a survey names, in its folder. */
function opener(survey: string): OpenFile {
  return (name) => {
    const text = readText(join(dirname(survey), name));
    if (typeof text === "string") return text;
    throw new OpenError(text.code, text.message);
  };
}

/** Runs something; what nothing physical can have is a problem of the file, at its line. */
function placed<T>(file: string, place: ReadFieldSurvey["place"], run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof NonPhysicalError)) throw error;
    throw new FileError(
      error.notices.map(({ code, path, message }) => ({
        file,
        ...place(path),
        code,
        path,
        message,
      })),
    );
  }
}

/** The commands that take a survey. */
export const answers: Readonly<Record<string, (survey: SurveyFile) => Answer>> = {
  design: ({ file, text }) => {
    const { survey, assumed, place } = readSurvey(text, file, opener(file));
    const { design, working } = placed(file, place, () => designScheme(survey, assumed));
    return {
      data: design,
      is: "design",
      page: page(design, file, isCustomary(survey)),
      working,
      stopped: design.notices.some(({ severity }) => severity === "stop"),
    };
  },
  measure: ({ file, text }) => {
    const { survey, assumed, place } = readFieldSurvey(text, file, opener(file));
    const measurements = placed(file, place, () => measureSurvey(survey, assumed));
    const { flow, fall } = measurements;
    return {
      data: measurements,
      is: "measurements",
      page: measurePage(measurements, file, isCustomary(survey)),
      working: () =>
        [...(flow?.measurements ?? []), ...(fall?.measurements ?? [])].flatMap((each) =>
          each.working(),
        ),
      stopped: measurements.notices.some(({ severity }) => severity === "stop"),
    };
  },
  stream: ({ file, text }) => {
    const { survey, assumed, place } = readFieldSurvey(text, file, opener(file));
    const year = placed(file, place, () => streamYear(survey, assumed));
    return {
      data: year,
      is: "stream",
      page: streamPage(year, file, isCustomary(survey)),
      working: () => [],
      stopped: year.notices.some(({ severity }) => severity === "stop"),
    };
  },
};

/**
 * Answers a command on a survey.
 *
 * @param command - One of {@link answers}.
 * @param survey - The survey file.
 * @param asked - What is wanted.
 * @param streams - Where to write.
 * @returns The exit status.
 */
export function answer(
  command: (survey: SurveyFile) => Answer,
  survey: SurveyFile,
  asked: Asked,
  { stdout, stderr }: Streams,
): number {
  try {
    const { data, is, page: text, working, stopped } = command(survey);
    const sheets = asked.working ? working() : [];
    if (asked.json) {
      const plain = toPlain({ ...data, ...(asked.working && { working: sheets }) }, is);
      stdout.write(`${JSON.stringify(plain, null, 2)}\n`);
    } else {
      stdout.write(text);
      if (sheets.length > 0)
        stdout.write(
          `\nWORKING, in coherent SI units\n\n${sheets.map(workingText).join("\n\n")}\n`,
        );
    }
    return stopped ? exit.stop : exit.right;
  } catch (error) {
    if (error instanceof FileError) {
      // Files that the survey names are named from where the command was called, as the survey is.
      const problems = error.problems.map((problem) =>
        problem.file === survey.file
          ? problem
          : { ...problem, file: join(dirname(survey.file), problem.file) },
      );
      stderr.write(`${problems.map(problemText).join("\n")}\n`);
      return exit.input;
    }
    if (error instanceof UnbuildableError) {
      stderr.write(
        `${survey.file}: STOP ${error.code}: ${error.path.join(".")}: ${error.message}\n`,
      );
      return exit.stop;
    }
    throw error;
  }
}
