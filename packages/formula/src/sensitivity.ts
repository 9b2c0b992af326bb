import { type AnyDefinition, outputsOf } from "./definition.ts";
import type { Numbers, Resolved, Slot } from "./resolve.ts";

/** Step of a difference, over the size of the number: the cube root of the last digit. */
const step = 6e-6;

/**
 * Change of each output with one number of the inputs, in coherent units: a central difference of the
 * plain body, one-sided where physics or the body ends.
 *
 * @param definition - The formula.
 * @param resolved - Its inputs.
 * @param slot - Which number.
 * @param scale - A size for the step where the number is zero.
 * @returns A derivative for each output.
 */
export function partial(
  definition: AnyDefinition,
  resolved: Resolved,
  slot: Slot,
  scale: number,
): number[] {
  const x = slot.given["~si"];
  const h = step * (x === 0 ? scale : Math.abs(x));
  const at = (dx: number): number[] | undefined => {
    if (!allowed(slot, x + dx)) return undefined;
    try {
      const results = numbersOf(
        definition,
        definition.body(replaced(resolved.letters, slot.letters, x + dx) as never),
      );
      return results.every(Number.isFinite) ? results : undefined;
    } catch {
      return undefined;
    }
  };
  const [below, above] = [at(-h), at(h)];
  if (below && above) return below.map((b, i) => ((above[i] as number) - b) / (2 * h));
  const here = at(0);
  const side = above ? 1 : -1;
  const [near, far] = [above ?? below, at(2 * side * h)];
  if (!here || !near || !far) {
    throw new Error(
      `${definition.id}: no difference can be taken at ${slot.path.join(".")} = ${x}`,
    );
  }
  return here.map(
    (y, i) => (side * (4 * (near[i] as number) - 3 * y - (far[i] as number))) / (2 * h),
  );
}

/** Results of a body as a list, in the order of the outputs. */
export function numbersOf(definition: AnyDefinition, result: unknown): number[] {
  return typeof result === "number"
    ? [result]
    : outputsOf(definition.output).map(
        ({ letter }) => (result as Record<string, number>)[letter] as number,
      );
}

function allowed({ domain }: Slot, n: number): boolean {
  if (domain === "positive") return n > 0;
  if (domain === "non-negative") return n >= 0;
  return domain === "any" || (n >= 0 && n <= 1);
}

/** The letters with one number replaced, however deep it stands. */
function replaced(
  letters: unknown,
  [first, ...rest]: readonly (string | number)[],
  value: number,
): unknown {
  if (first === undefined) return value;
  if (Array.isArray(letters))
    return letters.map((row, i) => (i === first ? replaced(row, rest, value) : row));
  const numbers = letters as Numbers;
  return { ...numbers, [first]: replaced(numbers[first], rest, value) };
}
