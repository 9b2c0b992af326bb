import { choice, formula, input, output, range } from "@leat/formula";
import { metre, unit } from "@leat/quantity";

import { gordon } from "../sources.ts";
import { mouthVelocityOf } from "./mouth-velocity-of.ts";

/** A coefficient as Gordon fitted it in feet: so many feet of depth over ft/s and the root of feet. */
const perRootFoot = /* @__PURE__ */ unit(
  "m^-0.5·s",
  "s/ft^0.5",
  1,
  /* @__PURE__ */ Math.sqrt(0.3048),
);

interface Letters {
  readonly approach: "symmetrical" | "lateral";
  readonly ks: number;
  readonly kl: number;
}

function coefficientOf({ approach, ks, kl }: Letters): number {
  return approach === "symmetrical" ? ks : kl;
}

/**
 * Depth of water over the top of a pipe's mouth against vortices, by Gordon.
 *
 *     S = k · V · √D      V = 4·Q/(π·D²)      k = 0.3 or 0.4 s/ft^0.5 (0.54 or 0.72 s/m^0.5)
 *
 * Fitted to what 29 intakes of power stations did, all of them with mouths of metres: a small pipe lies outside, and
 * {@link froudeSubmergence} asks more of it. The greater coefficient is for water that comes from one side.
 *
 * @throws NonPhysicalError a mouth of no size, a negative flow.
 * @throws OutOfValidityError a mouth smaller than a metre, and `onNotice` is absent.
 * @example
 * ```ts
 * import { gordonSubmergence } from "@leat/intake";
 * import { cubicMetrePerSecond, format, metre } from "@leat/quantity";
 *
 * const depth = gordonSubmergence({
 *   flow: cubicMetrePerSecond.of(3),
 *   mouthDiameter: metre.of(1.2),
 *   approach: "symmetrical",
 * });
 * format(depth, metre, 3); // => "1.58 m"
 * ```
 */
export const gordonSubmergence = /* @__PURE__ */ formula(() => ({
  id: "gordon-submergence",
  equation: "S = k · 4·Q/(π·D^2) · √(D)",
  inputs: {
    /** Flow into the pipe. */
    flow: input("volume flow", "Q"),
    /** Inside diameter of the mouth, where it is a bell larger than the bore. */
    mouthDiameter: input("length", "D", { domain: "positive" }),
    /** How the water comes to the mouth. */
    approach: choice(["symmetrical", "lateral"], "approach"),
  },
  output: output("length", "S"),
  constants: { ks: perRootFoot.of(0.3), kl: perRootFoot.of(0.4) },
  steps: {
    k: {
      kind: "m^-0.5·s",
      equation: "0.3 s/ft^0.5 for a symmetrical approach, 0.4 for a lateral one",
      of: (letters) => coefficientOf(letters),
    },
  },
  limits: [
    range(
      "mouthDiameter",
      { min: metre.of(1) },
      gordon.at("intakes that were looked at", "memory"),
    ),
  ],
  source: gordon.at("S = C·V·√d", "memory"),
  body: ({ Q, D, approach, ks, kl }) =>
    coefficientOf({ approach, ks, kl }) * mouthVelocityOf(Q, D) * Math.sqrt(D),
}));
