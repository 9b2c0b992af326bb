import { formula, input, output, range } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { rennelsHudson } from "../sources.ts";

/**
 * Loss coefficient of a mitre: two straight pipes cut and joined at an angle, one joint.
 *
 *     K = 0.42·sin(α/2) + 2.56·sin³(α/2)
 *
 * Tables of large welded pipe print less: 0.80 where this gives 1.20 at 90°, 0.20 against 0.30 at 45°. A bend of
 * several mitres loses less than their sum where they stand close together.
 *
 * @throws NonPhysicalError a negative angle.
 * @throws OutOfValidityError an angle above 150°, and `onNotice` is absent.
 */
export const mitreCoefficient = /* @__PURE__ */ formula(() => ({
  id: "mitre-coefficient",
  equation: "K = 0.42·sin(α/2) + 2.56·sin(α/2)^3",
  inputs: {
    /** Angle that the flow is turned by. */
    bendAngle: input("angle", "α"),
  },
  output: output("coefficient", "K"),
  constants: { rad: radian.of(1) },
  limits: [
    range(
      "bendAngle",
      { max: degree.of(150) },
      rennelsHudson.at("mitre bends, up to 150°", "secondary"),
    ),
  ],
  source: rennelsHudson.at("mitre bends", "secondary"),
  body: ({ α, rad }) => {
    const sine = Math.sin(α / rad / 2);
    return 0.42 * sine + 2.56 * sine * sine * sine;
  },
}));
