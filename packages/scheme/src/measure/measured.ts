import { combine } from "@leat/flow-measurement";
import type { Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import type { Ledger } from "../ledger.ts";
import { k95 } from "../uncertainty.ts";
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

/** What is told here in words of its own. */
const told: ReadonlySet<string> = /* @__PURE__ */ new Set([
  "combine/disagree",
  "combine/pair-apart",
]);

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
    return { name: `${name} (${i + 1})`, value };
  });
  const { widened, weights, consistent, pairs, birgeRatio } = combine(named, {
    onNotice: (notice) =>
      told.has(notice.code) ||
      onNotice({ ...notice, message: notice.message.replace(/^combine: /u, "") }),
  });
  for (const { first, second, normalised } of pairs)
    if (consistent && normalised > k95)
      onNotice({
        code: "measurements-apart",
        severity: "note",
        path: [],
        message: `${first} and ${second} are ${short(normalised)} times the standard uncertainty of their difference apart; all together still agree.`,
        actual: short(normalised),
        limit: `at most ${short(k95)}`,
      });
  const [worst] = pairs;
  if (!consistent && worst) {
    const apart = short(worst.normalised);
    onNotice({
      code: "measurements-disagree",
      severity: "caution",
      path: [],
      message: `${worst.first} and ${worst.second} disagree: they are ${apart} times the standard uncertainty of their difference apart. The mean of ${of.length === 2 ? "the two" : `all ${of.length}`} is used, and its ± is widened ${short(birgeRatio ?? 1)} times; look for what is wrong with one of them before anything is built on it.`,
      actual: apart,
      limit: `at most ${short(k95)}`,
    });
  }
  return { of, value: widened, weights, agree: consistent };
}

/** No more figures than anybody reads: 1.96, 4.3, 20. */
function short(n: number): string {
  return n.toFixed(n < 3 ? 2 : n < 10 ? 1 : 0);
}
