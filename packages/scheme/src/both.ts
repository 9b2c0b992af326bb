import {
  bar,
  coherentUnit,
  foot,
  footPerSecond,
  format,
  gallonPerMinute,
  litrePerSecond,
  metre,
  metrePerSecond,
  poundPerSquareInch,
  type Quantity,
  squareFoot,
  squareMetre,
  type Unit,
} from "@leat/quantity";

// Messages name a number in both systems, because their readers use either; metres and litres come first unless the
// survey is written in feet and gallons.

/** A flow, given in m³/s. */
export function bothFlows(q: number, customary = false): string {
  return both(coherentUnit("volume flow").of(q), litrePerSecond, gallonPerMinute, customary);
}

/** A pressure, given in Pa. */
export function bothPressures(p: number, customary = false): string {
  return both(coherentUnit("pressure").of(p), bar, poundPerSquareInch, customary);
}

/** A height, given in m. */
export function bothHeights(h: number, customary = false): string {
  return both(coherentUnit("length").of(h), metre, foot, customary);
}

/** A velocity, given in m/s. */
export function bothVelocities(v: number, customary = false): string {
  return both(coherentUnit("velocity").of(v), metrePerSecond, footPerSecond, customary);
}

/** An area, given in m². */
export function bothAreas(a: number, customary = false): string {
  return both(coherentUnit("area").of(a), squareMetre, squareFoot, customary);
}

function both<K extends string>(
  value: Quantity<K>,
  metric: Unit<K>,
  us: Unit<K>,
  customary: boolean,
): string {
  const [first, second] = [customary ? us : metric, customary ? metric : us].map((unit) =>
    format(value, unit as Unit<NoInfer<K>>, 3),
  );
  return `${first} (${second})`;
}
