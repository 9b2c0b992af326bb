import { commonPractice, type Notice } from "@leat/formula";
import { metrePerSecond, type Quantity } from "@leat/quantity";

import { type NoticeOptions, requireKind, requireSign, tell } from "../refusal.ts";
import { channelLinings } from "./channel-linings.ts";
import { freeboard } from "./freeboard.ts";

/** Names of the linings of {@link channelLinings}. */
export type ChannelLining = ReturnType<typeof channelLinings.keys>[number];

/** A headrace as it runs. */
export interface HeadraceInput {
  /** Mean velocity, as {@link normalDepth} gives it. */
  readonly velocity: Quantity<"velocity">;
  /** Depth of the water. */
  readonly depth: Quantity<"length">;
  /** Froude number. */
  readonly froude?: Quantity<"ratio"> | undefined;
  /** What it is lined with. */
  readonly lining: ChannelLining;
  /** Height of the lower bank over the water. */
  readonly bankOverWater?: Quantity<"length"> | undefined;
  /** Slowest water that carries what comes with it; 0.3 m/s where it is left out. */
  readonly leastVelocity?: Quantity<"velocity"> | undefined;
}

const id = "check-headrace";

/**
 * Holds a headrace against its lining, against silting and against overflowing.
 *
 * @param input - The headrace.
 * @param options - Told of every notice.
 * @returns What is not as it should be; nothing where all is.
 * @throws QuantityError a lining that is not in the table; anything of another kind.
 * @throws NonPhysicalError a depth of zero or less, a negative velocity.
 * @example
 * ```ts
 * import { checkHeadrace } from "@leat/intake";
 * import { metre, metrePerSecond } from "@leat/quantity";
 *
 * const notices = checkHeadrace({
 *   velocity: metrePerSecond.of(0.9),
 *   depth: metre.of(0.25),
 *   lining: "gravelly or sandy loam",
 *   bankOverWater: metre.of(0.2),
 * });
 * notices.map(({ code }) => code); // => ["headrace/scours", "headrace/freeboard"]
 * ```
 */
export function checkHeadrace(
  input: HeadraceInput,
  options: NoticeOptions = {},
): readonly Notice[] {
  const { velocity, depth, froude, lining, bankOverWater } = input;
  const { leastVelocity = metrePerSecond.of(0.3) } = input;
  requireKind(id, ["velocity"], velocity, "velocity");
  requireKind(id, ["depth"], depth, "length");
  requireKind(id, ["leastVelocity"], leastVelocity, "velocity");
  requireSign(id, ["velocity"], velocity, "non-negative");
  requireSign(id, ["depth"], depth, "positive");
  const notices: Notice[] = [];
  const most = channelLinings.get(lining, "mostVelocity");
  const { source } = channelLinings.definition;
  if (velocity.greaterThan(most)) {
    notices.push({
      code: "headrace/scours",
      severity: "caution",
      path: ["velocity"],
      message: `${id}: ${String(velocity)} is above the ${String(most)} that ${lining} bears (${source.source.by}, ${source.place}). Make the slope gentler, the section larger or the lining harder.`,
      actual: String(velocity),
      limit: `at most ${String(most)}`,
      source,
    });
  }
  if (velocity.lessThan(leastVelocity)) {
    notices.push({
      code: "headrace/silts",
      severity: "caution",
      path: ["velocity"],
      message: `${id}: ${String(velocity)} is below ${String(leastVelocity)}, and sand settles in the headrace. Make the slope steeper or the section smaller, or settle the sand before it.`,
      actual: String(velocity),
      limit: `at least ${String(leastVelocity)}`,
      source: commonPractice.at("velocity against silting", "practice"),
    });
  }
  if (froude !== undefined) {
    requireKind(id, ["froude"], froude, "ratio");
    if (froude["~si"] > 0.8 && froude["~si"] < 1.2) {
      notices.push({
        code: "headrace/near-critical",
        severity: "caution",
        path: ["froude"],
        message: `${id}: a Froude number of ${Number(froude["~si"].toPrecision(2))} is near critical, and the surface stands in waves. Make the slope gentler.`,
        actual: String(froude),
        limit: "below 0.8 or above 1.2",
        source: commonPractice.at("flow near critical", "practice"),
      });
    }
  }
  if (bankOverWater !== undefined) {
    requireKind(id, ["bankOverWater"], bankOverWater, "length");
    const needed = freeboard({ depth });
    if (bankOverWater.lessThan(needed)) {
      const limit = `at least ${(needed["~si"] * 1000).toFixed(0)} mm`;
      notices.push({
        code: "headrace/freeboard",
        severity: "caution",
        path: ["bankOverWater"],
        message: `${id}: the bank stands ${String(bankOverWater)} over the water, and ${limit} is asked. Raise it, and give the headrace a spillway.`,
        actual: String(bankOverWater),
        limit,
        source: freeboard.definition.source,
      });
    }
  }
  return tell(notices, options);
}
