import { bound, formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { colebrookPaper, epanetManual, moodyPaper } from "../sources.ts";
import {
  colebrookFactorOf,
  frictionFactorOf,
  laminarUpTo,
  turbulentFrom,
} from "./friction-factor-of.ts";

/** How far a Reynolds number is from the middle of the transition. */
export function fromTransition(reynolds: number): number {
  return Math.abs(reynolds - (laminarUpTo + turbulentFrom) / 2);
}

/** What is bounded where flow must not be in transition, in words. */
export const transitionSays =
  "flow is in transition between laminar (Re ≤ 2000) and turbulent (Re ≥ 4000), where no law holds: |Re − 3000|";

/** How far from the middle of the transition a Reynolds number must be. */
export const transitionHalf: number = (turbulentFrom - laminarUpTo) / 2;

/**
 * Darcy friction factor of any flow: laminar up to Re = 2000, Colebrook–White from Re = 4000.
 *
 *     f = 64/Re                                       Re ≤ 2000
 *     1/√f = −2 · log10(r/3.7 + 2.51/(Re·√f))         Re ≥ 4000
 *
 * In between no law holds: flow flips between the two, and pipes have been measured on either curve.
 * There the straight line between the two ends is taken, so that a solver meets no jump, and the call says
 * so: it throws, or gives a notice where `onNotice` is passed. The turbulent curve carried down to
 * Re = 2500 lies about 35 % above that line for a smooth pipe. EPANET draws a cubic there instead.
 *
 * @throws NonPhysicalError a Reynolds number of zero or less, a negative roughness.
 * @throws OutOfValidityError flow is in transition, or the wall is rougher than the chart, and `onNotice` is absent.
 * @example
 * ```ts
 * import { frictionFactor } from "@leat/penstock";
 * import { one } from "@leat/quantity";
 *
 * let said = "";
 * const f = frictionFactor(
 *   { reynolds: one.of(3000), relativeRoughness: one.of(0) },
 *   { onNotice: (notice) => (said = notice.code) },
 * );
 * f["~si"].toFixed(4); // => "0.0360"
 * said; // => "friction-factor/out-of-range"
 * ```
 */
export const frictionFactor = /* @__PURE__ */ formula(() => ({
  id: "friction-factor",
  equation:
    "f = Re < 2000 ? 64/Re : Re > 4000 ? ft : 64/2000 + (Re - 2000)/(4000 - 2000) · (ft - 64/2000)",
  inputs: {
    /** Reynolds number of the pipe. */
    reynolds: input("ratio", "Re", { domain: "positive" }),
    /** Roughness of the wall over the inside diameter. */
    relativeRoughness: input("ratio", "r"),
  },
  output: output("coefficient", "f"),
  steps: {
    ft: {
      kind: "coefficient",
      equation: "root of 1/√ft = -2 · log10(r/3.7 + 2.51/(Re·√ft)), with 4000 for a smaller Re",
      of: ({ Re, r }) => colebrookFactorOf(Math.max(Re, turbulentFrom), r),
    },
  },
  limits: [
    bound(
      "reynolds",
      transitionSays,
      ({ Re }: { Re: number }) => fromTransition(Re),
      { min: transitionHalf },
      epanetManual.at("ch. 12, laminar below 2000, turbulent above 4000"),
    ),
    bound(
      "reynolds",
      "Reynolds number",
      ({ Re }: { Re: number }) => Re,
      { max: 1e8 },
      moodyPaper.at("fig. 1", "memory"),
    ),
    range("relativeRoughness", { max: one.of(0.05) }, moodyPaper.at("fig. 1", "memory")),
  ],
  source: colebrookPaper.at("eq. for the transition region", "secondary"),
  body: ({ Re, r }) => frictionFactorOf(Re, r),
}));
