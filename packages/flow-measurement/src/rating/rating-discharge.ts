import { formula, input, output, pointInput } from "@leat/formula";

import { refused } from "../refusal.ts";
import { usgsDischargeRatings } from "./sources.ts";

/**
 * Flow of a stream at a stage, by its rating.
 *
 *     Q = Q1·((h − h0)/h1)^b
 *
 * Books write Q = C·(h − h0)^b; C then has a unit with the exponent in it. Here the flow is given at a reference depth
 * instead, of which C is the flow at a depth of 1 m or 1 ft, and the exponent stays a pure number.
 *
 * Depth is counted from the stage of zero flow, h0: the level at which the stream stops passing its control. That is
 * not the bottom of the pool at the staff, and seldom the zero of the staff. All stages are over the zero of one staff.
 *
 * @throws NonPhysicalError a stage below that of zero flow: the power of a negative depth has no meaning.
 * @example
 * ```ts
 * import { ratingDischarge } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, foot, one, point } from "@leat/quantity";
 *
 * const staff = "staff at the bridge";
 * const flow = ratingDischarge({
 *   stage: point("staff zero", foot.of(2.54), staff),
 *   zeroFlowStage: point("staff zero", foot.of(2), staff),
 *   referenceDepth: foot.of(0.5),
 *   referenceFlow: cubicFootPerSecond.of(27.9),
 *   exponent: one.of(2.394),
 * });
 * flow.in(cubicFootPerSecond).toFixed(2); // => "33.54"
 * ```
 * @see E. J. Kennedy, Discharge Ratings at Gaging Stations (docs/sources.md#usgs-twri-3-a10)
 */
export const ratingDischarge = /* @__PURE__ */ formula(() => ({
  id: "rating-discharge",
  equation: "Q = Q1·((h − h0)/h1)^b",
  inputs: {
    /** Level of the water, over the zero of the staff. */
    stage: pointInput("staff zero", "h"),
    /** Level at which the stream stops flowing over its control, over the zero of the same staff. */
    zeroFlowStage: pointInput("staff zero", "h0"),
    /** Depth over the stage of zero flow at which the reference flow passes. */
    referenceDepth: input("length", "h1", { domain: "positive" }),
    /** Flow at the reference depth. */
    referenceFlow: input("volume flow", "Q1", { domain: "positive" }),
    /** Power with which the flow rises with the depth. */
    exponent: input("ratio", "b", { domain: "positive" }),
  },
  output: output("volume flow", "Q"),
  source: usgsDischargeRatings.at("straight-line rating curves on logarithmic scales", "memory"),
  body: ({ h, h0, h1, Q1, b }) => {
    const depth = h - h0;
    if (depth < 0) {
      throw refused(
        ["stage"],
        "rating-discharge: stage is below zeroFlowStage: nothing flows over the control. Check both, and that they are of one staff.",
      );
    }
    return Q1 * Math.pow(depth / h1, b);
  },
}));
