import { commonPractice } from "@leat/formula";
import type { CallOptions } from "@leat/formula";
import { boreOf, type Pipe } from "@leat/pipe-sizes";
import { coherentUnit, metre, type Quantity } from "@leat/quantity";

/** Bore and roughness of a pipe, with how far either may be off. */
export interface SpreadPipe {
  /** Bore over the average wall. */
  readonly insideDiameter: Quantity<"length">;
  /** Roughness of the wall in good condition. */
  readonly roughness: Quantity<"length">;
}

/**
 * Bore and roughness of a pipe with named sources of uncertainty.
 *
 * The bore lies as far either way of the one over the average wall as the least wall makes it wider, anywhere in between: 1 to 2 %,
 * 5 to 8 % of the loss. The roughness lies anywhere within half the range of the tables about its typical figure. Both are
 * rectangles. A pipe of one's own keeps the spread that it was given with.
 *
 * @param pipe - The pipe.
 * @param id - What the sources are called: `id.bore`, `id.roughness`. Pipe of one batch shares an id.
 * @returns The two.
 * @example
 * ```ts
 * import { spreadOfPipe } from "@leat/penstock";
 * import { readPipe } from "@leat/pipe-sizes";
 * import { format, millimetre } from "@leat/quantity";
 *
 * const { insideDiameter } = spreadOfPipe(readPipe("110 mm PE100 SDR 17"), "reach 1");
 * format(insideDiameter, millimetre, { plusMinus: true }); // => "96.00 ± 0.91 mm (k = 1.96)"
 * ```
 */
export function spreadOfPipe(pipe: Pipe, id: string): SpreadPipe {
  const bore = boreOf(pipe);
  const play = Math.abs(boreOf(pipe, "minimum")["~si"] - bore["~si"]);
  const { low, typical, high } = pipe.roughness;
  const range = Math.min((high["~si"] - low["~si"]) / 2, typical["~si"]);
  return {
    insideDiameter: play > 0 ? bore.within(metre.of(play), `${id}.bore`) : bore,
    roughness: range > 0 ? typical.within(metre.of(range), `${id}.roughness`) : typical,
  };
}

/** Share of a coefficient that it may be off by. */
const tablesDiffer = 0.3;

/**
 * A loss coefficient of fittings with how far it may be off: anywhere within 30 %, as much as tables differ, unless it has a spread
 * of its own.
 *
 * @param coefficient - Sum of the coefficients of a reach.
 * @param id - What the source is called: `id.fittings`.
 * @param options - Told of what is assumed.
 * @returns The coefficient.
 */
export function spreadOfFittings(
  coefficient: Quantity<"coefficient">,
  id: string,
  options: CallOptions = {},
): Quantity<"coefficient"> {
  if (coefficient["~si"] === 0 || coefficient["~sources"]) return coefficient;
  options.onAssumed?.({
    formula: "spread-of-fittings",
    input: `${id}.fittings`,
    value: "anywhere within 30 %",
    because: commonPractice.at("tables of fittings differ by as much", "practice"),
  });
  const half = coherentUnit("coefficient").of(tablesDiffer * Math.abs(coefficient["~si"]));
  return coefficient.within(half, `${id}.fittings`);
}
