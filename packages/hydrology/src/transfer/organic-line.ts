import { bound, formula, input, list, output } from "@leat/formula";

import { refusal } from "../record/refusal.ts";
import { logMoments } from "./log-moments.ts";
import { hirsch, sir20085126 } from "./sources.ts";

/**
 * The line of organic correlation of the logarithm of a site's flow with that of a gauge: MOVE.1, which keeps the variance.
 *
 *     ln Qu = m(ln Qu) + sign(r) · S(ln Qu)/S(ln Qg) · (ln Qg − m(ln Qg))
 *
 * m is the mean of the visits and S their standard deviation. A record that is carried by it varies as much as the stream
 * does, so that its duration curve and its low flows are not drawn to the middle: take it for those. For the best guess of a
 * single day take {@link regressionLine}; near the mean of the visits the two agree.
 *
 * Hirsch prints it for months of a common period; the USGS uses it for single base-flow measurements (OSW memorandum 86.02).
 * The mean and the standard deviation are those of the visits: measured in low water only, they speak of low water only.
 *
 * @throws NonPhysicalError a flow that is not above zero, fewer than two visits, visits at one flow of the gauge or of the
 * site, visits that are not related at all.
 * @throws OutOfValidityError fewer than ten visits, and `onNotice` is absent.
 * @example
 * ```ts
 * const at = (flow: number, gaugedFlow: number) => ({
 *   flow: litrePerSecond.of(flow),
 *   gaugedFlow: litrePerSecond.of(gaugedFlow),
 * });
 * const visits = [at(10, 100), at(20, 200), at(43, 400)];
 * const { slope } = organicLine({ visits }, { onNotice: () => undefined });
 * slope.in(one).toFixed(3); // => "1.053"
 * ```
 * @see R. M. Hirsch, Water Resources Research 18(4), 1982
 */
export const organicLine = /* @__PURE__ */ formula(() => ({
  id: "organic-line",
  equation:
    "b = sign(r)·√(Σ(y²)/Σ(x²)); x = ln Qg − ln Qg0; y = ln Qu − ln Qu0; ln Qg0 = Σ(ln Qg)/n; ln Qu0 = Σ(ln Qu)/n; r = Σ(x·y)/√(Σ(x²)·Σ(y²))",
  inputs: {
    /** Flows measured at the site, each with the gauge's of the same day. */
    visits: list(
      {
        /** Flow measured at the site. */
        flow: input("volume flow", "Qu", { domain: "positive" }),
        /** Flow at the gauge on that day. */
        gaugedFlow: input("volume flow", "Qg", { domain: "positive" }),
      },
      "visits",
    ),
  },
  output: {
    slope: output("ratio", "b"),
    flow: output("volume flow", "Qu0"),
    gaugedFlow: output("volume flow", "Qg0"),
    correlation: output("ratio", "r"),
  },
  limits: [
    bound(
      "visits",
      "number of visits",
      ({ visits }: { visits: readonly unknown[] }) => visits.length,
      { min: 10 },
      sir20085126.at("partial-record site method: typically a minimum of 10"),
    ),
  ],
  source: hirsch.at("MOVE.1", "secondary"),
  body: ({ visits }) => {
    const { x, y, xx, xy, yy } = logMoments("organic-line", visits);
    if (!(yy > 0) || xy === 0) {
      throw refusal(
        "visits/unrelated",
        ["visits"],
        `organic-line: the ${visits.length} visits show no relation between site and gauge, neither up nor down. Choose another gauge, or measure at other flows.`,
      );
    }
    const [first] = visits as readonly [{ Qu: number; Qg: number }];
    const size = Math.sqrt(yy / xx);
    return {
      b: xy > 0 ? size : -size,
      Qu0: first.Qu * Math.exp(y),
      Qg0: first.Qg * Math.exp(x),
      r: xy / Math.sqrt(xx * yy),
    };
  },
}));
