import type { Citation, Notice } from "@leat/formula";
import { commonPractice } from "@leat/formula";
import { studentQuantile } from "@leat/numerics";

import { astmE178 } from "./sources.ts";

/** Mean and scatter of repeats. */
export interface Scatter {
  /** How many. */
  readonly count: number;
  /** Mean. */
  readonly mean: number;
  /** Standard deviation of one; 0 for one alone. */
  readonly deviation: number;
  /** Standard deviation of the mean; 0 for one alone. */
  readonly standardError: number;
  /** Half the width of the 95 % interval of the mean, by Student's distribution; 0 for one alone. */
  readonly half95: number;
}

/**
 * Mean and scatter of repeats.
 *
 * @param values - The repeats, one or more.
 * @returns Them.
 */
export function scatterOf(values: readonly number[]): Scatter {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  if (count === 1) return { count, mean, deviation: 0, standardError: 0, half95: 0 };
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  const deviation = Math.sqrt(squares / (count - 1));
  const standardError = deviation / Math.sqrt(count);
  return {
    count,
    mean,
    deviation,
    standardError,
    half95: studentQuantile(0.975, count - 1) * standardError,
  };
}

/**
 * How many standard deviations from the mean the furthest of some repeats may lie (Grubbs' criterion, either side).
 *
 *     G = (n − 1)/√n · √(t²/(n − 2 + t²)),   t = t(1 − α/(2·n), n − 2)
 *
 * With three repeats the limit is hardly below what three can ever reach, 2/√3: two of them must agree almost exactly
 * for the third to be seen.
 *
 * @param count - Number of repeats, 3 or more.
 * @param level - Chance of accusing one of a good set; 0.05 by default.
 * @returns The criterion, in standard deviations of one repeat.
 * @example
 * ```ts
 * import { grubbsCriterion } from "@leat/flow-measurement";
 *
 * grubbsCriterion(5).toFixed(3); // => "1.715"
 * ```
 * @see ASTM E178
 */
export function grubbsCriterion(count: number, level = 0.05): number {
  const t = studentQuantile(1 - level / (2 * count), count - 2);
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t));
}

/** What repeats are called in a notice. */
export interface RepeatWords {
  /** Who speaks: the id before the colon. */
  readonly id: string;
  /** The list that they stand in. */
  readonly path: readonly (string | number)[];
  /** What is repeated, in the plural: fillings, runs, readings. */
  readonly plural: string;
  /** A value with its unit. */
  readonly say: (value: number) => string;
  /** Furthest from the mean that is let pass in silence, over the mean; absent, nothing is said of it. */
  readonly apart?: number;
  /** What to do about one that lies apart. */
  readonly advice: string;
}

/**
 * What there is to say of repeats that disagree: one that stands out of the others, or one that lies far from the mean.
 * Nothing is left out for it.
 *
 * @param values - The repeats.
 * @param words - How to speak of them.
 * @returns None, one or two notices.
 */
export function disagreement(values: readonly number[], words: RepeatWords): Notice[] {
  const { count, mean, deviation } = scatterOf(values);
  if (count < 2) return [];
  const offs = values.map((value) => Math.abs(value - mean));
  const far = Math.max(...offs);
  // Equal repeats differ by rounding only, and rounding has no outliers.
  if (far <= 1e-12 * Math.abs(mean)) return [];
  const row = offs.indexOf(far);
  const value = values[row] as number;
  const where = [...words.path, row];
  const from = `${where.join(".")}, ${words.say(value)},`;
  const notices: Notice[] = [];
  if (count >= 3) {
    const criterion = grubbsCriterion(count);
    const at = far / deviation;
    if (at > criterion) {
      notices.push(
        about(words, where, "stands-out", astmE178.at("Grubbs' criterion, 5 %", "memory"), {
          message: `${from} stands out of ${count} ${words.plural}: it lies ${at.toFixed(2)} standard deviations from their mean of ${words.say(mean)}, and ${criterion.toFixed(2)} is as far as one in twenty good sets would. It is counted all the same. ${words.advice}`,
          actual: `${at.toFixed(2)} standard deviations`,
          limit: `at most ${criterion.toFixed(2)}`,
        }),
      );
    }
  }
  const apart = words.apart ?? Number.POSITIVE_INFINITY;
  if (far > apart * Math.abs(mean)) {
    const share = `${((100 * far) / Math.abs(mean)).toFixed(0)} %`;
    notices.push(
      about(words, where, "apart", commonPractice.at("repeats that agree", "practice"), {
        message: `${from} lies ${share} from the mean of ${count} ${words.plural}, ${words.say(mean)}. It is counted all the same. ${words.advice}`,
        actual: share,
        limit: `at most ${100 * apart} %`,
      }),
    );
  }
  return notices;
}

function about(
  { id }: RepeatWords,
  path: readonly (string | number)[],
  code: string,
  from: Citation,
  text: { message: string; actual: string; limit: string },
): Notice {
  return {
    ...text,
    code: `${id}/${code}`,
    severity: "caution",
    path,
    message: `${id}: ${text.message}`,
    source: from,
  };
}
