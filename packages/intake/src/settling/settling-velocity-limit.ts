import { formula, input, output, range } from "@leat/formula";
import { millimetre, unit } from "@leat/quantity";

import { civilWorksGuidelines } from "../sources.ts";

/** Metres a second over the root of a millimetre. */
const perRootMillimetre = /* @__PURE__ */ unit(
  "m^0.5·s^-1",
  "m/s/mm^0.5",
  /* @__PURE__ */ Math.sqrt(1000),
);

/**
 * Fastest water through a basin in which grains of a size may settle.
 *
 *     V = 0.44 m/s · √(d/mm)
 *
 * Above it the bed of the basin is swept. {@link scourVelocity} is the same by another way.
 *
 * @throws NonPhysicalError a grain of no size.
 * @throws OutOfValidityError a grain below 0.1 mm or above 1 mm, and `onNotice` is absent.
 * @example
 * ```ts
 * import { settlingVelocityLimit } from "@leat/intake";
 * import { format, metrePerSecond, millimetre } from "@leat/quantity";
 *
 * format(settlingVelocityLimit({ grainSize: millimetre.of(0.3) }), metrePerSecond, 2); // => "0.24 m/s"
 * ```
 */
export const settlingVelocityLimit = /* @__PURE__ */ formula(() => ({
  id: "settling-velocity-limit",
  equation: "V = k · √(d)",
  inputs: {
    /** Diameter of the smallest grain that must stay. */
    grainSize: input("length", "d", { domain: "positive" }),
  },
  output: output("velocity", "V"),
  constants: { k: perRootMillimetre.of(0.44) },
  limits: [
    range(
      "grainSize",
      { min: millimetre.of(0.1), max: millimetre.of(1) },
      civilWorksGuidelines.at("ch. 5, after Camp", "memory"),
    ),
  ],
  source: civilWorksGuidelines.at("ch. 5, ex. 5.1"),
  body: ({ d, k }) => k * Math.sqrt(d),
}));
