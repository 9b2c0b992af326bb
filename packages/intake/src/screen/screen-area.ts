import { commonPractice, firstPrinciples, formula, input, output } from "@leat/formula";
import { one } from "@leat/quantity";

import { blockedShareInput } from "../blocked-share-input.ts";

/**
 * Gross area of a screen that keeps the water before it slow, and how fast it then goes through the openings.
 *
 *     A = Q/(v·(1 − k)·(1 − b))      vs = v/p
 *
 * The velocity before the screen is that of the water square to its face, as the fisheries agencies count it: over
 * the area that frames do not cover, holes and wire together. With a share blocked the rest must do: the area grows
 * until the water before what is left of it is no faster.
 *
 * @throws NonPhysicalError a velocity of zero or less, a share below 0 or above 1.
 * @example
 * ```ts
 * import { screenArea } from "@leat/intake";
 * import { footPerSecond, litrePerSecond, one, squareMetre } from "@leat/quantity";
 *
 * const { area, openingVelocity } = screenArea({
 *   flow: litrePerSecond.of(12),
 *   approachVelocity: footPerSecond.of(0.2),
 *   openShare: one.of(0.4),
 *   blockedShare: one.of(0.5),
 * });
 * area.in(squareMetre).toFixed(2); // => "0.39"
 * openingVelocity.in(footPerSecond).toFixed(1); // => "0.5"
 * ```
 */
export const screenArea = /* @__PURE__ */ formula(() => ({
  id: "screen-area",
  equation: "A = Q/(v·(1 - k)·(1 - b)); vs = v/p",
  inputs: {
    /** Most that is drawn. */
    flow: input("volume flow", "Q"),
    /** Velocity of the water square to the screen, just before it. */
    approachVelocity: input("velocity", "v", { domain: "positive" }),
    /** Area of the openings over the area of the screen between its frames. */
    openShare: input("ratio", "p", { domain: "fraction" }),
    /** Share of the gross area that frames and stiffeners cover. */
    frameShare: input("ratio", "k", {
      domain: "fraction",
      default: one.of(0),
      because: commonPractice.at("no frames across the screen", "practice"),
    }),
    /** Share of the openings that leaves cover before the screen is cleaned. */
    blockedShare: blockedShareInput(),
  },
  output: {
    /** Gross area, frames and all. */
    area: output("area", "A"),
    /** Velocity in the openings that are left. */
    openingVelocity: output("velocity", "vs"),
  },
  source: firstPrinciples.at("continuity"),
  body: ({ Q, v, p, k, b }) => ({ A: Q / (v * (1 - k) * (1 - b)), vs: v / p }),
}));
