import { formula, input, output, range, ratio } from "@leat/formula";
import { degree, foot, metre, metrePerSecondSquared, radian } from "@leat/quantity";

import { iso1438, usbrWaterMeasurementManual } from "../sources.ts";

/** Effective discharge coefficient over the notch angle, in degrees: a fit to the curve of the manual. */
function effectiveCoefficient(degrees: number): number {
  return 0.607165052 - 0.000874466963 * degrees + 6.10393334e-6 * degrees * degrees;
}

/** Head correction in feet over the notch angle, in degrees: a fit to the curve of the manual. */
function headCorrectionFeet(degrees: number): number {
  return (
    0.0144902648 -
    0.00033955535 * degrees +
    3.29819003e-6 * degrees * degrees -
    1.06215442e-8 * degrees * degrees * degrees
  );
}

/**
 * Discharge over a fully contracted thin-plate V-notch weir (Kindsvater–Shen).
 *
 *     Q = 8/15 · Ce(θ) · √(2·g) · tan(θ/2) · (h + kh(θ))^(5/2)
 *
 * Free flow only: the tail water stays below the vertex. Approach velocity is not added to the head.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 */
export const vNotchDischarge = /* @__PURE__ */ formula(() => ({
  id: "v-notch-discharge",
  equation: "Q = 8/15 · Ce(θ) · √(2·g) · tan(θ/2) · (h + kh(θ))^(5/2)",
  inputs: {
    /** Level above the vertex, measured upstream of the drawdown. */
    head: input("length", "h"),
    /** Full angle of the notch. */
    angle: input("angle", "θ", { domain: "positive" }),
    /** Vertex above the bed of the approach channel. */
    crestHeight: input("length", "P", { domain: "positive" }),
    /** Width of the approach channel. */
    approachWidth: input("length", "B", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", { domain: "positive", default: metrePerSecondSquared.of(9.80665) }),
  },
  output: output("volume flow", "Q"),
  constants: { ft: foot.of(1), deg: degree.of(1), rad: radian.of(1) },
  steps: {
    Ce: { kind: "coefficient", equation: "effective coefficient at θ", of: ({ θ, deg }) => effectiveCoefficient(θ / deg) },
    kh: { kind: "length", equation: "head correction at θ", of: ({ θ, deg, ft }) => headCorrectionFeet(θ / deg) * ft },
  },
  limits: [
    range("head", { min: metre.of(0.06) }, iso1438.at("clause on the V-notch", "secondary")),
    ratio("head", "crestHeight", { max: 0.4 }, iso1438.at("clause on the V-notch", "secondary")),
    range("angle", { min: degree.of(25), max: degree.of(100) }, usbrWaterMeasurementManual.at("ch. 7, sec. 7")),
  ],
  source: usbrWaterMeasurementManual.at("ch. 7, sec. 7"),
  body: ({ h, θ, g, ft, deg, rad }) => {
    const degrees = θ / deg;
    const he = h + headCorrectionFeet(degrees) * ft;
    return (8 / 15) * effectiveCoefficient(degrees) * Math.sqrt(2 * g) * Math.tan(θ / rad / 2) * he * he * Math.sqrt(he);
  },
}));
