import { choice, formula, input, output } from "@leat/formula";

import { iso1438 } from "../sources.ts";
import { headPower } from "./head-power.ts";

/**
 * Relative uncertainty of a flow over a thin-plate weir, as the standard puts it together.
 *
 *     u = √(uC² + ub² + (N·uh/h)²),   N = 1.5, for a V-notch 2.5
 *
 * All four on the same footing: standard uncertainties give a standard uncertainty, 95 % intervals a 95 %
 * interval. A second way to the number that a formula of this package gives by itself when its inputs carry their
 * uncertainties: the two agree where the coefficient does not move with the head, and within a tenth elsewhere.
 *
 * @throws NonPhysicalError head not above zero, an uncertainty below zero.
 * @example
 * ```ts
 * import { weirRelativeUncertainty } from "@leat/flow-measurement";
 * import { format, millimetre, percent } from "@leat/quantity";
 *
 * const u = weirRelativeUncertainty({
 *   shape: "V-notch",
 *   head: millimetre.of(120),
 *   headUncertainty: millimetre.of(1),
 *   openingUncertainty: percent.of(0.5),
 *   coefficientUncertainty: percent.of(1),
 * });
 * format(u, percent, 2); // => "2.4 %"
 * ```
 */
export const weirRelativeUncertainty = /* @__PURE__ */ formula(() => ({
  id: "weir-relative-uncertainty",
  equation: "u = √(uC² + ub² + (N · uh/h)²)",
  inputs: {
    /** Level above the crest, with the head correction where the formula has one. */
    head: input("length", "h", { domain: "positive" }),
    /** Uncertainty of the head: the reading, and the zero of the ruler. */
    headUncertainty: input("length", "uh"),
    /** Relative uncertainty of the width; of the tangent of half the angle for a V-notch. */
    openingUncertainty: input("ratio", "ub"),
    /** Relative uncertainty of the discharge coefficient: see `weirEquationUncertainty`. */
    coefficientUncertainty: input("ratio", "uC"),
    /** Shape of the notch. */
    shape: choice(["rectangular", "V-notch"], "shape"),
  },
  output: output("ratio", "u"),
  steps: {
    N: {
      kind: "ratio",
      equation: "power of the head",
      of: ({ shape }) => headPower(shape),
    },
  },
  source: iso1438.at("cl. 11, combining uncertainties", "memory"),
  body: ({ h, uh, ub, uC, shape }) => {
    const head = (headPower(shape) * uh) / h;
    return Math.sqrt(uC * uC + ub * ub + head * head);
  },
}));
