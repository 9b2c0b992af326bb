import { commonPractice, formula, input, output, range } from "@leat/formula";
import { degree, metre, metrePerSecondSquared, radian } from "@leat/quantity";

import { wgs84 } from "../sources.ts";

/** Flattening, and centrifugal over gravitational acceleration at the equator. */
const flattening = 1 / 298.257223563;
const rotation = 0.00344978650684;

/** Gravity on the ellipsoid over that at its equator (Somigliana). */
function somigliana(sinSquared: number): number {
  return (1 + 0.00193185265241 * sinSquared) / Math.sqrt(1 - 0.00669437999013 * sinSquared);
}

/** What height leaves of it, to the second order. */
function freeAir(sinSquared: number, relativeHeight: number): number {
  return (
    1 -
    2 * (1 + flattening + rotation - 2 * flattening * sinSquared) * relativeHeight +
    3 * relativeHeight * relativeHeight
  );
}

/**
 * Gravity by latitude and elevation, on a smooth Earth (WGS 84).
 *
 *     g = γ·(1 − 2·(1 + f + m − 2·f·sin²φ)·h/a + 3·h²/a²),   γ = ge·(1 + k·sin²φ)/√(1 − e²·sin²φ)
 *
 * Rocks and valleys move the true value by up to 0.002 m/s². From equator to pole it varies by 0.5 %, which
 * is as much of a power.
 *
 * @throws OutOfValidityError latitude outside ±90°, elevation outside −500 m to 9,000 m, and `onNotice` is absent.
 * @example
 * ```ts
 * import { degree, metre, metrePerSecondSquared } from "@leat/quantity";
 * import { normalGravity } from "@leat/water";
 *
 * const g = normalGravity({ latitude: degree.of(45), elevation: metre.of(1000) });
 * g.in(metrePerSecondSquared).toFixed(4); // => "9.8031"
 * ```
 */
export const normalGravity = /* @__PURE__ */ formula(() => ({
  id: "normal-gravity",
  equation: "g = γ·S·F",
  inputs: {
    /** Geodetic latitude, as a map or a receiver gives it; north or south. */
    latitude: input("angle", "φ", { domain: "any" }),
    /** Elevation; that over the sea will do: it is within 110 m of that over the ellipsoid, 0.0003 m/s². */
    elevation: input("length", "h", { domain: "any" }),
  },
  output: output("acceleration", "g"),
  constants: {
    γ: metrePerSecondSquared.of(9.7803253359),
    a: metre.of(6378137),
    rad: radian.of(1),
  },
  steps: {
    S: {
      kind: "ratio",
      equation: "(1 + k·sin²φ)/√(1 − e²·sin²φ)",
      of: ({ φ, rad }) => {
        const s = Math.sin(φ / rad);
        return somigliana(s * s);
      },
    },
    F: {
      kind: "ratio",
      equation: "1 − 2·(1 + f + m − 2·f·sin²φ)·h/a + 3·h²/a²",
      of: ({ φ, h, a, rad }) => {
        const s = Math.sin(φ / rad);
        return freeAir(s * s, h / a);
      },
    },
  },
  limits: [
    range(
      "latitude",
      { min: degree.of(-90), max: degree.of(90) },
      wgs84.at("meaning of latitude", "memory"),
    ),
    range(
      "elevation",
      { min: metre.of(-500), max: metre.of(9000) },
      commonPractice.at("dry land", "practice"),
    ),
  ],
  source: wgs84.at("ch. 4, normal gravity", "secondary"),
  body: ({ φ, h, γ, a, rad }) => {
    const s = Math.sin(φ / rad);
    return γ * somigliana(s * s) * freeAir(s * s, h / a);
  },
}));
