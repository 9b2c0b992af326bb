// Invented inputs, the same in every run.

/** Numbers from 0 up to 1 that look random and are not. */
export function sequence(start) {
  let state = start;
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648;
  };
}

/** So many numbers from `low` to `high`. */
export function spread(count, low, high, start) {
  const next = sequence(start);
  return Float64Array.from({ length: count }, () => low + (high - low) * next());
}

/** Refuses to time what does not give the same answer: it would be other work. */
export function same(groups, tolerance = 1e-9) {
  for (const { name, variants } of groups) {
    const expected = variants[0].run();
    for (const { name: variant, run } of variants) {
      if (!run) continue;
      const got = run();
      if (!(Math.abs(got - expected) <= tolerance * Math.abs(expected)))
        throw new Error(`${name}: ${variant} gives ${got}, not ${expected}`);
    }
  }
  return groups;
}
