import { commonPractice, formula, input, output } from "@leat/formula";
import { degree } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";
import { angleLimits, branchLimits } from "./tee-inputs.ts";
import { branchTwist, combiningRunOf, combiningRunScale, combiningRunTwist } from "./tees.ts";

/**
 * Loss coefficient of the water that comes straight on where a branch joins, on the velocity head of the whole flow.
 *
 *     K = 1.55·Qb/Q − (Qb/Q)²                              a square branch
 *     K = 1 − (1 − Qb/Q)² − F·(Qb/Q)²/(d/D)²               an oblique one
 *
 * F = 1.74, 1.41 and 1 at 30°, 45° and 60°. It is negative where a fast branch drives the run.
 *
 * @throws NonPhysicalError a bore or a flow of zero or less.
 * @throws OutOfValidityError a branch wider than the run, an angle that is not printed, and `onNotice` is absent.
 */
export const combiningRunCoefficient = /* @__PURE__ */ formula(() => ({
  id: "combining-run-coefficient",
  equation: "K = A·(Qb/Q) - B·(Qb/Q)^2",
  inputs: {
    /** The whole flow, in the run behind the branch. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Flow that comes in. */
    branchFlow: input("volume flow", "Qb"),
    /** Bore of the run. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Bore of the branch. */
    branchBore: input("length", "d", { domain: "positive" }),
    /** Angle of the branch with the way that the run comes from: 90° for a tee. */
    branchAngle: input("angle", "θ", {
      default: degree.of(90),
      because: commonPractice.at("a tee is square", "practice"),
    }),
  },
  output: output("coefficient", "K"),
  constants: { deg: degree.of(1) },
  steps: {
    A: {
      kind: "coefficient",
      equation: "1.55 for a square branch, 2 for an oblique one",
      of: ({ θ, deg }) => combiningRunScale(θ / deg),
    },
    B: {
      kind: "coefficient",
      equation: "1 for a square branch, 1 + F/(d/D)² for an oblique one",
      of: ({ D, d, θ, deg }) => combiningRunTwist((d * d) / (D * D), θ / deg, branchTwist(θ / deg)),
    },
  },
  limits: [...branchLimits(), ...angleLimits()],
  source: craneTp410.at("ch. 2, converging run; example 7-35", "secondary"),
  body: ({ Q, Qb, D, d, θ, deg }) =>
    combiningRunOf(Qb / Q, (d * d) / (D * D), θ / deg, branchTwist(θ / deg)),
}));
