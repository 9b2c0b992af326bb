import {
  bound,
  firstPrinciples,
  formula,
  input,
  NonPhysicalError,
  output,
  range,
  ratio,
} from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";
import { each, foot, metrePerSecondSquared } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { rootFootPerSecond } from "./kindsvater-carter-coefficients.ts";
import { francisLowell } from "./sources.ts";

interface Weir {
  readonly h: number;
  readonly b: number;
  readonly n: number;
  readonly P: number;
  readonly B: number;
  readonly g: number;
  readonly C: number;
}

/**
 * The flow Q of Q = K·((1 + a·(Q/K)²)^(3/2) − (a·(Q/K)²)^(3/2)), where K is the flow without approach velocity and
 * a the velocity head of that flow in the channel, over the head. The search runs on y = Q/K, a pure number
 * that is 1 for a still approach.
 */
function flowWithApproach({ h, b, n, P, B, g, C }: Weir): number {
  const still = C * (b - 0.1 * n * h) * h * Math.sqrt(h);
  if (still === 0) return 0;
  const velocity = still / (B * (h + P));
  const a = (velocity * velocity) / (2 * g * h);
  // guard: beyond it the right side outgrows y for ever, and no flow is the answer
  if (!(a < 0.4)) {
    throw new NonPhysicalError([
      {
        code: "non-physical",
        severity: "stop",
        path: ["approachWidth"],
        message: `francis-approach-discharge: approachWidth = ${B} m is too narrow: the water would have to arrive faster than it can leave over the notch. Check the widths and their units.`,
        actual: `${B} m`,
        limit: "at least the width of the notch",
        source: firstPrinciples.at("a notch is no wider than its channel"),
      },
    ]);
  }
  const miss = (y: number): number => {
    const v = a * y * y;
    const total = 1 + v;
    return total * Math.sqrt(total) - v * Math.sqrt(v) - y;
  };
  // guard: an upper end that is large enough: below it there is one root
  const most = 64;
  return still * bracketedRoot(miss, 1, most).root;
}

/**
 * Discharge over a thin-plate rectangular weir with the velocity of approach added to the head (Francis, the older
 * practice), with no, one or two ends in from the sides of the channel.
 *
 *     Q = C · (b − 0.1·n·h) · ((h + hv)^(3/2) − hv^(3/2)),   hv = V²/(2·g),   V = Q/(B·(h + P)),   C = 3.33 √ft/s
 *
 * V is the mean velocity in the approach channel and follows from the flow itself. Free flow, air under the
 * sheet of water.
 *
 * It is here to read old notes and tables by. The manual that follows Francis elsewhere says of it (sec. 14)
 * that a weir which needs this correction is outside its limits, that velocity "cannot be effectively corrected
 * by adjusting head alone", and sends the reader to Kindsvater: for a new measurement take
 * `kindsvaterCarterDischarge` or `rehbockDischarge`. Over a full-width weir with h/P = 1 this form reads 4 % below
 * Rehbock's, without the correction it reads 10 % below.
 *
 * @throws NonPhysicalError head negative or not finite; a channel so narrow that no flow satisfies the equation.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { francisApproachDischarge } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, each, foot } from "@leat/quantity";
 *
 * const q = francisApproachDischarge({
 *   head: foot.of(0.6),
 *   notchWidth: foot.of(3),
 *   contractions: each.of(0),
 *   crestHeight: foot.of(1.2),
 *   approachWidth: foot.of(3),
 * });
 * q.in(cubicFootPerSecond).toFixed(3); // => "4.771"
 * ```
 */
export const francisApproachDischarge = /* @__PURE__ */ formula(() => ({
  id: "francis-approach-discharge",
  equation:
    "Q = C · (b − 0.1·n·h) · ((h + V²/(2·g))^(3/2) − (V²/(2·g))^(3/2)); V = Q/(B · (h + P))",
  inputs: {
    /** Level above the crest, measured upstream of the drawdown: four heads or more from the plate. */
    head: input("length", "h"),
    /** Width of the notch. */
    notchWidth: input("length", "b", { domain: "positive" }),
    /** Ends of the notch that stand in from the side of the channel: 0, 1 or 2. */
    contractions: input("count", "n"),
    /** Crest above the bed of the approach channel. */
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
  constants: { C: rootFootPerSecond.of(3.33) },
  steps: {
    V: {
      kind: "velocity",
      equation: "velocity in the approach channel, Q/(B · (h + P))",
      of: (weir) => flowWithApproach(weir) / (weir.B * (weir.h + weir.P)),
    },
  },
  limits: [
    range("contractions", { max: each.of(2) }, firstPrinciples.at("a notch has two ends")),
    bound(
      "contractions",
      "contractions away from a whole number",
      ({ n }: { n: number }) => Math.abs(n - Math.round(n)),
      { max: 0 },
      firstPrinciples.at("an end is contracted or not"),
    ),
    range("head", { min: foot.of(0.2) }, usbrWaterMeasurementManual.at("ch. 7", "memory")),
    ratio("head", "notchWidth", { max: 1 / 3 }, francisLowell.at("art. 125, p. 75")),
    ratio(
      "notchWidth",
      "approachWidth",
      { max: 1 },
      firstPrinciples.at("a notch is no wider than its channel"),
    ),
    bound(
      "approachWidth",
      "width of the channel over that of a weir without end contractions",
      ({ b, B, n }: { b: number; B: number; n: number }) => (n === 0 ? B / b : 1),
      { max: 1.001 },
      firstPrinciples.at("where the channel is wider, the ends are contracted"),
    ),
  ],
  source: francisLowell.at("art. 124, with the head of approach of later handbooks", "secondary"),
  body: flowWithApproach,
}));
