import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Length along a slope from its length on the map and its rise.
 *
 *     L = √(x² + z²)
 *
 * @throws NonPhysicalError a negative distance.
 * @example
 * ```ts
 * import { slopeLength } from "@leat/penstock";
 * import { metre } from "@leat/quantity";
 *
 * slopeLength({ planDistance: metre.of(40), rise: metre.of(-30) }).in(metre); // => 50
 * ```
 */
export const slopeLength = /* @__PURE__ */ formula(() => ({
  id: "slope-length",
  equation: "L = √(x² + z²)",
  inputs: {
    /** Distance across the map. */
    planDistance: input("length", "x"),
    /** Height of the far end above the near one; negative below. */
    rise: input("length", "z", { domain: "any" }),
  },
  output: output("pipe length", "L"),
  source: firstPrinciples.at("Pythagoras, on a straight slope"),
  body: ({ x, z }) => Math.sqrt(x * x + z * z),
}));
