import { bound, formula, input, output } from "@leat/formula";

import { epanetManual } from "../sources.ts";
import { laminarUpTo } from "./friction-factor-of.ts";

/**
 * Darcy friction factor of laminar flow (Hagen–Poiseuille). The wall's roughness plays no part.
 *
 *     f = 64/Re
 *
 * @throws NonPhysicalError a Reynolds number of zero or less.
 * @throws OutOfValidityError a Reynolds number above 2000, and `onNotice` is absent.
 */
export const laminarFriction = /* @__PURE__ */ formula(() => ({
  id: "laminar-friction",
  equation: "f = 64/Re",
  inputs: {
    /** Reynolds number of the pipe. */
    reynolds: input("ratio", "Re", { domain: "positive" }),
  },
  output: output("coefficient", "f"),
  limits: [
    bound(
      "reynolds",
      "Reynolds number",
      ({ Re }: { Re: number }) => Re,
      { max: laminarUpTo },
      epanetManual.at("ch. 12, Hagen–Poiseuille below 2000"),
    ),
  ],
  source: epanetManual.at("ch. 12, Hagen–Poiseuille below 2000"),
  body: ({ Re }) => 64 / Re,
}));
