import { formula, input, output, range, ratio } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";

/** Above this full angle the loss goes with the root of the sine. */
const steep = 45;

/** What stands before 1 − (d/D)². */
function coneFactor(degrees: number, angle: number): number {
  const sine = Math.sin(angle / 2);
  return degrees > steep ? 0.5 * Math.sqrt(sine) : 0.8 * sine;
}

/**
 * Loss coefficient of a narrowing, on the velocity head in the smaller bore.
 *
 *     K = c(θ) · (1 − (d/D)²)      c = 0.8·sin(θ/2) up to θ = 45°, 0.5·√sin(θ/2) beyond
 *
 * A sudden narrowing is 180°, taken where no angle is given: 0.5·(1 − (d/D)²). Weisbach's older table, (1/Cc − 1)²,
 * gives 0.22 where this gives 0.25, at half the area.
 *
 * @throws NonPhysicalError a bore of zero or less, a negative angle.
 * @throws OutOfValidityError the smaller bore is the larger, or the angle is above 180°, and `onNotice` is absent.
 */
export const contractionCoefficient = /* @__PURE__ */ formula(() => ({
  id: "contraction-coefficient",
  equation: "K = c(θ) · (1 - (d/D)^2)",
  inputs: {
    /** Bore behind the narrowing. */
    smallerBore: input("length", "d", { domain: "positive" }),
    /** Bore before it. */
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
      equation: "0.8·sin(θ/2) up to θ = 45°, 0.5·√sin(θ/2) beyond",
      of: ({ θ, deg, rad }) => coneFactor(θ / deg, θ / rad),
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
  source: craneTp410.at("p. A-26, formulas 1 and 2", "secondary"),
  body: ({ d, D, θ, deg, rad }) => coneFactor(θ / deg, θ / rad) * (1 - (d * d) / (D * D)),
}));
