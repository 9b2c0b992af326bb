import { bound, formula, input, output, range } from "@leat/formula";
import { one } from "@leat/quantity";

import { blockedShareInput } from "../blocked-share-input.ts";
import { gravityInput } from "../gravity-input.ts";
import { blevinsGrilles } from "../sources.ts";
import { roundWireFactorOf } from "./round-wire-factors.ts";

interface Letters {
  readonly V: number;
  readonly a: number;
  readonly ν: number;
}

/** Reynolds number of the gap between two wires, with the velocity before the cloth. */
function reynoldsOf({ V, a, ν }: Letters): number {
  return (V * a) / ν;
}

/**
 * Head lost at cloth of round wire across the flow.
 *
 *     h = β(Re) · (1 − o²)/o² · V²/(2·g)      o = p·(1 − b)      Re = V·a/ν
 *
 * β is read from {@link roundWireFactors}, from row to row in a straight line. Idelchik's form for cloth,
 * 1.3·(1 − o) + (1/o − 1)², agrees within 7 % from half to seven tenths open and above Re = 400; below half open it is
 * above this one, by 36 % at a fifth.
 *
 * @throws NonPhysicalError a share below 0 or above 1, cloth with nothing open.
 * @throws OutOfValidityError water too slow or cloth too dense for the table, and `onNotice` is absent.
 * @example
 * ```ts
 * import { wireClothLoss } from "@leat/intake";
 * import { format, metrePerSecond, millimetre, one, squareMillimetrePerSecond } from "@leat/quantity";
 *
 * const loss = wireClothLoss({
 *   velocity: metrePerSecond.of(0.3),
 *   openShare: one.of(0.5),
 *   gap: millimetre.of(2),
 *   kinematicViscosity: squareMillimetrePerSecond.of(1.31),
 * });
 * format(loss, millimetre, 3); // => "7.16 mm"
 * ```
 */
export const wireClothLoss = /* @__PURE__ */ formula(() => ({
  id: "wire-cloth-loss",
  equation: "h = β · (1 - (p·(1 - b))^2)/(p·(1 - b))^2 · V^2/(2·g)",
  inputs: {
    /** Velocity of the water before the cloth, over its whole area. */
    velocity: input("velocity", "V", { domain: "positive" }),
    /** Area of the meshes over the area of the cloth. */
    openShare: input("ratio", "p", { domain: "fraction" }),
    /** Share of the meshes that leaves cover. */
    blockedShare: blockedShareInput(),
    /** Clear width between two wires. */
    gap: input("length", "a", { domain: "positive" }),
    /** Kinematic viscosity at the temperature of the water. */
    kinematicViscosity: input("kinematic viscosity", "ν", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("head loss", "h"),
  steps: {
    β: {
      kind: "coefficient",
      equation: "round-wire-factors at Re = V·a/ν",
      of: (letters) => roundWireFactorOf(reynoldsOf(letters)),
    },
  },
  limits: [
    range(
      "openShare",
      { min: one.of(0.05), max: one.of(0.8) },
      blevinsGrilles.at("round wire screens", "secondary"),
    ),
    bound(
      "velocity",
      "Reynolds number of the gap",
      (letters: Letters) => reynoldsOf(letters),
      { min: 20 },
      blevinsGrilles.at("round wire screens", "secondary"),
    ),
  ],
  source: blevinsGrilles.at("round wire screens", "secondary"),
  body: ({ V, p, b, a, ν, g }) => {
    const open = p * (1 - b);
    const factor = roundWireFactorOf(reynoldsOf({ V, a, ν }));
    return (((factor * (1 - open * open)) / (open * open)) * V * V) / (2 * g);
  },
}));
