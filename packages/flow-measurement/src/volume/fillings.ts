import { type CallOptions, commonPractice, NonPhysicalError, type Notice } from "@leat/formula";
import { cubicMetrePerSecond, litrePerSecond, type Quantity } from "@leat/quantity";

import { disagreement, scatterOf } from "../combine/scatter.ts";
import { fault } from "../refusal.ts";
import { timedVolumeFlow } from "./timed-volume.ts";

const id = "timed-volume";

/** One filling of the vessel. */
export interface Filling {
  /** Volume that was filled. */
  readonly volume: Quantity<"volume">;
  /** Time that it took. */
  readonly time: Quantity<"time">;
}

/** A gauging by vessel and stop-watch. */
export interface TimedVolumeInput {
  /** Names this gauging: its sources of uncertainty are called after it. */
  readonly name: string;
  /** The fillings, one or more. */
  readonly repeats: readonly Filling[];
  /** Half the 95 % interval of one time: the hand on the stop-watch, each time another. */
  readonly timingError?: Quantity<"time"> | undefined;
  /** Half the 95 % interval of the volume at the mark: the same each time. */
  readonly volumeError?: Quantity<"volume"> | undefined;
  /** Names the vessel; gaugings that share it share its error. `name` where absent. */
  readonly vessel?: string | undefined;
}

/** What the fillings say. */
export interface TimedVolumeResult {
  /** Mean flow, with its sources: scatter, timing of each filling, the vessel. */
  readonly flow: Quantity<"volume flow">;
  /** Flow of each filling. */
  readonly flows: readonly Quantity<"volume flow">[];
  /** Standard deviation of one filling; absent for one alone. */
  readonly standardDeviation: Quantity<"volume flow"> | undefined;
  /** Half the 95 % interval of the mean from the scatter alone, t·s/√n; absent for one alone. */
  readonly scatter95: Quantity<"volume flow"> | undefined;
}

/**
 * Flow from a vessel of known volume that is filled one or more times.
 *
 *     Q = Σ(V/t)/n,   ± t(0.975, n − 1)·s/√n from the scatter
 *
 * `timedVolumeFlow` gives mean and scatter. The scatter of few fillings is widened by Student's distribution. Each timing
 * is a source of its own, which averages out; it is also in the scatter, so that a little of it counts twice: that is on
 * the safe side, and three fillings that agree by luck do not look perfect. The vessel's error is common to all fillings
 * and does not average out. One filling shows no scatter: ± 20 % is taken, and told.
 *
 * Fillings that disagree are told, by Grubbs' criterion and where one lies more than 10 % from the mean, and all of them
 * are counted.
 *
 * @param input - The gauging.
 * @param options - Who is told.
 * @returns The flow and what it was made of.
 * @throws NonPhysicalError a volume or a time missing or not above zero, with its row, all rows at once; no filling.
 * @example
 * ```ts
 * import { timedVolume } from "@leat/flow-measurement";
 * import { format, litre, litrePerSecond, second } from "@leat/quantity";
 *
 * const { flow } = timedVolume({
 *   name: "bucket at the spring",
 *   repeats: [10.2, 10.6, 10.3, 10.5].map((t) => ({ volume: litre.of(20), time: second.of(t) })),
 *   timingError: second.of(0.3),
 *   volumeError: litre.of(0.4),
 * });
 * format(flow, litrePerSecond, { plusMinus: true }); // => "1.924 ± 0.072 L/s (k = 1.96)"
 * ```
 */
export function timedVolume(
  input: TimedVolumeInput,
  options: Pick<CallOptions, "onNotice"> = {},
): TimedVolumeResult {
  const tell = options.onNotice ?? (() => undefined);
  const { name, repeats, timingError, volumeError } = input;
  requireFillings(repeats);
  const fillings = repeats.map(({ volume, time }, i) => ({
    volume: volumeError
      ? volume.plusMinus(volumeError, `${input.vessel ?? name}: volume of the vessel`)
      : volume,
    time: timingError ? time.plusMinus(timingError, `${name}: timing of filling ${i + 1}`) : time,
  }));
  const flows = fillings.map(({ volume, time }) => volume.dividedBy(time));
  if (!volumeError && repeats.every(({ volume }) => !volume["~sources"])) {
    tell({
      code: `${id}/vessel`,
      severity: "note",
      path: ["volumeError"],
      message: `${id}: nothing is said of the vessel's own error, which no repeating averages out: the ± is that of the fillings alone. Weigh the water, or fill the vessel from a measure.`,
      source: commonPractice.at("a marked vessel", "practice"),
    });
  }
  const [first] = flows;
  if (first && flows.length === 1) {
    const half = 0.2;
    tell({
      code: `${id}/single-filling`,
      severity: "caution",
      path: ["repeats"],
      message: `${id}: one filling shows no scatter: ± 20 % is taken for it. Time two more.`,
      actual: "1",
      limit: "at least 3",
      source: commonPractice.at("one filling shows no scatter", "practice"),
    });
    return {
      flow: first.plusMinus(first.times(half), `${name}: scatter of a single filling`),
      flows,
      standardDeviation: undefined,
      scatter95: undefined,
    };
  }

  const { flow, standardDeviation } = timedVolumeFlow({ repeats: fillings }, { onNotice: tell });
  const values = flows.map((q) => q["~si"]);
  const scatter95 = cubicMetrePerSecond.of(scatterOf(values).half95);
  const notices = disagreement(values, {
    id,
    path: ["repeats"],
    plural: "fillings",
    say: (q) => `${cubicMetrePerSecond.of(q).in(litrePerSecond).toPrecision(4)} L/s`,
    apart: 0.1,
    advice: "Was all of the flow in the vessel? Time it again.",
  });
  for (const notice of notices) tell(notice);
  return {
    flow:
      scatter95["~si"] > 0 ? flow.plusMinus(scatter95, `${name}: scatter of the fillings`) : flow,
    flows,
    standardDeviation,
    scatter95,
  };
}

/** Refuses what cannot be, every row of it at once. */
function requireFillings(repeats: readonly Filling[]): void {
  const faults: Notice[] = [];
  if (repeats.length === 0)
    faults.push(fault(id, ["repeats"], "repeats = none. Fill the vessel once or more."));
  repeats.forEach((filling, i) => {
    for (const word of ["volume", "time"] as const) {
      const given = filling[word] as Quantity<string> | undefined;
      if (!given) {
        faults.push(
          fault(id, ["repeats", i, word], `repeats.${i}.${word} is missing. Leave the row out.`),
        );
      } else if (!(given["~si"] > 0)) {
        faults.push(
          fault(
            id,
            ["repeats", i, word],
            `repeats.${i}.${word} = ${given.toString()} is not above zero, which no filling has. Check the row.`,
            { actual: given.toString() },
          ),
        );
      }
    }
  });
  if (faults.length > 0) throw new NonPhysicalError(faults);
}
