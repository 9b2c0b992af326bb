import { nfpa70 } from "@leat/conductors";
import { formula, input, output } from "@leat/formula";
import { one } from "@leat/quantity";

/**
 * Least rating of a conductor, before corrections, and of its protection, for a current that flows for three
 * hours or more: a water-power machine runs day and night.
 *
 *     Ir = k · I
 *
 * @throws NonPhysicalError a negative current or no factor.
 */
export const continuousRating = /* @__PURE__ */ formula(() => ({
  id: "continuous-rating",
  equation: "Ir = k · I",
  inputs: {
    /** Current that flows on and on. */
    current: input("current", "I"),
    /** Rating over current. */
    factor: input("ratio", "k", {
      domain: "positive",
      default: one.of(1.25),
      because: nfpa70.at("210.19(A)(1) and 210.20(A), continuous loads", "secondary"),
    }),
  },
  output: output("current", "Ir"),
  source: nfpa70.at("210.19(A)(1) and 210.20(A), continuous loads", "secondary"),
  body: ({ I, k }) => k * I,
}));
