import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Power turned to heat in a loop.
 *
 *     P = I² · R
 *
 * With a current that ripples, the current is the root-mean-square one: the mean gives too little.
 *
 * @throws NonPhysicalError a negative current or resistance.
 */
export const loopLoss = /* @__PURE__ */ formula(() => ({
  id: "loop-loss",
  equation: "P = I² · R",
  inputs: {
    /** Current in the loop, root mean square. */
    current: input("current", "I"),
    /** Resistance of the loop, at its temperature. */
    resistance: input("resistance", "R"),
  },
  output: output("electric power", "P"),
  source: firstPrinciples.at("Joule heat"),
  body: ({ I, R }) => I * I * R,
}));
