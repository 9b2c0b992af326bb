import { bound, formula, input, output, range } from "@leat/formula";
import { degree, radian } from "@leat/quantity";

import { rennelsHudson } from "../sources.ts";

/**
 * Loss coefficient of a bend, on plain numbers.
 *
 * @param angle - Angle that the flow is turned by, in radians.
 * @param radii - Radius of the middle line over the bore.
 * @param factor - Darcy friction factor of the pipe.
 * @returns The coefficient; the friction of the bend's own length is in it.
 */
export function bendCoefficientOf(angle: number, radii: number, factor: number): number {
  const sine = Math.sin(angle / 2);
  return (
    factor * angle * radii +
    (0.1 + 2.4 * factor) * sine +
    (6.6 * factor * (Math.sqrt(sine) + sine)) / radii ** ((4 * angle) / Math.PI)
  );
}

/**
 * Loss coefficient of a smooth bend by its angle and its radius, on the velocity head in the pipe.
 *
 *     K = f·α·r/D + (0.10 + 2.4·f)·sin(α/2) + 6.6·f·(√sin(α/2) + sin(α/2))/(r/D)^(4·α/π)
 *
 * Wall, swirl and separation, one after the other. The first is friction along the arc: a length of pipe that
 * counts the arc too counts it twice, which is on the safe side. Beside it Crane's table of 90° bends in steel, with
 * the friction factor of a rough wall, reads within 10 % from r/D = 1.5 to 6. A smooth bend is a formed or a cold-bent
 * one; for one that is welded of straight pieces see {@link mitreCoefficient}.
 *
 * @throws NonPhysicalError a radius or a bore of zero or less, a friction factor of zero or less.
 * @throws OutOfValidityError a radius below half the bore or an angle above 180°, and `onNotice` is absent.
 * @example
 * ```ts
 * import { bendCoefficient } from "@leat/penstock";
 * import { coherentUnit, degree, metre, millimetre } from "@leat/quantity";
 *
 * const k = bendCoefficient({
 *   bendAngle: degree.of(45),
 *   bendRadius: metre.of(2.5),
 *   insideDiameter: millimetre.of(100),
 *   frictionFactor: coherentUnit("coefficient").of(0.016),
 * });
 * k["~si"].toFixed(2); // => "0.37"
 * ```
 */
export const bendCoefficient = /* @__PURE__ */ formula(() => ({
  id: "bend-coefficient",
  equation:
    "K = f·α·r/D/rad + (0.10 + 2.4·f)·sin(α/2) + 6.6·f·(√(sin(α/2)) + sin(α/2))/(r/D)^(4·α/rad/π)",
  inputs: {
    /** Angle that the flow is turned by. */
    bendAngle: input("angle", "α"),
    /** Radius of the middle line of the pipe. */
    bendRadius: input("length", "r", { domain: "positive" }),
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Darcy friction factor of the pipe at this flow. */
    frictionFactor: input("coefficient", "f", { domain: "positive" }),
  },
  output: output("coefficient", "K"),
  constants: { rad: radian.of(1) },
  limits: [
    range(
      "bendAngle",
      { max: degree.of(180) },
      rennelsHudson.at("round bends, 0° to 180°", "secondary"),
    ),
    bound(
      "bendRadius",
      "bendRadius/insideDiameter",
      ({ r, D }: { r: number; D: number }) => r / D,
      { min: 0.5 },
      rennelsHudson.at("round bends, r/D above 0.5", "secondary"),
    ),
  ],
  source: rennelsHudson.at("round bends", "secondary"),
  body: ({ α, r, D, f, rad }) => bendCoefficientOf(α / rad, r / D, f),
}));
