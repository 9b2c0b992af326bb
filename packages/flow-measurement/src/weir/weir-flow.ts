import { type Inputs, type Notice, OutOfValidityError, type Args } from "@leat/formula";
import type { AnyQuantity, Quantity } from "@leat/quantity";

import { slipOf } from "./likely-slip.ts";
import {
  type FlowFormula,
  flowOf,
  type WeirOptions,
  withEquationUncertainty,
} from "./weir-formula.ts";

/**
 * The flow over a weir with everything that is uncertain about it: the ± of its inputs, which the formula carries on
 * by itself, and the equation's own.
 *
 * Where the head is out of range and another unit would bring it in (5 ft for 5 in), the refusal, or the notice, says
 * so.
 *
 * @param formula - A weir formula.
 * @param args - Its inputs.
 * @param options - Notices, assumptions, the equation's own uncertainty.
 * @returns The flow; its sources are those of the inputs, and `equation <id>`.
 * @throws NonPhysicalError, OutOfValidityError, QuantityError as a call of the formula does.
 * @example
 * ```ts
 * import { cipollettiDischarge, weirFlow } from "@leat/flow-measurement";
 * import { foot, format, gallonPerMinute, inch } from "@leat/quantity";
 *
 * const head = inch.of(4).within(inch.of(1 / 16), "ruler reading");
 * const notch = { notchWidth: foot.of(2), crestHeight: foot.of(1), approachWidth: foot.of(5) };
 * const q = weirFlow(cipollettiDischarge, { head, ...notch });
 * format(q, gallonPerMinute, { plusMinus: true }); // => "582 ± 33 gal/min (k = 1.96)"
 * ```
 */
export function weirFlow<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: Args<I>,
  options: WeirOptions = {},
): Quantity<"volume flow"> {
  const { onNotice } = options;
  let advice: string | undefined;
  const advised = (notice: Notice): Notice => {
    const { head, ...others } = args as unknown as Record<string, AnyQuantity>;
    advice ??= (head && slipOf(formula, others, head)) ?? "";
    return advice ? { ...notice, message: `${notice.message} ${advice}` } : notice;
  };
  try {
    const flow = flowOf(formula, args, {
      ...options,
      onNotice: onNotice && ((notice) => onNotice(advised(notice))),
    });
    return withEquationUncertainty(formula.id, flow, options.equationUncertainty);
  } catch (error) {
    throw error instanceof OutOfValidityError
      ? new OutOfValidityError(error.notices.map(advised))
      : error;
  }
}
