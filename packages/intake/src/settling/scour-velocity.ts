import { formula, input, output } from "@leat/formula";
import { coherentUnit, one } from "@leat/quantity";

import { gravityInput } from "../gravity-input.ts";
import { camp } from "../sources.ts";

/**
 * Velocity at which the water takes grains up from the bottom again, by Camp.
 *
 *     V = √(8·β·R·g·d/f)
 *
 * With β = 0.04 the first grains of clean sand move; from 0.06 on, and for sticky deposits from more, the bed is swept.
 * So a basin settles grains while it is slower than this with 0.04, and flushes them when it is faster than with 0.06
 * and the largest grain in it: open the flush gate wide enough and give its channel the slope for that.
 *
 * @throws NonPhysicalError a grain of no size, a friction factor of zero or less.
 * @example
 * ```ts
 * import { scourVelocity } from "@leat/intake";
 * import { coherentUnit, format, metrePerSecond, millimetre } from "@leat/quantity";
 *
 * const coefficient = coherentUnit("coefficient");
 * const settles = scourVelocity({ grainSize: millimetre.of(0.3), scourFactor: coefficient.of(0.04) });
 * format(settles, metrePerSecond, 2); // => "0.25 m/s"
 * const flushes = scourVelocity({ grainSize: millimetre.of(10), scourFactor: coefficient.of(0.06) });
 * format(flushes, metrePerSecond, 2); // => "1.8 m/s"
 * ```
 */
export const scourVelocity = /* @__PURE__ */ formula(() => ({
  id: "scour-velocity",
  equation: "V = √(8·β·R·g·d/f)",
  inputs: {
    /** Diameter of the grain. */
    grainSize: input("length", "d", { domain: "positive" }),
    /** 0.04 where the first grains move, 0.06 and more where the bed is swept. */
    scourFactor: input("coefficient", "β", { domain: "positive" }),
    /** Density of the grain over that of water, less 1. */
    excessDensity: input("ratio", "R", {
      domain: "positive",
      default: one.of(1.65),
      because: camp.at("sand", "memory"),
    }),
    /** Darcy friction factor of the bottom. */
    frictionFactor: input("coefficient", "f", {
      domain: "positive",
      default: coherentUnit("coefficient").of(0.025),
      because: camp.at("0.02 to 0.03 in basins", "memory"),
    }),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("velocity", "V"),
  source: camp.at("scour of the bottom of a tank", "memory"),
  body: ({ d, β, R, f, g }) => Math.sqrt((8 * β * R * g * d) / f),
}));
