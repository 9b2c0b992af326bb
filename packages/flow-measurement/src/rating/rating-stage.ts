import { formula, input, output, pointInput } from "@leat/formula";

import { usgsDischargeRatings } from "./sources.ts";

/**
 * Stage at which a flow passes, by its rating: the inverse of `ratingDischarge`.
 *
 *     h = h0 + h1·(Q/Q1)^(1/b)
 *
 * The answer is a length over the zero of the staff that the stage of zero flow was read on.
 *
 * @throws NonPhysicalError a flow below zero, a reference or an exponent not above zero.
 * @example
 * ```ts
 * import { ratingStage } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, foot, one, point } from "@leat/quantity";
 *
 * const stage = ratingStage({
 *   flow: cubicFootPerSecond.of(33.54),
 *   zeroFlowStage: point("staff zero", foot.of(2), "staff at the bridge"),
 *   referenceDepth: foot.of(0.5),
 *   referenceFlow: cubicFootPerSecond.of(27.9),
 *   exponent: one.of(2.394),
 * });
 * stage.in(foot).toFixed(2); // => "2.54"
 * ```
 * @see E. J. Kennedy, Discharge Ratings at Gaging Stations (docs/sources.md#usgs-twri-3-a10)
 */
export const ratingStage = /* @__PURE__ */ formula(() => ({
  id: "rating-stage",
  equation: "h = h0 + h1·(Q/Q1)^(1/b)",
  inputs: {
    /** Flow of the stream. */
    flow: input("volume flow", "Q"),
    /** Level at which the stream stops flowing over its control, over the zero of the staff. */
    zeroFlowStage: pointInput("staff zero", "h0"),
    /** Depth over the stage of zero flow at which the reference flow passes. */
    referenceDepth: input("length", "h1", { domain: "positive" }),
    /** Flow at the reference depth. */
    referenceFlow: input("volume flow", "Q1", { domain: "positive" }),
    /** Power with which the flow rises with the depth. */
    exponent: input("ratio", "b", { domain: "positive" }),
  },
  output: output("length", "h"),
  source: usgsDischargeRatings.at("straight-line rating curves on logarithmic scales", "memory"),
  body: ({ Q, h0, h1, Q1, b }) => h0 + h1 * Math.pow(Q / Q1, 1 / b),
}));
