import type { Citation, Notice } from "@leat/formula";
import { type AnyQuantity, coverage95, metre, pascal, type Quantity } from "@leat/quantity";

/** A standard uncertainty of so many metres as half of a 95 % interval. */
export function standardSpread(metres: number): Quantity<"length"> {
  return metre.of(coverage95 * metres);
}

/** A standard uncertainty of so many pascals as half of a 95 % interval. */
export function standardPressure(pascals: number): Quantity<"pressure"> {
  return pascal.of(coverage95 * pascals);
}

/** Half of the 95 % interval of a head. */
function halfWidth(head: Quantity<"gross head">): number {
  return coverage95 * head.standardUncertainty()["~si"];
}

/** A head whose spread is more than a tenth of it: no scheme can be made for it. */
export function tooVague(
  what: string,
  head: Quantity<"gross head">,
  like: Quantity<"length">,
  source?: Citation,
): Notice[] {
  const half = halfWidth(head);
  const share = half / Math.abs(head["~si"]);
  if (share <= 0.1) return [];
  const spread = inUnitOf(like, half);
  return [
    {
      code: `${what}/vague`,
      severity: "caution",
      path: [],
      message: `${what}: ± ${spread} is ${Math.round(100 * share)} % of a head of ${inUnitOf(like, head["~si"])}, too much to choose a pipe by. Level the fall, or read a gauge on a full hose.`,
      actual: `± ${spread}`,
      limit: "at most 10 % of the head",
      ...(source && { source }),
    },
  ];
}

/** A length in the unit that a reading was written in, with three figures. */
export function inUnitOf(like: AnyQuantity, si: number): string {
  const unit = like["~unit"] ?? metre;
  return `${Number(unit.fromSI(si).toPrecision(3))} ${unit.symbol}`;
}
