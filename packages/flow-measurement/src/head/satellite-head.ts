import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import { metre, type Point, type Quantity } from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { type SatelliteReceiver, satelliteReceivers } from "./satellite-receivers.ts";
import { tooVague } from "./spread.ts";

/** Two heights by satellite. */
export interface SatelliteInput {
  /** Height of the upper point over the ellipsoid, or over the sea if the receiver says so, both alike. */
  readonly upper: Point<"site datum">;
  /** Height of the lower point over the same. */
  readonly lower: Point<"site datum">;
  /** Kind of receiver. */
  readonly receiver: SatelliteReceiver;
  /** Half of the 95 % interval of one height, as the receiver states it; by default as `satelliteReceivers` has it. */
  readonly heightSpread?: Quantity<"length"> | undefined;
  /** How far the points are apart on a map, for the slope of the geoid. */
  readonly apart?: Quantity<"length"> | undefined;
  /** Names the sources of uncertainty. `satellite` by default. */
  readonly name?: string | undefined;
}

/** What satellites say of the head. */
export interface SatelliteHead {
  /** Height between the points. */
  readonly head: Quantity<"gross head">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "satellite-head";

/**
 * Height between two points by satellite: the difference of two heights, each as uncertain as the receiver leaves it.
 *
 * The two are taken as independent: read one after the other with the same receiver they share some of their error,
 * which nobody can count on. Water follows the geoid and not the ellipsoid: over a site the two are parallel but for
 * 0.1 m in a kilometre, twice that in high mountains, which is nothing beside a handheld receiver and more than a
 * kinematic one is wrong by; it is counted where `apart` is given. For a low head no receiver is good enough but that.
 *
 * @param input - The heights and the receiver.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head and notices.
 * @throws NonPhysicalError the upper point is not above the lower one, or the points are not apart.
 * @throws QuantityError `origin` for heights over two datums.
 * @example
 * ```ts
 * const over = (height: number) => point("site datum", metre.of(height), "ellipsoid");
 * const notices: string[] = [];
 * const { head } = satelliteHead(
 *   { upper: over(642), lower: over(598), receiver: "telephone or handheld" },
 *   { onNotice: ({ code }) => notices.push(code) },
 * );
 * format(head, metre, { plusMinus: true }); // => "44 ± 14 m (k = 1.96)"
 * notices; // => ["satellite-head/vague"]
 * ```
 */
export function satelliteHead(input: SatelliteInput, options: CallOptions = {}): SatelliteHead {
  const { upper, lower, receiver, heightSpread, apart, name = "satellite" } = input;
  const difference = upper.minus(lower);
  const problems: Notice[] = [];
  if (!(difference["~si"] > 0)) {
    problems.push(
      fault(
        what,
        ["upper"],
        `upper = ${upper.toString()} is not above lower = ${lower.toString()}. See whether the points are exchanged.`,
      ),
    );
  }
  if (apart && !(apart["~si"] > 0)) {
    problems.push(
      fault(
        what,
        ["apart"],
        `apart = ${apart.toString()} is not above zero. Leave it out where it is not known.`,
      ),
    );
  }
  refuseIf(problems);
  const spread = heightSpread ?? satelliteReceivers.get(receiver, "typical");
  if (!heightSpread) {
    options.onAssumed?.({
      formula: what,
      input: "heightSpread",
      value: `± ${spread.toString()} at 95 %`,
      because: satelliteReceivers.definition.source,
    });
  }
  let fall = difference.plusMinus(spread, `${name}.upper`).plusMinus(spread, `${name}.lower`);
  if (apart) {
    options.onAssumed?.({
      formula: what,
      input: "apart",
      value: "geoid within 0.1 m in a kilometre",
      because: commonPractice.at("slope of the geoid against the ellipsoid", "practice"),
    });
    fall = fall.within(apart.times(1e-4), `${name}.geoid`);
  }
  const head = fall.as("gross head");
  const notices = tooVague(what, head, metre.of(1));
  for (const notice of notices) options.onNotice?.(notice);
  return { head, notices };
}
