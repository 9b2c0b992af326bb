/** One thing that is wrong with a file. */
export interface Problem {
  /** Name of the file, as the caller gave it. */
  readonly file: string;
  /** Line, from 1. */
  readonly line: number;
  /** Column, from 1. */
  readonly column: number;
  /** Stable code. */
  readonly code: string;
  /** Keys and row numbers to the place. */
  readonly path: readonly (string | number)[];
  /** What, got, allowed, what to do. */
  readonly message: string;
}

/**
 * A problem as one line: `file:line:column: code: message`.
 *
 * @param problem - The problem.
 * @returns The line.
 */
export function problemText({ file, line, column, code, message }: Problem): string {
  return `${file}:${line}:${column}: ${code}: ${message}`;
}

/** A file that cannot be read as what it should be, with everything that is wrong with it. */
export class FileError extends Error {
  /** Everything that is wrong, in the order of the file. */
  readonly problems: readonly Problem[];

  /** @param problems - Everything that is wrong. */
  constructor(problems: readonly Problem[]) {
    super(problems.map(problemText).join("\n"));
    this.name = "FileError";
    this.problems = problems;
  }
}
