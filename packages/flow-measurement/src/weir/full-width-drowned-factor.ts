import { commonPractice, formula, input, output, ratio } from "@leat/formula";

import { iso1438 } from "../sources.ts";

/**
 * What is left of the free flow over a thin-plate rectangular weir across the whole channel when the tail water
 * stands over its crest: the standard's form.
 *
 *     f = 1.007 · (0.975 − (h2/h)^1.45)^0.265
 *
 * Multiply the flow of `rehbockDischarge` by it. With the tail water at the crest it gives 1.0003: the form was fitted
 * to drowned flow. It is from memory, to be confirmed; the arcsine form of Wu and Rajaratnam for the same weir, also
 * from memory, gives the same within 1 %. `villemonteFactor`, which serves every thin plate, reads 4 % lower at
 * h2/h = 0.5 and 12 % lower at 0.8.
 *
 * @throws NonPhysicalError a level below the crest; tail water so high that the form has no value.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { fullWidthDrownedFactor } from "@leat/flow-measurement";
 * import { millimetre, one } from "@leat/quantity";
 *
 * const f = fullWidthDrownedFactor({ head: millimetre.of(200), tailwaterHead: millimetre.of(100) });
 * f.in(one).toFixed(3); // => "0.883"
 * ```
 */
export const fullWidthDrownedFactor = /* @__PURE__ */ formula(() => ({
  id: "full-width-drowned-factor",
  equation: "f = 1.007 · (0.975 − (h2/h)^1.45)^0.265",
  inputs: {
    /** Level above the crest upstream. */
    head: input("length", "h", { domain: "positive" }),
    /** Level of the tail water above the crest. */
    tailwaterHead: input("length", "h2"),
  },
  output: output("ratio", "f"),
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
  source: iso1438.at("cl. 9.7.2", "memory"),
  body: ({ h, h2 }) => 1.007 * Math.pow(0.975 - Math.pow(h2 / h, 1.45), 0.265),
}));
