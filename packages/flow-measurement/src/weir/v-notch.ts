import { firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { degree, foot, metre, metrePerSecondSquared, radian } from "@leat/quantity";

import { iso1438, usbrWaterMeasurementManual } from "../sources.ts";

/**
 * Effective discharge coefficient over the notch angle, in degrees: a fit to the curve of the manual
 * (fig. 7-6b). The curve is drawn, not printed as numbers; this quadratic was published for it and is
 * quoted alike in three independent open code bases.
 */
function effectiveCoefficient(degrees: number): number {
  return 0.607165052 - 0.000874466963 * degrees + 6.10393334e-6 * degrees * degrees;
}

/** Head correction in feet over the notch angle, in degrees: the fit to fig. 7-6a of the same origin. */
function headCorrectionFeet(degrees: number): number {
  return (
    0.0144902648 -
    0.00033955535 * degrees +
    3.29819003e-6 * degrees * degrees -
    1.06215442e-8 * degrees * degrees * degrees
  );
}

/** Flow over effective head to the power 5/2. */
function notchFactor(degrees: number, halfAngle: number, g: number): number {
  return (8 / 15) * effectiveCoefficient(degrees) * Math.sqrt(2 * g) * Math.tan(halfAngle);
}

/**
 * Discharge over a fully contracted thin-plate V-notch weir (Kindsvater–Shen).
 *
 *     Q = 8/15 · Ce(θ) · √(2·g) · tan(θ/2) · (h + kh(θ))^(5/2)
 *
 * Free flow only: the tail water stays 0.2 ft (6 cm) or more below the vertex. Approach velocity is not
 * added to the head. The plate is thin (2 mm or less at the edge, or bevelled), upright, and square to
 * the stream.
 *
 * Ce and kh are fits to the manual's curves. Against the numbers that are printed for them (Ce 0.578 and
 * kh 0.0029 ft at 90°; Ce 0.59, 0.58, 0.575, 0.575, 0.58 at 20°, 40°, 60°, 80°, 100°) they are within
 * 0.5 % and 0.12 mm. Where the sources disagree, the standard's limits of head and depth are followed
 * (head from 0.06 m, the manual from 0.2 ft) and the manual's of angle (from 25°, the standard from 20°).
 * With a head correction there is no flow at no head: zero head is outside the range.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { vNotchDischarge } from "@leat/flow-measurement";
 * import { degree, litrePerSecond, metre, millimetre } from "@leat/quantity";
 *
 * const q = vNotchDischarge({
 *   head: millimetre.of(200),
 *   angle: degree.of(90),
 *   crestHeight: metre.of(0.6),
 *   approachWidth: metre.of(2),
 * });
 * q.in(litrePerSecond).toFixed(1); // => "24.7"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 7, eq. 7-3
 */
export const vNotchDischarge = /* @__PURE__ */ formula(() => ({
  id: "v-notch-discharge",
  equation: "Q = 8/15 · Ce(θ) · √(2·g) · tan(θ/2) · (h + kh(θ))^(5/2)",
  inputs: {
    /** Level above the vertex, measured upstream of the drawdown: four heads or more from the plate. */
    head: input("length", "h"),
    /** Full angle of the notch. */
    angle: input("angle", "θ", { domain: "positive" }),
    /** Vertex above the bed of the approach channel. */
    crestHeight: input("length", "P", { domain: "positive" }),
    /** Width of the approach channel. */
    approachWidth: input("length", "B", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("volume flow", "Q"),
  constants: { ft: foot.of(1), deg: degree.of(1), rad: radian.of(1) },
  steps: {
    Ce: {
      kind: "coefficient",
      equation: "effective coefficient at θ",
      of: ({ θ, deg }) => effectiveCoefficient(θ / deg),
    },
    kh: {
      kind: "length",
      equation: "head correction at θ",
      of: ({ θ, deg, ft }) => headCorrectionFeet(θ / deg) * ft,
    },
  },
  limits: [
    range("head", { min: metre.of(0.06) }, iso1438.at("cl. 10.6", "secondary")),
    range("head", { max: foot.of(1.25) }, usbrWaterMeasurementManual.at("ch. 7, sec. 7", "memory")),
    ratio("head", "crestHeight", { max: 0.4 }, iso1438.at("cl. 10.6", "secondary")),
    ratio("head", "approachWidth", { max: 0.2 }, iso1438.at("cl. 10.6", "memory")),
    range("crestHeight", { min: metre.of(0.09) }, iso1438.at("cl. 10.6", "secondary")),
    range(
      "angle",
      { min: degree.of(25), max: degree.of(100) },
      usbrWaterMeasurementManual.at("ch. 7, sec. 7"),
    ),
  ],
  source: usbrWaterMeasurementManual.at("ch. 7, eq. 7-3, figs 7-6a and 7-6b"),
  body: ({ h, θ, g, ft, deg, rad }) => {
    const degrees = θ / deg;
    const he = h + headCorrectionFeet(degrees) * ft;
    return notchFactor(degrees, θ / rad / 2, g) * he * he * Math.sqrt(he);
  },
  series: {
    over: "head",
    loop: (column, { θ, g, ft, deg, rad }, out, from, to) => {
      const degrees = θ / deg;
      const kh = headCorrectionFeet(degrees) * ft;
      const factor = notchFactor(degrees, θ / rad / 2, g);
      for (let i = from; i < to; i++) {
        const he = (column[i] as number) + kh;
        out[i] = factor * he * he * Math.sqrt(he);
      }
    },
  },
}));
