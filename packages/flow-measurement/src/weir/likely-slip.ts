import { type AnyFormula, type Inputs, limitNotices, type Notice } from "@leat/formula";
import {
  type AnyQuantity,
  type AnyUnit,
  centimetre,
  foot,
  inch,
  metre,
  millimetre,
  type Quantity,
} from "@leat/quantity";

import type { ArgsWithout, FlowFormula, NameOf } from "./weir-formula.ts";

/** Which unit is written for which, by the symbol of the one that was written. */
const swaps: Readonly<Record<string, readonly AnyUnit[]>> = /* @__PURE__ */ (() => ({
  ft: [inch],
  in: [foot, millimetre],
  m: [centimetre, millimetre],
  cm: [millimetre, metre],
  mm: [centimetre, inch, metre],
}))();

/** Whether two notices say the same of the same thing, so that the head has no part in them. */
function same(a: Notice, b: Notice): boolean {
  return a.path[0] === b.path[0] && a.limit === b.limit && a.actual === b.actual;
}

/** Whether a formula refuses nothing that it would not refuse at another head too. */
function fits(
  formula: AnyFormula,
  args: object,
  head: AnyQuantity,
  beyond: readonly Notice[],
): boolean {
  const left = limitNotices(formula, { ...args, head });
  return (
    left.length < beyond.length &&
    left.every((notice) => beyond.some((other) => same(notice, other)))
  );
}

/**
 * The unit that was probably meant, where a head lies outside a notch's range as it is written and inside it
 * in another unit: feet entered for inches, metres for centimetres or millimetres.
 *
 * Nothing is changed by it: it is a sentence to put after a refusal, as `weirFlow` does.
 *
 * @param formula - A weir formula.
 * @param args - Its inputs without the head.
 * @param head - The head, as it was written.
 * @returns `head = 5 ft is outside the range of this notch; 5 in would fit.`, or nothing where the head is
 * inside the range or no other unit brings it there.
 * @throws NonPhysicalError, QuantityError as a call of the formula does.
 * @example
 * ```ts
 * import { francisContractedDischarge, likelySlip } from "@leat/flow-measurement";
 * import { each, foot } from "@leat/quantity";
 *
 * const notch = {
 *   notchWidth: foot.of(2),
 *   contractions: each.of(2),
 *   crestHeight: foot.of(2),
 *   approachWidth: foot.of(6),
 * };
 * likelySlip(francisContractedDischarge, notch, foot.of(5));
 * // => "head = 5 ft is outside the range of this notch; 5 in would fit."
 * ```
 */
export function likelySlip<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: ArgsWithout<I, "head" & NameOf<I>>,
  head: Quantity<"length">,
): string | undefined {
  return slipOf(formula, args, head);
}

/** The same without the types. */
export function slipOf(formula: AnyFormula, args: object, head: AnyQuantity): string | undefined {
  const written = head["~unit"];
  const number = written ? head["~number"] : head["~si"];
  const beyond = limitNotices(formula, { ...args, head });
  if (beyond.length === 0) return undefined;
  const meant = (swaps[written?.symbol ?? "m"] ?? [])
    .map((unit) => (unit as typeof metre).of(number))
    .filter((other) => fits(formula, args, other, beyond));
  return meant.length === 0
    ? undefined
    : `head = ${String(head)} is outside the range of this notch; ${meant.map(String).join(" or ")} would fit.`;
}
