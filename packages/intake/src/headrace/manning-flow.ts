import { formula, input, output } from "@leat/formula";
import { metre, metrePerSecond } from "@leat/quantity";

import { chow } from "../sources.ts";
import { channelInputs } from "./channel-inputs.ts";
import { manningVelocityOf, wettedAreaOf } from "./channel-of.ts";

/**
 * Flow and velocity in a headrace that runs evenly, by Manning.
 *
 *     Q = V·A      V = (1/n)·R^(2/3)·√S      A = (b + z·y)·y      R = A/(b + 2·y·√(1 + z²))
 *
 * n is written for metres and seconds, and the equation is brought to them whatever comes in. It holds for rough
 * turbulent flow; shallow water over stones meets more than the table says.
 *
 * @throws NonPhysicalError no depth, no slope, a Manning number of zero or less.
 * @example
 * ```ts
 * import { channelLinings, manningFlow } from "@leat/intake";
 * import { format, litrePerSecond, metre, metrePerSecond, one } from "@leat/quantity";
 *
 * const { flow, velocity } = manningFlow({
 *   depth: metre.of(0.25),
 *   bedWidth: metre.of(0.4),
 *   bankSlope: one.of(0.5),
 *   manningNumber: channelLinings.get("stone masonry in cement mortar, dressed", "n"),
 *   slope: one.of(0.004),
 * });
 * format(flow, litrePerSecond, 3); // => "110 L/s"
 * format(velocity, metrePerSecond, 2); // => "0.84 m/s"
 * ```
 */
export const manningFlow = /* @__PURE__ */ formula(() => ({
  id: "manning-flow",
  equation: "V = U/n·((b + z·y)·y/(b + 2·y·√(1 + z^2))/m)^(2/3)·√(S); Q = V·(b + z·y)·y",
  inputs: {
    /** Depth of the water. */
    depth: input("length", "y", { domain: "positive" }),
    ...channelInputs(),
  },
  output: {
    /** Flow. */
    flow: output("volume flow", "Q"),
    /** Mean velocity. */
    velocity: output("velocity", "V"),
  },
  constants: { m: metre.of(1), U: metrePerSecond.of(1) },
  source: chow.at("Manning's equation", "memory"),
  body: ({ y, b, z, n, S, m, U }) => {
    const channel = {
      bed: b,
      bank: z,
      roughness: n,
      slope: S,
      metre: m,
      metrePerSecond: U,
    };
    const V = manningVelocityOf(y, channel);
    return { Q: V * wettedAreaOf(y, channel), V };
  },
}));
