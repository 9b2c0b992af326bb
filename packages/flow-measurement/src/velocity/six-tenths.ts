import { formula, input, output, range } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usgsStreamflow } from "./sources.ts";

/**
 * Mean velocity of a vertical from one reading at six tenths of the depth below the surface.
 *
 *     V = v6
 *
 * The profile of a wide stream over an even bed has its mean there. Close to boulders and weeds it has not: use
 * `threePointVelocity`, or count more for it.
 *
 * @throws OutOfValidityError water shallower than 0.3 ft or deeper than 2.5 ft, and `onNotice` is absent.
 * @example
 * ```ts
 * import { sixTenthsVelocity } from "@leat/flow-measurement";
 * import { foot, footPerSecond } from "@leat/quantity";
 *
 * const v = sixTenthsVelocity({ atSixTenths: footPerSecond.of(1.09), depth: foot.of(1.2) });
 * v.in(footPerSecond).toFixed(2); // => "1.09"
 * ```
 */
export const sixTenthsVelocity = /* @__PURE__ */ formula(() => ({
  id: "six-tenths-velocity",
  equation: "V = v6",
  inputs: {
    /** Velocity at 0.6 of the depth below the surface; negative where it runs upstream. */
    atSixTenths: input("velocity", "v6", { domain: "any" }),
    /** Depth of the water. */
    depth: input("length", "d"),
  },
  output: output("velocity", "V"),
  limits: [
    range(
      "depth",
      { min: foot.of(0.3), max: foot.of(2.5) },
      usgsStreamflow.at("six-tenths-depth method", "memory"),
    ),
  ],
  source: usgsStreamflow.at("six-tenths-depth method", "secondary"),
  body: ({ v6 }) => v6,
}));
