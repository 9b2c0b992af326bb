import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Water that a forebay holds over the least level, for a time of flow: what the pipe draws before the headrace
 * follows, when a valve opens or a leaf shuts the intake.
 *
 *     V = Q·t
 *
 * From half a minute where the headrace is short to several minutes where it is long (common practice, no source).
 *
 * @throws NonPhysicalError a negative flow or time.
 * @example
 * ```ts
 * import { forebayVolume } from "@leat/intake";
 * import { cubicMetre, format, litrePerSecond, minute } from "@leat/quantity";
 *
 * format(forebayVolume({ flow: litrePerSecond.of(12), reserveTime: minute.of(2) }), cubicMetre, 3); // => "1.44 m³"
 * ```
 */
export const forebayVolume = /* @__PURE__ */ formula(() => ({
  id: "forebay-volume",
  equation: "V = Q·t",
  inputs: {
    /** Flow of the pipe. */
    flow: input("volume flow", "Q"),
    /** How long the forebay must feed it alone. */
    reserveTime: input("time", "t"),
  },
  output: output("volume", "V"),
  source: firstPrinciples.at("continuity"),
  body: ({ Q, t }) => Q * t,
}));
