import type { Convergence, Notice } from "@leat/formula";
import { bracketedRoot } from "@leat/numerics";
import { cubicMetrePerSecond, metre, type Quantity } from "@leat/quantity";

import { type NoticeOptions, refusal, requireKind, requireSign, tell } from "../refusal.ts";
import type { FlowOverHead } from "./sill-over-notch.ts";

/** A crest with a notch and an intake, and the flow that comes down to it. */
export interface DivideFlowInput {
  /** Flow of the notch over the level above its sill; none at level 0. */
  readonly notchFlow: FlowOverHead;
  /** Flow into the intake over the level above its sill, as far as pipe and valve let it; none at level 0. */
  readonly intakeFlow: FlowOverHead;
  /** The intake's sill above the notch's; below zero where it lies lower. */
  readonly sill: Quantity<"length">;
  /** What comes down the stream. */
  readonly streamFlow: Quantity<"volume flow">;
  /** Flow that must stay, to be held against. */
  readonly residualFlow: Quantity<"volume flow">;
  /** Highest level above the notch's sill: the crest. */
  readonly crest: Quantity<"length">;
}

/** How the flow divides. */
export interface DividedFlow {
  /** Level above the notch's sill. */
  readonly level: Quantity<"length">;
  /** What the notch leaves in the stream. */
  readonly left: Quantity<"volume flow">;
  /** What the intake takes. */
  readonly taken: Quantity<"volume flow">;
  /** How the search ended. */
  readonly convergence: Convergence;
  /** That the residual flow does not come first. */
  readonly notices: readonly Notice[];
}

const id = "divide-flow";

/**
 * How a crest with a notch and an intake divides what comes down the stream: the level at which the two pass it.
 *
 * @param input - Both flows over their heads, the heights, and the flow of the stream.
 * @param options - Told of every notice.
 * @returns The level, what stays and what is taken, with a stop where less stays than must although the stream has it.
 * @throws NonPhysicalError a stream that goes over the crest; a negative flow.
 * @throws QuantityError `kind` for anything of another kind.
 * @example
 * ```ts
 * import { divideFlow } from "@leat/intake";
 * import { cubicMetrePerSecond, format, litrePerSecond, millimetre } from "@leat/quantity";
 *
 * const { left, taken } = divideFlow({
 *   notchFlow: (head) => cubicMetrePerSecond.of(1.38 * head["~si"] ** 2.5),
 *   intakeFlow: (head) => cubicMetrePerSecond.of(0.9 * head["~si"] ** 1.5),
 *   sill: millimetre.of(140),
 *   streamFlow: litrePerSecond.of(30),
 *   residualFlow: litrePerSecond.of(10),
 *   crest: millimetre.of(380),
 * });
 * format(left, litrePerSecond, 3); // => "20.8 L/s"
 * format(taken, litrePerSecond, 3); // => "9.15 L/s"
 * ```
 */
export function divideFlow(input: DivideFlowInput, options: NoticeOptions = {}): DividedFlow {
  const { notchFlow, intakeFlow, sill, streamFlow, residualFlow, crest } = input;
  requireKind(id, ["sill"], sill, "length");
  requireKind(id, ["crest"], crest, "length");
  requireKind(id, ["streamFlow"], streamFlow, "volume flow");
  requireKind(id, ["residualFlow"], residualFlow, "volume flow");
  requireSign(id, ["crest"], crest, "positive");
  requireSign(id, ["streamFlow"], streamFlow, "non-negative");
  requireSign(id, ["residualFlow"], residualFlow, "non-negative");
  const none = cubicMetrePerSecond.of(0);
  const leftAt = (level: number): Quantity<"volume flow"> =>
    level > 0 ? notchFlow(metre.of(level)) : none;
  const takenAt = (level: number): Quantity<"volume flow"> =>
    level > sill["~si"] ? intakeFlow(metre.of(level).minus(sill)) : none;
  const excess = (level: number): number =>
    leftAt(level)["~si"] + takenAt(level)["~si"] - streamFlow["~si"];
  const lowest = sill["~si"] < 0 ? sill["~si"] : 0;
  if (excess(crest["~si"]) < 0) {
    throw refusal(
      "crest/overtopped",
      ["streamFlow"],
      `${id}: at the crest, ${String(crest)} over the notch's sill, notch and intake together pass less than ${String(streamFlow)}. The rest goes over the crest: reckon with it, or give a higher crest.`,
      { actual: String(streamFlow) },
    );
  }
  const { root, iterations, residual, bracket } = bracketedRoot(excess, lowest, crest["~si"]);
  const left = leftAt(root);
  const taken = takenAt(root);
  const notices: Notice[] = [];
  // What must stay, or all that comes where the stream has less; a billionth is rounding.
  const owed = streamFlow.lessThan(residualFlow) ? streamFlow : residualFlow;
  if (left["~si"] < owed["~si"] * (1 - 1e-9)) {
    notices.push({
      code: "crest/residual-not-first",
      severity: "stop",
      path: ["sill"],
      message: `${id}: with ${String(streamFlow)} in the stream the notch leaves ${litres(left)} where ${String(owed)} must stay. Raise the sill of the intake: sillOverNotch says how high.`,
      actual: litres(left),
      limit: `at least ${String(owed)}`,
    });
  }
  return {
    level: metre.of(root),
    left,
    taken,
    convergence: { iterations, residual, bracket },
    notices: tell(notices, options),
  };
}

function litres(flow: Quantity<"volume flow">): string {
  return `${Number((flow["~si"] * 1000).toPrecision(3))} L/s`;
}
