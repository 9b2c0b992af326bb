import {
  bound,
  commonPractice,
  formula,
  input,
  list,
  NonPhysicalError,
  output,
} from "@leat/formula";

interface Repeat {
  readonly V: number;
  readonly t: number;
}

/** Mean of the flows of the repeats, each with the same weight. */
function meanFlow(repeats: readonly Repeat[]): number {
  let sum = 0;
  for (const { V, t } of repeats) sum += V / t;
  return sum / repeats.length;
}

/**
 * Flow into a vessel of known volume, timed several times: the mean, and how far the repeats scatter.
 *
 *     Q = Σ(V/t) / n,   s = √(Σ(V/t − Q)² / (n − 1))
 *
 * All of the flow must go into the vessel. The standard deviation is that of one repeat; that of the mean is
 * √n times less. It shows the hand on the stop-watch and a flow that changes, not a vessel whose mark is
 * wrong: give the volume its own uncertainty for that.
 *
 * @throws NonPhysicalError a volume or time not above zero; fewer than two repeats, which have no scatter.
 * @throws OutOfValidityError fewer than three repeats, and `onNotice` is absent.
 * @example
 * ```ts
 * import { timedVolumeFlow } from "@leat/flow-measurement";
 * import { gallon, gallonPerMinute, second } from "@leat/quantity";
 *
 * const volume = gallon.of(5);
 * const { flow, standardDeviation } = timedVolumeFlow({
 *   repeats: [
 *     { volume, time: second.of(10) },
 *     { volume, time: second.of(12) },
 *     { volume, time: second.of(12.5) },
 *   ],
 * });
 * flow.in(gallonPerMinute).toFixed(2); // => "26.33"
 * standardDeviation.in(gallonPerMinute).toFixed(1); // => "3.2"
 * ```
 */
export const timedVolumeFlow = /* @__PURE__ */ formula(() => ({
  id: "timed-volume-flow",
  equation: "Q = Σ(V/t) / n; s = √(Σ(V/t − Q)² / (n − 1))",
  inputs: {
    /** One filling of the vessel after another. */
    repeats: list(
      {
        /** Volume that was filled. */
        volume: input("volume", "V", { domain: "positive" }),
        /** Time that it took. */
        time: input("time", "t", { domain: "positive" }),
      },
      "repeats",
    ),
  },
  output: { flow: output("volume flow", "Q"), standardDeviation: output("volume flow", "s") },
  limits: [
    bound(
      "repeats",
      "number of repeats",
      ({ repeats }: { repeats: readonly Repeat[] }) => repeats.length,
      { min: 3 },
      commonPractice.at("three fillings or more", "practice"),
    ),
  ],
  source: commonPractice.at(
    "bucket and stop-watch; the sample standard deviation is that of any text",
    "practice",
  ),
  body: ({ repeats }) => {
    const n = repeats.length;
    if (n < 2) {
      throw new NonPhysicalError([
        {
          code: "non-physical",
          severity: "stop",
          path: ["repeats"],
          // guard: the singular of a message
          message: `timed-volume-flow: repeats = ${n} filling${n === 1 ? "" : "s"}, which cannot scatter. Time two or more, or divide one volume by its time.`,
          actual: String(n),
          limit: "at least 2",
          source: commonPractice.at("three fillings or more", "practice"),
        },
      ]);
    }
    const Q = meanFlow(repeats);
    let squares = 0;
    for (const { V, t } of repeats) {
      const off = V / t - Q;
      squares += off * off;
    }
    return { Q, s: Math.sqrt(squares / (n - 1)) };
  },
}));
