import { formula, input, output } from "@leat/formula";

import { gravityInput } from "../gravity-input.ts";
import { hydraulicInstitute } from "../sources.ts";
import { mouthVelocityOf } from "./mouth-velocity-of.ts";

/**
 * Depth of water over a pipe's mouth against vortices, by the pump makers' standard.
 *
 *     S = D · (1 + 2.3·Fr)      Fr = V/√(g·D)      V = 4·Q/(π·D²)
 *
 * It stands for mouths of any size. The standard counts from the plane of a mouth that looks down; for one that looks
 * sideways texts count from its axis. Here it is counted from its top, which errs by half a diameter to the safe side.
 *
 * @throws NonPhysicalError a mouth of no size, a negative flow.
 * @example
 * ```ts
 * import { froudeSubmergence } from "@leat/intake";
 * import { format, gallonPerMinute, inch } from "@leat/quantity";
 *
 * const depth = froudeSubmergence({ flow: gallonPerMinute.of(1000), mouthDiameter: inch.of(16) });
 * format(depth, inch, 3); // => "25.0 in"
 * ```
 */
export const froudeSubmergence = /* @__PURE__ */ formula(() => ({
  id: "froude-submergence",
  equation: "S = D · (1 + 2.3 · 4·Q/(π·D^2)/√(g·D))",
  inputs: {
    /** Flow into the pipe. */
    flow: input("volume flow", "Q"),
    /** Inside diameter of the mouth, where it is a bell larger than the bore. */
    mouthDiameter: input("length", "D", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("length", "S"),
  source: hydraulicInstitute.at("sec. 9.8.7, minimum submergence", "secondary"),
  body: ({ Q, D, g }) => D * (1 + (2.3 * mouthVelocityOf(Q, D)) / Math.sqrt(g * D)),
}));
