// One interleaved run: in each round every variant of every group is timed once, in an order that turns, so that what the
// machine does meanwhile meets all of them. A round compares a variant with its reference in the same round.

/**
 * A way to do the work of a group.
 *
 * @typedef {object} Variant
 * @property {string} name
 * @property {(() => number) | undefined} run - does the work `ops` times and returns a number that depends on it; absent where
 *   it cannot be done
 * @property {string} [refused] - why it cannot
 * @property {number} [gate] - most times that of the group's first variant
 */

/**
 * The same work done in several ways.
 *
 * @typedef {object} Group
 * @property {string} name
 * @property {number} ops - how often `run` does it
 * @property {string} per - what it does once
 * @property {number} [sample] - milliseconds that one sample takes, at least
 * @property {Variant[]} variants - the first is the reference
 */

/** Milliseconds that one sample takes, at least, unless a group asks for more. */
const shortest = 6;

let kept = 0;

/** Milliseconds of `repeats` calls. */
function time(run, repeats) {
  const start = performance.now();
  for (let i = 0; i < repeats; i++) kept += run();
  return performance.now() - start;
}

/** Runs until it is compiled, and tells how many calls make a sample. */
function warm(run, sample = shortest) {
  let repeats = 1;
  const start = performance.now();
  for (;;) {
    const took = time(run, repeats);
    if (took >= sample && performance.now() - start > 40 * shortest)
      return Math.max(1, Math.ceil((repeats * sample) / took));
    if (took < sample) repeats *= 2;
  }
}

/** The middle of a list, or another share of it. */
export function quantile(list, share = 0.5) {
  const sorted = list.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const low = Math.floor(at);
  return sorted[low] + (at - low) * ((sorted[low + 1] ?? sorted[low]) - sorted[low]);
}

/**
 * Times every group.
 *
 * @param {Group[]} groups - what to time
 * @param {number} rounds - how often
 * @returns for each variant nanoseconds an operation (best, median, quartiles) and the same over its reference
 */
export function measure(groups, rounds) {
  const all = groups.flatMap((group) =>
    group.variants.map((variant) => ({
      group,
      variant,
      times: [],
      repeats: variant.run ? warm(variant.run, group.sample) : 0,
    })),
  );
  const runnable = all.filter(({ variant }) => variant.run);
  for (let round = 0; round < rounds; round++) {
    for (let i = 0; i < runnable.length; i++) {
      const each = runnable[(i + round * 7) % runnable.length];
      each.times.push((time(each.variant.run, each.repeats) / each.repeats / each.group.ops) * 1e6);
    }
  }
  if (!Number.isFinite(kept)) throw new Error("a variant did not return a number");
  return groups.map((group) => {
    const own = all.filter((each) => each.group === group);
    const [reference] = own;
    return {
      ...group,
      variants: own.map(({ variant, times }) => {
        if (!variant.run) return { ...variant };
        const ratios = times.map((t, round) => t / reference.times[round]);
        const best = Math.min(...times);
        return {
          ...variant,
          best,
          median: quantile(times),
          low: quantile(times, 0.25),
          high: quantile(times, 0.75),
          ratio: quantile(ratios),
          ratioLow: quantile(ratios, 0.25),
          ratioHigh: quantile(ratios, 0.75),
          ratioBest: best / Math.min(...reference.times),
        };
      }),
    };
  });
}
