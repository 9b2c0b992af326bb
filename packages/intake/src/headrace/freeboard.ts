import { formula, input, output } from "@leat/formula";
import { foot } from "@leat/quantity";

import { chow } from "../sources.ts";

/**
 * Height of the banks over the water of a headrace.
 *
 *     F = √(C·y)
 *
 * C is 1.5 ft for 20 ft³/s and less, 2.5 ft for 3000 ft³/s. A headrace on a hillside also needs a spillway where the
 * bank may go: a leaf at its end sends all of its water down the slope.
 *
 * @throws NonPhysicalError no depth.
 * @example
 * ```ts
 * import { freeboard } from "@leat/intake";
 * import { format, metre, millimetre } from "@leat/quantity";
 *
 * format(freeboard({ depth: metre.of(0.25) }), millimetre, 2); // => "340 mm"
 * ```
 */
export const freeboard = /* @__PURE__ */ formula(() => ({
  id: "freeboard",
  equation: "F = √(C·y)",
  inputs: {
    /** Depth of the water. */
    depth: input("length", "y", { domain: "positive" }),
    /** Length that the square of the freeboard is over the depth. */
    freeboardFactor: input("length", "C", {
      domain: "positive",
      default: foot.of(1.5),
      because: chow.at("freeboard of unlined canals, 20 ft³/s and less", "memory"),
    }),
  },
  output: output("length", "F"),
  source: chow.at("freeboard of unlined canals, after USBR", "memory"),
  body: ({ y, C }) => Math.sqrt(C * y),
}));
