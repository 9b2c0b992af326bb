/** How sure we are that a figure stands in its source as it is given. */
export type Standing =
  /** Read in the text of the source itself. */
  | "read"
  /** Read in a second text that attributes it. */
  | "secondary"
  /** From memory, to be confirmed. */
  | "memory"
  /** Common practice, no source. */
  | "practice";

/** A document that formulas, limits and tables are taken from. */
export interface Source {
  /** Short name that docs link to. */
  readonly id: string;
  /** Who says so, as a message names them. */
  readonly by: string;
  /** Title. */
  readonly title: string;
  /** Edition, year, identifier. */
  readonly edition: string;
  /**
   * A place in it.
   *
   * @param place - Chapter, table, equation.
   * @param standing - How sure we are; `read` by default.
   * @returns The citation.
   */
  at(place: string, standing?: Standing): Citation;
}

/** A place in a source. */
export interface Citation {
  /** The document. */
  readonly source: Source;
  /** Chapter, table, equation. */
  readonly place: string;
  /** How sure we are. */
  readonly standing: Standing;
}

/**
 * Names a document.
 *
 * @param about - Its id, who publishes it, title and edition.
 * @returns The source, whose `at` cites a place in it.
 */
export function source(about: Omit<Source, "at">): Source {
  const self: Source = {
    ...about,
    at: (place, standing = "read") => ({ source: self, place, standing }),
  };
  return self;
}

/** What the trade does and no document was found for. */
export const commonPractice: Source = /* @__PURE__ */ source({
  id: "common-practice",
  by: "common practice",
  title: "no source",
  edition: "",
});

/** What follows from physics, or from the definition of the quantity. */
export const firstPrinciples: Source = /* @__PURE__ */ source({
  id: "first-principles",
  by: "physics",
  title: "first principles",
  edition: "",
});

/**
 * A citation as text.
 *
 * @param citation - The citation.
 * @returns Who, title, edition, place, and its standing where it was not read in the source itself.
 */
export function cite({ source: { by, title, edition }, place, standing }: Citation): string {
  const text = [by, title, edition, place].filter(Boolean).join(", ");
  return standing === "memory"
    ? `${text} (from memory, to be confirmed)`
    : standing === "secondary"
      ? `${text} (read in a second text)`
      : text;
}
