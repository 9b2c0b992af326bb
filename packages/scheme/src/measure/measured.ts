import { combine } from "@leat/flow-measurement";
import type { Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import type { Ledger } from "../ledger.ts";
import type { Measurement } from "./measurement.ts";

/** What was measured on one day, combined. */
export interface Combined<K extends string> {
  /** The day, where it is told. */
  readonly on?: string;
  /** Which measurements, by their place in the list. */
  readonly of: readonly number[];
  /** All of them together; widened where they disagree. */
  readonly value: Quantity<K>;
  /** Weight of each. */
  readonly weights: readonly number[];
  /** Whether they agree within what they say of themselves. */
  readonly agree: boolean;
}

/** Everything that was measured of one thing. */
export interface Measured<K extends string> {
  /** Each measurement. */
  readonly measurements: readonly Measurement<K>[];
  /** Those of each day combined, in the order of the days. */
  readonly combined: readonly Combined<K>[];
  /** The combination that a scheme is made for: the last day's. */
  readonly taken: Combined<K>;
  /** How it was made, in words. */
  readonly by: string;
  /** What is to be said of the measurements that were taken, and of all together. */
  readonly notices: readonly Notice[];
}

/**
 * Combines measurements day by day, and takes the last day's for the scheme.
 *
 * @param what - What was measured, in words.
 * @param path - Where the list stands in the survey.
 * @param measurements - The measurements, one at least.
 * @param ledger - Lists which day is taken.
 * @returns All of them.
 */
export function measured<K extends string>(
  what: string,
  path: readonly (string | number)[],
  measurements: readonly Measurement<K>[],
  ledger: Ledger,
): Measured<K> {
  const notices: Notice[] = [];
  const days = [...new Set(measurements.map(({ on }) => on ?? ""))].toSorted();
  const combined = days.map((on) => {
    const of = measurements.flatMap((each, i) => ((each.on ?? "") === on ? [i] : []));
    const day = together(measurements, of, (notice) => notices.push({ ...notice, path }));
    return on === "" ? day : { ...day, on };
  });
  const taken = combined.at(-1) as Combined<K>;
  if (combined.length > 1)
    ledger.assume(
      path,
      `${what} that the scheme is made for`,
      `that of ${taken.on ?? "no day"}, the last of ${combined.length} days`,
      undefined,
    );
  const [first, ...more] = taken.of.map((i) => measurements[i] as Measurement<K>);
  return {
    measurements,
    combined,
    taken,
    by:
      more.length === 0 ? (first as Measurement<K>).by : `${taken.of.length} measurements together`,
    notices: [...taken.of.flatMap((i) => (measurements[i] as Measurement<K>).notices), ...notices],
  };
}

/** The measurements of a day as one. */
function together<K extends string>(
  measurements: readonly Measurement<K>[],
  of: readonly number[],
  onNotice: (notice: Notice) => void,
): Combined<K> {
  const [only, ...more] = of.map((i) => measurements[i] as Measurement<K>);
  if (only && more.length === 0) return { of, value: only.value, weights: [1], agree: true };
  const named = of.map((i) => {
    const { name, value } = measurements[i] as Measurement<K>;
    return { name: `${i + 1}, ${name}`, value };
  });
  const { widened, weights, consistent, pairs, birgeRatio } = combine(named, {
    onNotice: (notice) => notice.code === "combine/disagree" || onNotice(notice),
  });
  const [worst] = pairs;
  if (!consistent && worst)
    onNotice({
      code: "measurements-disagree",
      severity: "caution",
      path: [],
      message: `${worst.first} and ${worst.second} disagree: they are ${worst.normalised.toFixed(1)} times the standard uncertainty of their difference apart. Their mean is used with its ± ${(birgeRatio ?? 1).toFixed(1)} times as wide; look for what is wrong with one of them before anything is built on it.`,
      actual: worst.normalised.toFixed(1),
      limit: "at most 2",
    });
  return { of, value: widened, weights, agree: consistent };
}
