import { formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { blockedShareInput } from "../blocked-share-input.ts";
import { gravityInput } from "../gravity-input.ts";
import { blevinsGrilles, idelchikHandbook } from "../sources.ts";

/** Loss on the velocity head before a thin plate of which a share is open, its holes with sharp edges. */
function plateLoss(open: number): number {
  const jet = 0.707 * Math.sqrt(1 - open) + 1 - open;
  return (jet * jet) / (open * open);
}

/**
 * Head lost at a thin perforated plate across the flow, its holes with sharp edges.
 *
 *     h = K · V²/(2·g)      K = (0.707·√(1 − a) + 1 − a)²/a²      a = p·(1 − b)
 *
 * The table that Blevins prints for such plates lies within 15 % of the equation from a fifth to seven tenths open,
 * and above it beyond. Plate thicker than its holes loses less, down to half. The form holds for Reynolds numbers of
 * a hole above some thousand; slower, the loss is a few millimetres at most.
 *
 * @throws NonPhysicalError a share below 0 or above 1, a plate with nothing open.
 * @throws OutOfValidityError more open, or less, than the form was compared for, and `onNotice` is absent.
 * @example
 * ```ts
 * import { perforatedPlateLoss } from "@leat/intake";
 * import { format, metrePerSecond, millimetre, one } from "@leat/quantity";
 *
 * const plate = { velocity: metrePerSecond.of(0.3), openShare: one.of(0.4) };
 * format(perforatedPlateLoss(plate), millimetre, 3); // => "37.8 mm"
 * format(perforatedPlateLoss({ ...plate, blockedShare: one.of(0.5) }), millimetre, 3); // => "235 mm"
 * ```
 */
export const perforatedPlateLoss = /* @__PURE__ */ formula(() => ({
  id: "perforated-plate-loss",
  equation: "h = (0.707·√(1 - p·(1 - b)) + 1 - p·(1 - b))^2/(p·(1 - b))^2 · V^2/(2·g)",
  inputs: {
    /** Velocity of the water before the plate, over its whole area. */
    velocity: input("velocity", "V"),
    /** Area of the holes over the area of the plate. */
    openShare: input("ratio", "p", { domain: "fraction" }),
    /** Share of the holes that leaves cover. */
    blockedShare: blockedShareInput(),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("head loss", "h"),
  limits: [
    range(
      "openShare",
      { min: one.of(0.1), max: one.of(0.8) },
      blevinsGrilles.at("table of square-edged screens", "secondary"),
    ),
  ],
  source: idelchikHandbook.at("thin plate with sharp-edged holes", "memory"),
  body: ({ V, p, b, g }) => (plateLoss(p * (1 - b)) * V * V) / (2 * g),
}));
