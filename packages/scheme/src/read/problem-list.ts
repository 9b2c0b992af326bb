import type { Place } from "./csv.ts";
import { FileError, type Problem } from "./problem.ts";

/** Most problems of one code that are listed of a file; the rest are counted. */
const mostOfACode = 20;

/** What is to be said of a problem. */
export interface Said {
  /** Where it is. */
  readonly place: Place;
  /** Keys and row numbers to the place. */
  readonly path: readonly (string | number)[];
  /** What, got, allowed, what to do. */
  readonly message: string;
}

/**
 * The problems of one file. A column that is wrong from top to bottom has a problem in each row: the first of each
 * code are listed, and the rest counted.
 */
export class ProblemList {
  readonly #file: string;
  readonly #listed: Problem[] = [];
  readonly #more = new Map<string, { count: number; first: Said | undefined }>();

  /** @param file - Name of the file. */
  constructor(file: string) {
    this.#file = file;
  }

  /** Whether there is none. */
  get empty(): boolean {
    return this.#listed.length === 0;
  }

  /**
   * Adds a problem.
   *
   * @param code - Stable code.
   * @param say - Says what it is; asked only where it is listed.
   */
  add(code: string, say: () => Said): void {
    const more = this.#more.get(code) ?? { count: 0, first: undefined };
    this.#more.set(code, more);
    more.count += 1;
    if (more.count <= mostOfACode) {
      const { place, path, message } = say();
      this.#listed.push({ file: this.#file, ...place, code, path, message });
    } else more.first ??= say();
  }

  /**
   * Everything that is wrong, in the order of the file, with the number of those that are not listed.
   *
   * @returns The problems.
   */
  all(): Problem[] {
    const listed = this.#listed.toSorted((a, b) => a.line - b.line || a.column - b.column);
    for (const [code, { count, first }] of this.#more) {
      if (!first) continue;
      listed.push({
        file: this.#file,
        ...first.place,
        code,
        path: first.path,
        message: `and ${count - mostOfACode} more like these, the first of them here.`,
      });
    }
    return listed;
  }

  /**
   * Stops where anything is wrong.
   *
   * @throws FileError with everything that is.
   */
  throwIfAny(): void {
    if (!this.empty) throw new FileError(this.all());
  }
}
