/** What a person wrote down, kept with the value that was made of it. */
export interface Reading {
  /** The text, trimmed. */
  readonly text: string;
  /** Smallest step that the instrument shows, in the unit of the reading. */
  readonly resolution: number;
  /** True where no instrument was named and the step was taken from the digits written. */
  readonly assumed: boolean;
  /** Half width written with ± (95 % of a normal) or max (a rectangle), in the unit of the reading. */
  readonly spread?: { readonly half: number; readonly shape: "normal" | "rectangle" };
  /** What the text leaves open. */
  readonly question?: "gauge or absolute?";
}
