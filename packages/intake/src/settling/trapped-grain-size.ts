import { formula, input, output } from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";

import { fergusonAndChurch } from "../sources.ts";
import { grainInputs } from "./grain-inputs.ts";
import { grainVelocityOf } from "./grain-velocity-of.ts";

/**
 * The smallest grain that sinks to the bottom of a basin on its way through.
 *
 *     w(d) = k·Q/(L·B)      with w as in {@link grainVelocity}
 *
 * k is the turbulence factor of {@link settlingBasin}: with 1 it is still water, and half of the grains of that size
 * may yet be carried through.
 *
 * @throws NonPhysicalError no flow, a basin of no size, a factor of zero or less.
 * @throws NumericsError where no grain is found.
 * @example
 * ```ts
 * import { trappedGrainSize } from "@leat/intake";
 * import { litrePerSecond, metre, millimetre, squareMillimetrePerSecond } from "@leat/quantity";
 *
 * const { grainSize } = trappedGrainSize({
 *   flow: litrePerSecond.of(20),
 *   basinLength: metre.of(2.5),
 *   basinWidth: metre.of(0.6),
 *   turbulenceFactor: one.of(2),
 *   kinematicViscosity: squareMillimetrePerSecond.of(1.31),
 * });
 * grainSize.in(millimetre).toFixed(2); // => "0.25"
 * ```
 */
export const trappedGrainSize = /* @__PURE__ */ formula(() => ({
  id: "trapped-grain-size",
  equation: "R·g·d^2/(C1·ν + √(0.75·C2·R·g·d^3)) = k·Q/(L·B)",
  inputs: {
    /** Flow through the basin. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Length of the basin along the flow, inlet and outlet not counted. */
    basinLength: input("length", "L", { domain: "positive" }),
    /** Width of the basin. */
    basinWidth: input("length", "B", { domain: "positive" }),
    /** How many times larger a basin must be than still water would need. */
    turbulenceFactor: input("ratio", "k", { domain: "positive" }),
    ...grainInputs(),
  },
  output: { grainSize: output("length", "d") },
  source: fergusonAndChurch.at("eq. 4, solved for the size", "secondary"),
  solver: true,
  body: ({ Q, L, B, k, R, ν, C1, C2, g }) => {
    const target = (k * Q) / (L * B);
    const grain = { excess: R, viscosity: ν, creeping: C1, drag: C2, gravity: g };
    // Each alone, creep and wake ask for a size; the two together for less than twice their sum.
    const creep = Math.sqrt((target * C1 * ν) / (R * g));
    const wake = (0.75 * C2 * target * target) / (R * g); // guard: an end of the bracket
    const least = creep > wake ? creep : wake;
    const most = 2 * (creep + wake); // guard: an end of the bracket
    const { root, residual, iterations, bracket } = bracketedRoot(
      (d) => grainVelocityOf(d, grain) - target,
      least / 2, // guard: an end of the bracket
      most,
    );
    return { d: root, iterations, residual, bracket };
  },
}));
