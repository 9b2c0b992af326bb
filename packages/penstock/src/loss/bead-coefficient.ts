import { bound, commonPractice, formula, input, output } from "@leat/formula";
import { coherentUnit } from "@leat/quantity";

import { idelchikHandbook } from "../sources.ts";
import { ringLossOf } from "./ring-loss.ts";

/**
 * Loss coefficient of the bead that butt fusion leaves inside a pipe, on the velocity head in the pipe; it counts once a joint.
 *
 *     K = ((1 − m) + √c·(1 − m)^0.375)²/m²      m = (1 − 2·b/D)²
 *
 * An estimate: the bead is taken as a ring in the pipe, by Idelchik's formula, for no measurement of a bead was found.
 * c is what its edge loses: 0.5 where it is sharp, 0.03 where it is well rounded, 0 for the widening behind it alone.
 * A rolled bead is rounded, so 0.03 is taken. A 3 mm bead in a bore of 92 mm then comes to 0.056, which is what 0.3 m
 * of smooth pipe loses; edges of 0 and 0.28 make it 0.021 and 0.18. A firm that sells fused pipe writes that Hazen and
 * Williams' C = 150 was measured with the beads in the pipe: at 2 to 3 m/s and 20 °C it loses 4 to 5 % more than smooth pipe, as
 * such beads every 6 m do here. Beside a C of 150 they would be counted twice.
 *
 * @throws NonPhysicalError a negative height or edge, a bore of zero or less.
 * @throws OutOfValidityError a bead higher than a tenth of the bore, an edge sharper than sharp, and `onNotice` is absent.
 * @example
 * ```ts
 * import { beadCoefficient } from "@leat/penstock";
 * import { millimetre } from "@leat/quantity";
 *
 * const k = beadCoefficient({ beadHeight: millimetre.of(3), insideDiameter: millimetre.of(92) });
 * k["~si"].toFixed(3); // => "0.056"
 * ```
 */
export const beadCoefficient = /* @__PURE__ */ formula(() => ({
  id: "bead-coefficient",
  equation: "K = ((1 - m) + √(c)·(1 - m)^0.375)^2/m^2",
  inputs: {
    /** How far the bead stands into the bore. */
    beadHeight: input("length", "b"),
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** What the edge of the bead loses, as an entrance with such an edge would. */
    edgeCoefficient: input("coefficient", "c", {
      default: coherentUnit("coefficient").of(0.03),
      because: commonPractice.at("a rolled bead is taken as well rounded, an estimate", "practice"),
    }),
  },
  output: output("coefficient", "K"),
  steps: {
    m: {
      kind: "ratio",
      equation: "(1 - 2·b/D)²",
      of: ({ b, D }) => openShare(b, D),
    },
  },
  limits: [
    bound(
      "beadHeight",
      "beadHeight/insideDiameter",
      ({ b, D }: { b: number; D: number }) => b / D,
      { max: 0.1 },
      commonPractice.at("a bead is low beside the bore", "practice"),
    ),
    bound(
      "edgeCoefficient",
      "edgeCoefficient",
      ({ c }: { c: number }) => c,
      { max: 0.5 },
      idelchikHandbook.at("diagram 3-1, a sharp edge", "secondary"),
    ),
  ],
  source: idelchikHandbook.at("diagrams 4-13 and 4-14, a ring in a pipe", "secondary"),
  body: ({ b, D, c }) => ringLossOf(openShare(b, D), c),
}));

/** Share of the area that a ring leaves open. */
function openShare(height: number, bore: number): number {
  const left = 1 - (2 * height) / bore;
  return left * left;
}
