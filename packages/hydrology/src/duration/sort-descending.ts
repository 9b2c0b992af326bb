/** Bits of a digit: three digits a word. */
const bits = 11;
const digits = 6;
const values = 1 << bits;

/**
 * Sorts flows from the largest to the smallest, digit by digit of their bits.
 *
 * The bits of numbers that are not negative stand in the order of the numbers. A century of days takes less than half
 * as long as with the array's own sort, which compares.
 *
 * @param flows - Finite and not below zero, no negative zero among them; used up as room for the work.
 * @returns The same flows in order, in this array or in another.
 */
export function sortDescending(flows: Float64Array): Float64Array {
  const { length } = flows;
  // Below, the tables of digits take longer than the comparisons.
  if (length < 2000) {
    flows.sort();
    flows.reverse();
    return flows;
  }
  // The word of a double that its exponent is in, as this machine stores it.
  const high = new Uint32Array(Float64Array.of(1).buffer)[1] === 0 ? 0 : 1;
  const counts = new Uint32Array(digits * values);
  count(wordsOf(flows), high, counts);
  let from = flows;
  let to: Float64Array = new Float64Array(length);
  for (let digit = 0; digit < digits; digit++) {
    if (!placesOf(counts, digit * values, length)) continue;
    deal(from, to, counts, digit, digit < 3 ? 1 - high : high);
    [from, to] = [to, from];
  }
  return from;
}

function wordsOf(flows: Float64Array): Uint32Array {
  return new Uint32Array(flows.buffer, flows.byteOffset, 2 * flows.length);
}

/** Counts the values of all digits in one pass, the six written out: a loop over them takes twice as long. */
function count(words: Uint32Array, high: number, counts: Uint32Array): void {
  const mask = values - 1;
  for (let at = 0; at < words.length; at += 2) {
    const lower = words[at + 1 - high] as number;
    const upper = words[at + high] as number;
    add(counts, lower & mask);
    add(counts, values + ((lower >>> bits) & mask));
    add(counts, 2 * values + (lower >>> (2 * bits)));
    add(counts, 3 * values + (upper & mask));
    add(counts, 4 * values + ((upper >>> bits) & mask));
    add(counts, 5 * values + (upper >>> (2 * bits)));
  }
}

function add(counts: Uint32Array, value: number): void {
  counts[value] = (counts[value] as number) + 1;
}

/** Turns the counts of a digit into the places of its values, largest first; false where all flows share one value. */
function placesOf(counts: Uint32Array, base: number, length: number): boolean {
  let place = 0;
  for (let value = values - 1; value >= 0; value--) {
    const times = counts[base + value] as number;
    if (times === length) return false;
    counts[base + value] = place;
    place += times;
  }
  return true;
}

/** Deals flows to their places by one digit, those of one value in the order that they have. */
function deal(
  from: Float64Array,
  to: Float64Array,
  places: Uint32Array,
  digit: number,
  word: number,
): void {
  const words = wordsOf(from);
  const base = digit * values;
  const shift = (digit % 3) * bits;
  for (let at = 0; at < from.length; at++) {
    const value = base + (((words[2 * at + word] as number) >>> shift) & (values - 1));
    const place = places[value] as number;
    places[value] = place + 1;
    to[place] = from[at] as number;
  }
}
