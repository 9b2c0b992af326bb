import type { Convergence, Notice } from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";
import { one, type Quantity } from "@leat/quantity";

import { type NoticeOptions, requireKind, requireSign, tell } from "../refusal.ts";

/** How a screen loses head as it is blocked, and how much it may lose. */
export interface BlockedShareInput {
  /** Head lost at a share that is blocked: a formula of this package with everything else filled in. */
  readonly loss: (blockedShare: Quantity<"ratio">) => Quantity<"head loss">;
  /** Head that may be lost before the pipe runs short: the water level over what the pipe's mouth needs. */
  readonly available: Quantity<"head loss">;
}

/** When a screen starves the pipe. */
export interface BlockedShare {
  /** Share that may be blocked: from there on the pipe draws air, or takes less. */
  readonly share: Quantity<"ratio">;
  /** Head lost with a clean screen. */
  readonly clean: Quantity<"head loss">;
  /** How the search ended; nothing where the clean screen already loses too much. */
  readonly convergence: Convergence | undefined;
  /** What is to be said with it. */
  readonly notices: readonly Notice[];
}

const id = "blocked-share";

/** As far as the search goes: a screen that is shut altogether loses without end. */
const nearlyShut = 1 - 2 ** -30;

/**
 * The share of a screen that may be blocked before the pipe behind it runs short.
 *
 * A screen that loses more head lets the water behind it stand lower; when it no longer stands as deep over the mouth
 * as {@link mouthSubmergence} asks, the pipe draws air. The head that may be lost is the depth over the mouth less that.
 *
 * @param input - The loss over the blocked share, and the head that may be lost.
 * @param options - Told of every notice.
 * @returns The share, with how the search ended.
 * @throws NonPhysicalError no head to lose, or none left.
 * @throws NumericsError a loss that does not rise to the head that may be lost.
 * @example
 * ```ts
 * import { blockedShareThatStarves, perforatedPlateLoss } from "@leat/intake";
 * import { metrePerSecond, millimetre, one, percent } from "@leat/quantity";
 *
 * const plate = { velocity: metrePerSecond.of(0.08), openShare: one.of(0.4) };
 * const { share } = blockedShareThatStarves({
 *   loss: (blockedShare) => perforatedPlateLoss({ ...plate, blockedShare }),
 *   available: millimetre.of(100).as("head loss"),
 * });
 * share.in(percent).toFixed(0); // => "77"
 * ```
 */
export function blockedShareThatStarves(
  input: BlockedShareInput,
  options: NoticeOptions = {},
): BlockedShare {
  const { loss, available } = input;
  requireKind(id, ["available"], available, "head loss");
  requireSign(id, ["available"], available, "positive");
  const clean = loss(one.of(0));
  requireKind(id, ["loss"], clean, "head loss");
  if (!clean.lessThan(available)) {
    const notices: Notice[] = [
      {
        code: "screen/starves-clean",
        severity: "stop",
        path: ["available"],
        message: `${id}: the clean screen loses ${String(clean)}, and ${String(available)} may be lost. Make the screen larger or set the mouth of the pipe deeper.`,
        actual: String(clean),
        limit: `less than ${String(available)}`,
      },
    ];
    return { share: one.of(0), clean, convergence: undefined, notices: tell(notices, options) };
  }
  const { root, iterations, residual, bracket } = bracketedRoot(
    (share) => loss(one.of(share))["~si"] - available["~si"],
    0,
    nearlyShut,
  );
  return {
    share: one.of(root),
    clean,
    convergence: { iterations, residual, bracket },
    notices: [],
  };
}
