import type { Notice } from "@leat/formula";

/** Notices each once, stops first, then cautions, then notes. */
export function inOrder(notices: readonly Notice[]): Notice[] {
  const rank = { stop: 0, caution: 1, note: 2 };
  const seen = new Set<string>();
  return notices
    .filter(({ message }) => !seen.has(message) && seen.add(message))
    .toSorted((a, b) => rank[a.severity] - rank[b.severity]);
}
