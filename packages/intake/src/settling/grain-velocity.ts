import { formula, input, output } from "@leat/formula";

import { fergusonAndChurch } from "../sources.ts";
import { grainInputs } from "./grain-inputs.ts";
import { grainVelocityOf } from "./grain-velocity-of.ts";

/**
 * How fast a grain sinks in still water, from silt to gravel, by Ferguson and Church.
 *
 *     w = R·g·d²/(C1·ν + √(0.75·C2·R·g·d³))
 *
 * For a small grain it is Stokes' law, for a large one that of a constant drag. C1 = 18 and C2 = 1 are for natural
 * sand by its sieve size; very angular grains sink slower (C1 = 20, C2 = 1.1), spheres faster (C2 = 0.4). Cold water
 * is thicker: at 0 °C sand of 0.2 mm sinks at two thirds of its speed at 20 °C.
 *
 * @throws NonPhysicalError a grain of no size, or lighter than water.
 * @example
 * ```ts
 * import { grainVelocity } from "@leat/intake";
 * import { millimetre, squareMillimetrePerSecond } from "@leat/quantity";
 *
 * const velocity = grainVelocity({
 *   grainSize: millimetre.of(0.2),
 *   kinematicViscosity: squareMillimetrePerSecond.of(1),
 * });
 * (velocity["~si"] * 1000).toFixed(1); // => "23.2"
 * ```
 */
export const grainVelocity = /* @__PURE__ */ formula(() => ({
  id: "grain-velocity",
  equation: "w = R·g·d^2/(C1·ν + √(0.75·C2·R·g·d^3))",
  inputs: {
    /** Diameter of the grain, as a sieve sorts it. */
    grainSize: input("length", "d", { domain: "positive" }),
    ...grainInputs(),
  },
  output: output("velocity", "w"),
  source: fergusonAndChurch.at("eq. 4", "secondary"),
  body: ({ d, R, ν, C1, C2, g }) =>
    grainVelocityOf(d, { excess: R, viscosity: ν, creeping: C1, drag: C2, gravity: g }),
}));
