import { choice, firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared, one } from "@leat/quantity";

import { fischerMixing, transverseMixing } from "./sources.ts";

/** Share of the width squared over which mixing must work: from the bank it has twice as far to go. */
const reachOf = { centre: 0.1, bank: 0.4 } as const;

/**
 * Length of a straight, even stream that mixes a tracer across it, to 5 % or so.
 *
 *     L = k · V · W² / (ε · d · √(g · d · S))
 *
 * k is 0.1 for a throw in the middle and 0.4 for one at the bank. ε is 0.23 by Elder for a straight channel; measured streams
 * have 0.4 to 0.8, and boulders, falls and narrows mix in a fraction of this length. It is a bearing: two probes, one at each
 * bank, are the proof.
 *
 * @throws NonPhysicalError a velocity, a width, a depth or a slope not above zero.
 * @example
 * ```ts
 * import { saltMixingLength } from "@leat/flow-measurement";
 * import { metre, metrePerSecond, percent } from "@leat/quantity";
 *
 * const length = saltMixingLength({
 *   velocity: metrePerSecond.of(0.5),
 *   width: metre.of(3),
 *   averageDepth: metre.of(0.2),
 *   slope: percent.of(3),
 *   injection: "centre",
 * });
 * length.in(metre).toFixed(0); // => "40"
 * ```
 */
export const saltMixingLength = /* @__PURE__ */ formula(() => ({
  id: "salt-mixing-length",
  equation: "L = k(where) · V · W² / (ε · d · √(g · d · S))",
  inputs: {
    /** Mean velocity of the water. */
    velocity: input("velocity", "V", { domain: "positive" }),
    /** Width of the water. */
    width: input("length", "W", { domain: "positive" }),
    /** Mean depth of the water. */
    averageDepth: input("length", "d", { domain: "positive" }),
    /** Fall of the water surface over its length. */
    slope: input("ratio", "S", { domain: "positive" }),
    /** Where the tracer is thrown in. */
    injection: choice(["centre", "bank"], "where"),
    /** Mixing across the stream, over depth and shear velocity. */
    transverseMixing: input("ratio", "ε", {
      domain: "positive",
      default: one.of(0.23),
      because: transverseMixing.at("straight channel", "secondary"),
    }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("length", "L"),
  steps: {
    k: {
      kind: "ratio",
      equation: "0.1 from the middle, 0.4 from the bank",
      of: ({ where }) => reachOf[where],
    },
  },
  source: fischerMixing.at("length for complete mixing, ch. 5", "secondary"),
  body: ({ V, W, d, S, where, ε, g }) =>
    (reachOf[where] * V * W * W) / (ε * d * Math.sqrt(g * d * S)),
}));
