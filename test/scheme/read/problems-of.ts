import { FileError, type Problem, problemText } from "@leat/scheme/read";

/** What a reader complains of, a line each; nothing where it does not. */
export function problemsOf(run: () => unknown): string[] {
  return listedBy(run).map(problemText);
}

/** The same as data. */
export function listedBy(run: () => unknown): readonly Problem[] {
  try {
    run();
    return [];
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    return error.problems;
  }
}
