import { choice, commonPractice, formula, input, output, ratio } from "@leat/formula";

import { headPower } from "./head-power.ts";
import { villemonte } from "./sources.ts";

/**
 * What is left of the free flow over a thin-plate weir when the tail water stands over its crest (Villemonte).
 *
 *     k = (1 − (h2/h)^n)^0.385,   n = 1.5, for a V-notch 2.5
 *
 * Multiply the flow that the weir's own formula gives at the upstream head by it. The two levels are over the
 * same crest, the tail water where it is calm again. Villemonte gave 5 % for his tests; nearer to drowning altogether
 * the factor falls so steeply that a few millimetres between the two gauges decide. Better: raise the notch.
 *
 * For a rectangular weir across the whole channel the standard has a form of its own, `fullWidthDrownedFactor`,
 * which leaves 4 % more of the flow at h2/h = 0.5 and 13 % more at 0.8.
 *
 * @throws NonPhysicalError a level below the crest; tail water above the upstream level.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { villemonteFactor } from "@leat/flow-measurement";
 * import { millimetre, one } from "@leat/quantity";
 *
 * const levels = { head: millimetre.of(200), tailwaterHead: millimetre.of(100) };
 * villemonteFactor({ ...levels, shape: "rectangular" }).in(one).toFixed(3); // => "0.845"
 * villemonteFactor({ ...levels, shape: "V-notch" }).in(one).toFixed(3); // => "0.928"
 * ```
 */
export const villemonteFactor = /* @__PURE__ */ formula(() => ({
  id: "villemonte-factor",
  equation: "k = (1 − (h2/h)^n)^0.385",
  inputs: {
    /** Level above the crest upstream. */
    head: input("length", "h", { domain: "positive" }),
    /** Level of the tail water above the crest. */
    tailwaterHead: input("length", "h2"),
    /** Shape of the notch. */
    shape: choice(["rectangular", "V-notch", "Cipolletti"], "shape"),
  },
  output: output("ratio", "k"),
  steps: {
    n: {
      kind: "ratio",
      equation: "power of the head in the free flow",
      of: ({ shape }) => headPower(shape),
    },
  },
  limits: [
    ratio(
      "tailwaterHead",
      "head",
      { max: 0.9 },
      commonPractice.at(
        "beyond it 1 mm between the gauges is a large part of the flow",
        "practice",
      ),
    ),
  ],
  source: villemonte.at("Q/Q1 = (1 − (h2/h1)^n)^0.385", "secondary"),
  body: ({ h, h2, shape }) => Math.pow(1 - Math.pow(h2 / h, headPower(shape)), 0.385),
}));
