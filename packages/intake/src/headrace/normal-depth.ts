import { formula, input, output } from "@leat/formula";
import { bracketedRoot, expandBracket } from "@leat/numerics";
import { metre, metrePerSecond } from "@leat/quantity";

import { gravityInput } from "../gravity-input.ts";
import { chow } from "../sources.ts";
import { channelInputs } from "./channel-inputs.ts";
import { manningVelocityOf, wettedAreaOf } from "./channel-of.ts";

/**
 * Depth at which a headrace carries a flow evenly, its velocity and its Froude number.
 *
 *     Q = (1/n)·A·R^(2/3)·√S      A = (b + z·y)·y      R = A/(b + 2·y·√(1 + z²))
 *     V = Q/A      Fr = V/√(g·A/(b + 2·z·y))
 *
 * Near Fr = 1 the surface stands in waves and jumps from one depth to another: keep a headrace below 0.8 or so
 * (common practice, no source).
 *
 * @throws NonPhysicalError no flow, no slope, a Manning number of zero or less.
 * @throws NumericsError where no depth carries the flow.
 * @example
 * ```ts
 * import { normalDepth } from "@leat/intake";
 * import { coherentUnit, cubicFootPerSecond, foot, one } from "@leat/quantity";
 *
 * const { depth } = normalDepth({
 *   flow: cubicFootPerSecond.of(400),
 *   bedWidth: foot.of(20),
 *   bankSlope: one.of(2),
 *   manningNumber: coherentUnit("coefficient").of(0.025),
 *   slope: one.of(0.0016),
 * });
 * depth.in(foot).toFixed(2); // => "3.36"
 * ```
 */
export const normalDepth = /* @__PURE__ */ formula(() => ({
  id: "normal-depth",
  equation:
    "Q = U/n·(b + z·y)·y·((b + z·y)·y/(b + 2·y·√(1 + z^2))/m)^(2/3)·√(S); V = Q/((b + z·y)·y); Fr = V/√(g·(b + z·y)·y/(b + 2·z·y))",
  inputs: {
    /** Flow. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    ...channelInputs(),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: {
    /** Depth of the water. */
    depth: output("length", "y"),
    /** Mean velocity. */
    velocity: output("velocity", "V"),
    /** Froude number. */
    froude: output("ratio", "Fr"),
  },
  constants: { m: metre.of(1), U: metrePerSecond.of(1) },
  source: chow.at("Manning's equation", "memory"),
  solver: true,
  body: ({ Q, b, z, n, S, g, m, U }) => {
    const channel = {
      bed: b,
      bank: z,
      roughness: n,
      slope: S,
      metre: m,
      metrePerSecond: U,
    };
    const excess = (y: number): number =>
      manningVelocityOf(y, channel) * wettedAreaOf(y, channel) - Q;
    // Somewhere to begin: the depth of a square stream of a metre a second, made a thousandth and more.
    const square = Math.sqrt(Q / U);
    const { lo, hi } = expandBracket(excess, square / 1024, square, { least: square / 1_048_576 }); // guard: a first bracket
    const { root, residual, iterations, bracket } = bracketedRoot(excess, lo, hi);
    const area = wettedAreaOf(root, channel);
    const V = Q / area;
    return {
      y: root,
      V,
      Fr: V / Math.sqrt((g * area) / (b + 2 * z * root)),
      iterations,
      residual,
      bracket,
    };
  },
}));
