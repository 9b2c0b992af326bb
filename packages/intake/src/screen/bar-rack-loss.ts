import { firstPrinciples, formula, input, output, range } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { blockedShareInput } from "../blocked-share-input.ts";
import { gravityInput } from "../gravity-input.ts";
import { kirschmer } from "../sources.ts";

/**
 * Head lost at a rack of bars that the water meets square on.
 *
 *     h = β · (s/a)^(4/3) · sin(α) · (V/(1 − b))²/(2·g)
 *
 * Kirschmer's bars were clean. With a share b of the rack blocked from top to bottom the same flow goes through the
 * rest, faster by 1/(1 − b): blocked by half it loses four times as much. Flow that meets the rack at a slant loses
 * more than this.
 *
 * @throws NonPhysicalError no gap between the bars, a share below 0 or above 1.
 * @throws OutOfValidityError a rack that leans over, and `onNotice` is absent.
 * @example
 * ```ts
 * import { barRackLoss, barShapes } from "@leat/intake";
 * import { degree, format, metrePerSecond, millimetre, one } from "@leat/quantity";
 *
 * const rack = {
 *   velocity: metrePerSecond.of(0.5),
 *   barThickness: millimetre.of(8),
 *   barGap: millimetre.of(20),
 *   barAngle: degree.of(70),
 *   shapeFactor: barShapes.get("rectangular", "factor"),
 * };
 * format(barRackLoss(rack), millimetre, 3); // => "8.54 mm"
 * format(barRackLoss({ ...rack, blockedShare: one.of(0.5) }), millimetre, 3); // => "34.2 mm"
 * ```
 */
export const barRackLoss = /* @__PURE__ */ formula(() => ({
  id: "bar-rack-loss",
  equation: "h = β · (s/a)^(4/3) · sin(α/rad) · (V/(1 - b))^2/(2·g)",
  inputs: {
    /** Velocity of the water before the rack, over its whole area. */
    velocity: input("velocity", "V"),
    /** Thickness of a bar, across the flow. */
    barThickness: input("length", "s"),
    /** Clear width between two bars. */
    barGap: input("length", "a", { domain: "positive" }),
    /** Slope of the bars over the horizontal. */
    barAngle: input("angle", "α", { domain: "positive" }),
    /** Shape factor of the bars, such as one of {@link barShapes}. */
    shapeFactor: input("coefficient", "β"),
    /** Share of the rack that is blocked. */
    blockedShare: blockedShareInput(),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("head loss", "h"),
  constants: { rad: radian.of(1) },
  limits: [range("barAngle", { max: degree.of(90) }, firstPrinciples.at("an upright rack"))],
  source: kirschmer.at("head lost at a clean rack", "secondary"),
  body: ({ V, s, a, α, β, b, g, rad }) => {
    const left = V / (1 - b);
    return (β * (s / a) ** (4 / 3) * Math.sin(α / rad) * left * left) / (2 * g);
  },
}));
