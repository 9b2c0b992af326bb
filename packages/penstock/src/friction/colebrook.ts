import { bound, formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { colebrookPaper, epanetManual, moodyPaper } from "../sources.ts";
import { colebrookResidual, colebrookRoot, turbulentFrom } from "./friction-factor-of.ts";

/**
 * Darcy friction factor of turbulent flow, from the Colebrook–White equation, solved to the last digits.
 *
 *     1/√f = −2 · log10(r/3.7 + 2.51/(Re·√f))
 *
 * The equation is the one behind Moody's chart. Its curve was fitted through commercial pipes whose own
 * factors scatter by some 5 to 10 %, whatever the digits of the root.
 *
 * @throws NonPhysicalError a Reynolds number of zero or less, a negative roughness.
 * @throws OutOfValidityError flow is not turbulent, or the wall is rougher than the chart, and `onNotice` is absent.
 * @throws NumericsError `not-converged` where the equation has no root.
 * @example
 * ```ts
 * import { colebrook } from "@leat/penstock";
 * import { one } from "@leat/quantity";
 *
 * const { frictionFactor } = colebrook({ reynolds: one.of(1e6), relativeRoughness: one.of(1e-4) });
 * frictionFactor["~si"].toFixed(5); // => "0.01344"
 * ```
 */
export const colebrook = /* @__PURE__ */ formula(() => ({
  id: "colebrook",
  equation: "1/√(f) = -2 · log10(r/3.7 + 2.51/(Re·√(f)))",
  inputs: {
    /** Reynolds number of the pipe. */
    reynolds: input("ratio", "Re", { domain: "positive" }),
    /** Roughness of the wall over the inside diameter. */
    relativeRoughness: input("ratio", "r"),
  },
  output: { frictionFactor: output("coefficient", "f") },
  limits: [
    bound(
      "reynolds",
      "Reynolds number",
      ({ Re }: { Re: number }) => Re,
      { min: turbulentFrom },
      epanetManual.at("ch. 12, turbulent above 4000"),
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
  solver: true,
  body: ({ Re, r }) => {
    const steps = { taken: 0 };
    const inverseRoot = colebrookRoot(Re, r, steps);
    return {
      f: 1 / (inverseRoot * inverseRoot),
      iterations: steps.taken,
      residual: colebrookResidual(inverseRoot, Re, r),
    };
  },
}));
