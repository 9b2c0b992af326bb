import { workingText } from "@leat/formula";
import { designScheme, toPlain, UnbuildableError } from "@leat/scheme";
import { FileError, problemText, readSurvey } from "@leat/scheme/read";

import { exit, type Streams } from "./index.ts";
import { page } from "./page.ts";

/**
 * Reads a survey and writes the scheme.
 *
 * @param file - Name of the file, for problems.
 * @param text - Its text.
 * @param asked - What is wanted of it.
 * @param streams - Where to write.
 * @returns The exit status.
 */
export function designFile(
  file: string,
  text: string,
  asked: { readonly json?: boolean; readonly working?: boolean },
  { stdout, stderr }: Streams,
): number {
  try {
    const { survey, assumed } = readSurvey(text, file);
    const { design, working } = designScheme(survey, assumed);
    const sheets = asked.working ? working() : [];
    if (asked.json) {
      stdout.write(
        `${JSON.stringify(toPlain({ ...design, ...(asked.working && { working: sheets }) }), null, 2)}\n`,
      );
    } else {
      stdout.write(page(design, file));
      if (asked.working)
        stdout.write(
          `\nWORKING, in coherent SI units\n\n${sheets.map(workingText).join("\n\n")}\n`,
        );
    }
    return design.notices.some(({ severity }) => severity === "stop") ? exit.stop : exit.right;
  } catch (error) {
    if (error instanceof FileError) {
      stderr.write(`${error.problems.map(problemText).join("\n")}\n`);
      return exit.input;
    }
    if (error instanceof UnbuildableError) {
      stderr.write(`${file}: STOP ${error.code}: ${error.path.join(".")}: ${error.message}\n`);
      return exit.stop;
    }
    throw error;
  }
}
