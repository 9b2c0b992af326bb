import { coherentUnit, coverage95, type Quantity } from "@leat/quantity";

/**
 * The same quantity with contributions of sources that it shares with others, of either sign.
 *
 * @param quantity - What is uncertain.
 * @param contributions - By source, the change when it moves by one standard uncertainty, in the coherent unit.
 * @returns The quantity with the contributions added to those that it has.
 */
export function spreadBy<K extends string>(
  quantity: Quantity<K>,
  contributions: Iterable<readonly [source: string, contribution: number]>,
): Quantity<K> {
  const unit = coherentUnit(quantity.kind);
  let spread = quantity;
  for (const [source, contribution] of contributions) {
    const one = unit.of(0).plusMinus(unit.of(Math.abs(contribution) * coverage95), source);
    spread = spread.plus(one.times(Math.sign(contribution)) as never) as unknown as Quantity<K>;
  }
  return spread;
}

/**
 * What the sources of an input contribute to a result, by the slope between them.
 *
 * @param input - The input.
 * @param slope - Change of the result over that of the input, both in coherent units.
 * @returns The contribution of each source, in the coherent unit of the result.
 */
export function contributionsOf<K extends string>(
  input: Quantity<K>,
  slope: number,
): (readonly [source: string, contribution: number])[] {
  const unit = coherentUnit(input.kind);
  return Array.from(input.sources(), ([source, c]) => [source, slope * c.in(unit)] as const);
}
