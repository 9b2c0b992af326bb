import { formula, input, output } from "@leat/formula";
import { one } from "@leat/quantity";

import { civilWorksGuidelines } from "../sources.ts";

/**
 * Length of a basin that lets grains of a sinking velocity reach its bottom, by surface load.
 *
 *     A = k·Q/w      L = A/B      V = Q/(B·y)
 *
 * The surface load Q/A must be no more than the grains sink; depth does not come into it, but keeps the water slow:
 * hold V below {@link scourVelocity} and {@link settlingVelocityLimit}. k makes up for turbulence and for water that
 * takes the short way: guidelines for small schemes take 2. The basin is four to ten times as long as wide (common
 * practice, no source), with a gentle widening before it; what it collects needs room below the depth y.
 *
 * @throws NonPhysicalError grains that do not sink, a basin of no width or depth.
 * @example
 * ```ts
 * import { settlingBasin } from "@leat/intake";
 * import { format, litrePerSecond, metre, metrePerSecond, squareMetre } from "@leat/quantity";
 *
 * const { basinLength, basinArea, meanVelocity } = settlingBasin({
 *   flow: litrePerSecond.of(455),
 *   sinkingVelocity: metrePerSecond.of(0.037),
 *   basinWidth: metre.of(2.5),
 *   depth: metre.of(0.76),
 * });
 * format(basinArea, squareMetre, 3); // => "24.6 m²"
 * format(basinLength, metre, 2); // => "9.8 m"
 * format(meanVelocity, metrePerSecond, 2); // => "0.24 m/s"
 * ```
 */
export const settlingBasin = /* @__PURE__ */ formula(() => ({
  id: "settling-basin",
  equation: "A = k·Q/w; L = k·Q/w/B; V = Q/(B·y)",
  inputs: {
    /** Flow through the basin. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** How fast the smallest grain that must stay sinks. */
    sinkingVelocity: input("velocity", "w", { domain: "positive" }),
    /** Width of the basin. */
    basinWidth: input("length", "B", { domain: "positive" }),
    /** Depth of the water over what has settled. */
    depth: input("length", "y", { domain: "positive" }),
    /** How many times larger the basin is made than still water would need. */
    turbulenceFactor: input("ratio", "k", {
      domain: "positive",
      default: one.of(2),
      because: civilWorksGuidelines.at("ch. 5, L·B = 2·Q/w"),
    }),
  },
  output: {
    /** Area of the water. */
    basinArea: output("area", "A"),
    /** Length along the flow, inlet and outlet not counted. */
    basinLength: output("length", "L"),
    /** Mean velocity through the basin. */
    meanVelocity: output("velocity", "V"),
  },
  source: civilWorksGuidelines.at("ch. 5, ex. 5.1"),
  body: ({ Q, w, B, y, k }) => {
    const A = (k * Q) / w;
    return { A, L: A / B, V: Q / (B * y) };
  },
}));
