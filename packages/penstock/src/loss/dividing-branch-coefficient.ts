import { commonPractice, formula, input, output } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { craneTp410 } from "../sources.ts";
import { angleLimits, branchLimits, squareLimit } from "./tee-inputs.ts";
import { dividingBranchOf, dividingScale, dividingSpeed, dividingTurn } from "./tees.ts";

/**
 * Loss coefficient of the water that turns off into a branch, from the whole flow to the branch, on the velocity head of
 * the whole flow in the run.
 *
 *     K = G·(1 + H·u² − J·u·cos θ)      u = (Qb/Q)/(d/D)², the speed in the branch over that of the whole flow
 *
 * G, H and J by the sort of branch: a square one as wide as the run has G = 1 + 0.3·(Qb/Q)², H = 0.3, J = 0; one of two thirds
 * and less G = H = 1, J = 0; an oblique one H = 1, J = 2 and a G that falls from 1 to 0.6 (1.1 to 0.85 where its area is 0.35
 * of the run's and less). Older measurements of a sharp-edged tee give 0.9 to 1.3 from no flow to all of it in the branch; this
 * rises to 1.7 and is on the safe side. Of no flow the whole velocity head is lost.
 *
 * @throws NonPhysicalError a bore or a flow of zero or less.
 * @throws OutOfValidityError a branch wider than the run, an angle that is not printed, and `onNotice` is absent.
 * @example
 * ```ts
 * import { dividingBranchCoefficient } from "@leat/penstock";
 * import { degree, litrePerMinute, millimetre } from "@leat/quantity";
 *
 * const k = dividingBranchCoefficient({
 *   flow: litrePerMinute.of(2465),
 *   branchFlow: litrePerMinute.of(950),
 *   insideDiameter: millimetre.of(146),
 *   branchBore: millimetre.of(146),
 *   branchAngle: degree.of(45),
 * });
 * k["~si"].toFixed(3); // => "0.464"
 * ```
 */
export const dividingBranchCoefficient = /* @__PURE__ */ formula(() => ({
  id: "dividing-branch-coefficient",
  equation: "K = G · (1 + H·((Qb/Q)/(d/D)^2)^2 - J·(Qb/Q)/(d/D)^2·cos(θ))",
  inputs: {
    /** The whole flow, in the run before the branch. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Flow that turns off. */
    branchFlow: input("volume flow", "Qb"),
    /** Bore of the run. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Bore of the branch. */
    branchBore: input("length", "d", { domain: "positive" }),
    /** Angle of the branch with the way straight on: 90° for a tee. */
    branchAngle: input("angle", "θ", {
      default: degree.of(90),
      because: commonPractice.at("a tee is square", "practice"),
    }),
  },
  output: output("coefficient", "K"),
  constants: { deg: degree.of(1), rad: radian.of(1) },
  steps: {
    G: {
      kind: "coefficient",
      equation: "factor by share, bores and angle",
      of: ({ Q, Qb, D, d, θ, deg }) => dividingScale(Qb / Q, (d * d) / (D * D), θ / deg),
    },
    H: {
      kind: "coefficient",
      equation: "on the square of the speed in the branch",
      of: ({ D, d, θ, deg }) => dividingSpeed((d * d) / (D * D), θ / deg),
    },
    J: {
      kind: "coefficient",
      equation: "on the speed in the branch",
      of: ({ θ, deg }) => dividingTurn(θ / deg),
    },
  },
  limits: [...branchLimits(), ...angleLimits(), squareLimit()],
  source: craneTp410.at("ch. 2, diverging branch; example 7-36", "secondary"),
  body: ({ Q, Qb, D, d, θ, deg, rad }) =>
    dividingBranchOf(Qb / Q, (d * d) / (D * D), θ / deg, Math.cos(θ / rad)),
}));
