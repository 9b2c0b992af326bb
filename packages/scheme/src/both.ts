import {
  bar,
  coherentUnit,
  foot,
  format,
  gallonPerMinute,
  litrePerSecond,
  metre,
  poundPerSquareInch,
} from "@leat/quantity";

// Messages name a number in both systems, because their readers use either.

/** A flow, given in m³/s. */
export function bothFlows(q: number): string {
  const flow = coherentUnit("volume flow").of(q);
  return `${format(flow, litrePerSecond, 3)} (${format(flow, gallonPerMinute, 3)})`;
}

/** A pressure, given in Pa. */
export function bothPressures(p: number): string {
  const pressure = coherentUnit("pressure").of(p);
  return `${format(pressure, bar, 3)} (${format(pressure, poundPerSquareInch, 3)})`;
}

/** A height, given in m. */
export function bothHeights(h: number): string {
  const height = coherentUnit("length").of(h);
  return `${format(height, metre, 3)} (${format(height, foot, 3)})`;
}
