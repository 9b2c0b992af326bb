import { bound, formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { epanetManual, swameeJainPaper } from "../sources.ts";
import { turbulentFrom } from "./friction-factor-of.ts";

/**
 * Darcy friction factor of turbulent flow in one step (Swamee–Jain): a second equation beside
 * {@link colebrook}, within about 1 % of it for r from 1e-6 to 0.01 and Re from 5000 to 1e8.
 *
 *     f = 0.25/(log10(r/3.7 + 5.74/Re^0.9))²
 *
 * @throws NonPhysicalError a Reynolds number of zero or less, a negative roughness.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 */
export const swameeJain = /* @__PURE__ */ formula(() => ({
  id: "swamee-jain",
  equation: "f = 0.25/(log10(r/3.7 + 5.74/Re^0.9))^2",
  inputs: {
    /** Reynolds number of the pipe. */
    reynolds: input("ratio", "Re", { domain: "positive" }),
    /** Roughness of the wall over the inside diameter. */
    relativeRoughness: input("ratio", "r"),
  },
  output: output("coefficient", "f"),
  limits: [
    bound(
      "reynolds",
      "Reynolds number",
      ({ Re }: { Re: number }) => Re,
      { min: turbulentFrom },
      epanetManual.at("ch. 12, Swamee–Jain above 4000"),
    ),
    bound(
      "reynolds",
      "Reynolds number",
      ({ Re }: { Re: number }) => Re,
      { max: 1e8 },
      swameeJainPaper.at("range of the fit", "memory"),
    ),
    range(
      "relativeRoughness",
      { max: one.of(0.01) },
      swameeJainPaper.at("range of the fit", "memory"),
    ),
  ],
  source: epanetManual.at("ch. 12, Swamee–Jain above 4000"),
  body: ({ Re, r }) => {
    const log = Math.log10(r / 3.7 + 5.74 / Re ** 0.9);
    return 0.25 / (log * log);
  },
}));
