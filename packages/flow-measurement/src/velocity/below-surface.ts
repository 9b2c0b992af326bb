import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { iso748, usgsStreamflow } from "./sources.ts";

/**
 * Mean velocity of a vertical from that of its surface, for high water and for what no rod can stand in.
 *
 *     V = k·vs
 *
 * The standard gives 0.84 to 0.90 over ordinary beds, the higher over smooth ones. Over boulders, where the water is
 * no deeper than the stones are high, it is lower and nobody's table holds: measure it once with a meter.
 *
 * @throws NonPhysicalError a coefficient outside 0 to 1.
 * @throws OutOfValidityError a coefficient outside 0.84 to 0.90, and `onNotice` is absent.
 * @example
 * ```ts
 * import { belowSurfaceVelocity } from "@leat/flow-measurement";
 * import { metrePerSecond, one } from "@leat/quantity";
 *
 * const v = belowSurfaceVelocity({
 *   atSurface: metrePerSecond.of(1.2),
 *   surfaceCoefficient: one.of(0.86).as("coefficient"),
 * });
 * v.in(metrePerSecond).toFixed(2); // => "1.03"
 * ```
 */
export const belowSurfaceVelocity = /* @__PURE__ */ formula(() => ({
  id: "below-surface-velocity",
  equation: "V = k·vs",
  inputs: {
    /** Velocity at the surface; negative where it runs upstream. */
    atSurface: input("velocity", "vs", { domain: "any" }),
    /** Mean velocity over that at the surface, in one vertical. */
    surfaceCoefficient: input("coefficient", "k", {
      domain: "fraction",
      default: one.of(0.85).as("coefficient"),
      because: usgsStreamflow.at("subsurface and surface methods: natural channels", "memory"),
    }),
  },
  output: output("velocity", "V"),
  limits: [
    range(
      "surfaceCoefficient",
      { min: one.of(0.84), max: one.of(0.9) },
      iso748.at("surface one-point method", "memory"),
    ),
  ],
  source: iso748.at("surface one-point method", "memory"),
  body: ({ k, vs }) => k * vs,
}));
