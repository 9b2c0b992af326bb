import { formula, input, output } from "@leat/formula";

import { craneTp410 } from "../sources.ts";
import { branchLimits } from "./tee-inputs.ts";
import { dividingRunOf, dividingRunScale } from "./tees.ts";

/**
 * Loss coefficient of the water that goes straight on where a branch leaves, on the velocity head of the whole flow.
 *
 *     K = M·(Qb/Q)²      M = 2·(2·Qb/Q − 1) up to half the flow in the branch, 0.3·(2·Qb/Q − 1) beyond
 *
 * It is negative up to half: the water that goes on slows down and gains head, which the branch has lost. Where the area of the
 * branch is 0.4 of the run's and less, M is 0.4.
 *
 * @throws NonPhysicalError a bore or a flow of zero or less.
 * @throws OutOfValidityError a branch wider than the run, and `onNotice` is absent.
 */
export const dividingRunCoefficient = /* @__PURE__ */ formula(() => ({
  id: "dividing-run-coefficient",
  equation: "K = M·(Qb/Q)^2",
  inputs: {
    /** The whole flow, in the run before the branch. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Flow that turns off. */
    branchFlow: input("volume flow", "Qb"),
    /** Bore of the run. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Bore of the branch. */
    branchBore: input("length", "d", { domain: "positive" }),
  },
  output: output("coefficient", "K"),
  steps: {
    M: {
      kind: "coefficient",
      equation: "0.4 for a narrow branch, else by the share that turns off",
      of: ({ Q, Qb, D, d }) => dividingRunScale(Qb / Q, (d * d) / (D * D)),
    },
  },
  limits: branchLimits(),
  source: craneTp410.at("ch. 2, diverging run; example 7-36", "secondary"),
  body: ({ Q, Qb, D, d }) => dividingRunOf(Qb / Q, (d * d) / (D * D)),
}));
