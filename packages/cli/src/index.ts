/**
 * The `leat` command.
 *
 * @packageDocumentation
 */
import { readFile } from "node:fs/promises";
import { parseArgs } from "node:util";

import { readText } from "./files.ts";

/** What a run writes to: a process, or a stand-in for one. */
export interface Streams {
  /** Results. */
  readonly stdout: Output;
  /** Problems. */
  readonly stderr: Output;
}

/** Something that text is written to. */
export interface Output {
  /**
   * Writes text.
   *
   * @param text - The text.
   * @returns Nothing that is looked at.
   */
  write(text: string): unknown;
}

/** Right, a problem in the input, wrong usage, a scheme with a stop. */
export const exit = { right: 0, input: 1, usage: 2, stop: 3 } as const;

const help = `leat — from a survey of a stream to a small water-power scheme

  leat measure SURVEY.yaml           every measurement of flow and fall, each with its ±
  leat stream SURVEY.yaml            the flow through the year, what stays and what may be taken
  leat design SURVEY.yaml            the scheme: flow, fall, pipe, jets, power, cable, diversion
  leat schema                        JSON Schema of the survey file, for an editor

  --working    with every formula, its numbers and its source
  --json       as data
  leat --help, leat --version

A survey of five lines is enough for a first answer; all else is assumed, and listed:

  fall: 110 ft
  stream: 400 gal/min
  reaches: 900 ft
  cable: 300 ft
  bank: 48 V

Exit status: 0 right, 1 a problem in the survey, 2 wrong usage, 3 a scheme that must not be built as it is.
`;

/** Commands that take a survey. */
const commands: readonly string[] = ["measure", "stream", "design"];

/** Wrong usage, in words. */
class UsageError extends Error {}

/**
 * Runs the command.
 *
 * @param args - Words after the command's name.
 * @param streams - Where to write.
 * @returns The exit status.
 */
export async function run(args: readonly string[], streams: Streams): Promise<number> {
  try {
    return await command(args, streams);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    streams.stderr.write(`leat: ${error.message}\nSee leat --help.\n`);
    return exit.usage;
  }
}

async function command(args: readonly string[], { stdout, stderr }: Streams): Promise<number> {
  const { values, positionals } = parse(args);
  if (values.version) {
    const about = JSON.parse(
      await readFile(new URL("../package.json", import.meta.url), "utf8"),
    ) as { version: string };
    stdout.write(`${about.version}\n`);
    return exit.right;
  }
  const [name, file, ...more] = positionals;
  if (values.help || (name === undefined && args.length === 0)) {
    stdout.write(help);
    return exit.right;
  }
  if (name === "schema") {
    if (file !== undefined) throw new UsageError("schema takes no file");
    const { surveyJsonSchema } = await import("@leat/scheme/read");
    stdout.write(`${JSON.stringify(surveyJsonSchema(), null, 2)}\n`);
    return exit.right;
  }
  if (name === undefined || !commands.includes(name))
    throw new UsageError(
      name === undefined
        ? "no command is given"
        : `${JSON.stringify(name)} is not a command; there are ${commands.join(", ")} and schema`,
    );
  if (file === undefined || more.length > 0) throw new UsageError(`${name} takes one survey file`);
  const text = readText(file);
  if (typeof text !== "string") {
    stderr.write(`${file}:1:1: ${text.code}: ${text.message}\n`);
    return exit.input;
  }
  const { answer, answers } = await import("./answer.ts");
  return answer(answers[name] as never, { file, text }, values, { stdout, stderr });
}

function parse(args: readonly string[]): ReturnType<typeof parsed> {
  try {
    return parsed(args);
  } catch (error) {
    throw new UsageError(
      error instanceof Error ? error.message.replace(/\. .*/s, "") : String(error),
    );
  }
}

function parsed(args: readonly string[]): {
  values: { help?: boolean; version?: boolean; json?: boolean; working?: boolean };
  positionals: string[];
} {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      help: { type: "boolean", short: "h" },
      version: { type: "boolean" },
      json: { type: "boolean" },
      working: { type: "boolean" },
    },
  });
}
