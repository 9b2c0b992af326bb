import { bound, commonPractice, formula, input, output, range } from "@leat/formula";
import { cubicFootPerSecond, foot, footPerSecond, inch } from "@leat/quantity";

import { epanetManual, liouHazenWilliams } from "../sources.ts";
import { pipeVelocityOf } from "./pipe-velocity.ts";

/**
 * Head lost to friction by Hazen and Williams, as the trade in feet and inches still writes it.
 *
 *     h = 4.727 · L · (Q/cfs)^1.852/(C^1.852 · (D/ft)^4.871)
 *
 * An empirical law for water of about 15 °C (60 °F) in turbulent flow through pipes of some size, at some 1 m/s: it
 * knows neither viscosity nor roughness, so that C moves with the bore and the velocity. Water near freezing loses 5 to 10 % more
 * in a smooth pipe than it says. {@link reachHeadLoss} is the law to design with; this is for comparing with a table.
 * The constant is EPANET's; others print 4.73, and 10.67 where metres are put in.
 *
 * @throws NonPhysicalError a negative flow or length, a bore or a coefficient of zero or less.
 * @throws OutOfValidityError a bore below 2 in, a velocity above 10 ft/s, a coefficient beyond 60 to 160, and `onNotice` is absent.
 * @example
 * ```ts
 * import { hazenWilliams } from "@leat/penstock";
 * import { coherentUnit, cubicFootPerSecond, foot } from "@leat/quantity";
 *
 * const h = hazenWilliams({
 *   flow: cubicFootPerSecond.of(1),
 *   insideDiameter: foot.of(0.5),
 *   length: foot.of(1000).as("pipe length"),
 *   flowCoefficient: coherentUnit("coefficient").of(150),
 * });
 * h.in(foot).toFixed(2); // => "12.91"
 * ```
 */
export const hazenWilliams = /* @__PURE__ */ formula(() => ({
  id: "hazen-williams",
  equation: "h = 4.727 · L · (Q/cfs)^1.852/(C^1.852 · (D/ft)^4.871)",
  inputs: {
    /** Flow in the pipe. */
    flow: input("volume flow", "Q"),
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Length along the pipe. */
    length: input("pipe length", "L"),
    /** Coefficient of Hazen and Williams: higher is smoother. */
    flowCoefficient: input("coefficient", "C", { domain: "positive" }),
  },
  output: output("head loss", "h"),
  constants: {
    cfs: cubicFootPerSecond.of(1),
    ft: foot.of(1),
    // guard: only the limit on the velocity takes it
    fps: footPerSecond.of(1),
  },
  limits: [
    range(
      "insideDiameter",
      { min: inch.of(2) },
      liouHazenWilliams.at(
        "C depends on the size of the pipe; the figure is common practice",
        "practice",
      ),
    ),
    bound(
      "flow",
      "velocity in feet a second",
      ({ Q, D, fps }: { Q: number; D: number; fps: number }) => pipeVelocityOf(Q, D) / fps,
      { max: 10 },
      liouHazenWilliams.at(
        "C depends on the Reynolds number; the figure is common practice",
        "practice",
      ),
    ),
    bound(
      "flowCoefficient",
      "flowCoefficient",
      ({ C }: { C: number }) => C,
      { min: 60, max: 160 },
      commonPractice.at("coefficients of old cast iron to new plastic", "practice"),
    ),
  ],
  source: epanetManual.at("ch. 3, Table 3.1"),
  body: ({ Q, D, L, C, cfs, ft }) =>
    (4.727 * L * (Q / cfs) ** 1.852) / (C ** 1.852 * (D / ft) ** 4.871),
}));
