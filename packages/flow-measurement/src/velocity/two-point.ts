import { formula, input, output, range } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usgsStreamflow } from "./sources.ts";

/**
 * Mean velocity of a vertical from readings at two tenths and eight tenths of the depth below the surface.
 *
 *     V = (v2 + v8)/2
 *
 * The depth asked for is that of a small meter; with a large one the lower reading is too near to the bed below
 * 2.5 ft.
 *
 * @throws OutOfValidityError water shallower than 1.5 ft, and `onNotice` is absent.
 * @example
 * ```ts
 * import { twoPointVelocity } from "@leat/flow-measurement";
 * import { metre, metrePerSecond } from "@leat/quantity";
 *
 * const v = twoPointVelocity({
 *   atTwoTenths: metrePerSecond.of(1.2),
 *   atEightTenths: metrePerSecond.of(0.6),
 *   depth: metre.of(4),
 * });
 * v.in(metrePerSecond).toFixed(2); // => "0.90"
 * ```
 */
export const twoPointVelocity = /* @__PURE__ */ formula(() => ({
  id: "two-point-velocity",
  equation: "V = (v2 + v8)/2",
  inputs: {
    /** Velocity at 0.2 of the depth below the surface; negative where it runs upstream. */
    atTwoTenths: input("velocity", "v2", { domain: "any" }),
    /** Velocity at 0.8 of the depth below the surface; negative where it runs upstream. */
    atEightTenths: input("velocity", "v8", { domain: "any" }),
    /** Depth of the water. */
    depth: input("length", "d"),
  },
  output: output("velocity", "V"),
  limits: [range("depth", { min: foot.of(1.5) }, usgsStreamflow.at("two-point method", "memory"))],
  source: usgsStreamflow.at("two-point method", "secondary"),
  body: ({ v2, v8 }) => (v2 + v8) / 2,
}));
