import { formula, input, output, range, ratio } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";

/** A cone that opens wider than this loses as much as a step does. */
const asAStep = 45;

/** Share of the loss of a step that a cone of a full angle has. */
function coneShare(degrees: number, angle: number): number {
  return degrees > asAStep ? 1 : 2.6 * Math.sin(angle / 2);
}

/**
 * Loss coefficient of a widening, on the velocity head in the smaller bore: a sudden one by Borda and Carnot, a
 * cone by the share of it that is left.
 *
 *     K = c(θ) · (1 − (d/D)²)²      c = 2.6·sin(θ/2) up to θ = 45°, 1 beyond
 *
 * The full angle of the cone counts, both sides together; a sudden widening is 180°, taken where none is given.
 *
 * @throws NonPhysicalError a bore of zero or less, a negative angle.
 * @throws OutOfValidityError the smaller bore is the larger, or the angle is above 180°, and `onNotice` is absent.
 * @example
 * ```ts
 * import { expansionCoefficient } from "@leat/penstock";
 * import { centimetre } from "@leat/quantity";
 *
 * const k = expansionCoefficient({ smallerBore: centimetre.of(6), largerBore: centimetre.of(9) });
 * k["~si"].toFixed(4); // => "0.3086"
 * ```
 */
export const expansionCoefficient = /* @__PURE__ */ formula(() => ({
  id: "expansion-coefficient",
  equation: "K = c(θ) · (1 - (d/D)^2)^2",
  inputs: {
    /** Bore before the widening. */
    smallerBore: input("length", "d", { domain: "positive" }),
    /** Bore behind it. */
    largerBore: input("length", "D", { domain: "positive" }),
    /** Full angle of the cone. */
    coneAngle: input("angle", "θ", {
      default: degree.of(180),
      because: craneTp410.at("p. A-26, a sudden change is 180°", "secondary"),
    }),
  },
  output: output("coefficient", "K"),
  constants: { deg: degree.of(1), rad: radian.of(1) },
  steps: {
    c: {
      kind: "coefficient",
      equation: "share of a sudden widening at θ",
      of: ({ θ, deg, rad }) => coneShare(θ / deg, θ / rad),
    },
  },
  limits: [
    ratio("smallerBore", "largerBore", { max: 1 }, craneTp410.at("p. A-26, β = d/D", "secondary")),
    range(
      "coneAngle",
      { max: degree.of(180) },
      craneTp410.at("p. A-26, a sudden change is 180°", "secondary"),
    ),
  ],
  source: craneTp410.at("p. A-26, formulas 3 and 4", "secondary"),
  body: ({ d, D, θ, deg, rad }) => {
    const step = 1 - (d * d) / (D * D);
    return coneShare(θ / deg, θ / rad) * step * step;
  },
}));
