import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { logMoments } from "./log-moments.ts";
import { sir20085126 } from "./sources.ts";

/**
 * The line of least squares of the logarithm of a site's flow on that of a gauge.
 *
 *     ln Qu − ln Qu0 = b · (ln Qg − ln Qg0),   b = Σ(x·y)/Σ(x²),   x and y from their means ln Qg0 and ln Qu0
 *
 * It is the best guess of one day from that day's flow at the gauge. Over a year its flows vary less than the stream's: the
 * slope is r times that of {@link organicLine}, so that floods come out too low and droughts too high, the more so the looser the
 * relation. For a duration curve or a low flow take {@link organicLine}. Back from logarithms it gives a middle, not a mean:
 * with a scatter of 20 % the mean is 2 % more, with 50 % it is 13 % more, and that is not added.
 *
 * @throws NonPhysicalError a flow that is not above zero, fewer than two visits, visits at one flow of the gauge.
 * @throws OutOfValidityError fewer than ten visits, and `onNotice` is absent.
 * @example
 * ```ts
 * const at = (flow: number, gaugedFlow: number) => ({
 *   flow: litrePerSecond.of(flow),
 *   gaugedFlow: litrePerSecond.of(gaugedFlow),
 * });
 * const visits = [at(10, 100), at(20, 200), at(43, 400)];
 * const { slope } = regressionLine({ visits }, { onNotice: () => undefined });
 * slope.in(one).toFixed(3); // => "1.052"
 * ```
 */
export const regressionLine = /* @__PURE__ */ formula(() => ({
  id: "regression-line",
  equation:
    "b = Σ(x·y)/Σ(x²); x = ln Qg − ln Qg0; y = ln Qu − ln Qu0; ln Qg0 = Σ(ln Qg)/n; ln Qu0 = Σ(ln Qu)/n; r = Σ(x·y)/√(Σ(x²)·Σ(y²))",
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
  source: commonPractice.at("least squares in logarithms, of any text", "practice"),
  body: ({ visits }) => {
    const { x, y, xx, xy, yy } = logMoments("regression-line", visits);
    const [first] = visits as readonly [{ Qu: number; Qg: number }];
    return {
      b: xy / xx,
      Qu0: first.Qu * Math.exp(y),
      Qg0: first.Qg * Math.exp(x),
      // A site that always flows alike is related to nothing.
      r: yy > 0 ? xy / Math.sqrt(xx * yy) : 0,
    };
  },
}));
