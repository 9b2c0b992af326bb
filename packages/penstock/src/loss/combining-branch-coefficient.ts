import { commonPractice, formula, input, output } from "@leat/formula";
import { degree } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";
import { angleLimits, branchLimits } from "./tee-inputs.ts";
import { branchTwist, combiningBranchOf, combiningScale } from "./tees.ts";

/**
 * Loss coefficient of the water that comes in through a branch, from the branch to the whole flow, on the velocity head of
 * the whole flow in the run.
 *
 *     K = C·(1 + u² − 2·(1 − Qb/Q)² − F·(Qb/Q)²/(d/D)²)      u = (Qb/Q)/(d/D)²
 *
 * F = 1.74, 1.41, 1 and 0 at 30°, 45°, 60° and 90°. C = 1 where the area of the branch is 0.35 of the run's and less; else
 * 0.9·(1 − Qb/Q) up to 40 % of the flow in the branch and 0.55 beyond. It is negative where little comes in: the run drags it along.
 *
 * @throws NonPhysicalError a bore or a flow of zero or less.
 * @throws OutOfValidityError a branch wider than the run, an angle that is not printed, and `onNotice` is absent.
 */
export const combiningBranchCoefficient = /* @__PURE__ */ formula(() => ({
  id: "combining-branch-coefficient",
  equation: "K = C · (1 + ((Qb/Q)/(d/D)^2)^2 - 2·(1 - Qb/Q)^2 - F(θ)·(Qb/Q)^2/(d/D)^2)",
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
    C: {
      kind: "coefficient",
      equation: "factor by share and bores",
      of: ({ Q, Qb, D, d }) => combiningScale(Qb / Q, (d * d) / (D * D)),
    },
    F: {
      kind: "coefficient",
      equation: "what the angle gives back",
      of: ({ θ, deg }) => branchTwist(θ / deg),
    },
  },
  limits: [...branchLimits(), ...angleLimits()],
  source: craneTp410.at("ch. 2, converging branch; example 7-35", "secondary"),
  body: ({ Q, Qb, D, d, θ, deg }) =>
    combiningBranchOf(Qb / Q, (d * d) / (D * D), branchTwist(θ / deg)),
}));
