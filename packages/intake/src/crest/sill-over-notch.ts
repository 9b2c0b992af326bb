import type { Convergence } from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";
import { metre, type Quantity } from "@leat/quantity";

import { refusal, requireKind, requireSign } from "../refusal.ts";

/** The flow of a notch or of an intake over the level above its own sill: a formula with everything else filled in. */
export type FlowOverHead = (head: Quantity<"length">) => Quantity<"volume flow">;

/** The notch that leaves the residual flow, and how much that is. */
export interface SillOverNotchInput {
  /** Flow of the notch over the level above its sill. */
  readonly notchFlow: FlowOverHead;
  /** Flow that must stay in the stream. */
  readonly residualFlow: Quantity<"volume flow">;
  /** Levels above the notch's sill between which its formula holds: the lower, the upper. */
  readonly heads: readonly [Quantity<"length">, Quantity<"length">];
  /** What the intake's sill is set higher than the sum needs: for waves, for what settles. Nothing where left out. */
  readonly margin?: Quantity<"length"> | undefined;
}

/** Where the intake begins. */
export interface SillOverNotch {
  /** The intake's sill above the notch's. */
  readonly sill: Quantity<"length">;
  /** Level above the notch's sill at which the notch passes just the residual flow. */
  readonly residualLevel: Quantity<"length">;
  /** What the notch passes when the water reaches the intake's sill: the residual flow, and more with a margin. */
  readonly leftAtSill: Quantity<"volume flow">;
  /** How the search ended. */
  readonly convergence: Convergence;
}

const id = "sill-over-notch";

/**
 * How high the sill of the intake lies above that of the notch, so that the stream has its residual flow first.
 *
 * This is a guarantee by height, not by hand: until the notch passes the residual flow the water does not reach the
 * intake. It holds while the notch is open, clean and as it was reckoned, nothing else lets water by below the
 * intake's sill, and nobody moves either sill: build both in concrete or steel, and put a staff beside them. As the
 * stream rises on, the notch leaves more than it must.
 *
 * @param input - The notch and the flow.
 * @returns The height, and what the notch passes there.
 * @throws NonPhysicalError a notch that cannot pass the flow between those heads, or passes more at the lowest.
 * @throws QuantityError `kind` for anything of another kind.
 * @example
 * ```ts
 * import { sillOverNotch } from "@leat/intake";
 * import { cubicMetrePerSecond, format, litrePerSecond, metre, millimetre } from "@leat/quantity";
 *
 * // A right-angled notch, 1.38 · h^2.5 in metres: a caller takes a formula of its own for it.
 * const { sill } = sillOverNotch({
 *   notchFlow: (head) => cubicMetrePerSecond.of(1.38 * head["~si"] ** 2.5),
 *   residualFlow: litrePerSecond.of(10),
 *   heads: [millimetre.of(60), millimetre.of(380)],
 *   margin: millimetre.of(10),
 * });
 * format(sill, millimetre, 3); // => "149 mm"
 * ```
 */
export function sillOverNotch(input: SillOverNotchInput): SillOverNotch {
  const { notchFlow, residualFlow, heads, margin = metre.of(0) } = input;
  const [least, most] = heads;
  requireKind(id, ["residualFlow"], residualFlow, "volume flow");
  requireKind(id, ["heads", 0], least, "length");
  requireKind(id, ["heads", 1], most, "length");
  requireKind(id, ["margin"], margin, "length");
  requireSign(id, ["residualFlow"], residualFlow, "positive");
  requireSign(id, ["margin"], margin, "non-negative");
  const [low, high] = [notchFlow(least), notchFlow(most)];
  requireKind(id, ["notchFlow"], low, "volume flow");
  if (low.greaterThan(residualFlow)) {
    throw refusal(
      "crest/notch-too-large",
      ["notchFlow"],
      `${id}: the notch already passes ${String(low)} at ${String(least)}, more than the ${String(residualFlow)} that must stay. Make it narrower, or give a formula that holds lower.`,
      { actual: String(low), limit: `at most ${String(residualFlow)}` },
    );
  }
  if (high.lessThan(residualFlow)) {
    throw refusal(
      "crest/notch-too-small",
      ["notchFlow"],
      `${id}: the notch passes only ${String(high)} at ${String(most)}, less than the ${String(residualFlow)} that must stay. Make it wider or deeper.`,
      { actual: String(high), limit: `at least ${String(residualFlow)}` },
    );
  }
  const { root, iterations, residual, bracket } = bracketedRoot(
    (head) => notchFlow(metre.of(head))["~si"] - residualFlow["~si"],
    least["~si"],
    most["~si"],
  );
  const residualLevel = metre.of(root);
  const sill = residualLevel.plus(margin);
  return {
    sill,
    residualLevel,
    leftAtSill: notchFlow(sill),
    convergence: { iterations, residual, bracket },
  };
}
