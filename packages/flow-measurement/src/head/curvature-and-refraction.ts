import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metre, one } from "@leat/quantity";

import { hicksFormulas } from "./sources.ts";

/**
 * How much too high a level reads on a distant rod: the earth curves away under the line of sight, and the air
 * bends the line after it, by a seventh as much.
 *
 *     c = (1 − k)·s²/(2·R)
 *
 * With the usual k of 0.14 that is 0.0675 m at 1 km and 0.574 ft at a mile: nothing at the sights of a creek
 * (0.2 mm at 50 m), and nothing at all where the sights back and ahead are alike. Near warm ground the air may
 * bend the line the other way: keep it half a metre off the ground.
 *
 * @throws NonPhysicalError sight negative.
 * @example
 * ```ts
 * const c = curvatureAndRefraction({ sight: metre.of(100) });
 * format(c, millimetre, 2); // => "0.67 mm"
 * ```
 */
export const curvatureAndRefraction = /* @__PURE__ */ formula(() => ({
  id: "curvature-and-refraction",
  equation: "c = (1 − k)·s²/(2·R)",
  inputs: {
    /** Length of the sight, from the instrument to the rod. */
    sight: input("length", "s"),
    /** Curvature of the line of sight over that of the earth; negative over hot ground. */
    refraction: input("coefficient", "k", {
      domain: "any",
      default: one.of(0.14).as("coefficient"),
      because: hicksFormulas.at("ch. 7, eqs 7.19 and 7.20: 0.011 of 0.0785"),
    }),
  },
  output: output("length", "c"),
  constants: { R: metre.of(6371000) },
  source: firstPrinciples.at("sagitta of a sphere of the earth's mean radius"),
  body: ({ s, k, R }) => ((1 - k) * s * s) / (2 * R),
}));
