import { bound, formula, input, output, range } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { gravityInput } from "../gravity-input.ts";
import { wahlScreens } from "../sources.ts";
import { gapOf, offsetOf, slotFlowOf } from "./tilted-wire-slot-of.ts";

/**
 * Flow through one slot of a screen of tilted wedge wire, over which water runs down.
 *
 *     q = C · W · √(2·g·E) · (y·Fr + x·√2)/√(Fr² + 2)      y = w·sin(φ)      x = s + w − w·cos(φ)
 *     the same as C · W · e · √(2·g·E) · sin(λ + atan(√2/Fr)) with the opening e = √(x² + y²) and its angle λ = atan(y/x)
 *
 * Each wire is turned by φ, so that its leading edge stands into the water by y and shears off what runs there. The
 * water has the velocity along the screen and the one that its depth presses it onto the screen with; √(2·g·E) is their sum, and the
 * sine that of the angle at which it meets the opening. Fast and thin, it is sheared off by y; slow and deep, it falls
 * through x as through an orifice.
 *
 * That capacity goes by the specific energy, the Froude number and the angle of attack on the opening is published;
 * this form was worked out from that, and no measured coefficient was at hand. C is therefore asked for: 0.61 is a
 * sharp-edged slot without losses. The published coefficients also change with Reynolds and Weber number.
 *
 * @throws NonPhysicalError no slot, no energy, a negative flow.
 * @throws OutOfValidityError slower than critical, or wires turned by more than was tested, and `onNotice` is absent.
 * @example
 * ```ts
 * import { tiltedWireSlot } from "@leat/intake";
 * import { coherentUnit, degree, format, litrePerSecond, metre, millimetre, one } from "@leat/quantity";
 *
 * const flow = tiltedWireSlot({
 *   slot: millimetre.of(1),
 *   wire: millimetre.of(1.5),
 *   wireTilt: degree.of(5),
 *   width: metre.of(0.6),
 *   specificEnergy: metre.of(0.4),
 *   froude: one.of(3.5),
 *   slotCoefficient: coherentUnit("coefficient").of(0.6),
 * });
 * format(flow, litrePerSecond, 3); // => "0.502 L/s"
 * ```
 */
export const tiltedWireSlot = /* @__PURE__ */ formula(() => ({
  id: "tilted-wire-slot",
  equation: "q = C · W · √(2·g·E) · (y·Fr + x·√(2))/√(Fr^2 + 2)",
  inputs: {
    /** Clear slot along the screen, before the wires are tilted. */
    slot: input("length", "s", { domain: "positive" }),
    /** Width of the face of a wire. */
    wire: input("length", "w", { domain: "positive" }),
    /** How far the face of a wire is turned out of the screen, its leading edge up. */
    wireTilt: input("angle", "φ"),
    /** Width of the screen, along the wires. */
    width: input("length", "W", { domain: "positive" }),
    /** Energy of the water over the screen: its depth, square to the screen and by the cosine, and its velocity head. */
    specificEnergy: input("length", "E", { domain: "positive" }),
    /** Froude number of the water along the screen. */
    froude: input("ratio", "Fr", { domain: "positive" }),
    /** Discharge coefficient of the slot. */
    slotCoefficient: input("coefficient", "C", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("volume flow", "q"),
  constants: { rad: radian.of(1) },
  steps: {
    x: {
      kind: "length",
      equation: "s + w - w·cos(φ): clear way along the screen",
      of: ({ s, w, φ, rad }) => gapOf({ slot: s, wire: w, tilt: φ / rad }),
    },
    y: {
      kind: "length",
      equation: "w·sin(φ): what a leading edge stands into the water",
      of: ({ s, w, φ, rad }) => offsetOf({ slot: s, wire: w, tilt: φ / rad }),
    },
  },
  limits: [
    range("wireTilt", { max: degree.of(10) }, wahlScreens.at("wires tested", "memory")),
    bound(
      "froude",
      "Froude number",
      ({ Fr }: { Fr: number }) => Fr,
      { min: 1 },
      wahlScreens.at("supercritical flow, abstract of 2001"),
    ),
  ],
  source: wahlScreens.at("what the capacity depends on, abstracts of 2001 and 2013"),
  body: ({ s, w, φ, W, E, Fr, C, g, rad }) =>
    W * slotFlowOf({ slot: s, wire: w, tilt: φ / rad }, C, E, Fr, g),
}));
