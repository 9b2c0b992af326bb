import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { refusal } from "../record/refusal.ts";
import { usgsFrequencyCurves } from "./sources.ts";

interface Year {
  readonly Q: number;
}

/**
 * Geometric mean of flows, and standard deviation and skew of their logarithms to base 10: the method of moments.
 *
 *     Qg = 10^M,   S = √(Σ(log Q − M)² / (n − 1)),   G = n · Σ(log Q − M)³ / ((n − 1) · (n − 2) · S³)
 *
 * M is the mean of the logarithms. The skew is that of the station alone; from ten years it is known to about
 * ±0.7 (one standard error), and a regional skew is not mixed in.
 *
 * @throws NonPhysicalError a flow not above zero: years that ran dry are left out and answered for by
 * {@link nonZeroProbability}; fewer than three flows; flows that are all alike, which have no skew.
 * @throws OutOfValidityError fewer than ten flows, and `onNotice` is absent.
 * @example
 * ```ts
 * import { logMoments } from "@leat/hydrology";
 * import { litrePerSecond, one } from "@leat/quantity";
 *
 * const { geometricMean, skew } = logMoments(
 *   { flows: [1, 10, 10, 100].map((flow) => ({ flow: litrePerSecond.of(flow) })) },
 *   { onNotice: () => {} },
 * );
 * geometricMean.in(litrePerSecond).toFixed(3); // => "10.000"
 * skew.in(one); // => 0
 * ```
 */
export const logMoments = /* @__PURE__ */ formula(() => ({
  id: "log-moments",
  equation:
    "M = Σ log10(Q) / n; Qg = 10^M; S = √(Σ(log10(Q) − M)² / (n − 1)); G = n · Σ(log10(Q) − M)³ / ((n − 1) · (n − 2) · S³)",
  inputs: {
    /** One flow a year. */
    flows: list(
      {
        /** The flow. */
        flow: input("volume flow", "Q", { domain: "positive" }),
      },
      "flows",
    ),
  },
  output: {
    geometricMean: output("volume flow", "Qg"),
    logDeviation: output("ratio", "S"),
    skew: output("ratio", "G"),
  },
  limits: [
    bound(
      "flows",
      "number of years",
      ({ flows }: { flows: readonly Year[] }) => flows.length,
      { min: 10 },
      commonPractice.at("ten years for a low-flow frequency", "practice"),
    ),
  ],
  source: usgsFrequencyCurves.at("p. 5"),
  body: ({ flows }) => {
    const n = flows.length;
    // guard: a test asks for fewer
    if (n < 3) {
      throw refusal(
        "non-physical",
        ["flows"],
        `log-moments: flows has ${n} of them, and a skew needs three. Give more years.`,
      );
    }
    // Over the first flow, so that logarithms are those of pure ratios.
    const first = (flows[0] as Year).Q;
    let mean = 0;
    for (const { Q } of flows) mean += Math.log10(Q / first) / n;
    let squares = 0;
    let cubes = 0;
    for (const { Q } of flows) {
      const off = Math.log10(Q / first) - mean;
      squares += off * off;
      cubes += off * off * off;
    }
    if (squares === 0) {
      throw refusal(
        "non-physical",
        ["flows"],
        "log-moments: flows are all alike, which have no skew. Take the flow itself.",
      );
    }
    const S = Math.sqrt(squares / (n - 1));
    return {
      Qg: first * 10 ** mean,
      S,
      G: (n * cubes) / ((n - 1) * (n - 2) * S * S * S),
    };
  },
}));
