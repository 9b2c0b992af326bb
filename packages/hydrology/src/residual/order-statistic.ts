/**
 * Moves the values of an array about until the one at a place is the one that a sort would put there, those before it are no
 * greater and those after it no smaller. A sort of a hundred years of days takes several times as long.
 */
function placeInOrder(values: Float64Array, place: number): void {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = middleOf(
      values[low] as number,
      values[(low + high) >>> 1] as number,
      values[high] as number,
    );
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] as number) < pivot) i += 1;
      while ((values[j] as number) > pivot) j -= 1;
      if (i > j) break;
      const kept = values[i] as number;
      values[i] = values[j] as number;
      values[j] = kept;
      i += 1;
      j -= 1;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else return;
  }
}

function middleOf(a: number, b: number, c: number): number {
  return a < b ? (b < c ? b : a < c ? c : a) : a < c ? a : b < c ? c : b;
}

/**
 * The flow that is exceeded for a share of the days, by Weibull's positions m/(n + 1) and straight lines between them.
 *
 * @param values - The flows; left in another order.
 * @param share - Share of the time.
 * @returns The flow; nothing where the share lies beyond the positions.
 */
export function flowAtShare(values: Float64Array, share: number): number | undefined {
  const days = values.length;
  const rank = share * (days + 1);
  if (!(rank >= 1 && rank <= days)) return undefined;
  const whole = Math.floor(rank);
  // Ranks count from the largest.
  const place = days - whole;
  placeInOrder(values, place);
  const upper = values[place] as number;
  if (rank === whole) return upper;
  let lower = values[0] as number;
  for (let i = 1; i < place; i++) if ((values[i] as number) > lower) lower = values[i] as number;
  return upper + (rank - whole) * (lower - upper);
}
