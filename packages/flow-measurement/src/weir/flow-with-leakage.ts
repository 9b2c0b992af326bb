import { commonPractice, formula, input, output } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

/**
 * Flow of the stream where some of it gets past the weir: over the notch, and under, around or through the
 * plate.
 *
 *     Q = Qw + Ql
 *
 * Give each its own uncertainty: the leak's stays a source of its own in the sum. A leak that can be caught is
 * measured with a bucket (`timedVolumeFlow`); one that cannot is put between a least and a most
 * (`leakageBetween`).
 *
 * @throws NonPhysicalError a flow below zero.
 * @example
 * ```ts
 * import { flowWithLeakage, leakageBetween } from "@leat/flow-measurement";
 * import { format, gallonPerMinute } from "@leat/quantity";
 *
 * const leakage = leakageBetween(gallonPerMinute.of(2), gallonPerMinute.of(8));
 * const stream = flowWithLeakage({ notchFlow: gallonPerMinute.of(300), leakage });
 * format(stream, gallonPerMinute, { plusMinus: true }); // => "305.0 ± 3.4 gal/min (k = 1.96)"
 * ```
 */
export const flowWithLeakage = /* @__PURE__ */ formula(() => ({
  id: "flow-with-leakage",
  equation: "Q = Qw + Ql",
  inputs: {
    /** Flow over the notch. */
    notchFlow: input("volume flow", "Qw"),
    /** Flow that gets past the plate. */
    leakage: input("volume flow", "Ql"),
  },
  output: output("volume flow", "Q"),
  source: commonPractice.at("what does not go over the notch is added", "practice"),
  body: ({ Qw, Ql }) => Qw + Ql,
}));

/**
 * A leak that was judged by eye: anywhere between a least and a most, equally likely.
 *
 * @param least - Less than this cannot be.
 * @param most - More than this cannot be.
 * @param source - Names the leak; two leaks that were judged apart have two names.
 * @returns The middle, within half the distance.
 * @throws QuantityError `not-finite` where the most is below the least; `kind` for anything but volume flows.
 * @example
 * ```ts
 * import { leakageBetween } from "@leat/flow-measurement";
 * import { litrePerSecond } from "@leat/quantity";
 *
 * const leakage = leakageBetween(litrePerSecond.of(0.1), litrePerSecond.of(0.5));
 * leakage.in(litrePerSecond).toFixed(1); // => "0.3"
 * ```
 */
export function leakageBetween(
  least: Quantity<"volume flow">,
  most: Quantity<"volume flow">,
  source = "leakage, judged by eye",
): Quantity<"volume flow"> {
  const half = most.minus(least).times(0.5);
  return least.plus(half).within(half, source);
}
