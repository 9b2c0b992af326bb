import { formula, input, output, range } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usgsStreamflow } from "./sources.ts";

/**
 * Mean velocity of a vertical from readings at two, six and eight tenths of the depth below the surface.
 *
 *     V = (v2 + 2·v6 + v8)/4
 *
 * For profiles that something bends: weeds, boulders, a bed that slopes. The reading at six tenths counts twice;
 * some texts print 0.4 for it, which their own three-point method never reads.
 *
 * @throws OutOfValidityError water shallower than 1.5 ft, and `onNotice` is absent.
 * @example
 * ```ts
 * import { threePointVelocity } from "@leat/flow-measurement";
 * import { metre, metrePerSecond } from "@leat/quantity";
 *
 * const v = threePointVelocity({
 *   atTwoTenths: metrePerSecond.of(0.62),
 *   atSixTenths: metrePerSecond.of(0.48),
 *   atEightTenths: metrePerSecond.of(0.3),
 *   depth: metre.of(0.8),
 * });
 * v.in(metrePerSecond).toFixed(2); // => "0.47"
 * ```
 */
export const threePointVelocity = /* @__PURE__ */ formula(() => ({
  id: "three-point-velocity",
  equation: "V = (v2 + 2·v6 + v8)/4",
  inputs: {
    /** Velocity at 0.2 of the depth below the surface; negative where it runs upstream. */
    atTwoTenths: input("velocity", "v2", { domain: "any" }),
    /** Velocity at 0.6 of the depth below the surface; negative where it runs upstream. */
    atSixTenths: input("velocity", "v6", { domain: "any" }),
    /** Velocity at 0.8 of the depth below the surface; negative where it runs upstream. */
    atEightTenths: input("velocity", "v8", { domain: "any" }),
    /** Depth of the water. */
    depth: input("length", "d"),
  },
  output: output("velocity", "V"),
  limits: [
    range("depth", { min: foot.of(1.5) }, usgsStreamflow.at("three-point method", "memory")),
  ],
  source: usgsStreamflow.at("three-point method", "memory"),
  body: ({ v2, v6, v8 }) => (v2 + 2 * v6 + v8) / 4,
}));
